"""Which colours a display can show: of those of the documented one, and of those for which the material was made.

Formulas: `intent.formulas.gamuts`.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from fractions import Fraction
from itertools import product

from intent.effects.light.colour_spaces import WHITE, Spaces, spaces_of_display, spaces_of_material
from intent.effects.scene import Scene, Sides
from intent.effects.unsaid import Missing
from intent.formulas import gamuts
from intent.language.figures import figure
from intent.language.message import Message, say
from intent.model.subject import one
from intent.values.bounds import ONE, hull, minus, point, surely_above, surely_within
from intent.values.regions import Interval
from intent.values.units import in_unit
from intent.variance.result import Effect, EffectTopic
from intent.vocabulary.terms import Concept

PRIMARIES = say(
    "primaries of the colour space's standard; the triangle that they enclose in u′, v′ of CIE 1976 (CIE 015)"
)
MEANT = say(
    "primaries of the colour space's standard, in u′, v′ of CIE 1976 (CIE 015); where no colour space is given, those "
    "that the material's picture standard is meant for"
)
DISTANCE = say("distance in u′, v′ of CIE 1976 (CIE 015) of the whites of the colour spaces' standards")
LEAST_SHARE = Fraction(1, 100)
"""Of the colours; less is not told (common practice, no source)."""
LEAST_STEP = point(Fraction(4, 1000))
"""In u′, v′: about what is just noticed of two whites side by side (from memory, no source)."""
Compare = Callable[[Concept, Concept], Fraction]


def colour_effects(sides: Sides, part: str) -> Iterator[Effect]:
    """What becomes of the colours on a display that is there before and after, if it or its material is changed."""
    if not sides.was_there(part):
        return
    before, after = spaces_of_display(sides.documented, part), spaces_of_display(sides.proposed, part)
    if before and before != after:
        yield from _of_those_documented(sides, part, before, after)
        yield from _white(sides, part, before, after)
    yield from _of_those_of_the_material(sides, part)


def _of_those_documented(sides: Sides, part: str, before: Spaces, after: Spaces) -> Iterator[Effect]:
    area_before, area_after = _areas(before), _areas(after)
    shown, larger = _compared(_shown, before, after), _compared(_larger, before, after)
    if shown is not None and larger is not None and _is_all(shown) and _is_same(larger):
        return
    yield Effect(
        topic=EffectTopic.LIGHT,
        subject=one(part),
        quantity=say("area of the colours in u′, v′"),
        documented=area_before,
        proposed=area_after,
        sentence=_shown_words(shown, larger, _compared(_shown_plainly, before, after)),
        source=PRIMARIES,
        missing=_unsaid(sides.documented, before) or _unsaid(sides.proposed, after),
    )


def _shown_words(shown: Interval | None, larger: Interval | None, plainly: Interval | None) -> Message:
    if shown is None or larger is None or plainly is None:
        return say("which of the documented colours it shows cannot be said from what is given")
    if _is_all(shown):
        return say(
            "it shows all the documented colours, and {share} more by area: what is not converted looks more "
            "saturated",
            share=figure(minus(larger, ONE), "%"),
        )
    return say(
        "it shows {share} of the documented colours (by area in x, y of CIE 1931, {plainly})",
        share=figure(shown, "%"),
        plainly=figure(plainly, "%"),
    )


def _white(sides: Sides, part: str, before: Spaces, after: Spaces) -> Iterator[Effect]:
    step = _compared(_step, before, after)
    if step is None or not surely_above(step, LEAST_STEP):
        return
    yield Effect(
        topic=EffectTopic.LIGHT,
        subject=one(part),
        quantity=say("distance of white in u′, v′"),
        proposed=step,
        sentence=say("white has another colour than documented where the display is set by its standard"),
        source=DISTANCE,
    )


def _of_those_of_the_material(sides: Sides, part: str) -> Iterator[Effect]:
    before, after = (_material_shown(scene, part) for scene in (sides.documented, sides.proposed))
    if after is None or before == after or (before is None and _is_all(after)):
        return
    scene = sides.proposed
    yield Effect(
        topic=EffectTopic.LIGHT,
        subject=one(part),
        quantity=say("the material's colours that it shows"),
        unit="%",
        documented=None if before is None else in_unit(before, "%"),
        proposed=in_unit(after, "%"),
        sentence=say("the rest of the colours for which the material was made are drawn in to its own")
        if not _is_all(after)
        else say("it shows all the colours for which the material was made"),
        source=MEANT,
        missing=_unsaid(scene, spaces_of_display(scene, part)) or _material_unsaid(scene, part),
    )


def _material_shown(scene: Scene, part: str) -> Interval | None:
    return _compared(_shown, spaces_of_material(scene, part), spaces_of_display(scene, part))


def _compared(compare: Compare, wanted: Spaces, shown: Spaces) -> Interval | None:
    """What a comparison gives whichever of the colour spaces it may be; none where either is not known."""
    if not wanted or not shown:
        return None
    return hull(point(compare(one, two)) for one, two in product(wanted, shown))


def _shown(wanted: Concept, shown: Concept) -> Fraction:
    return gamuts.shared(shown.chromaticities[:WHITE], wanted.chromaticities[:WHITE], gamuts.uniform)


def _shown_plainly(wanted: Concept, shown: Concept) -> Fraction:
    return gamuts.shared(shown.chromaticities[:WHITE], wanted.chromaticities[:WHITE], gamuts.plain)


def _larger(before: Concept, after: Concept) -> Fraction:
    return _area(after) / _area(before)


def _area(space: Concept) -> Fraction:
    return gamuts.area(space.chromaticities[:WHITE], gamuts.uniform)


def _areas(spaces: Spaces) -> Interval | None:
    return hull(point(_area(space)) for space in spaces) if spaces else None


def _step(before: Concept, after: Concept) -> Fraction:
    return gamuts.apart(before.chromaticities[WHITE], after.chromaticities[WHITE])


def _is_all(shown: Interval) -> bool:
    return surely_within(point(1 - LEAST_SHARE), shown)


def _is_same(larger: Interval) -> bool:
    return Interval(1 - LEAST_SHARE, 1 + LEAST_SHARE).holds(larger)


def _unsaid(scene: Scene, spaces: Spaces) -> Missing:
    """The colour space, where it is not given or may be one of several."""
    return () if len(spaces) == 1 else (scene.called("colour-space"),)


def _material_unsaid(scene: Scene, part: str) -> Missing:
    """The colour space of material of which none is given, so that its standard's is taken."""
    return tuple(
        dict.fromkeys(
            label for material in scene.material(part) for label in scene.unknown(material, "colour-space")
        )
    )
