"""The packing list of a showing: what goes to it and in which box, not what the work has in the store.

What is on a packing list (contents, gross weight and measure of each box and of all, seals) is common practice, no
source.
"""

from __future__ import annotations

import datetime
from pathlib import Path

import pytest
from examples_read import EXAMPLES, LATEST_OF_EACH, proposal
from redaction.work_with_secrets import SECRETS, written
from test_cases import documented, read

from intent import verbs
from intent.dossier.installation_text import read_installation
from intent.language.languages import locale_of
from intent.papers.document import Document
from intent.papers.packing_list import packing_paper
from intent.papers.telling import tell
from intent.planning.shipment import CargoKind
from intent.record.load_installation import load_installation

EXPECTED = Path(__file__).parent / "expected"
MAARHOLM = EXAMPLES / "second-delivery" / "installations" / "2027-maarholm-loan.md"
WORK = """# Lamp Room

- number: 7
- owner: Thornacre Museum

## Parts

### Lamps

- kind: object

| part | name       | device |
| ---- | ---------- | ------ |
| O1   | left lamp  | E-01   |
| O2   | right lamp | E-02   |
| O3   | low lamp   | E-03   |

### Chests

- kind: object

| part | name  |
| ---- | ----- |
| O4   | chest |

## Boxes

| box | holds  | length | width | height | weight |
| --- | ------ | ------ | ----- | ------ | ------ |
| B01 | Lamps  | 60 cm  | 55 cm | 50 cm  | 16 kg  |
| B02 | O4     | 90 cm  | 55 cm | 50 cm  | 30 kg  |
"""
LOAN = """# Loan

- work: work.md
- dates: 2027-03-01/2027-06-30

## Substitutions

| part | device |
| ---- | ------ |
| O2   | V-1    |

## Omissions

- O4: stays at home

## Additions

| part | name | kind   |
| ---- | ---- | ------ |
| X1   | flex | object |
"""
PACKED_ANEW = (
    LOAN
    + """
## Boxes

| box | holds  | length | width | height | weight |
| --- | ------ | ------ | ----- | ------ | ------ |
| B01 | O2, X1 | 70 cm  | 55 cm | 50 cm  | 18 kg  |
"""
)


def listed(proposal_text: str = "", work_text: str = WORK) -> dict[str, list[list[str]]]:
    """The rows of each table of the list, cell by cell, under its heading; blank cells are to be filled in."""
    told = tell(paper_of(proposal_text, work_text), "markdown", locale_of("en"))
    tables: dict[str, list[list[str]]] = {}
    heading = ""
    for line in told.splitlines():
        if line.startswith("## "):
            heading = line.removeprefix("## ")
        elif line.startswith("| ☐"):
            cells = [cell.strip() for cell in line.strip("|").split("|")]
            tables.setdefault(heading, []).append([cell for cell in cells if cell and cell != "☐"])
    return tables


def paper_of(proposal_text: str = "", work_text: str = WORK) -> Document:
    reading, work = documented(work_text)
    installation = None
    if proposal_text:
        proposal = read(read_installation(proposal_text, "installation.md", work))
        installation = load_installation(proposal.triples, proposal.iri, work, reading.triples)
    return packing_paper(
        work, None, (), version="0", day=datetime.date(2027, 1, 15), installation=installation
    )


def lines_of(proposal_text: str = "", work_text: str = WORK) -> str:
    """The list as text, its spaces single."""
    return " ".join(tell(paper_of(proposal_text, work_text), "text", locale_of("en")).split())


def test_of_the_work_by_itself_every_box_is_listed_with_all_that_is_in_it() -> None:
    tables = listed()
    assert [row[0] for row in tables["Boxes and seals"]] == ["B01", "B02"]
    assert tables["In the boxes"] == [
        ["B01", "left lamp, O1", "E-01"],
        ["B01", "right lamp, O2", "E-02"],
        ["B01", "low lamp, O3", "E-03"],
        ["B02", "chest, O4"],
    ]
    assert "In no box" not in tables


def test_what_does_not_go_to_the_showing_is_not_listed() -> None:
    """A box stays with what stays at home; another device comes without the box of the one that left."""
    tables = listed(LOAN)
    assert [row[0] for row in tables["Boxes and seals"]] == ["B01"]
    assert tables["In the boxes"] == [["B01", "left lamp, O1", "E-01"], ["B01", "low lamp, O3", "E-03"]]
    assert tables["In no box"] == [["right lamp, O2", "V-1", "not given"], ["flex, X1", "not given"]]


def test_a_box_that_was_weighed_with_more_in_it_is_to_be_weighed_again() -> None:
    assert "To be weighed again, since more was in it: B01 (with O2)." in lines_of(LOAN)
    assert "weighed again" not in lines_of()


def test_a_box_that_is_packed_anew_takes_the_place_of_the_works_box() -> None:
    tables = listed(PACKED_ANEW)
    assert tables["Boxes and seals"] == [["B01", "70 cm × 55 cm × 50 cm, 18 kg"]]
    assert tables["In the boxes"] == [["B01", "right lamp, O2", "V-1"], ["B01", "flex, X1"]]
    assert [row[0] for row in tables["In no box"]] == ["left lamp, O1", "low lamp, O3"]


def test_weight_and_volume_are_those_of_the_boxes_that_go() -> None:
    """16 kg + 30 kg = 46 kg; 0.60 × 0.55 × 0.50 m = 0.165 m³, 0.90 × 0.55 × 0.50 m = 0.2475 m³: 0.4125."""
    told = lines_of()
    assert "boxes 2 " in told
    assert "weight 46 kg, all boxes together" in told
    assert "volume 0.412 m³, all boxes together" in told
    assert "in no box 0 things" in told
    alone = lines_of(LOAN)
    assert "weight 16 kg, all boxes together" in alone
    assert "volume 0.165 m³, all boxes together" in alone
    assert "in no box 2 things" in alone


def test_a_box_of_which_too_little_is_said_makes_the_totals_least_ones() -> None:
    told = lines_of(
        work_text=WORK.replace("| 90 cm  | 55 cm | 50 cm  | 30 kg  |", "|        | 55 cm | 50 cm  |        |")
    )
    assert "weight at least 16 kg, all boxes together" in told
    assert "volume at least 0.165 m³, all boxes together" in told
    assert "Not weighed: B02." in told
    assert "Not measured: B02." in told


STOCKED = WORK.replace(
    "## Boxes",
    """## Devices

| device | maker   | model | weight | status |
| ------ | ------- | ----- | ------ | ------ |
| E-01   | Corvane | L-5   | 3 kg   | in use |
| E-09   | Corvane | L-5   | 3 kg   | spare  |

## Material

| material | channel | name       | file          |
| -------- | ------- | ---------- | ------------- |
| V1       | A       | the flame  | media/v1.mkv  |
| V2       | B       | the shadow | media/v2.mkv  |

## Boxes""",
).replace(
    "| B02 | O4     |",
    """| B03 | E-09, V1, "two spare fuses" | 20 cm | 20 cm | 20 cm | 5 kg |
| B02 | O4     |""",
)


def test_a_box_holds_spares_material_and_accessories_too() -> None:
    tables = listed(work_text=STOCKED)
    assert [row for row in tables["In the boxes"] if row[0] == "B03"] == [
        ["B03", "spare device", "E-09, Corvane L-5"],
        ["B03", "the flame, V1"],
        ["B03", "two spare fuses"],
    ]
    assert ["B01", "left lamp, O1", "E-01, Corvane L-5"] in tables["In the boxes"]
    assert tables["Material"] == [
        ["the flame, V1", "media/v1.mkv", "in B03"],
        ["the shadow, V2", "media/v2.mkv", "in no box"],
    ]


def test_a_spare_that_stands_in_a_parts_place_is_in_the_box_that_holds_it() -> None:
    tables = listed(LOAN.replace("V-1 ", "E-09"), STOCKED)
    assert ["B03", "right lamp, O2", "E-09, Corvane L-5"] in tables["In the boxes"]
    assert [row[0] for row in tables["In no box"]] == ["flex, X1"]


def test_a_box_packed_anew_may_name_the_device_that_comes() -> None:
    tables = listed(PACKED_ANEW.replace("| O2, X1 |", "| V-1    |"))
    assert tables["In the boxes"] == [["B01", "right lamp, O2", "V-1"]]


@pytest.mark.parametrize("example", LATEST_OF_EACH, ids=[one.stem for one in LATEST_OF_EACH])
def test_whatever_is_there_is_listed_once(example: Path) -> None:
    """Every part that is not left out stands on the list, in one box or in none."""
    shipment = verbs.packing(example).found
    there = proposal(example)
    installation = there.installation
    parts = (*there.documentation.work.parts, *installation.additions)
    omitted = {one.part for one in installation.omissions}
    cargo = [one for box in shipment.boxes for one in box.cargo] + list(shipment.loose)
    listed_parts = [one.identifier for one in cargo if one.kind is CargoKind.PART]
    assert sorted(listed_parts) == sorted({part.identifier for part in parts} - omitted)


def test_the_list_of_an_example_is_as_expected() -> None:
    """Six boxes, without that of the bag, which stays: 21 + 21 + 12 + 34 + 11 + 24 = 123 kg; 0.904 m³."""
    path = EXPECTED / "packing-maarholm.md"
    answer = verbs.packing(MAARHOLM, date=datetime.date(2027, 1, 15))
    assert verbs.tell_reply(answer, "markdown") == path.read_text(encoding="utf-8"), f"differs from {path}"


def test_nothing_that_stays_in_the_house_is_on_it(tmp_path: Path) -> None:
    """A packing list lies on a lorry, where anybody may read it."""
    loan = written(tmp_path)
    for path in (loan, tmp_path / "work.md"):
        answer = verbs.packing(path)
        for form in ("text", "markdown", "html"):
            told = verbs.tell_reply(answer, form)
            assert not [secret for secret in SECRETS if secret in told]
        assert "B-1" in verbs.tell_reply(answer, "text")
