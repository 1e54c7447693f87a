"""What makes a circuit switch off though nothing is wrong: devices switched on together, and leakage that adds up."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from intent.effects.limits_kept import Limited, at_most, inputs, obstacles
from intent.effects.power.consumers import inputs_taken, lacking_effects, summed, taken_by
from intent.effects.power.feeds import Feed
from intent.effects.scene import Scene, Sides
from intent.effects.unsaid import unsaid_effects
from intent.formulas import electricity
from intent.language.figures import figure
from intent.language.message import Message, say, say_of
from intent.model.subject import WHOLE_WORK, several
from intent.names import THE_VENUE
from intent.values.bounds import natural, surely_above, surely_within, times
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.values.units import in_unit
from intent.variance.obstacle import Obstacle
from intent.variance.result import Effect, EffectTopic

UNSURE_BREAKER = say("whether the breaker holds when it is switched on cannot be said")
INRUSH = say(
    "sum of the inrush currents, as if all peaks fell together; what the wiring holds back is not counted"
)
LEAKAGE = say(
    "sum of the earth leakage currents; every circuit taken to have a protection of its own; tripping without a fault "
    "is likely from 30 % of the rating on (common practice; IEC 60364-5-53, from memory); a licensed electrician judges"
)
SHARING = say("which circuits share a residual-current device")


def surge_effects(sides: Sides, feeds: Sequence[Feed]) -> Iterator[Effect | Obstacle]:
    """What breakers and residual-current devices may do, where the venue says at which current they switch off."""
    for name, told in (("breaker-inrush", _inrush), ("residual-current-limit", _leakage)):
        if sides.proposed.states(THE_VENUE, name):
            yield from told(sides, feeds, natural(sides.proposed.venue(name)))


def _inrush(sides: Sides, feeds: Sequence[Feed], limit: Interval) -> Iterator[Effect | Obstacle]:
    scene = sides.proposed
    for feed in feeds:
        together = [part for part in feed.parts if _is_switched(scene, part)]
        found = summed(scene, together, "inrush-current")
        if together and not found.is_blank:
            yield Effect(
                topic=EffectTopic.POWER,
                subject=several(together),
                quantity=scene.called("inrush-current"),
                unit="A",
                proposed=found.total,
                sentence=feed.told(_inrush_words(scene, together, taken=found.total, limit=limit)),
                source=INRUSH,
            )
        yield from _at_once(sides, feed, limit)
    yield from _not_said(scene, [part for feed in feeds for part in feed.parts])


def _is_switched(scene: Scene, part: str) -> bool:
    """Whether it is surely switched on at the same moment as others."""
    return scene.is_(part, "switched-together", "yes") is Answer.IN


def _inrush_words(scene: Scene, together: Sequence[str], *, taken: Interval, limit: Interval) -> Message:
    breaks = figure(limit, "A")
    if surely_within(taken, limit):
        return say("below the {limit} at which a breaker may switch off at once", limit=breaks)
    if not surely_above(taken, limit):
        return say(
            "whether that is below the {limit} at which a breaker may switch off cannot be said", limit=breaks
        )
    each = (taken_by(scene, part, "inrush-current") for part in together)
    if len(together) > 1 and all(surely_within(one, limit) for one in each):
        return say(
            "more than the {limit} at which a breaker may switch off at once; switched on one after another they "
            "stay below it",
            limit=breaks,
        )
    return say("more than the {limit} at which a breaker may switch off at once", limit=breaks)


def _at_once(sides: Sides, feed: Feed, limit: Interval) -> Iterator[Obstacle]:
    """Whether the breaker holds: of what is surely switched on together, of each by itself, of what may be together."""
    scene = sides.proposed
    together = [part for part in feed.parts if _is_switched(scene, part)]
    apart = [part for part in feed.parts if scene.is_(part, "switched-together", "no") is Answer.IN]
    perhaps = [part for part in feed.parts if part not in apart]
    surely, most = (summed(scene, parts, "inrush-current").total for parts in (together, perhaps))
    if feed.surely_exceeds(surely, limit):
        yield from _too_high(sides, together, surely, limit, Answer.OUT)
        return
    alone = {part: at_most(taken_by(scene, part, "inrush-current"), limit) for part in feed.parts}
    for part, answer in alone.items():
        if answer is Answer.OUT:
            yield from _too_high(sides, [part], taken_by(scene, part, "inrush-current"), limit, Answer.OUT)
    if Answer.OUT not in alone.values():
        answers = [at_most(most, limit), *(alone[part] for part in apart)]
        unsure = [*perhaps, *(part for part in apart if alone[part] is Answer.OPEN)]
        if any(answer is not Answer.IN for answer in answers):
            yield from _too_high(sides, unsure, most, limit, Answer.OPEN)


def _too_high(
    sides: Sides, parts: Sequence[str], taken: Interval, limit: Interval, answer: Answer
) -> Iterator[Obstacle]:
    words = say_of(
        len(parts),
        "switched on at once, {parts} takes {current}, and a breaker of the venue may switch off at {limit}",
        "switched on at once, {parts} take {current}, and a breaker of the venue may switch off at {limit}",
        parts=tuple(parts),
        current=figure(taken, "A"),
        limit=figure(limit, "A"),
    )
    names = ("inrush-current", "switched-together") if answer is Answer.OPEN else ("inrush-current",)
    limited = Limited(
        slug="breaker-inrush",
        subject=several(parts),
        inputs=[
            *(each for part in parts for each in inputs_taken(sides, part, *names)),
            *inputs(sides, THE_VENUE, "breaker-inrush"),
        ],
        sure=words,
        unsure=UNSURE_BREAKER,
        names_subject=answer is Answer.OUT,
    )
    yield from obstacles(sides, answer, limited)


def _not_said(scene: Scene, parts: Sequence[str]) -> Iterator[Effect]:
    """The parts of which the inrush is not stated or, where they may be switched on with others, whether they are."""
    running = [part for part in parts if scene.runs(part) is not Answer.OUT]
    unsure = [part for part in running if scene.is_(part, "switched-together", "no") is not Answer.IN]
    asked = {
        part: ("inrush-current", "switched-together") if part in unsure else ("inrush-current",)
        for part in running
    }
    yield from unsaid_effects(
        {part: scene.unknown(part, *names) for part, names in asked.items()},
        topic=EffectTopic.POWER,
        quantity=scene.called("inrush-current"),
        sentence=UNSURE_BREAKER,
        source=INRUSH,
    )


def _leakage(sides: Sides, feeds: Sequence[Feed], limit: Interval) -> Iterator[Effect | Obstacle]:
    scene = sides.proposed
    lacking: list[str] = []
    for feed in feeds:
        found = summed(scene, feed.parts, "earth-leakage-current")
        lacking.extend(found.lacking)
        yield from _leaking(sides, feed, found.total, limit)
        if found.is_blank:
            continue
        yield Effect(
            topic=EffectTopic.POWER,
            subject=several(feed.parts) if feed.name else WHOLE_WORK,
            quantity=say("leakage to earth in all"),
            unit="mA",
            proposed=in_unit(found.total, "mA"),
            sentence=feed.told(_leakage_words(taken=found.total, limit=limit)),
            source=LEAKAGE,
            missing=(SHARING,),
        )
    yield from lacking_effects(
        scene,
        lacking,
        "earth-leakage-current",
        quantity=say("leakage to earth"),
        sentence=say("not in the sum, for it is not given"),
        source=LEAKAGE,
    )


def _leaking(sides: Sides, feed: Feed, taken: Interval, limit: Interval) -> Iterator[Obstacle]:
    answer = at_most(taken, limit)
    if answer is Answer.OUT and not feed.surely_exceeds(taken, limit):
        answer = Answer.OPEN
    limited = Limited(
        slug="leakage",
        subject=several(feed.parts),
        inputs=[
            *(each for part in feed.parts for each in inputs_taken(sides, part, "earth-leakage-current")),
            *inputs(sides, THE_VENUE, "residual-current-limit"),
        ],
        sure=say(
            "{current} leak to earth from {parts} while nothing is wrong, and the venue's protection switches off "
            "at {limit}",
            current=figure(taken, "mA"),
            parts=feed.parts,
            limit=figure(limit, "mA"),
        ),
        unsure=say("whether the venue's protection holds cannot be said from what is given"),
        names_subject=answer is Answer.OUT,
    )
    yield from obstacles(sides, answer, limited)


def _leakage_words(*, taken: Interval, limit: Interval) -> Message:
    likely = times(limit, electricity.LEAKAGE_SHARE)
    share, trips = figure(electricity.LEAKAGE_SHARE, "%"), figure(limit, "mA")
    if surely_within(taken, likely):
        return say(
            "within {share} of the {limit} at which the protection switches off", share=share, limit=trips
        )
    if surely_above(taken, limit):
        return say(
            "more than the {limit} at which the protection switches off, so that it will not stay on; spread the "
            "devices, and never bridge the protection or an earth",
            limit=trips,
        )
    if surely_above(taken, likely):
        return say(
            "more than {share} of the {limit} at which the protection switches off, so that it may well do so though "
            "nothing is wrong; spread the devices, and never bridge the protection or an earth",
            share=share,
            limit=trips,
        )
    return say(
        "whether it stays within {share} of the {limit} at which the protection switches off cannot be said",
        share=share,
        limit=trips,
    )
