"""Interlaced material on a screen that shows whole frames: what the way of making frames of fields does to movement."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from intent.effects.scene import Scene, Sides
from intent.language.message import Message, say
from intent.model.subject import one
from intent.values.sets import Answer
from intent.variance.result import Effect, EffectTopic

SOURCE = say(
    "definitions of the methods; material of 525 or 625 lines is interlaced where nothing else is said"
)
PROGRESSIVE = ("flat-panel", "led-wall", "lcd-projector", "lcos-projector", "micromirror-projector")
"""Technologies that show all lines at once (common practice, no source)."""
EACH_FIELD = "bob"
"""The method by which every field becomes a frame (definition of the vocabulary)."""
METHODS: Mapping[str, Message] = {
    "deinterlacing-none": say(
        "the material is interlaced, the screen is not, and nothing is set to make frames of the fields"
    ),
    "weave": say("two fields are put together: what moves shows combed edges"),
    EACH_FIELD: say(
        "every field becomes a frame: movement stays fluid, still edges shiver, half the lines are made up"
    ),
    "field-blend": say("two fields are mixed: what moves is blurred"),
    "single-field": say("one field of two is thrown away: half the lines and half the movement are lost"),
    "motion-adaptive": say("what is still keeps all its lines, what moves loses half of them"),
    "motion-compensated": say(
        "movement is followed and lines computed: it stays fluid, with faults about what is fast"
    ),
}
"""What each method does to the picture."""
UNSURE = say(
    "the material is interlaced and the screen is not: whether movement stays fluid, combs or blurs depends on "
    "how frames are made of the fields"
)


def field_effects(sides: Sides, part: str) -> Iterator[Effect]:
    """What becomes of the fields, where they come to a screen without any, or frames are made of them otherwise."""
    if not _is_progressive(sides.proposed, part) or not _is_interlaced(sides.proposed, part):
        return
    before = _method(sides.documented, part) if _is_progressive(sides.documented, part) else ""
    after = _method(sides.proposed, part)
    if before == after:
        return
    label = sides.proposed.called("deinterlacing")
    yield Effect(
        topic=EffectTopic.PICTURE,
        subject=one(part),
        quantity=label,
        sentence=METHODS.get(after or "", UNSURE),
        source=SOURCE,
        missing=() if after else (label,),
    )


def shows_each_field(scene: Scene, part: str) -> bool:
    """Whether every field of the material becomes a frame of its own on a screen that shows whole frames."""
    return _is_progressive(scene, part) and _is_interlaced(scene, part) and _method(scene, part) == EACH_FIELD


def _is_progressive(scene: Scene, part: str) -> bool:
    """Whether a screen surely shows whole frames."""
    if scene.is_given(part, "interlacing"):
        return scene.is_(part, "interlacing", "progressive") is Answer.IN
    return any(scene.is_(part, "technology", name) is Answer.IN for name in PROGRESSIVE)


def _is_interlaced(scene: Scene, part: str) -> bool:
    """Whether the material shown surely holds fields."""
    return any(
        scene.is_(material, "interlacing", "interlaced") is Answer.IN
        if scene.is_given(material, "interlacing")
        else scene.is_(material, "standard", "standard-definition") is Answer.IN
        for material in scene.material(part)
    )


def _method(scene: Scene, part: str) -> str | None:
    """How frames are made of fields, by the display or by what plays the same material to it; none if not given."""
    if scene.is_given(part, "deinterlacing"):
        return _single(scene.names(part, "deinterlacing"))
    shown = set(scene.material(part))
    givers = (
        other.identifier
        for other in scene.parts("player", "converter")
        if scene.is_given(other.identifier, "deinterlacing") and shown & set(scene.material(other.identifier))
    )
    found = next(givers, None)
    return None if found is None else _single(scene.names(found, "deinterlacing"))


def _single(names: frozenset[str]) -> str | None:
    return next(iter(names)) if len(names) == 1 else None
