"""Wear over the run: lamps, devices, film, tape and slides, and what a standing picture leaves."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from intent.bounds import NATURAL, known, minus, over, plus, surely_above, surely_within
from intent.effects.retention import retention_effects
from intent.effects.scene import THE_VENUE, THE_WORK, Scene, Sides, unknown_among
from intent.formulas import wear
from intent.regions import Interval
from intent.saying import Figure, Saying, figure, say, say_of
from intent.values import Answer
from intent.variance.result import Effect, Topic

TIME = "time in operation (hours open × days) added to the hours already run; arithmetic"
COPIES = "arithmetic; every copy new, no gap between rounds where none is said, one copy run at a time"
HOURS_A_SECOND = Fraction(1, 3600)
WEARING = ("lamp-life", "expected-life")
WEARING_COPIES = ("passes-a-copy", "gate-hours")


@dataclass(frozen=True, slots=True)
class Run:
    """The proposed installation, and how long it runs, in seconds."""

    scene: Scene
    time: Interval

    @property
    def unsaid(self) -> tuple[str, ...]:
        """What would have to be given to know how long it runs."""
        if self.scene.states(THE_WORK, "time-in-operation") or known(self.time) is not None:
            return ()
        return unknown_among(self.scene, THE_VENUE, "opening-time", "days-open")


def wear_effects(sides: Sides) -> Iterator[Effect]:
    """Told of every device, film, tape or slide of which it is stated how long one lasts."""
    scene = sides.proposed
    run = Run(scene, scene.bounds(THE_WORK, "time-in-operation"))
    is_timed = _is_timed(scene)
    parts = scene.one_a_device(part.identifier for part in scene.parts())
    wearing = tuple(part for part in parts if _wears(scene, part))
    if wearing and not is_timed:
        yield _time_unsaid(run, wearing)
    for part in wearing if is_timed else ():
        yield from _lamp(run, part)
        yield from _device(run, part)
        yield from _film(run, part)
        yield from _slides(run, part)
    yield from retention_effects(sides, run.time if is_timed else NATURAL)


def _is_timed(scene: Scene) -> bool:
    """Whether it is known how long the work runs each day; that a day has 24 hours is not enough."""
    return (
        scene.states(THE_WORK, "time-in-operation")
        or scene.is_given(THE_VENUE, "opening-time")
        or scene.is_(THE_WORK, "running", "continuous") is Answer.IN
    )


def _wears(scene: Scene, part: str) -> bool:
    return any(scene.states(part, name) for name in WEARING) or any(
        _stating(scene, part, name) is not None for name in WEARING_COPIES
    )


def _stating(scene: Scene, part: str, name: str) -> str | None:
    """The part, or else the material of its channel, of which something is stated."""
    return next((one for one in (part, *scene.material(part)) if scene.states(one, name)), None)


def _natural(scene: Scene, subject: str, name: str) -> Interval:
    return scene.bounds(subject, name).meet(NATURAL)


def _time_unsaid(run: Run, parts: tuple[str, ...]) -> Effect:
    label = run.scene.label("time-in-operation")
    sentence = say("how long it runs is not said, and so not how much of what it wears out lasts")
    return Effect(Topic.POWER, parts, label, "h", None, None, sentence, TIME, run.unsaid)


def _lamp(run: Run, part: str) -> Iterator[Effect]:
    if not run.scene.states(part, "lamp-life"):
        return
    life = _natural(run.scene, part, "lamp-life")
    burnt = plus(_natural(run.scene, part, "lamp-hours"), run.time)
    changes = wear.replacements(burnt, life)
    yield _used(run, part, ("lamp-hours", burnt), _lamp_words(burnt, life, changes))


def _lamp_words(burnt: Interval, life: Interval, changes: Interval) -> Saying:
    if surely_within(burnt, life):
        share = figure(over(burnt, life), "%", 100)
        return say(
            "at the end the lamp has burnt {share} of its life of {life}", share=share, life=_hours(life)
        )
    if not surely_above(burnt, life):
        return say(
            "the lamp may come to the end of its life of {life}: have another ready", life=_hours(life)
        )
    return say_of(
        int(changes.low or 0) if changes.low == changes.high else 0,
        "the lamp comes to the end of its life of {life}: have another ready, and let the old one cool before it is "
        "changed as its maker says",
        "the lamp comes to the end of its life of {life}, and so do those after it: have {number} ready, and let each "
        "cool before it is changed as its maker says",
        life=_hours(life),
        number=figure(changes),
    )


def _device(run: Run, part: str) -> Iterator[Effect]:
    if not run.scene.states(part, "expected-life"):
        return
    life = _natural(run.scene, part, "expected-life")
    end = plus(_natural(run.scene, part, "hours"), run.time)
    yield _used(run, part, ("hours", end), _device_words(end, life))


def _device_words(end: Interval, life: Interval) -> Saying:
    share = figure(over(end, life), "%", 100)
    if surely_within(end, life):
        return say(
            "at the end it has run {share} of its expected life of {life}", share=share, life=_hours(life)
        )
    if surely_above(end, life):
        return say(
            "before the end it has run longer than its expected life of {life}: it may fail, so have another ready",
            life=_hours(life),
        )
    return say(
        "whether it outlives its expected life of {life} cannot be said from what is given", life=_hours(life)
    )


def _used(run: Run, part: str, found: tuple[str, Interval], sentence: Saying) -> Effect:
    """Hours at the end of the run; before it, as given of what is fitted now."""
    name, end = found
    before = run.scene.bounds(part, name) if run.scene.states(part, name) else None
    missing = (*unknown_among(run.scene, part, name), *run.unsaid)
    return Effect(
        Topic.POWER,
        (part,),
        run.scene.label(name),
        "h",
        None if before is None else _hours(before).bounds,
        _hours(end).bounds,
        sentence,
        TIME,
        missing,
    )


def _film(run: Run, part: str) -> Iterator[Effect]:
    """Film and tape wear with every pass through the device."""
    subject = _stating(run.scene, part, "passes-a-copy")
    if subject is None:
        return
    life, loop = _natural(run.scene, subject, "passes-a-copy"), _loop(run.scene, part)
    passes = wear.passes(run.time, loop)
    lead = say("{passes} passes, of which a copy stands {life}", passes=figure(passes), life=figure(life))
    missing = () if known(loop) is not None else (run.scene.label("loop-length"),)
    yield _copies(run, part, wear.copies_needed(passes, life), lead, missing)


def _loop(scene: Scene, part: str) -> Interval:
    """From one start to the next, in seconds; at the recorded speed."""
    for subject in (*scene.material(part), THE_WORK):
        for name in ("loop-length", "duration"):
            if scene.states(subject, name):
                return _natural(scene, subject, name)
    return NATURAL


def _slides(run: Run, part: str) -> Iterator[Effect]:
    """Slides fade in the light of the gate."""
    subject = _stating(run.scene, part, "gate-hours")
    if subject is None:
        return
    counting = _stating(run.scene, part, "slides")
    slides = NATURAL if counting is None else _natural(run.scene, counting, "slides")
    lit, life = wear.time_in_light(run.time, slides), _natural(run.scene, subject, "gate-hours")
    lead = say("each slide is lit for {lit}, and stands {life}", lit=_hours(lit), life=_hours(life))
    missing = () if known(slides) is not None else (run.scene.label("slides"),)
    yield _copies(run, part, wear.copies_needed(lit, life), lead, missing)


def _copies(run: Run, part: str, needed: Interval, lead: Saying, missing: tuple[str, ...]) -> Effect:
    holder = _stating(run.scene, part, "copies")
    held = None if holder is None else _natural(run.scene, holder, "copies")
    unsaid = (*missing, *run.unsaid, *(() if held is not None else (run.scene.label("copies"),)))
    sentence = say("{lead}: {rest}", lead=lead, rest=_copies_words(needed, held))
    return Effect(Topic.POWER, (part,), "copies needed", "", None, needed, sentence, COPIES, unsaid)


def _copies_words(needed: Interval, held: Interval | None) -> Saying:
    if known(needed) == 1:
        return say("one lasts the run")
    if held is None:
        return say("how many are held is not said")
    if surely_within(needed, held):
        return say("no more than are held")
    if not surely_above(needed, held):
        return say("whether those held are enough cannot be said from what is given")
    more = minus(needed, held)
    return say_of(
        int(known(more) or 0),
        "one more than is held must be made, from a master that is not shown itself",
        "{more} more than are held must be made, from a master that is not shown itself",
        more=figure(more),
    )


def _hours(seconds: Interval) -> Figure:
    return figure(seconds, "h", HOURS_A_SECOND)
