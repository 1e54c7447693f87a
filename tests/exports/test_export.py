"""The command `export`: what it writes, what it leaves out, and that nothing is half-written.

What stays in the house is common practice in museums, no source; the formats are held by their own tests.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

import intent
from intent.commands.exchanging import STANDARDS_OFFERED
from intent.commands.main import intent as command_line
from intent.diagnostics import Unusable
from intent.exports.standards import STANDARDS
from intent.verbs import export

SECRETS = (
    "telephone 0700 4411",
    "9000 guilders",
    "cellar shelf 12",
    "Secretive Lender",
    "whisper",
    "minutes of the trustees",
)
WORK = """# Two Clocks

- artist: Ottiline Quarrow
- number: 7
- owner: Thornacre Museum
- insurance value: 9000 guilders

## People

| person | name             | role        | contact             | keep     |
| ------ | ---------------- | ----------- | ------------------- | -------- |
| otti   | Ottiline Quarrow | artist      | telephone 0700 4411 |          |
| lend   | Secretive Lender | lender      |                     | internal |

## Parts

### Monitors

- kind: display

| part | device | rotation |
| ---- | ------ | -------- |
| M1   | E-01   | upright  |

## Devices

| device | weight | storage place   |
| ------ | ------ | --------------- |
| E-01   | 11 kg  | cellar shelf 12 |

## Sources

### S1 Conversation

- kind: interview
- with: otti
- date: 1999-05-14

### S2 Secret minutes of the trustees

- kind: letter
- by: lend
- date: 2001
- keep: internal

## Instructions

### R1 Upright

- required: rotation of Monitors is upright ± 2 deg
- source: S1

### R2 Lent

> whisper

- forbidden: rotation of M1 is upside down
- by: lend
- on: 2001
- source: S2
"""
LOAN = "# Loan to Halmsee\n\n- work: work.md\n- dates: 2027-03-01/2027-06-30\n- by: otti\n"
ALL = [name for name, _ in STANDARDS]


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "work.md").write_text(WORK, encoding="utf-8")
    (tmp_path / "loan.md").write_text(LOAN, encoding="utf-8")
    return tmp_path


Call = Callable[..., Result]


@pytest.fixture
def call(folder: Path) -> Call:
    def called(file: str, *standards: str, output: str = "out") -> Result:
        options = [word for name in standards for word in ("--to", name)]
        return CliRunner().invoke(
            command_line, ["export", str(folder / file), *options, "--output", str(folder / output)]
        )

    return called


def test_the_command_knows_the_standards_that_there_are() -> None:
    assert list(STANDARDS_OFFERED) == ALL


@pytest.mark.parametrize("name", ALL)
def test_what_stays_in_the_house_is_in_no_export(name: str, call: Call, folder: Path) -> None:
    result = call("loan.md", name)
    assert result.exit_code == 0, result.output
    assert (
        "left out: names of people; contacts; sources; words quoted from sources; insurance values"
        in result.stderr
    )
    out = folder / "out"
    texts = [file.read_text("utf-8") for file in ([out] if out.is_file() else out.iterdir())]
    assert texts
    assert not [(secret, name) for secret in SECRETS for text in texts if secret in text]


def test_an_instruction_of_somebody_kept_in_the_house_leaves_with_the_role_alone(
    call: Call, folder: Path
) -> None:
    call("work.md", "lido", output="lido.xml")
    assert "lend (lender), 2001" in (folder / "lido.xml").read_text("utf-8")


def test_several_standards_come_in_a_folder_each(call: Call, folder: Path) -> None:
    result = call("loan.md", *ALL)
    assert result.exit_code == 0
    assert sorted(one.name for one in (folder / "out").iterdir()) == sorted(ALL)
    assert (folder / "out/linked-art/part-M1.json").is_file()


def test_one_file_goes_where_it_is_named_or_into_the_folder_that_is_there(call: Call, folder: Path) -> None:
    assert call("work.md", "premis", output="p.xml").exit_code == 0
    assert (folder / "p.xml").is_file()
    (folder / "there").mkdir()
    assert call("work.md", "premis", output="there").exit_code == 0
    assert (folder / "there/premis.xml").is_file()


def test_a_work_alone_cannot_be_told_in_shacl(folder: Path) -> None:
    with pytest.raises(Unusable) as refused:
        export(folder / "work.md", ["odrl", "shacl"], folder / "out")
    assert [found.slug for found in refused.value.diagnostics] == ["no-installation"]
    assert not (folder / "out").exists()


def test_a_folder_that_is_there_is_left_as_it_is(folder: Path) -> None:
    (folder / "out").mkdir()
    (folder / "out/mine.txt").write_text("mine")
    with pytest.raises(Unusable):
        export(folder / "loan.md", ["linked-art"], folder / "out")
    assert [one.name for one in (folder / "out").iterdir()] == ["mine.txt"]


def test_what_is_said_in_prose_all_the_same_is_told(folder: Path) -> None:
    told = WORK.replace("## People", "Lent by Secretive Lender.\n\n## People", 1)
    (folder / "work.md").write_text(told, encoding="utf-8")
    found = export(folder / "work.md", ["lido"], folder / "lido.xml")
    assert [one.slug for one in found.findings] == ["still-said"]


def test_where_what_is_kept_turns_a_verdict_export_warns(folder: Path) -> None:
    """How a part stands that is kept in the house is not told, so that nobody else can tell that it is upright."""
    kept = WORK.replace("| part | device | rotation |", "| part | device | rotation | keep |")
    kept = kept.replace("| ---- | ------ | -------- |", "| ---- | ------ | -------- | ---- |", 1)
    kept = kept.replace("| M1   | E-01   | upright  |", "| M1   | E-01   | upright  | internal |")
    (folder / "work.md").write_text(kept, encoding="utf-8")
    (found,) = export(folder / "loan.md", ["shacl"], folder / "out").findings
    assert found.slug == "verdict-turns"
    assert "rotation of M1 is as-required; for those who receive it, it is unknown" in str(found)


def test_a_text_and_its_graph_give_the_same_exports(folder: Path) -> None:
    """design.md, section 7, property 6: what is received as RDF behaves as what is typed."""
    for name, to in (("work.ttl", "turtle"), ("work.jsonld", "json-ld")):
        text, _ = intent.convert(folder / "work.md", to)
        (folder / name).write_text(text, encoding="utf-8")
    for standard in ("odrl", "lido", "premis", "linked-art"):
        found = []
        for name in ("work.md", "work.ttl", "work.jsonld"):
            export(folder / name, [standard], folder / f"{name}-{standard}")
            place = folder / f"{name}-{standard}"
            files = [place] if place.is_file() else sorted(place.iterdir())
            found.append([file.read_bytes() for file in files])
        assert found[0] == found[1] == found[2], standard
