"""Property 5: changing units, the spelling of a label or the language never changes a verdict."""

from __future__ import annotations

from functools import cache
from random import Random

from examples_read import vocabulary
from hypothesis import given
from hypothesis import strategies as st
from oracle.cases import Case
from oracle.program import Rows
from oracle.world import small_world
from oracle.writing import installation_text, work_text

from properties.spelling import respelled, spellings
from properties.strategies import cases, fixed, seeds, verdicts

# An inch is 25.4 mm exactly: International yard and pound agreement, 1959; SI Brochure, 9th edition, BIPM 2019.
TENTHS_OF_A_MILLIMETRE = {"in": 254, "mm": 10, "cm": 100}


@cache
def every_spelling() -> dict[str, tuple[str, ...]]:
    return spellings(vocabulary(), small_world().values())


@given(case=cases(), seed=seeds())
@fixed(100)
def test_spelling_and_language_never_change_a_verdict(case: Case, seed: int) -> None:
    random, names = Random(seed), every_spelling()
    work, installation = work_text(case), installation_text(case)
    other_work, other_installation = respelled(work, names, random), respelled(installation, names, random)
    assert verdicts(other_work, other_installation) == verdicts(work, installation), (
        f"{other_work}\n{other_installation}"
    )


WORK = """# Units

- artist: Ina Fellmark
- number: 1

## Parts

### Monitors

- kind: display

| part | technology       | visible diagonal |
| ---- | ---------------- | ---------------- |
| M1   | cathode-ray tube | {documented}     |

## Instructions

### R1 Size

- {first}
- {second}
"""
INSTALLATION = """# Proposal

- work: work.md
- dates: 2027-03-01

## Changes

| part | visible diagonal |
| ---- | ---------------- |
| M1   | {proposed}       |
"""
COMPARISONS = (
    "required: visible diagonal of M1 is {0}",
    "required: visible diagonal of M1 is {0} ± {3}",
    "required: visible diagonal of M1 is between {0} and {1}",
    "required: visible diagonal of M1 is at most {0}",
    "forbidden: visible diagonal of M1 is at least {1}",
    "forbidden: visible diagonal of M1 is {2} ± 10 %",
    "allowed: visible diagonal of M1 is one of {0}, {1} or {2}",
    "allowed: visible diagonal of M1 is not {2}",
    "allowed: visible diagonal of M1 is any, if visible diagonal of M1 is at most {1}",
)


def written(inches: int, unit: str) -> str:
    """A whole number of inches in another unit, exactly."""
    tenths = inches * TENTHS_OF_A_MILLIMETRE["in"]
    if unit == "in":
        return f"{inches} in"
    whole, rest = divmod(tenths, TENTHS_OF_A_MILLIMETRE[unit])
    digits = len(str(TENTHS_OF_A_MILLIMETRE[unit])) - 1
    return f"{whole}.{rest:0{digits}d} {unit}"


def judged(inches: tuple[int, ...], units: list[str], lines: list[str]) -> tuple[Rows, str]:
    low, high, documented, proposed = inches
    unit = iter(units * 20)

    def say(number: int) -> str:
        return written(number, next(unit))

    first, second = (line.format(say(low), say(high), say(proposed), say(1)) for line in lines)
    work = WORK.format(documented=say(documented), first=first, second=second)
    return verdicts(work, INSTALLATION.format(proposed=say(proposed)))


@given(
    low=st.integers(8, 20),
    more=st.integers(1, 6),
    documented=st.integers(8, 25),
    proposed=st.integers(8, 25),
    units=st.lists(st.sampled_from(("in", "mm", "cm")), min_size=1, max_size=12),
    lines=st.lists(st.sampled_from(COMPARISONS), min_size=2, max_size=2),
)
@fixed(200)
def test_units_never_change_a_verdict(
    low: int, more: int, documented: int, proposed: int, units: list[str], lines: list[str]
) -> None:
    inches = (low, low + more, documented, proposed)
    assert judged(inches, units, lines) == judged(inches, ["in"], lines)


def test_thirteen_inches_are_written_exactly() -> None:
    assert [written(13, unit) for unit in ("in", "mm", "cm")] == ["13 in", "330.2 mm", "33.02 cm"]
