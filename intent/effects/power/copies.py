"""Copies of film, tape and slides that a run wears out, and how many more must be made."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from intent.effects.power.running import Run
from intent.effects.scene import THE_WORK, Scene
from intent.formulas import lifetimes
from intent.language.message import Figure, Saying, figure, say, say_of
from intent.values.bounds import NATURAL, is_known, known, minus, natural, surely_above, surely_within
from intent.values.regions import Interval
from intent.variance.result import Effect, EffectTopic

COPIES = (
    "arithmetic; every copy new and run at the recorded speed, no gap between rounds where none is said; the time "
    "lit is shared by the slides alike"
)
LIVES = ("passes-a-copy", "gate-hours")


@dataclass(frozen=True, slots=True)
class Copied:
    """A part through which copies run, the material of its channel, and what is stated of how long a copy lasts."""

    part: str
    subjects: tuple[str, ...]
    """The part, and then its material: a value is asked of the first of them that states it."""
    lives: tuple[str, ...]

    def stating(self, scene: Scene, characteristic: str) -> str | None:
        return _stating(scene, self.subjects, characteristic)


def copied(scene: Scene, parts: Iterable[str]) -> Iterator[Copied]:
    """The parts of which, or of whose material, it is stated how long a copy lasts."""
    by_material = any(
        scene.states(one.identifier, life) for one in scene.case.work.material for life in LIVES
    )
    for part in parts:
        lives = [life for life in LIVES if scene.states(part, life)]
        if not lives and not by_material:
            continue
        subjects = (part, *scene.material(part))
        found = tuple(life for life in LIVES if _stating(scene, subjects, life) is not None)
        if found:
            yield Copied(part, subjects, found)


def _stating(scene: Scene, subjects: Sequence[str], characteristic: str) -> str | None:
    return next((one for one in subjects if scene.states(one, characteristic)), None)


def copies_effects(run: Run, copies: Iterable[Copied]) -> Iterator[Effect]:
    for one in copies:
        if "passes-a-copy" in one.lives:
            yield _film(run, one)
        if "gate-hours" in one.lives:
            yield _slides(run, one)


def _stated(scene: Scene, one: Copied, characteristic: str) -> Interval:
    subject = one.stating(scene, characteristic)
    return NATURAL if subject is None else natural(scene.bounds(subject, characteristic))


def _film(run: Run, one: Copied) -> Effect:
    """Film and tape wear with every pass through the device."""
    life, loop = _stated(run.scene, one, "passes-a-copy"), _loop(run.scene, one)
    passes = lifetimes.passes(run.time, loop)
    lead = say("{passes} passes, of which a copy stands {life}", passes=figure(passes), life=figure(life))
    missing = () if is_known(loop) else (run.scene.label("loop-length"),)
    return _effect(run, one, lifetimes.copies_needed(passes, life), lead, missing)


def _loop(scene: Scene, one: Copied) -> Interval:
    """From one start to the next, in seconds."""
    for subject in (*one.subjects[1:], THE_WORK):
        for name in ("loop-length", "duration"):
            if scene.states(subject, name):
                return natural(scene.bounds(subject, name))
    return NATURAL


def _slides(run: Run, one: Copied) -> Effect:
    """Slides fade in the light of the gate."""
    slides, life = _stated(run.scene, one, "slides"), _stated(run.scene, one, "gate-hours")
    lit = lifetimes.time_in_light(run.time, slides)
    lead = say("each slide is lit for {lit}, and stands {life}", lit=_hours(lit), life=_hours(life))
    missing = () if is_known(slides) else (run.scene.label("slides"),)
    return _effect(run, one, lifetimes.copies_needed(lit, life), lead, missing)


def _effect(run: Run, one: Copied, needed: Interval, lead: Saying, missing: tuple[str, ...]) -> Effect:
    is_held = one.stating(run.scene, "copies") is not None
    held = _stated(run.scene, one, "copies") if is_held else None
    unsaid = (*missing, *run.unsaid, *(() if is_held else (run.scene.label("copies"),)))
    words = say("{lead}: {rest}", lead=lead, rest=_words(needed, held))
    return Effect(
        topic=EffectTopic.POWER,
        members=(one.part,),
        quantity="copies needed",
        unit="",
        documented=None,
        proposed=needed,
        sentence=words,
        source=COPIES,
        missing=unsaid,
    )


def _words(needed: Interval, held: Interval | None) -> Saying:
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
    return figure(seconds, "h", Fraction(1, 3600))
