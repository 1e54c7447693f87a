"""The limits that hold while a work is shown: whose they are, of what, and when.

The figures are those that lenders usually write: 50 lux at most on what light harms (CIE 157:2004, table for high
responsivity; from memory), 230 V ± 10 % (EN 50160, 4.2.2; from memory).
"""

from __future__ import annotations

import pytest
from test_cases import documented, read

from intent.dossier.installation_text import read_installation
from intent.planning.limits_held import limits_held
from intent.record.load_installation import load_installation

WORK = """# Lamp Room

- number: 7
- owner: Thornacre Museum

## People

| person | name        | role        |
| ------ | ----------- | ----------- |
| runa   | Runa Quill  | artist      |
| cons   | Odile Varga | conservator |

## Parts

### Lamps

- kind: object

| part | name      |
| ---- | --------- |
| O1   | left lamp |

## Instructions

### R1 The room

- required: ambient light of the venue is at most 80 lx
- by: runa
- on: 1993

### R2 Light

- required: ambient light of the venue is at most 50 lx
- forbidden: running of the work is continuous
- allowed: running of the work is on demand
- required: weight of O1 is at most 9 kg
- ground: care
- by: cons
- on: 2009

### R3 Mains

- required: mains of the venue is 230 V ± 10 %{clause}
- ground: safety
- by: cons
{on}
"""
LOAN = """# Loan

- work: work.md
- dates: 2027-03-01/2027-06-30

## Attestations

| fact          | holds | by   | date       |
| ------------- | ----- | ---- | ---------- |
| it is plugged | no    | cons | 2027-01-01 |
"""


def held(clause: str = "", date: str = "2009") -> list[str]:
    reading, work = documented(WORK.format(clause=clause, on=f"- on: {date}" if date else ""))
    proposal = read(read_installation(LOAN, "installation.md", work))
    installation = load_installation(proposal.triples, proposal.iri, work, reading.triples)
    return [line.identifier for line in limits_held(work, installation)]


def test_the_rules_of_others_hold_of_the_venue_and_of_how_the_work_runs() -> None:
    """Not what the artist wants of the room, nor what is permitted, nor what is said of a part."""
    assert held() == ["R3.1", "R2.1", "R2.2"]


@pytest.mark.parametrize(
    ("clause", "date"),
    [
        (", until 2026-12-31", "2009"),
        ("", "2028"),
        (', if "it is plugged"', "2009"),
    ],
    ids=["over before", "given after", "its condition does not hold"],
)
def test_what_does_not_hold_then_is_no_limit(clause: str, date: str) -> None:
    assert held(clause, date) == ["R2.1", "R2.2"]


@pytest.mark.parametrize(
    ("clause", "date"),
    [
        (", until 2027-03-31", "2009"),
        ("", "2027-06-15"),
        ("", "2027-06-30"),
        ("", ""),
        (', if "nobody has said"', "2009"),
    ],
    ids=["over within", "given within", "given on the last day", "nobody says when", "its condition is open"],
)
def test_what_holds_on_a_day_of_it_or_may_hold_is_one(clause: str, date: str) -> None:
    assert held(clause, date) == ["R3.1", "R2.1", "R2.2"]
