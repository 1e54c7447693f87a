"""The light on objects that light harms: how much of a year's allowance an installation uses."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from intent.effects.scene import THE_VENUE, THE_WORK, Scene, Sides, unknown_among
from intent.formulas import photometry
from intent.formulas.photometry import Allowance, Responsivity
from intent.language.message import Figure, Saying, figure, joined, say
from intent.values.bounds import (
    NATURAL,
    hull,
    known,
    larger,
    minus,
    over,
    point,
    surely_above,
    surely_within,
    times,
)
from intent.values.regions import Interval
from intent.variance.computed import light_on
from intent.variance.result import Effect, EffectTopic, VenueFinding

ONE = point(1)
CLASSES: Mapping[str, Responsivity] = {
    "responsivity-none": Responsivity.NONE,
    "responsivity-low": Responsivity.LOW,
    "responsivity-medium": Responsivity.MEDIUM,
    "responsivity-high": Responsivity.HIGH,
}
LIT_WHILE_OPEN = (
    "light on the object × the time that the venue is open, in the dark for the rest; a year of 365 days"
)
BY_CLASS = "allowance by class of responsivity, CIE 157:2004, as quoted"
OWN = "limit stated of the object"


@dataclass(frozen=True, slots=True)
class _Limits:
    """What light an object may have, and whether that is stated of it, or follows from its class."""

    allowance: Allowance
    is_own_illuminance: bool
    is_own_dose: bool

    @property
    def whose_illuminance(self) -> Saying:
        return _whose(self.is_own_illuminance)

    @property
    def whose_dose(self) -> Saying:
        return _whose(self.is_own_dose)


def dose_effects(sides: Sides) -> Iterator[Effect | VenueFinding]:
    """Told of every part of which a class of responsivity or a limit is stated."""
    for part in sides.proposed.parts():
        limits = _limits(sides.proposed, part.identifier)
        if limits is not None:
            yield from _at_a_time(sides, part.identifier, limits)
            yield from _in_all(sides, part.identifier, limits)


def _limits(scene: Scene, part: str) -> _Limits | None:
    """A limit of the object itself goes before that of its class."""
    own_light, own_dose = scene.states(part, "illuminance-limit"), scene.states(part, "light-dose-limit")
    is_classed = scene.states(part, "light-responsivity")
    if not (own_light or own_dose or is_classed):
        return None
    names = scene.names(part, "light-responsivity") if is_classed else ()
    classes = [CLASSES[name].value for name in names if name in CLASSES]
    illuminance = hull(one.illuminance for one in classes) if classes else NATURAL
    dose = hull(one.dose for one in classes) if classes else NATURAL
    if own_light:
        illuminance = scene.bounds(part, "illuminance-limit")
    if own_dose:
        dose = scene.bounds(part, "light-dose-limit")
    return _Limits(Allowance(illuminance, dose), own_light, own_dose)


def _whose(is_own: bool) -> Saying:
    return say("set for the object") if is_own else say("that CIE 157:2004 gives its class")


def _at_a_time(sides: Sides, part: str, limits: _Limits) -> Iterator[Effect | VenueFinding]:
    lit, limit = light_on(sides.proposed.state, part), limits.allowance.illuminance
    if not surely_above(lit, limit):
        return
    places = {"limit": _lux(limit), "whose": limits.whose_illuminance}
    yield Effect(
        topic=EffectTopic.LIGHT,
        members=(part,),
        quantity=sides.proposed.label("illuminance"),
        unit="lx",
        documented=None,
        proposed=lit,
        sentence=say("more than the limit of {limit} {whose}", **places),
        source=OWN if limits.is_own_illuminance else BY_CLASS,
    )
    text = say(
        "at the venue {name} stands in {lit}, above the limit of {limit} {whose}",
        name=part,
        lit=_lux(lit),
        **places,
    )
    yield VenueFinding(slug="light-dose", text=text, subject=part, ask=sides.asks)


def _in_all(sides: Sides, part: str, limits: _Limits) -> Iterator[Effect | VenueFinding]:
    scene, yearly = sides.proposed, limits.allowance.dose
    dose, years = scene.bounds(part, "light-dose"), over(scene.state.days, photometry.DAYS_A_YEAR)
    if yearly.high is None or dose.high == 0:
        return
    source = joined([Saying(LIT_WHILE_OPEN), Saying(OWN if limits.is_own_dose else BY_CLASS)], "; ")
    label, missing = scene.label("light-dose"), _missing(scene, part)
    if dose.high is None:
        sentence = say(
            "how much of a year's light, {limit} {whose}, it uses cannot be said from what is given",
            limit=_lux_hours(yearly),
            whose=limits.whose_dose,
        )
        yield Effect(
            topic=EffectTopic.LIGHT,
            members=(part,),
            quantity=label,
            unit="lx·h",
            documented=None,
            proposed=None,
            sentence=sentence,
            source=source,
            missing=missing,
        )
        return
    allowed = times(yearly, larger(ONE, years))
    words = _words(scene, part, limits, dose, years)
    yield Effect(
        topic=EffectTopic.LIGHT,
        members=(part,),
        quantity=label,
        unit="lx·h",
        documented=None,
        proposed=dose,
        sentence=words,
        source=source,
        missing=missing,
    )
    if surely_above(dose, allowed):
        text = say(
            "at the venue {name} gets {dose} of light, and the yearly limit {whose} leaves it {allowed}",
            name=part,
            dose=_lux_hours(dose),
            allowed=_lux_hours(allowed),
            whose=limits.whose_dose,
        )
        yield VenueFinding(slug="light-dose", text=text, subject=part, ask=sides.asks)


def _words(scene: Scene, part: str, limits: _Limits, dose: Interval, years: Interval) -> Saying:
    """Which share of a year's light it uses, in which share of a year, and what follows."""
    yearly = limits.allowance.dose
    used = over(dose, yearly)
    shares = say(
        "it uses {used} of a whole year's light, {limit} {whose}, in {time} of a year",
        used=figure(used, "%", 100),
        limit=_lux_hours(yearly),
        whose=limits.whose_dose,
        time=figure(years, "%", 100),
    )
    return say("{shares}: {meaning}", shares=shares, meaning=_meaning(scene, part, yearly, used, years))


def _meaning(scene: Scene, part: str, yearly: Interval, used: Interval, years: Interval) -> Saying:
    if surely_above(used, larger(ONE, years)):
        return say("too much; {within}", within=_within(scene, part, yearly, years))
    if surely_within(used, years):
        return say("no more than its share")
    if surely_above(used, years):
        left = figure(minus(ONE, used), "%", 100)
        return say("more than its share; {left} is left for the rest of the year", left=left)
    return say("whether that is more than its share cannot be said from what is given")


def _within(scene: Scene, part: str, yearly: Interval, years: Interval) -> Saying:
    """How little light would do."""
    lit, dose = light_on(scene.state, part), scene.bounds(part, "light-dose")
    hours = known(over(dose, lit))
    most = known(over(times(yearly, larger(ONE, years)), point(hours))) if hours else None
    if most is None:
        return say("less light, or less time in it, would stay within the limit")
    return say("at most {most}, or less time in it, would stay within the limit", most=_lux(point(most)))


def _missing(scene: Scene, part: str) -> tuple[str, ...]:
    """What would have to be given to know the dose."""
    if scene.states(part, "light-dose"):
        return ()
    found: list[str] = []
    if light_on(scene.state, part).high is None:
        found.append(scene.label("illuminance"))
    if not scene.states(THE_WORK, "time-in-operation"):
        found.extend(unknown_among(scene, THE_VENUE, "opening-time", "days-open"))
    return tuple(found)


def _lux(bounds: Interval) -> Figure:
    return figure(bounds, "lx")


def _lux_hours(bounds: Interval) -> Figure:
    return figure(bounds, "lx·h")
