"""The light on objects that light harms: how much of a year's allowance an installation uses."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from intent.effects.limits_kept import Input, Limited, at_most, inputs, obstacles
from intent.effects.scene import Scene, Sides
from intent.effects.unsaid import Missing
from intent.formulas import photometry
from intent.formulas.photometry import Allowance, Responsivity
from intent.language.figures import figure
from intent.language.message import Message, say
from intent.model.subject import one
from intent.names import THE_VENUE, THE_WORK
from intent.values.bounds import (
    NATURAL,
    ONE,
    hull,
    is_known,
    larger,
    minus,
    over,
    smaller,
    surely_above,
    surely_within,
    times,
)
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.variance.computed import light_on
from intent.variance.obstacle import Obstacle
from intent.variance.result import Effect, EffectTopic

CLASSES: Mapping[str, Responsivity] = {
    "responsivity-none": Responsivity.NONE,
    "responsivity-low": Responsivity.LOW,
    "responsivity-medium": Responsivity.MEDIUM,
    "responsivity-high": Responsivity.HIGH,
}
HARMLESS = "responsivity-none"
"""The class of what light does no harm: it has no limit."""
LIT_WHILE_OPEN = say(
    "light on the object × the time that the venue is open, in the dark for the rest; a year of 365 days"
)
BY_CLASS = say("allowance by class of responsivity, CIE 157:2004, as quoted")
OWN = say("limit stated of the object")
LUX_HOURS = "lx·h"


@dataclass(frozen=True, slots=True, kw_only=True)
class _Limits:
    """What light an object may have, and whether that is stated of it, or follows from its class."""

    allowance: Allowance
    is_own_illuminance: bool
    is_own_dose: bool
    is_classed: bool
    """Whether it has a class that sets limits, or may have one."""

    @property
    def limits_illuminance(self) -> bool:
        return self.is_own_illuminance or self.is_classed

    @property
    def limits_dose(self) -> bool:
        return self.is_own_dose or self.is_classed

    @property
    def whose_illuminance(self) -> Message:
        return _whose(self.is_own_illuminance)

    @property
    def whose_dose(self) -> Message:
        return _whose(self.is_own_dose)


def dose_effects(sides: Sides) -> Iterator[Effect | Obstacle]:
    """The light on every part of which a class of responsivity or a limit is stated."""
    for part in sides.proposed.parts():
        limits = _limits(sides.proposed, part.identifier)
        if limits is not None:
            yield from _at_a_time(sides, part.identifier, limits)
            yield from _in_all(sides, part.identifier, limits)


def _limits(scene: Scene, part: str) -> _Limits | None:
    """What is stated of the object goes before what follows from its class; none where neither is stated."""
    own_light, own_dose = scene.states(part, "illuminance-limit"), scene.states(part, "light-dose-limit")
    is_classed = scene.states(part, "light-responsivity")
    if not (own_light or own_dose or is_classed):
        return None
    names = scene.stated_names(part, "light-responsivity")
    classes = [CLASSES[name].value for name in names if name in CLASSES]
    illuminance = hull(one.illuminance for one in classes) if classes else NATURAL
    dose = hull(one.dose for one in classes) if classes else NATURAL
    if own_light:
        illuminance = scene.bounds(part, "illuminance-limit")
    if own_dose:
        dose = scene.bounds(part, "light-dose-limit")
    return _Limits(
        allowance=Allowance(illuminance, dose),
        is_own_illuminance=own_light,
        is_own_dose=own_dose,
        is_classed=is_classed and names != {HARMLESS},
    )


def _whose(is_own: bool) -> Message:
    return say("set for the object") if is_own else say("that CIE 157:2004 gives its class")


def _at_a_time(sides: Sides, part: str, limits: _Limits) -> Iterator[Effect | Obstacle]:
    lit, limit = light_on(sides.proposed.state, part), limits.allowance.illuminance
    if not limits.limits_illuminance:
        return
    yield from obstacles(sides, at_most(lit, limit), _too_light(sides, part, lit, limits))
    if not surely_above(lit, limit):
        return
    yield Effect(
        topic=EffectTopic.LIGHT,
        subject=one(part),
        quantity=sides.proposed.called("illuminance"),
        unit="lx",
        proposed=lit,
        sentence=say(
            "more than the limit of {limit} {whose}",
            limit=figure(limit, "lx"),
            whose=limits.whose_illuminance,
        ),
        source=OWN if limits.is_own_illuminance else BY_CLASS,
    )


def _too_light(sides: Sides, part: str, lit: Interval, limits: _Limits) -> Limited:
    own = "illuminance-limit" if limits.is_own_illuminance else "light-responsivity"
    words = say(
        "at the venue it stands in {lit}, above the limit of {limit} {whose}",
        lit=figure(lit, "lx"),
        limit=figure(limits.allowance.illuminance, "lx"),
        whose=limits.whose_illuminance,
    )
    return _limited(sides, part, [*_light_inputs(sides, part), *inputs(sides, part, own)], words)


def _light_inputs(sides: Sides, part: str) -> tuple[Input, ...]:
    if sides.proposed.states(part, "illuminance"):
        return inputs(sides, part, "illuminance")
    return inputs(sides, THE_VENUE, "ambient-light")


def _limited(sides: Sides, part: str, found: Sequence[Input], words: Message) -> Limited:
    return Limited(
        slug="light-dose",
        subject=one(part),
        inputs=[*found, *inputs(sides, part, "presence")],
        sure=words,
        unsure=say("whether it gets no more light than it may have cannot be said from what is given"),
    )


def _in_all(sides: Sides, part: str, limits: _Limits) -> Iterator[Effect | Obstacle]:
    scene, yearly = sides.proposed, limits.allowance.dose
    dose, years = scene.bounds(part, "light-dose"), over(scene.state.days, photometry.DAYS_A_YEAR)
    if dose.high == 0 or not limits.limits_dose:
        return
    if yearly.high is not None:
        yield _dose_effect(scene, part, limits, dose)
    allowed = times(yearly, larger(ONE, years))
    words = say(
        "at the venue it gets {dose} of light, and the yearly limit {whose} leaves it {allowed}",
        dose=figure(dose, LUX_HOURS),
        allowed=figure(allowed, LUX_HOURS),
        whose=limits.whose_dose,
    )
    own = "light-dose-limit" if limits.is_own_dose else "light-responsivity"
    found = [*_dose_inputs(sides, part), *inputs(sides, part, own)]
    yield from obstacles(sides, at_most(dose, allowed), _limited(sides, part, found, words))


def _dose_effect(scene: Scene, part: str, limits: _Limits, dose: Interval) -> Effect:
    is_bounded, years = dose.high is not None, over(scene.state.days, photometry.DAYS_A_YEAR)
    return Effect(
        topic=EffectTopic.LIGHT,
        subject=one(part),
        quantity=scene.called("light-dose"),
        unit=LUX_HOURS,
        proposed=dose if is_bounded else None,
        sentence=_words(scene, part, limits, years) if is_bounded else _unsaid_words(limits),
        source=say("{light}; {limit}", light=LIT_WHILE_OPEN, limit=OWN if limits.is_own_dose else BY_CLASS),
        missing=_missing(scene, part),
    )


def _dose_inputs(sides: Sides, part: str) -> tuple[Input, ...]:
    if sides.proposed.states(part, "light-dose"):
        return inputs(sides, part, "light-dose")
    return (*_light_inputs(sides, part), *inputs(sides, THE_VENUE, "opening-time", "days-open"))


def _unsaid_words(limits: _Limits) -> Message:
    return say(
        "how much of a year's light, {limit} {whose}, it uses cannot be said from what is given",
        limit=figure(limits.allowance.dose, LUX_HOURS),
        whose=limits.whose_dose,
    )


def _words(scene: Scene, part: str, limits: _Limits, years: Interval) -> Message:
    """Which share of a year's light it uses, in which share of a year, and what follows."""
    dose, yearly = scene.bounds(part, "light-dose"), limits.allowance.dose
    shares = say(
        "it uses {used} of a whole year's light, {limit} {whose}, in {time} of a year",
        used=figure(over(dose, yearly), "%"),
        limit=figure(yearly, LUX_HOURS),
        whose=limits.whose_dose,
        time=figure(years, "%"),
    )
    meaning = _meaning(
        light_on(scene.state, part),
        dose=dose,
        yearly=yearly,
        years=years,
        at_a_time=limits.allowance.illuminance,
    )
    return say("{shares}: {meaning}", shares=shares, meaning=meaning)


def _meaning(
    lit: Interval, *, dose: Interval, yearly: Interval, years: Interval, at_a_time: Interval
) -> Message:
    used = over(dose, yearly)
    if surely_above(used, larger(ONE, years)):
        allowed = times(yearly, larger(ONE, years))
        return say("too much; {within}", within=_within(over(dose, lit), allowed, at_a_time))
    if surely_within(used, years):
        return say("no more than its share")
    if surely_above(used, years):
        left = figure(minus(ONE, used), "%")
        return say("more than its share; {left} is left for the rest of the year", left=left)
    return say("whether that is more than its share cannot be said from what is given")


def _within(hours: Interval, allowed: Interval, at_a_time: Interval) -> Message:
    """The light that would stay within what is allowed, over the same hours, and within what is allowed at a time."""
    most = smaller(over(allowed, hours), at_a_time)
    if not is_known(hours) or not is_known(most):
        return say("less light, or less time in it, would stay within the limit")
    return say("at most {most}, or less time in it, would stay within the limit", most=figure(most, "lx"))


def _missing(scene: Scene, part: str) -> Missing:
    """What would have to be given to know the dose."""
    if scene.states(part, "light-dose"):
        return ()
    found: list[Message] = []
    if light_on(scene.state, part).high is None:
        found.append(scene.called("illuminance"))
    is_timed = scene.is_(THE_WORK, "running", "opening-hours") is Answer.IN
    if not (is_timed and scene.states(THE_WORK, "time-in-operation")):
        found.extend(scene.unknown(THE_VENUE, "opening-time", "days-open"))
    return tuple(found)
