"""How the stored picture meets the raster of another screen: its shape, its lines, its edges, and its fields.

Formulas: `intent.formulas.pixels`.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from intent.effects.picture.interlacing import field_effects
from intent.effects.picture.structure import overscan_of, raster_of, structure_effects
from intent.effects.scene import Scene, Sides
from intent.formulas import pixels
from intent.language.figures import figure
from intent.language.message import Message, say, say_of
from intent.model.subject import one
from intent.values.bounds import differs_by, hull, known, over, point, times
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.values.units import in_unit
from intent.variance.computed import lying_shape, turn_of_picture
from intent.variance.result import Effect, EffectTopic

ELEMENTS = say(
    "ITU-T H.264 table E-1, DV profiles and ITU-R BT.601, as quoted: 704, 720 or 702 columns for a 4:3 picture"
)
NARROWED = say("HDV and DVCPRO HD (SMPTE ST 370, from memory)")
LINES = say(
    "lines of the screen that the picture takes, over lines of the picture that lie inside its mask; as much hidden of "
    "the height as of the width, and nothing where no overscan is given; arithmetic"
)
OVERSCAN = say("arithmetic; as much hidden of the height as of the width")
TUBES = say("tubes are set to scan beyond their mask (common practice, no source)")
LINES_TO_A_LINE = say("lines of the screen to a line of the picture")
INSIDE = say("share of the picture inside the mask")
LEAST_SHARE = Fraction(1, 100)
"""Of the width, behind the mask; a change of less is not told (common practice, no source)."""


def raster_effects(sides: Sides) -> Iterator[Effect]:
    """The effects of the proposal on lines, picture elements and edges, of every display that is there before too."""
    for part in sides.proposed.running("display"):
        if sides.was_there(part.identifier) and sides.touches(part.identifier):
            yield from _elements(sides, part.identifier)
            yield from _scaling(sides, part.identifier)
            yield from field_effects(sides, part.identifier)
            yield from structure_effects(sides, part.identifier)
            yield from _edges(sides, part.identifier)


def stored_raster(scene: Scene, part: str) -> tuple[Interval, Interval] | None:
    """Columns and rows of what a display is given to show, where one raster is given."""
    found = {raster_of(scene, material) for material in scene.material(part)}
    return found.pop() if len(found) == 1 else None


def _elements(sides: Sides, part: str) -> Iterator[Effect]:
    """What shape the picture would have by each convention, where that of its picture elements is not given."""
    scene = sides.proposed
    stored = stored_raster(scene, part)
    columns, rows = (known(axis) for axis in stored) if stored else (None, None)
    if columns is None or rows is None or known(scene.bounds(part, "picture-shape")) is not None:
        return
    shapes = [columns / rows * element for element in pixels.conventional_elements(columns, rows)]
    if not shapes:
        return
    narrow = hull(point(shape) for shape in shapes)
    if rows >= pixels.SQUARE_FROM:
        yield _narrowed(scene, part, max(shapes), narrow)
        return
    wide = times(narrow, point(pixels.WIDER))
    yield Effect(
        topic=EffectTopic.PICTURE,
        subject=one(part),
        quantity=scene.called("picture-shape"),
        unit=":1",
        proposed=hull([narrow, wide]),
        sentence=say(
            "the shape of the picture elements is not given, and conventions differ: "
            "by them the picture may be {narrow}, or {wide} if it is a wide one",
            narrow=figure(narrow, ":1", digits=4),
            wide=figure(wide, ":1", digits=4),
        ),
        source=ELEMENTS,
        missing=(scene.called("pixel-aspect-ratio"),),
    )


def _narrowed(scene: Scene, part: str, wide: Fraction, shapes: Interval) -> Effect:
    """What is said of a raster in which wide pictures are stored narrowed as a rule."""
    return Effect(
        topic=EffectTopic.PICTURE,
        subject=one(part),
        quantity=scene.called("picture-shape"),
        unit=":1",
        proposed=shapes,
        sentence=say(
            "the shape of the picture elements is not given: in this raster a picture of {wide} is stored narrowed "
            "as a rule; with square elements it would be {narrow}",
            wide=figure(point(wide), ":1", digits=4),
            narrow=figure(point(min(shapes.low or wide, wide)), ":1", digits=4),
        ),
        source=NARROWED,
        missing=(scene.called("pixel-aspect-ratio"),),
    )


def _scaling(sides: Sides, part: str) -> Iterator[Effect]:
    before = _factor(sides.documented, part)
    after = _factor(sides.proposed, part)
    if after is None or after == before:
        return
    yield Effect(
        topic=EffectTopic.PICTURE,
        subject=one(part),
        quantity=LINES_TO_A_LINE,
        documented=None if before is None else point(before),
        proposed=point(after),
        sentence=_factor_words(after),
        source=LINES,
        missing=sides.proposed.unknown(part, "overscan"),
    )


def _factor(scene: Scene, part: str) -> Fraction | None:
    """How many lines of the screen show a line of the picture, turned with it where it is turned."""
    stored, fits = stored_raster(scene, part), scene.names(part, "fit")
    if stored is None or len(fits) != 1 or not scene.is_given(part, "raster"):
        return None
    columns, rows = scene.axes(part, "raster")
    shape, screen = lying_shape(scene.state, part), scene.bounds(part, "aspect-ratio")
    turn = known(turn_of_picture(scene.state, part))
    if turn is None or turn % 90:
        return None
    # a picture on its side has its lines along the columns of the screen
    lines, share = (rows, over(screen, shape)) if turn % 180 == 0 else (columns, over(shape, screen))
    shown = pixels.shown_lines(lines, share, next(iter(fits)))
    return known(pixels.scaling(shown, stored[1], overscan_of(scene, part)))


def _factor_words(factor: Fraction) -> Message:
    if factor < 1:
        return say("the screen has fewer lines for the picture than it holds: fine detail is lost")
    if pixels.whole_multiple(factor):
        return say_of(
            int(factor),
            "each line of the picture is one line of the screen",
            "each line of the picture is shown by {lines} lines of the screen, evenly",
            lines=figure(point(factor)),
        )
    few = int(factor)
    return say_of(
        few,
        "a line of the picture is shown by one line of the screen or by two, or else smoothed: "
        "fine level lines become uneven or soft",
        "a line of the picture is shown by {few} lines of the screen or by {many}, or else smoothed: "
        "fine level lines become uneven or soft",
        few=figure(point(few)),
        many=figure(point(few + 1)),
    )


def _edges(sides: Sides, part: str) -> Iterator[Effect]:
    """What of the picture's edges was hidden behind a mask, and is seen now; or the other way round."""
    before, after = sides.bounds(part, "overscan")
    was, will_be = known(before), known(after)
    if was is not None and will_be is not None and differs_by(before, after, LEAST_SHARE):
        yield Effect(
            topic=EffectTopic.PICTURE,
            subject=one(part),
            quantity=INSIDE,
            unit="%",
            documented=in_unit(pixels.seen_after_overscan(before), "%"),
            proposed=in_unit(pixels.seen_after_overscan(after), "%"),
            sentence=_edge_words(was, will_be),
            source=OVERSCAN,
        )
    elif was is None and will_be in {None, 0} and _leaves_a_tube(sides, part):
        yield Effect(
            topic=EffectTopic.PICTURE,
            subject=one(part),
            quantity=INSIDE,
            unit="%",
            sentence=say("a tube hides the edges of the picture behind its mask: here they may be seen"),
            source=TUBES,
            missing=(sides.proposed.called("overscan"),),
        )


def _edge_words(was: Fraction, will_be: Fraction) -> Message:
    if will_be > was:
        return say("more of the picture's edges is hidden")
    return say(
        "edges of the picture are seen that lay behind the mask: look there for what was not meant to be seen"
    )


def _leaves_a_tube(sides: Sides, part: str) -> bool:
    return (
        sides.documented.is_(part, "technology", "cathode-ray-tube") is Answer.IN
        and sides.proposed.is_(part, "technology", "cathode-ray-tube") is Answer.OUT
    )
