"""Saying less never wins: against a limit a range, `any` and a broader term never end better than a value.

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

PAIRS = int(os.environ.get("INTENT_PAIRS", "25"))
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

| part | device | support               | height |
| ---- | ------ | --------------------- | ------ |
| H1   | E-01   | hung from the ceiling | 2 m    |
| F1   | E-02   | on the floor          | 0.5 m  |

### Screens

- kind: display

| part | device | technology | channel | input signal | accepted standard | support     |
| ---- | ------ | ---------- | ------- | ------------ | ----------------- | ----------- |
| M1   | E-03   | LCD        | A       | composite    | PAL               | on the wall |

### Players

- kind: player

| part | device | technology   | channel | output signal | support     |
| ---- | ------ | ------------ | ------- | ------------- | ----------- |
| P1   | E-11   | optical disc | A       | composite     | on the wall |

## Material

| material | channel | standard |
| -------- | ------- | -------- |
| V1       | A       | PAL      |

## Connections

| from | to  | signal    |
| ---- | --- | --------- |
| P1   | M1  | composite |

## Instructions

### R1 Anything goes

- allowed: presence of Things is any
- allowed: technology of Screens is any
- by: artist
- on: 1999
"""


@dataclass(frozen=True, slots=True)
class Held:
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
LIMITS = (
    Held("floor", "floor load limit: 3 kPa", "F1", "weight", "kg", 800, (("standing area", "0.1 m²"),)),
    Held(
        "standing area",
        "floor load limit: 3 kPa\n- area of the floor load limit: 0.1 m²",
        "F1",
        "standing area",
        "cm²",
        2000,
        (("weight", "40 kg"),),
    ),
    Held("load on a foot", "floor point load limit: 2 kN", "F1", "load on a foot", "kg", 500),
    Held("one foot at the most", "floor point load limit: 2 kN", "F1", "weight", "kg", 500),
    Held("hanging point", "hanging load limit: 25 kg", "H1", "weight", "kg", 60),
    Held("lift load", "lift load limit: 100 kg", "F1", "weight", "kg", 250),
    Held(
        "door",
        "door width: 80 cm",
        "F1",
        "outer width",
        "cm",
        200,
        (("outer depth", "100 cm"), ("outer height", "100 cm")),
    ),
    Held(
        "corridor",
        "corridor width: 80 cm",
        "F1",
        "outer depth",
        "cm",
        200,
        (("outer width", "100 cm"), ("outer height", "100 cm")),
    ),
    Held(
        "lift car",
        "lift width: 100 cm\n- lift depth: 100 cm\n- lift height: 200 cm",
        "F1",
        "outer width",
        "cm",
        300,
        SIZED[1:],
    ),
    Held("ceiling", "ceiling height: 2.5 m", "H1", "outer height", "cm", 250),
    Held(
        "circuit",
        "mains: 230 V\n- circuit current: 4 A\n- circuits: 1\n- continuous-load share: 100 %",
        "F1",
        "power",
        "W",
        2000,
        (("power factor", "1"),),
    ),
    Held("cooling", "cooling capacity: 500 W", "F1", "power", "W", 1200),
    Held(
        "breaker",
        "breaker inrush limit: 80 A",
        "F1",
        "inrush current",
        "A",
        200,
        (("switched together", "no"),),
    ),
    Held("protection", "residual-current limit: 30 mA", "F1", "earth leakage current", "mA", 70),
    Held("light", "ambient light: 100 lx", "F1", "illuminance limit", "lx", 250),
    Held(
        "light of a year",
        "ambient light: 100 lx\n- opening time per day: 8 h\n- days open: 60",
        "F1",
        "yearly light dose limit",
        "lx h",
        100_000,
    ),
    Held(
        "light on it", "door height: 3 m", "F1", "illuminance", "lx", 250, (("illuminance limit", "100 lx"),)
    ),
)


@cache
def work() -> tuple[object, Work]:
    return documented(WORK)


def outcome(held: Held, cell: str) -> Outcome:
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


def less_said(held: Held, low: int, high: int) -> dict[str, tuple[int, ...]]:
    """What says less than a value, with values that it may stand for."""
    unit = held.unit
    return {
        f"between {low} {unit} and {high} {unit}": (low, (low + high) // 2, high),
        f"at most {high} {unit}": (0, low, high),
        f"at least {low} {unit}": (low, high, 4 * held.most),
        "any": (0, low, high, 4 * held.most),
    }


@pytest.mark.parametrize("held", LIMITS, ids=lambda held: held.name)
def test_a_range_never_ends_better_than_a_value(held: Held) -> None:
    random = Random(held.name)
    for _ in range(max(1, PAIRS // 5)):
        low, high = sorted(random.sample(range(1, held.most), 2))
        for cell, values in less_said(held, low, high).items():
            found = goodness(outcome(held, cell))
            single = [goodness(outcome(held, f"{value} {held.unit}")) for value in values]
            assert found <= max(single), f"{held.name}: `{cell}` ends better than every value"
            acceptable = goodness(Outcome.ACCEPTABLE)
            assert found < acceptable or min(single) == acceptable, f"{held.name}: `{cell}` hides a value"


SIGNALS = ("composite", "S-Video", "HDMI", "SDI")


@pytest.mark.parametrize(
    ("cell", "other", "names", "broader"),
    [
        ("input signal", ("accepted standard", "PAL"), SIGNALS, ("analogue video", "video", "any")),
        (
            "accepted standard",
            ("input signal", "composite"),
            ("PAL", "NTSC"),
            ("standard definition", "any"),
        ),
    ],
)
def test_a_broader_term_never_ends_better_than_a_narrower(
    cell: str, other: tuple[str, str], names: tuple[str, ...], broader: tuple[str, ...]
) -> None:
    single = [goodness(_outcome("door height: 3 m", "M1", dict([other, (cell, name)]))) for name in names]
    assert len(set(single)) > 1, "one of them fits, another does not"
    for name in broader:
        found = goodness(_outcome("door height: 3 m", "M1", dict([other, (cell, name)])))
        assert found <= max(single)
        assert found < goodness(Outcome.ACCEPTABLE)
