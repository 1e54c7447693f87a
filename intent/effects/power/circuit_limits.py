"""Whether the circuits of the venue carry the work: each named circuit what is on it, all together what names none."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from intent.effects.limits_kept import Input, Limited, at_most, inputs, obstacles, unchecked
from intent.effects.power.consumers import inputs_of_losses, inputs_taken
from intent.effects.power.feeds import Circuits, Feed
from intent.effects.scene import Sides
from intent.formulas import electricity
from intent.language.figures import figure
from intent.language.message import Message, say, say_of
from intent.model.subject import WHOLE_VENUE, Subject, one, several
from intent.names import THE_VENUE
from intent.values.bounds import surely_above, surely_within, times, total
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.variance.obstacle import Obstacle, Unchecked

Loads = Mapping[str, Interval]
"""The current of each part, in amperes."""
UNSURE = say("whether the circuits of the venue carry it cannot be said from what is given")


def circuit_obstacles(
    sides: Sides, circuits: Circuits, feeds: Sequence[Feed], loads: Loads
) -> Iterator[Obstacle | Unchecked]:
    """What is too much for a circuit, or may be; between the usual share and the rating the local code decides."""
    for feed in feeds:
        if feed.name:
            yield from _on_one(sides, circuits, feed, loads)
        else:
            yield from _each(sides, circuits, feed, loads)
            yield from _all(sides, circuits, feed, loads)


def _carried(circuits: Circuits, drawn: Interval) -> Answer:
    """Whether one circuit carries a current: surely within what may be drawn for long, surely not beyond its rating."""
    if surely_above(drawn, circuits.bearable):
        return Answer.OUT
    return Answer.IN if surely_within(drawn, circuits.allowed) else Answer.OPEN


def _on_one(sides: Sides, circuits: Circuits, feed: Feed, loads: Loads) -> Iterator[Obstacle]:
    drawn = total(loads[part] for part in feed.parts)
    answer = _carried(circuits, drawn)
    words = say_of(
        len(feed.parts),
        "{parts} draws {current} on circuit {name}, and a circuit of the venue may carry {limit}",
        "{parts} draw {current} on circuit {name}, and a circuit of the venue may carry {limit}",
        parts=feed.parts,
        name=feed.name,
        current=figure(drawn, "A"),
        limit=figure(circuits.bearable, "A"),
    )
    found = _inputs(sides, circuits, feed.parts, drawn)
    yield from obstacles(sides, answer, _limited(several(feed.parts), found, words, answer))


def _each(sides: Sides, circuits: Circuits, feed: Feed, loads: Loads) -> Iterator[Obstacle]:
    for part in feed.parts:
        answer = _carried(circuits, loads[part])
        words = say(
            "{part} draws {current} at the mains of the venue, and one circuit may carry {limit}",
            part=part,
            current=figure(loads[part], "A"),
            limit=figure(circuits.bearable, "A"),
        )
        found = _inputs(sides, circuits, (part,), loads[part])
        yield from obstacles(sides, answer, _limited(one(part), found, words, answer))


def _all(sides: Sides, circuits: Circuits, feed: Feed, loads: Loads) -> Iterator[Obstacle | Unchecked]:
    if not sides.proposed.states(THE_VENUE, "circuits"):
        yield from unchecked(sides, THE_VENUE, "circuits")
        return
    currents = [loads[part] for part in feed.parts]
    drawn = total(currents)
    answer = Answer.OPEN
    if feed.surely_exceeds(drawn, circuits.bearable):
        answer = Answer.OUT
    elif at_most(electricity.circuits_needed(currents, circuits.allowed), circuits.number) is Answer.IN:
        answer = Answer.IN
    words = say(
        "the devices draw {current} at the mains of the venue, and the circuits given to the work carry {limit}",
        current=figure(drawn, "A"),
        limit=figure(times(circuits.number, circuits.bearable), "A"),
    )
    found = [*_inputs(sides, circuits, feed.parts, drawn), *inputs(sides, THE_VENUE, "circuits")]
    limited = _limited(WHOLE_VENUE, found, words, answer)
    yield from obstacles(sides, answer, limited)


def _limited(subject: Subject, found: Sequence[Input], words: Message, answer: Answer) -> Limited:
    is_named = answer is Answer.OUT or subject == WHOLE_VENUE
    return Limited(
        slug="circuit-overloaded",
        subject=subject,
        inputs=found,
        sure=words,
        unsure=UNSURE,
        names_subject=is_named,
    )


def _inputs(sides: Sides, circuits: Circuits, parts: Sequence[str], drawn: Interval) -> list[Input]:
    """What the current depends on; the share of the rating alone where all else is known and decides nothing."""
    if surely_within(drawn, circuits.rating):
        return list(inputs(sides, THE_VENUE, "continuous-load-share", "circuit-current"))
    found = [each for part in parts for each in inputs_taken(sides, part, *_stated(sides, part))]
    return [*found, *inputs_of_losses(sides), *inputs(sides, THE_VENUE, "mains", "circuit-current")]


def _stated(sides: Sides, part: str) -> tuple[str, ...]:
    """The characteristics from which the current of a part is worked out."""
    for name in ("apparent-power", "rated-current"):
        if sides.proposed.states(part, name):
            return (name,)
    return "power", "power-factor"
