"""Every factor of a question's weight, in plain words."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from intent.analysis.questions.measure import Factors, Wear
from intent.papers.wording import sentence

NUMBERS = (
    "no",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
)
SECONDS = 3600
"""Hours are held in seconds, the reference unit of time."""
SEEN = {1: "a loss is seen at once", 2: "a loss is seen on comparison", 3: "a loss is hard to see"}
UNDONE = {1: "is undone the same day", 2: "is undone with work or money", 3: "cannot be undone"}


def reasons(factors: Factors) -> str:
    """`No spare for three; up to 21,000 hours run. A loss is hard to see and cannot be undone. …`"""
    loss = " and ".join(filter(None, [SEEN.get(factors.seen, ""), UNDONE.get(factors.undone, "")]))
    parts = ["; ".join(_wear(factors.wear)), loss, _differed(factors)]
    return " ".join(sentence(part) for part in parts if part)


def _wear(wear: Wear) -> Iterator[str]:
    if not wear.devices:
        return
    devices = "device" if wear.devices == 1 else "devices"
    spares = "spare" if wear.spares == 1 else "spares"
    failed = ""
    if wear.failed:
        which = "which" if wear.devices == 1 else f"{_number(wear.failed)} of which"
        failed = f", {which} {'has' if wear.failed == 1 else 'have'} failed"
    yield f"{_number(wear.spares)} {spares} for {_number(wear.devices)} {devices}{failed}"
    if wear.hours is not None:
        most = "" if wear.devices == 1 else "up to "
        others = f", others alike {_hours(wear.hours_of_others)} on average" if wear.hours_of_others else ""
        yield f"{most}{_hours(wear.hours)} hours run{others}"
    if wear.years:
        years = "a year" if wear.years == 1 else f"{wear.years} years"
        yield f"made {years} ago" if wear.since_made else f"the work is {years} old"


def _differed(factors: Factors) -> str:
    if not factors.shown:
        return ""
    showings = "showing" if factors.shown == 1 else "showings"
    every = {1: "the one", 2: "both"}.get(factors.shown, f"all {_number(factors.shown)}")
    if not factors.differed:
        return f"as documented in {every} {showings} on record"
    some = (
        every
        if factors.differed == factors.shown
        else f"{_number(factors.differed)} of {_number(factors.shown)}"
    )
    return f"it differed in {some} {showings} on record"


def _number(number: int) -> str:
    return NUMBERS[number] if number < len(NUMBERS) else str(number)


def _hours(seconds: Fraction) -> str:
    return f"{round(seconds / SECONDS):,}"
