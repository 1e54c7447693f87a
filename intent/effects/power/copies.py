"""Copies of film, tape and slides that a run wears out, and how many more must be made."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from intent.effects.power.running import Run
from intent.effects.scene import Scene
from intent.effects.signal.rounds import recorded_round
from intent.effects.unsaid import Missing
from intent.formulas import lifetimes
from intent.language.figures import counted, figure
from intent.language.message import Message, say, say_of
from intent.model import subject
from intent.names import THE_WORK
from intent.values.bounds import NATURAL, ONE, is_known, minus, natural, surely_above, surely_within
from intent.values.regions import Interval
from intent.variance.result import Effect, EffectTopic

COPIES = say(
    "arithmetic; every copy new and run at the recorded speed, no gap between rounds where none is said; the time "
    "lit is shared by the slides alike"
)
LIVES = ("passes-a-copy", "gate-hours")
"""What may be stated of how long a copy lasts: in passes through the device, or in hours in the light of the gate."""


@dataclass(frozen=True, slots=True)
class Copied:
    """A part through which copies run."""

    part: str
    material: tuple[str, ...]
    """What its channel shows or sounds."""
    lives: tuple[str, ...]
    """Those of `LIVES` that are stated of it: how long a copy lasts."""

    def stating(self, scene: Scene, characteristic: str) -> str | None:
        """The first of the part and its material of which a value is stated."""
        return _stating(scene, (self.part, *self.material), characteristic)


def copied(scene: Scene, parts: Iterable[str]) -> Iterator[Copied]:
    """The parts of which, or of whose material, it is stated how long a copy lasts."""
    by_material = any(
        scene.states(one.identifier, life) for one in scene.case.work.material for life in LIVES
    )
    for part in parts:
        lives = [life for life in LIVES if scene.states(part, life)]
        if not lives and not by_material:
            continue
        material = scene.material(part)
        found = tuple(life for life in LIVES if _stating(scene, (part, *material), life) is not None)
        if found:
            yield Copied(part, material, found)


def _stating(scene: Scene, subjects: Sequence[str], characteristic: str) -> str | None:
    return next((one for one in subjects if scene.states(one, characteristic)), None)


def copies_effects(run: Run, copies: Iterable[Copied]) -> Iterator[Effect]:
    """How many copies of film, tape or slides the run takes."""
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
    stated = recorded_round(run.scene, one.part, *one.material, THE_WORK)
    loop = NATURAL if stated is None else natural(stated)
    passes, life = lifetimes.passes(run.time_of(one.part), loop), _stated(run.scene, one, "passes-a-copy")
    run_through = figure(passes)
    lead = say_of(
        counted(run_through),
        "{passes} pass, of which a copy stands {life}",
        "{passes} passes, of which a copy stands {life}",
        passes=run_through,
        life=figure(life),
    )
    missing = () if is_known(loop) else (run.scene.called("loop-length"),)
    return _effect(run, one, needed=lifetimes.copies_needed(passes, life), lead=lead, missing=missing)


def _slides(run: Run, one: Copied) -> Effect:
    """Slides fade in the light of the gate."""
    slides, life = _stated(run.scene, one, "slides"), _stated(run.scene, one, "gate-hours")
    lit = lifetimes.time_in_light(run.time_of(one.part), slides)
    lead = say("each slide is lit for {lit}, and stands {life}", lit=figure(lit, "h"), life=figure(life, "h"))
    missing = () if is_known(slides) else (run.scene.called("slides"),)
    return _effect(run, one, needed=lifetimes.copies_needed(lit, life), lead=lead, missing=missing)


def _effect(run: Run, one: Copied, *, needed: Interval, lead: Message, missing: Missing) -> Effect:
    is_held = one.stating(run.scene, "copies") is not None
    held = _stated(run.scene, one, "copies") if is_held else None
    unsaid = (*missing, *run.unsaid, *(() if is_held else (run.scene.called("copies"),)))
    return Effect(
        topic=EffectTopic.POWER,
        subject=subject.one(one.part),
        quantity=say("copies needed"),
        proposed=needed,
        sentence=say("{lead}: {rest}", lead=lead, rest=_words(needed, held)),
        source=COPIES,
        missing=unsaid,
    )


def _words(needed: Interval, held: Interval | None) -> Message:
    if needed == ONE:
        return say("one lasts the run")
    if held is None:
        return say("how many are held is not said")
    if surely_within(needed, held):
        return say("no more than are held")
    if not surely_above(needed, held):
        return say("whether those held are enough cannot be said from what is given")
    more = figure(minus(needed, held))
    return say_of(
        counted(more),
        "one more than is held must be made, from a master that is not shown itself",
        "{more} more than are held must be made, from a master that is not shown itself",
        more=more,
    )
