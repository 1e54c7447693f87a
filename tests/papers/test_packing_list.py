"""The packing list of a showing: the boxes and parts that go to it, not those of the work as it stands in the store."""

from __future__ import annotations

from test_cases import documented, read

from intent.dossier.installation_text import read_installation
from intent.language.languages import locale_of
from intent.papers.packing_list import packing_paper
from intent.papers.telling import tell
from intent.record.load_installation import load_installation

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


def listed(proposal_text: str = "") -> list[list[str]]:
    """The rows of the list, cell by cell."""
    reading, work = documented(WORK)
    installation = None
    if proposal_text:
        proposal = read(read_installation(proposal_text, "installation.md", work))
        installation = load_installation(proposal.triples, proposal.iri, work, reading.triples)
    paper = packing_paper(work, (), (), version="0", day=None, installation=installation)
    told = tell(paper, "markdown", locale_of("en"))
    rows = [
        [cell.strip() for cell in line.strip("|").split("|")]
        for line in told.splitlines()
        if line.startswith("|")
    ]
    return [[cell for cell in row if cell] for row in rows]


def row_of(name: str, rows: list[list[str]]) -> list[str] | None:
    return next((row[row.index(name) :] for row in rows if name in row), None)


def test_of_the_work_by_itself_every_box_is_listed_as_it_is_written() -> None:
    rows = listed()
    assert (row_of("B01", rows) or [])[:2] == ["B01", "Lamps"]
    assert (row_of("B02", rows) or [])[:2] == ["B02", "O4"]
    assert row_of("O1", rows) is None


def test_what_does_not_go_to_the_showing_is_not_listed() -> None:
    """A box stays with what stays at home; another device comes without the box of the one that left."""
    rows = listed(LOAN)
    assert (row_of("B01", rows) or [])[:2] == ["B01", "O1, O3"]
    assert row_of("B02", rows) is None
    assert row_of("O4", rows) is None
    assert row_of("O2", rows) == ["O2", "right lamp", "V-1"]
    assert (row_of("X1", rows) or [])[:2] == ["X1", "flex"]


def test_a_box_that_is_packed_anew_takes_the_place_of_the_works_box() -> None:
    rows = listed(PACKED_ANEW)
    box = row_of("B01", rows) or []
    assert set(box[1].split(", ")) == {"O2", "X1"}
    assert "70 cm" in box[2]
    assert row_of("O1", rows) == ["O1", "left lamp", "E-01"]
