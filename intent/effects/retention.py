"""What a picture that stands still leaves on a screen, and the traces that a screen already has."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from intent.effects.scene import Scene, Sides
from intent.regions import Interval
from intent.saying import Saying, figure, say
from intent.values import Answer
from intent.variance.result import Effect, Topic

PRACTICE = "common practice, no source"
KEEPING = ("cathode-ray-tube", "crt-projector", "plasma-panel", "oled")
"""Technologies whose screens keep a trace of what stands still on them for long (common practice, no source)."""
HOURS_A_SECOND = Fraction(1, 3600)


def retention_effects(sides: Sides, time: Interval) -> Iterator[Effect]:
    """Of every display; ``time`` is how long the work runs, in seconds."""
    for part in sides.proposed.parts("display"):
        yield from _burning(sides, part.identifier, time)
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
    told = [
        scene.is_(material, "static-picture", "yes")
        for material in scene.material(part)
        if scene.states(material, "static-picture")
    ]
    if Answer.IN in told:
        return Answer.IN
    return (
        Answer.OUT
        if told and len(told) == len(scene.material(part)) and set(told) == {Answer.OUT}
        else Answer.OPEN
    )


def _burning(sides: Sides, part: str, time: Interval) -> Iterator[Effect]:
    """Told where it is sure to be at risk, and where it was safe before and nobody says whether the picture moves."""
    scene = sides.proposed
    still, keeps = _stands_still(scene, part), keeps_traces(scene, part)
    if keeps is not Answer.IN or still is Answer.OUT:
        return
    is_new = sides.was_there(part) and keeps_traces(sides.documented, part) is Answer.OUT
    if not is_new and (still is Answer.OPEN or time.high is None):
        return
    missing = () if still is Answer.IN else (scene.label("static-picture"),)
    hours = None if time.high is None or still is Answer.OPEN else figure(time, "h", HOURS_A_SECOND).bounds
    yield Effect(
        Topic.POWER,
        (part,),
        "time of a standing picture",
        "h",
        None,
        hours,
        _burning_words(is_new, still),
        PRACTICE,
        missing,
    )


def _burning_words(is_new: bool, still: Answer) -> Saying:
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
        words, missing = say("a trace of what was shown on it before will be seen in the picture"), False
    elif before is Answer.IN and after is Answer.OUT:
        words, missing = say("the trace burnt into the documented screen is no longer seen"), False
    elif before is Answer.IN:
        words, missing = (
            say("the documented screen has a burnt-in trace, and nobody says whether this one has"),
            True,
        )
    else:
        return
    label = sides.proposed.label("burn-in")
    yield Effect(Topic.PICTURE, (part,), label, "", None, None, words, PRACTICE, (label,) if missing else ())


def _has_trace(scene: Scene, part: str) -> Answer:
    return scene.is_(part, "burn-in", "yes") if scene.states(part, "burn-in") else Answer.OPEN
