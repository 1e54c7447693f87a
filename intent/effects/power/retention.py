"""What a picture that stands still leaves on a screen, and the traces that a screen already has."""

from __future__ import annotations

from collections.abc import Iterator

from intent.effects.power.running import Run
from intent.effects.scene import Scene, Sides
from intent.language.message import Message, say
from intent.model.subject import one
from intent.values.sets import Answer
from intent.values.units import in_unit
from intent.variance.result import Effect, EffectTopic

PRACTICE = say("common practice, no source")
KEEPING = ("cathode-ray-tube", "crt-projector", "plasma-panel", "oled")
"""Technologies whose screens keep a trace of what stands still on them for long (common practice, no source)."""


def retention_effects(sides: Sides, run: Run) -> Iterator[Effect]:
    """What stands still on each display for long, and the traces that come or go with the device."""
    for part in sides.proposed.running("display"):
        yield from _burning(sides, part.identifier, run)
        if sides.was_there(part.identifier) and sides.touches(part.identifier):
            yield from _trace(sides, part.identifier)


def keeps_traces(scene: Scene, part: str) -> Answer:
    """Whether the screen is of a technology that keeps a trace."""
    if not scene.states(part, "technology"):
        return Answer.OPEN
    answers = [scene.is_(part, "technology", technology) for technology in KEEPING]
    if Answer.IN in answers:
        return Answer.IN
    return Answer.OPEN if Answer.OPEN in answers else Answer.OUT


def _stands_still(scene: Scene, part: str) -> Answer:
    """Whether anything that the part shows stands still for long."""
    shown = scene.material(part)
    told = [
        scene.is_(material, "static-picture", "yes")
        for material in shown
        if scene.states(material, "static-picture")
    ]
    if Answer.IN in told:
        return Answer.IN
    return Answer.OUT if told == [Answer.OUT] * len(shown) and shown else Answer.OPEN


def _burning(sides: Sides, part: str, run: Run) -> Iterator[Effect]:
    """A picture that may burn in: where it surely stands still, or where the screen before could not keep a trace."""
    scene = sides.proposed
    if keeps_traces(scene, part) is not Answer.IN:
        return
    still = _stands_still(scene, part)
    is_new = sides.was_there(part) and keeps_traces(sides.documented, part) is Answer.OUT
    if still is Answer.OUT or (not is_new and (still is Answer.OPEN or not run.is_timed)):
        return
    is_sure = still is Answer.IN
    yield Effect(
        topic=EffectTopic.POWER,
        subject=one(part),
        quantity=say("time of a standing picture"),
        unit="h",
        proposed=in_unit(run.time, "h") if run.is_timed and is_sure else None,
        sentence=_burning_words(is_new, still),
        source=PRACTICE,
        missing=() if is_sure else (scene.called("static-picture"),),
    )


def _burning_words(is_new: bool, still: Answer) -> Message:
    if still is Answer.OPEN:
        return say("its screen keeps a trace of what stands still for long, as the documented one does not")
    if is_new:
        return say("it may burn into this screen for good, as it does not into the documented one")
    return say(
        "it may burn into the screen for good: less light, or rests, where the work allows them, spare it"
    )


def _trace(sides: Sides, part: str) -> Iterator[Effect]:
    """The trace of an earlier picture that comes or goes with the device."""
    before, after = _has_trace(sides.documented, part), _has_trace(sides.proposed, part)
    if before == after:
        return
    if after is Answer.IN:
        words = say("a trace of what was shown on it before will be seen in the picture")
    elif before is Answer.IN and after is Answer.OUT:
        words = say("the trace burnt into the documented screen is no longer seen")
    elif before is Answer.IN:
        words = say("the documented screen has a burnt-in trace, and nobody says whether this one has")
    else:
        return
    label = sides.proposed.called("burn-in")
    yield Effect(
        topic=EffectTopic.PICTURE,
        subject=one(part),
        quantity=label,
        sentence=words,
        source=PRACTICE,
        missing=(label,) if after is Answer.OPEN else (),
    )


def _has_trace(scene: Scene, part: str) -> Answer:
    return scene.is_(part, "burn-in", "yes") if scene.states(part, "burn-in") else Answer.OPEN
