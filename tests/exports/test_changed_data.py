"""Whoever changes what the data say of an installation gets another answer from the shapes of its work.

A small work in text, the two graphs as they are exported, and one statement of the data changed by hand.
"""

from __future__ import annotations

from functools import cache

import pytest
from examples_read import vocabulary
from oracle.program import loaded
from rdflib import XSD, Graph, Literal, URIRef
from rdflib.term import Node

from exports.compared_rows import Place, found_by_engine
from intent.exports.work_shapes.checkable import DATA, SHAPES, checkable_files
from intent.names import INTENT, TERM
from intent.variance.case import lay_out

WORK = """# Three Lamps in a Lock

- artist: Ferdia Nolte
- number: 12
- base: https://example.org/three-lamps
- owner: Museum of Locks

## People

| person | name             | role            | until | successor |
| ------ | ---------------- | --------------- | ----- | --------- |
| artist | Ferdia Nolte     | artist          | 2016  | estate    |
| estate | Nolte Estate     | artist's estate |       |           |
| cons   | Wilma Achterberg | conservator     |       |           |

## Parts

### Monitors

- kind: display

| part | device | technology       | rotation | weight | position  |
| ---- | ------ | ---------------- | -------- | ------ | --------- |
| M1   | E-1    | cathode-ray tube | upright  | 10 kg  | 0, 1, 0 m |
| M2   | E-2    | cathode-ray tube | upright  | 12 kg  | 1, 2, 0 m |

## Instructions

### R1 Tubes

- required: technology of Monitors is cathode-ray tube
- allowed: technology of Monitors is flat panel, if "no tube can be had", with consent of estate
- by: artist
- on: 1999

### R2 How they stand

- required: rotation of Monitors is upright
- required: total weight of Monitors is at most 30 kg
- required: M1 is below M2
- required: number of Monitors is 2
- by: artist
- on: 1999
"""
LOAN = """# A Loan

- work: work.md
- base: https://example.org/loan
- dates: 2027-03-01/2027-03-06

## Substitutions

| part | device | technology | weight |
| ---- | ------ | ---------- | ------ |
| M1   | V-1    | LCD        | 5 kg   |

## Consents

| person | to   | answer | for | date       |
| ------ | ---- | ------ | --- | ---------- |
| estate | R1.2 | yes    | M1  | 2026-10-02 |

## Attestations

| fact               | holds | by   | date       |
| ------------------ | ----- | ---- | ---------- |
| no tube can be had | yes   | cons | 2026-09-20 |
"""
M1, M2 = (URIRef(f"https://example.org/loan#shown.{name}") for name in ("M1", "M2"))
CONSENT = URIRef("https://example.org/loan#answer.1.R1.2.estate")
WORD = URIRef("https://example.org/loan#attested.1")


def value(name: str) -> URIRef:
    return URIRef(f"https://example.org/three-lamps#value:{name}")


@cache
def shapes() -> Graph:
    return Graph().parse(data=files()[SHAPES], format="turtle")


@cache
def files() -> dict[str, str]:
    found = loaded(WORK, LOAN, vocabulary())
    return checkable_files(lay_out(found.work, found.installation))


def broken(data: Graph) -> set[Place]:
    found = found_by_engine(shapes(), data)
    assert not found.missing
    return set(found.broken)


@pytest.fixture
def data() -> Graph:
    return Graph().parse(data=files()[DATA], format="turtle")


def bound(data: Graph, subject: URIRef, name: str, number: str, *axis: str) -> None:
    """The one value of a subject is this number, on an axis if one is named."""
    node = data.value(subject, value(name))
    for end in ("atLeast", "atMost"):
        data.set((node, INTENT[end + "".join(axis)], Literal(number, datatype=XSD.decimal)))  # type: ignore[arg-type]


def test_as_it_is_nothing_is_broken(data: Graph) -> None:
    assert broken(data) == set()


def test_another_technology(data: Graph) -> None:
    data.set((M1, value("technology"), TERM["video-projector"]))
    assert broken(data) == {("R1.1", "M1")}


def test_another_rotation(data: Graph) -> None:
    bound(data, M2, "rotation", "90.0")
    assert broken(data) == {("R2.1", "M2")}


def test_within_the_tolerance_nothing_changes(data: Graph) -> None:
    bound(data, M2, "rotation", "0.5")
    assert broken(data) == set()


def test_more_weight(data: Graph) -> None:
    bound(data, M2, "weight", "25.1")
    assert broken(data) == {("R2.2", "the showing")}


def test_a_lower_place(data: Graph) -> None:
    bound(data, M2, "position", "0.5", "2")
    assert broken(data) == {("R2.3", "the showing")}


@pytest.mark.parametrize(
    "statement",
    [
        (CONSENT, INTENT.answer, Literal(False)),
        (WORD, INTENT.answer, Literal(False)),
    ],
    ids=["a consent refused", "a fact denied"],
)
def test_what_was_said_is_denied(data: Graph, statement: tuple[Node, Node, Node]) -> None:
    data.set(statement)
    assert broken(data) == {("R1.1", "M1")}


def test_a_part_that_is_gone(data: Graph) -> None:
    """One absent part breaks the number, and whether it may be absent is for the number to say: not decided."""
    data.set((M2, value("presence"), TERM.absent))
    found = found_by_engine(shapes(), data)
    assert found.broken == {("R2.4", "the showing")}
    assert ("R2.4", "M2") in found.undecided


@pytest.mark.parametrize("name", ["technology", "rotation", "weight", "position"])
def test_a_value_that_is_gone_is_missed(data: Graph, name: str) -> None:
    data.remove((M1, value(name), None))
    assert found_by_engine(shapes(), data).missing
