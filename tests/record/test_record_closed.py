"""Small faults in a graph from elsewhere, each of which once changed or dropped a rule in silence.

The record is that of a dossier as one would write it; each case changes one line of its Turtle.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from intent.diagnostics import Unusable
from intent.language.locale import ENGLISH
from intent.verbs import check, convert, validate

WORK = """\
# Three Sets

- owner: Hollins Street Museum
- number: 2009.31

## People

| person | name             | role        |
| ------ | ---------------- | ----------- |
| artist | Ilka Brandvold   | artist      |
| estate | Brandvold Estate | artist's estate |
| cons   | Odile Varga-Finn | conservator |

## Parts

### Monitors

- kind: display

| part | technology       | visible diagonal | weight |
| ---- | ---------------- | ---------------- | ------ |
| M1   | cathode-ray tube | 13 in            | 11 kg  |
| M2   | cathode-ray tube | 13 in            | 11 kg  |

## Instructions

### R1 Tubes

- required: technology of Monitors is cathode-ray tube
- allowed: technology of Monitors is flat panel, with consent of estate
- by: artist
- on: 1999

### R2 What the shelf bears

- required: weight of M1 is at most 30 kg
- ground: safety
- by: cons
- on: 2009
"""
LOAN = """\
# Loan

- work: work.md
- dates: 2027-03-01/2027-06-30

## Changes

| part | weight |
| ---- | ------ |
| M1   | 12 kg  |
"""


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "work.md").write_text(WORK, encoding="utf-8")
    (tmp_path / "loan.md").write_text(LOAN, encoding="utf-8")
    for name in ("work", "loan"):
        text, _ = convert(tmp_path / f"{name}.md", "turtle")
        (tmp_path / f"{name}.ttl").write_text(text, encoding="utf-8")
    return tmp_path


def block(turtle: str, subject: str) -> str:
    """What a Turtle says of one subject, up to its full stop."""
    return next(one for one in turtle.split("\n\n") if one.startswith(f"{subject} "))


def refusals(path: Path) -> list[tuple[str, str]]:
    with pytest.raises(Unusable) as caught:
        validate(path)
    return [(one.slug, ENGLISH.say(one.message)) for one in caught.value.diagnostics if one.is_error]


def with_fault(folder: Path, subject: str, was: str, now: str) -> Path:
    """The work's Turtle with one piece of what it says of a subject put otherwise."""
    path = folder / "work.ttl"
    turtle = path.read_text(encoding="utf-8")
    about = block(turtle, subject)
    assert was in about, about
    path.write_text(turtle.replace(about, about.replace(was, now)), encoding="utf-8")
    return path


def test_a_record_without_a_fault_is_accepted(folder: Path) -> None:
    assert not any(one.is_error for one in validate(folder / "work.ttl"))
    assert check(folder / "loan.ttl", folder / "work.ttl").variance.rows


CASES = [
    (
        "work:M1.visible-diagonal",
        "term:visible-diagonal",
        "term:floor-load-limit",
        "misborne",
        "`M1`: floor load limit is said of a venue, not of this",
    ),
    (
        "work:M1.technology",
        "term:cathode-ray-tube",
        "term:optical-disc",
        "unsuited",
        "`M1`: `optical disc` is not a technology of a display",
    ),
    (
        "work:R2",
        "intent:ground term:safety ;",
        "",
        "ground",
        "`R2`: a heading stands on one ground, and a graph says which: intent, safety, law, loan or care",
    ),
    (
        "work:R2.1",
        "intent:Instruction",
        "intent:Instuction",
        "undeclared-name",
        "`R2.1`: `intent:Instuction` is no name that a record uses; did you mean `intent:Instruction`?",
    ),
    (
        "work:R1.2",
        "intent:withConsentOf",
        "intent:withConsent",
        "undeclared-name",
        "`R1.2`: `intent:withConsent` is no name that a record uses; did you mean `intent:withConsentOf`?",
    ),
    (
        "work:R2",
        "dcterms:date",
        "dcterms:dat",
        "undeclared-name",
        "`R2`: `dcterms:dat` is no name that a record uses; did you mean `dcterms:date`?",
    ),
    (
        "work:R2.1",
        "intent:at-most",
        "intent:atmost",
        "undeclared-name",
        "`R2.1`: `intent:atmost` is no name that a record uses; did you mean `intent:at-most`?",
    ),
    (
        "work:R1.2",
        "intent:withConsentOf",
        "intent:successor",
        "misplaced-name",
        "`R1.2`: `intent:successor` is not said of this; it is said of `intent:Person`",
    ),
    (
        "work:R2.1",
        "intent:about work:M1",
        "intent:about work:M9",
        "misplaced-value",
        "`R2.1`: after `intent:about` stands `intent:Group`, `intent:Material`, `intent:Part`; "
        "`M9` is none, or is not in this record",
    ),
    (
        "work:R2.1",
        "intent:inHeading work:R2",
        "intent:inHeading work:R1",
        "misnumbered-line",
        "`R2.1`: this stands under R1, and its identifier says otherwise; "
        "a line of R1 is called `R1.1`, `R1.2` and so on",
    ),
    (
        "work:M1",
        "work:M1.weight",
        "work:M2.weight",
        "shared-detail",
        "`M2.weight`: this is said of M1 and of M2; give each a statement of its own",
    ),
]


@pytest.mark.parametrize(("subject", "was", "now", "slug", "message"), CASES, ids=[case[2] for case in CASES])
def test_a_small_fault_is_refused(
    folder: Path, subject: str, was: str, now: str, slug: str, message: str
) -> None:
    assert (slug, message) in refusals(with_fault(folder, subject, was, now))


def test_a_heading_that_belongs_nowhere_is_refused(folder: Path) -> None:
    turtle = (folder / "work.ttl").read_text(encoding="utf-8")
    (line,) = [line for line in block(turtle, "work:R2").split("\n") if "isPartOf" in line]
    found = refusals(with_fault(folder, "work:R2", line, "    dcterms:isPartOf <urn:elsewhere> ;"))
    said = "this belongs to nothing in the record, so nobody would see it; say what it is part of, or leave it out"
    assert found == [("stray", f"`R2`: {said}")]


def test_a_number_beside_other_words_is_refused(folder: Path) -> None:
    path = folder / "work.ttl"
    turtle = path.read_text(encoding="utf-8")
    path.write_text(turtle.replace('numericValue "30"', 'numericValue "300"'), encoding="utf-8")
    assert refusals(path) == [
        ("belied-value", "`R2.1`: `30 kg` was written, and the number, unit or ± beside it says otherwise")
    ]


@pytest.mark.parametrize("written", ["about thirty", "30 kg ± 5"])
def test_words_that_say_something_else_are_refused(folder: Path, written: str) -> None:
    path = folder / "work.ttl"
    turtle = path.read_text(encoding="utf-8")
    path.write_text(turtle.replace('"30 kg"', f'"{written}"'), encoding="utf-8")
    assert [slug for slug, _ in refusals(path)] == ["belied-value"]


def test_a_second_statement_of_one_characteristic_is_refused(folder: Path) -> None:
    path = with_fault(folder, "work:M1", "intent:states\n", "intent:states work:M1.heavier,\n")
    second = block(path.read_text(encoding="utf-8"), "work:M1.weight").replace("M1.weight", "M1.heavier")
    with path.open("a", encoding="utf-8") as file:
        file.write(f"\n{second}\n")
    assert refusals(path) == [
        ("repeated-statement", "`M1`: `term:weight` is stated twice of this; keep the statement that holds")
    ]


def test_a_sentence_that_its_triples_belie_is_refused(folder: Path) -> None:
    path = with_fault(
        folder,
        "work:R2.1",
        "a intent:Instruction",
        'a intent:Instruction ; intent:written "weight of M1 is any"',
    )
    assert [slug for slug, _ in refusals(path)] == ["belied-sentence"]


def test_an_installation_says_nothing_of_the_works_own_parts(folder: Path) -> None:
    path = folder / "loan.ttl"
    turtle = path.read_text(encoding="utf-8")
    change = block(turtle, "installation:change-1")
    (part,) = [line.split()[1] for line in change.split("\n") if "intent:part " in line]
    path.write_text(f'{turtle}\n{part} intent:note "mended" .\n', encoding="utf-8")
    with pytest.raises(Unusable) as caught:
        check(path, folder / "work.ttl")
    assert [(one.slug, ENGLISH.say(one.message)) for one in caught.value.diagnostics] == [
        ("misplaced-name", "`M1`: nothing says of what sort this is, though it has `intent:note`")
    ]
