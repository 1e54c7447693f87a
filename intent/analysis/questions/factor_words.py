"""Every factor of a question's weight, in plain words."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from intent.analysis.questions.measure import Factors, Wear
from intent.language.figures import figure_of
from intent.language.message import Message, Place, Words, joined, listed, say, say_of, sentence, words
from intent.values.units import SECONDS_AN_HOUR

NUMBERS = words(
    "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"
)  # fmt: skip
SEEN = {
    1: say("a loss is seen at once"),
    2: say("a loss is seen on comparison"),
    3: say("a loss is hard to see"),
}
UNDONE = {
    1: say("is undone the same day"),
    2: say("is undone with work or money"),
    3: say("cannot be undone"),
}


def factor_words(factors: Factors) -> Words:
    """`No spare for three; up to 21,000 hours run. A loss is hard to see and cannot be undone. …`"""
    loss = listed(filter(None, [SEEN.get(factors.seen), UNDONE.get(factors.undone)]))
    parts = (joined(_wear(factors.wear), "; "), loss, _differed(factors))
    return joined(sentence(part) for part in parts if part)


def _wear(wear: Wear) -> Iterator[Message]:
    if not wear.devices:
        return
    yield _spares(wear)
    if wear.hours is not None:
        yield _run(wear, wear.hours)
    if wear.years and wear.since_made:
        yield say_of(wear.years, "made a year ago", "made {number} years ago", number=wear.years)
    elif wear.years:
        yield say_of(
            wear.years, "the work is a year old", "the work is {number} years old", number=wear.years
        )


def _spares(wear: Wear) -> Message:
    spares = (
        say_of(wear.spares, "{number} spare", "{number} spares", number=_number(wear.spares))
        if wear.spares
        else say("no spares")
    )
    devices = say_of(wear.devices, "{number} device", "{number} devices", number=_number(wear.devices))
    if not wear.failed:
        return say("{spares} for {devices}", spares=spares, devices=devices)
    if wear.devices == 1:
        return say("{spares} for {devices}, which has failed", spares=spares, devices=devices)
    return say_of(
        wear.failed,
        "{spares} for {devices}, {number} of which has failed",
        "{spares} for {devices}, {number} of which have failed",
        spares=spares,
        devices=devices,
        number=_number(wear.failed),
    )


def _run(wear: Wear, most: Fraction) -> Message:
    hours = _hours(most)
    run = say_of(hours, "{number} hour run", "{number} hours run", number=figure_of(hours))
    if wear.devices > 1:
        run = say("up to {hours}", hours=run)
    if not wear.hours_of_others:
        return run
    others = figure_of(_hours(wear.hours_of_others))
    return say("{hours}, others alike {others} on average", hours=run, others=others)


def _differed(factors: Factors) -> Words:
    if not factors.shown:
        return ""
    every = _number(factors.shown)
    if not factors.differed:
        match factors.shown:
            case 1:
                return say("as documented in the one showing on record")
            case 2:
                return say("as documented in both showings on record")
        return say("as documented in all {number} showings on record", number=every)
    if factors.differed < factors.shown:
        return say(
            "it differed in {number} of {all} showings on record",
            number=_number(factors.differed),
            all=every,
        )
    match factors.shown:
        case 1:
            return say("it differed in the one showing on record")
        case 2:
            return say("it differed in both showings on record")
    return say("it differed in all {number} showings on record", number=every)


def _number(number: int) -> Place:
    return NUMBERS[number - 1] if 0 < number <= len(NUMBERS) else number


def _hours(seconds: Fraction) -> int:
    return round(seconds / SECONDS_AN_HOUR)
