"""Connections and boxes of a showing: a row takes the place of the work's, and written text gives the same graph."""

from __future__ import annotations

from examples_read import vocabulary
from rdflib.compare import isomorphic

from intent.dossier.installation_text import read_installation
from intent.dossier.work_text import read_work
from intent.dossier.write_installation import write_installation
from intent.model.as_proposed import boxes_as_proposed, connections_as_proposed
from intent.model.installation import Installation
from intent.model.work import Work
from intent.record.load_installation import load_installation
from intent.record.load_work import load_work

WORK = """# Timetable for a Ferry

- number: 7
- owner: Thornacre Museum

## Parts

### Monitors

- kind: display

| part | device |
| ---- | ------ |
| M1   | E-01   |
| M2   | E-02   |
| M3   | E-03   |

### Players

- kind: player

| part | device |
| ---- | ------ |
| P1   | E-11   |

## Devices

| device | status |
| ------ | ------ |
| E-21   | spare  |

## Connections

| from | to | signal    | length |
| ---- | -- | --------- | ------ |
| P1   | M1 | composite | 4 m    |
| P1   | M2 | composite | 5 m    |
| P1   | M3 | composite | 6 m    |

## Boxes

| box | holds | weight |
| --- | ----- | ------ |
| B01 | M1    | 16 kg  |
| B02 | M2    | 16 kg  |
"""
INSTALLATION = """# Loan to Halmsee

- work: work.md
- dates: 2027-03-01/2027-06-30

## Omissions

- M3: no room

## Additions

| part | kind      | technology     |
| ---- | --------- | -------------- |
| X1   | converter | HDMI converter |

## Connections

| from | to | signal    | length | keep     |
| ---- | -- | --------- | ------ | -------- |
| P1   | X1 | composite | 1 m    |          |
| X1   | M1 | HDMI      | 2 m    | internal |
|      | M2 |           |        |          |

## Boxes

- keep: internal

| box | holds                                       | weight |
| --- | ------------------------------------------- | ------ |
| B01 | E-21, X1, "remote control", "cable, coiled" | 9 kg   |

## Log

| date       | device | event   | remark        |
| ---------- | ------ | ------- | ------------- |
| 2027-03-01 | X1     | checked | on the bench  |
"""


def loaded(text: str) -> tuple[Work, Installation, bool]:
    read = read_work(WORK, "work.md", vocabulary())
    work = load_work(read.triples, read.iri, vocabulary())
    once = read_installation(text, "loan.md", work)
    assert not [found for found in (*read.findings, *once.findings) if found.is_error]
    installation = load_installation(once.triples, once.iri, work, read.triples)
    again = read_installation(write_installation(installation, work), "loan.md", work)
    return work, installation, isomorphic(once.graph, again.graph)


def test_what_is_written_says_the_same() -> None:
    assert loaded(INSTALLATION)[2]


def test_a_row_takes_the_place_of_the_connections_into_its_part() -> None:
    work, installation, _ = loaded(INSTALLATION)
    ways = [(one.start, one.end) for one in connections_as_proposed(work, installation)]
    assert ways == [("P1", "X1"), ("X1", "M1")]


def test_a_box_holds_spares_additions_and_accessories() -> None:
    work, installation, _ = loaded(INSTALLATION)
    first, second = boxes_as_proposed(work, installation)
    assert (first.identifier, second.identifier) == ("B02", "B01")
    assert set(second.holds) == {"E-21", "X1"}
    assert second.accessories == ("cable, coiled", "remote control")
