"""Saying less never wins where things stand and travel: floors, feet, rooms, corners and boxes.

An outcome with a range, or with what is not known, is acceptable only if it is with every value that this may stand
for, and never better than with the best of them.
"""

from __future__ import annotations

import os
from dataclasses import dataclass
from functools import cache
from random import Random

import pytest
from test_cases import documented, read

from intent.dossier.installation_text import read_installation
from intent.effects.assess import assess
from intent.model.work import Work
from intent.record.load_installation import load_installation
from intent.variance.result import Outcome

PAIRS = int(os.environ.get("INTENT_PAIRS", "15"))
"""Pairs of a value and what says less, for each limit; 5,000 are run by hand from time to time."""
GOODNESS = [Outcome.NOT_ACCEPTABLE, Outcome.REFER, Outcome.ON_CONDITIONS, Outcome.ACCEPTABLE]
WORK = """# Lamp Room

- number: 7
- owner: Thornacre Museum

## People

| person | name            | role        | until | successor |
| ------ | --------------- | ----------- | ----- | --------- |
| artist | Ottiline Quarrow | artist     |       |           |

## Parts

### Things

- kind: loudspeaker

| part | device | support               | position      |
| ---- | ------ | --------------------- | ------------- |
| H1   | E-01   | hung from the ceiling | 0.5, 2, 0 m   |
| F1   | E-02   | on the floor          | 0, 0.5, 0 m   |

### Chests

- kind: object

| part | device | support     | position      | outer width | outer depth | outer height | weight |
| ---- | ------ | ----------- | ------------- | ----------- | ----------- | ------------ | ------ |
| O1   | E-21   | on the wall | 0.5, 1, 0 m   | 40 cm       | 40 cm       | 40 cm        | 8 kg   |
| Q1   | E-22   | on a table  | 2, 1, 2 m     | 40 cm       | 40 cm       | 40 cm        | 8 kg   |

### Tables

- kind: furniture

| part | device | support      | position      | outer width | outer depth | outer height | weight |
| ---- | ------ | ------------ | ------------- | ----------- | ----------- | ------------ | ------ |
| T1   | E-23   | on the floor | 2, 0.4, 2 m   | 90 cm       | 70 cm       | 80 cm        | 20 kg  |

### Screens

- kind: display

| part | device | technology | channel | input signal | accepted standard | support     | position       | rotation |
| ---- | ------ | ---------- | ------- | ------------ | ----------------- | ----------- | -------------- | -------- |
| M1   | E-03   | LCD        | A       | composite    | PAL               | on the wall | -0.5, 1.5, 0 m | upright  |

### Players

- kind: player

| part | device | technology   | channel | output signal | support     |
| ---- | ------ | ------------ | ------- | ------------- | ----------- |
| P1   | E-11   | optical disc | A       | composite     | on the wall |

## Devices

| device | outer width | outer depth | outer height | weight | power | power factor |
| ------ | ----------- | ----------- | ------------ | ------ | ----- | ------------ |
| E-01   | 20 cm       | 20 cm       | 20 cm        | 5 kg   | 5 W   | 1            |
| E-02   | 20 cm       | 20 cm       | 20 cm        | 5 kg   | 5 W   | 1            |
| E-03   | 40 cm       | 10 cm       | 30 cm        | 5 kg   | 5 W   | 1            |
| E-11   | 20 cm       | 20 cm       | 10 cm        | 2 kg   | 5 W   | 1            |

## Material

| material | channel | standard |
| -------- | ------- | -------- |
| V1       | A       | PAL      |

## Connections

| from | to  | signal    |
| ---- | --- | --------- |
| P1   | M1  | composite |

## Boxes

| box   | holds | length | width | height | weight |
| ----- | ----- | ------ | ----- | ------ | ------ |
| box-1 | O1    | 60 cm  | 60 cm | 60 cm  | 15 kg  |

## Instructions

### R1 Anything goes

- allowed: presence of Things is any
- allowed: support of Chests is any
- allowed: technology of Screens is any
- by: artist
- on: 1999
"""


@dataclass(frozen=True, slots=True)
class Borne:
    """A limit, and the cell that is held against it."""

    name: str
    venue: str
    part: str
    cell: str
    unit: str
    most: int
    """The limit lies somewhere between nothing and this."""
    others: tuple[tuple[str, str], ...] = ()


SIZED = (("outer width", "20 cm"), ("outer depth", "20 cm"), ("outer height", "20 cm"))
ROOMY = "door height: 3 m"
"""A venue that limits nothing that is held here."""
LIMITS = (
    Borne("floor", "floor load limit: 3 kPa", "F1", "weight", "kg", 800, (("standing area", "0.1 m²"),)),
    Borne(
        "standing area",
        "floor load limit: 3 kPa\n- area of the floor load limit: 0.1 m²",
        "F1",
        "standing area",
        "cm²",
        2000,
        (("weight", "40 kg"),),
    ),
    Borne("load on a foot", "floor point load limit: 2 kN", "F1", "load on a foot", "kg", 500),
    Borne("one foot at the most", "floor point load limit: 2 kN", "F1", "weight", "kg", 500),
    Borne("on a table", "floor load limit: 3 kPa", "Q1", "weight", "kg", 600),
    Borne("a table", "floor load limit: 3 kPa", "T1", "weight", "kg", 600, (("standing area", "0.2 m²"),)),
    Borne("room width", "room width: 4 m", "F1", "outer width", "cm", 600),
    Borne("room depth", "room depth: 4 m", "F1", "outer depth", "cm", 600),
    Borne("box", ROOMY, "O1", "outer height", "cm", 150),
    Borne("box's weight", ROOMY, "O1", "weight", "kg", 30),
    Borne(
        "corner",
        "corridor width: 100 cm\n- corridor corner: yes",
        "F1",
        "outer width",
        "cm",
        300,
        (*SIZED[1:], ("transport orientation", "only upright")),
    ),
)


@cache
def work() -> tuple[object, Work]:
    return documented(WORK)


def outcome(held: Borne, cell: str) -> Outcome:
    """The outcome with a value or a range in the cell."""
    cells = dict([*held.others, (held.cell, cell)])
    return _outcome(held.venue, held.part, cells)


@cache
def _assessed(text: str) -> Outcome:
    reading, known = work()
    proposal = read(read_installation(text, "installation.md", known))
    found = load_installation(proposal.triples, proposal.iri, known, reading.triples)  # type: ignore[attr-defined]
    return assess(known, found).outcome


def _outcome(venue: str, part: str, cells: dict[str, str]) -> Outcome:
    names, values = " | ".join(cells), " | ".join(cells.values())
    rule = " | ".join("-" for _ in cells)
    return _assessed(
        "# Loan\n\n- work: work.md\n- dates: 2027-03-01/2027-06-30\n\n"
        f"## Venue\n\n- {venue}\n\n"
        f"## Changes\n\n| part | {names} |\n| - | {rule} |\n| {part} | {values} |\n"
    )


def goodness(found: Outcome) -> int:
    return GOODNESS.index(found)


def less_said(held: Borne, low: int, high: int) -> dict[str, tuple[int, ...]]:
    """What says less than a value, with values that it may stand for."""
    unit = held.unit
    return {
        f"between {low} {unit} and {high} {unit}": (low, (low + high) // 2, high),
        f"at most {high} {unit}": (0, low, high),
        f"at least {low} {unit}": (low, high, 4 * held.most),
        "any": (0, low, high, 4 * held.most),
    }


@pytest.mark.parametrize("held", LIMITS, ids=lambda held: held.name)
def test_a_range_never_ends_better_than_a_value(held: Borne) -> None:
    random = Random(held.name)
    for _ in range(max(1, PAIRS // 5)):
        low, high = sorted(random.sample(range(1, held.most), 2))
        for cell, values in less_said(held, low, high).items():
            found = goodness(outcome(held, cell))
            single = [goodness(outcome(held, f"{value} {held.unit}")) for value in values]
            assert found <= max(single), f"{held.name}: `{cell}` ends better than every value"
            acceptable = goodness(Outcome.ACCEPTABLE)
            assert found < acceptable or min(single) == acceptable, f"{held.name}: `{cell}` hides a value"


@dataclass(frozen=True, slots=True)
class Stated:
    """A limit of the venue that may itself be said less well, and what is held against it."""

    name: str
    unit: str
    most: int
    part: str
    cells: tuple[tuple[str, str], ...]
    besides: str = ""


STATED = (
    Stated("floor load limit", "kPa", 12, "F1", (("standing area", "2 m²"), ("weight", "1000 kg"))),
    Stated(
        "area of the floor load limit",
        "m²",
        6,
        "F1",
        (("standing area", "0.1 m²"), ("weight", "1000 kg")),
        "floor load limit: 3 kPa",
    ),
    Stated("floor point load limit", "N", 2000, "F1", (("load on a foot", "100 kg"),)),
    Stated("room width", "cm", 600, "F1", (("outer width", "200 cm"),)),
    Stated("ceiling height", "cm", 500, "H1", (("outer height", "100 cm"),)),
    Stated(
        "corridor width",
        "cm",
        300,
        "F1",
        (*SIZED[1:], ("outer width", "150 cm"), ("transport orientation", "only upright")),
        "corridor corner: yes",
    ),
)


@pytest.mark.parametrize("stated", STATED, ids=lambda stated: stated.name)
def test_a_limit_that_is_a_range_never_ends_better_than_one_that_is_a_value(stated: Stated) -> None:
    random = Random(stated.name)
    for _ in range(max(1, PAIRS // 5)):
        low, high = sorted(random.sample(range(1, stated.most), 2))

        def found(limit: str) -> int:
            besides = f"{stated.besides}\n- " if stated.besides else ""
            return goodness(_outcome(f"{besides}{stated.name}: {limit}", stated.part, dict(stated.cells)))

        single = [found(f"{value} {stated.unit}") for value in (low, (low + high) // 2, high)]
        less = found(f"between {low} {stated.unit} and {high} {stated.unit}")
        assert less <= max(single), f"{stated.name}: a range ends better than every value"
        acceptable = goodness(Outcome.ACCEPTABLE)
        assert less < acceptable or min(single) == acceptable, f"{stated.name}: a range hides a value"


@pytest.mark.parametrize("corner", ["any", None])
def test_a_corner_of_which_nobody_says_whether_it_is_there(corner: str | None) -> None:
    cells = dict([*SIZED[1:], ("outer width", "290 cm"), ("transport orientation", "only upright")])

    def found(said: str | None) -> int:
        venue = "corridor width: 110 cm" + (f"\n- corridor corner: {said}" if said else "")
        return goodness(_outcome(venue, "F1", cells))

    assert found("yes") < found(corner) < found("no") == goodness(Outcome.ACCEPTABLE)


SUPPORTS = ("on the floor", "on a table", "on the wall", "leaning")


@pytest.mark.parametrize(
    "blank", ["any", "one of on the floor or on the wall", "one of on a table or leaning"]
)
def test_what_stands_on_what_is_never_better_unsaid(blank: str) -> None:
    """A heavy thing on a small table: on the floor by itself it would do no harm."""
    venue = "floor load limit: 3 kPa\n- area of the floor load limit: 0.1 m²"
    cells = {"weight": "300 kg", "outer width": "120 cm", "outer depth": "120 cm"}
    single = {name: goodness(_outcome(venue, "Q1", {**cells, "support": name})) for name in SUPPORTS}
    found = goodness(_outcome(venue, "Q1", {**cells, "support": blank}))
    may = [value for name, value in single.items() if blank == "any" or name in blank]
    assert len(set(single.values())) > 1
    assert found <= max(may)
    assert found < goodness(Outcome.ACCEPTABLE) or min(may) == goodness(Outcome.ACCEPTABLE)
