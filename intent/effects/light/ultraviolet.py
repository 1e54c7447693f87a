"""Ultraviolet on objects: its proportion in the light of the room and of the work's lamps, against what they may have.

Formulas: `intent.formulas.photometry`.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from intent.effects.limits_kept import Input, Limited, at_most, inputs, obstacles
from intent.effects.scene import Scene, Sides
from intent.effects.unsaid import Missing
from intent.formulas import photometry
from intent.language.figures import figure
from intent.language.message import Message, say
from intent.model.subject import one
from intent.names import THE_VENUE
from intent.values.bounds import NATURAL, hull, natural
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.variance.computed import light_on
from intent.variance.obstacle import Obstacle
from intent.variance.result import Effect, EffectTopic

CONTENT, LIMIT, UNIT = "ultraviolet-content", "ultraviolet-limit", "µW/lm"
UNHARMED = "responsivity-none"
MIXED = say(
    "light of several sources has a proportion of ultraviolet between the least and the greatest of theirs; arithmetic"
)
OWN, USUAL = (
    say("limit stated of the object"),
    say(
        "75 µW/lm, long usual in museums, many of which ask for less today (G. Thomson, The Museum Environment, from "
        "memory)"
    ),
)


@dataclass(frozen=True, slots=True)
class _Allowed:
    """How much ultraviolet an object may have to each lumen, and whether that is stated of it."""

    most: Interval
    is_own: bool


def ultraviolet_effects(sides: Sides) -> Iterator[Effect | Obstacle]:
    """The ultraviolet on every part with a limit, or with a class of responsivity that light harms."""
    for part in sides.proposed.parts():
        allowed = _allowed(sides.proposed, part.identifier)
        if allowed is not None:
            yield from _on(sides, part.identifier, allowed)


def _allowed(scene: Scene, part: str) -> _Allowed | None:
    if scene.states(part, LIMIT):
        return _Allowed(scene.bounds(part, LIMIT), is_own=True)
    classes = scene.stated_names(part, "light-responsivity")
    return _Allowed(photometry.USUAL_ULTRAVIOLET, is_own=False) if classes - {UNHARMED} else None


def _on(sides: Sides, part: str, allowed: _Allowed) -> Iterator[Effect | Obstacle]:
    scene = sides.proposed
    content = _content(scene)
    answer = at_most(content, allowed.most)
    if allowed.is_own:
        yield from obstacles(sides, answer, _limited(sides, part, content, allowed))
    if answer is Answer.IN or not any(scene.states(source, CONTENT) for source in _sources(scene)):
        return
    yield Effect(
        topic=EffectTopic.LIGHT,
        subject=one(part),
        quantity=scene.called(CONTENT),
        unit=UNIT,
        proposed=content,
        sentence=_words(scene, part, answer, allowed),
        source=say("{mixed}; {limit}", mixed=MIXED, limit=OWN if allowed.is_own else USUAL),
        missing=_missing(scene),
    )


def _sources(scene: Scene) -> tuple[str, ...]:
    """What lights an object: the room, and the lamps of the work."""
    return (THE_VENUE, *(lamp.identifier for lamp in scene.parts("lamp")))


def _content(scene: Scene) -> Interval:
    return natural(
        hull(
            scene.bounds(source, CONTENT) if scene.states(source, CONTENT) else NATURAL
            for source in _sources(scene)
        )
    )


def _words(scene: Scene, part: str, answer: Answer, allowed: _Allowed) -> Message:
    limit = figure(allowed.most, UNIT)
    if answer is Answer.OPEN:
        return say("whether that is no more than {limit} cannot be said from what is given", limit=limit)
    lit = light_on(scene.state, part)
    if lit.high is None:
        return say(
            "more ultraviolet than {limit}: filter the lamps and windows, or choose others", limit=limit
        )
    return say(
        "more ultraviolet than {limit}, {irradiance} of it on the object: filter the lamps and windows, or choose "
        "others",
        limit=limit,
        irradiance=figure(photometry.ultraviolet_irradiance(lit, _content(scene)), "mW/m²"),
    )


def _limited(sides: Sides, part: str, content: Interval, allowed: _Allowed) -> Limited:
    return Limited(
        slug="ultraviolet",
        subject=one(part),
        inputs=[*_inputs(sides), *inputs(sides, part, LIMIT, "presence")],
        sure=say(
            "the light at the venue has {content} of ultraviolet, above the limit of {limit} set for the object",
            content=figure(content, UNIT),
            limit=figure(allowed.most, UNIT),
        ),
        unsure=say("whether it gets no more ultraviolet than it may have cannot be said from what is given"),
    )


def _inputs(sides: Sides) -> tuple[Input, ...]:
    return tuple(each for source in _sources(sides.proposed) for each in inputs(sides, source, CONTENT))


def _missing(scene: Scene) -> Missing:
    return (
        () if all(scene.states(source, CONTENT) for source in _sources(scene)) else (scene.called(CONTENT),)
    )
