"""The characteristics that follow from others, one function each: what a state gives without saying it.

A value that is stated goes before the one computed. What is less well known never gives a narrower answer, so
that a cell left blank cannot make a proposal acceptable.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from fractions import Fraction

from intent.formulas import directions, electricity, photometry, pixels, shapes
from intent.names import THE_VENUE, THE_WORK, term_iri
from intent.values.bounds import NATURAL, hull, known, minus, natural, over, plus, point, smaller, times
from intent.values.regions import EVERYTHING, Interval, Region, arc, region
from intent.variance.giving import GivesValues, bounds_of, is_stated, names_of
from intent.vocabulary.named_term import local_name

HOURS_A_DAY, SECONDS_AN_HOUR = 24, 3600
_NO_TURN = _NO_GAP = point(0)


def computed_region(term: str, state: GivesValues, subject: str, every: Region) -> Region:
    """The values that a characteristic has in a state where none is stated; ``every`` where none follows."""
    formula = FORMULAS.get(local_name(term))
    if formula is None:
        return every
    found = formula(state, subject)
    if len(every.whole) == 1 and every.whole[0].high == 360 and known(found) is not None:
        return region(arc(found.low or Fraction(0), found.high or Fraction(0)), every)
    return region([(found,)], every)


def _height(state: GivesValues, subject: str) -> Interval:
    """The height of a part is the y of its position."""
    return _place(state, subject, "position")[1]


def _loop_length(state: GivesValues, subject: str) -> Interval:
    """From one start to the next: the duration, and the gap after it; of the work as a whole no gap is told apart."""
    gap = _NO_GAP if subject == THE_WORK else bounds_of(state, subject, "loop-gap")
    return plus(bounds_of(state, subject, "duration"), gap)


def _throw_distance(state: GivesValues, subject: str) -> Interval:
    """How far the lens is before the plane of the picture, whichever way that looks."""
    turns = (bounds_of(state, subject, turn) for turn in ("facing", "tilt", "rotation"))
    way = directions.way(_place(state, subject, "position"), _place(state, subject, "lens-position"))
    return natural(directions.looking(*turns).parts_of(way)[-1])


def _place(state: GivesValues, subject: str, term: str) -> directions.Arrow:
    value = state.value(subject, state.vocabulary.characteristics[term_iri(term)])
    if not isinstance(value, Region) or len(value.whole) < 3:
        return EVERYTHING, EVERYTHING, EVERYTHING
    x, y, z = (Region(tuple((box[axis],) for box in value.boxes)).bounds for axis in range(3))
    return x, y, z


def _visible_width(state: GivesValues, subject: str) -> Interval:
    """From the diagonal; where that is not known from the height, or from how far the picture is thrown."""
    diagonal, shape = _screen(state, subject)
    if diagonal.high is not None:
        return shapes.width(diagonal, shape)
    if is_stated(state, subject, "visible-height"):
        return times(bounds_of(state, subject, "visible-height"), shape)
    distance, ratio = bounds_of(state, subject, "throw-distance"), bounds_of(state, subject, "throw-ratio")
    return shapes.thrown_width(distance, ratio)


def _visible_height(state: GivesValues, subject: str) -> Interval:
    diagonal, shape = _screen(state, subject)
    if diagonal.high is not None:
        return shapes.height(diagonal, shape)
    return over(bounds_of(state, subject, "visible-width"), shape)


def _screen(state: GivesValues, subject: str) -> tuple[Interval, Interval]:
    return bounds_of(state, subject, "visible-diagonal"), bounds_of(state, subject, "aspect-ratio")


def _screen_area(state: GivesValues, subject: str) -> Interval:
    """Exactly from the diagonal, for no root is taken; from the sides where that is not known."""
    diagonal, shape = _screen(state, subject)
    return times(*_sides(state, subject)) if diagonal.high is None else shapes.area(diagonal, shape)


def _picture_shape(state: GivesValues, subject: str) -> Interval:
    """The shape of what the channel shows; with no raster stated, that of the documented screen."""
    shapes = [_stored_shape(state, material) for material in state.material_of(subject)]
    told = [shape for shape in shapes if shape is not None]
    return hull(told) if told else bounds_of(state.documented or state, subject, "aspect-ratio")


def _stored_shape(state: GivesValues, material: str) -> Interval | None:
    if not (is_stated(state, material, "raster") or is_stated(state, material, "active-raster")):
        return None
    term = "active-raster" if is_stated(state, material, "active-raster") else "raster"
    value = state.value(material, state.vocabulary.characteristics[term_iri(term)])
    if not isinstance(value, Region) or len(value.boxes) != 1:
        return NATURAL
    columns, rows = value.boxes[0]
    if is_stated(state, material, "pixel-aspect-ratio"):
        pixel = bounds_of(state, material, "pixel-aspect-ratio")
    else:
        pixel = pixels.elements_unsaid(columns, rows)
    return shapes.stored_shape(columns, rows, pixel)


def turn_of_picture(state: GivesValues, subject: str) -> Interval:
    """How far the picture is turned on the screen; not at all where nothing is said."""
    return (
        bounds_of(state, subject, "picture-turn") if is_stated(state, subject, "picture-turn") else _NO_TURN
    )


def lying_shape(state: GivesValues, subject: str) -> Interval:
    """The shape of the picture as it lies on the screen."""
    return shapes.turned_shape(bounds_of(state, subject, "picture-shape"), turn_of_picture(state, subject))


def _by_fit(state: GivesValues, subject: str, formulas: Mapping[str, Interval]) -> Interval:
    """What holds for every fit that there may be."""
    fits = [local_name(fit) for fit in names_of(state, subject, "fit")]
    return hull([formulas[fit] for fit in fits if fit in formulas] or formulas.values())


def _picture_area(state: GivesValues, subject: str) -> Interval:
    screen = _screen_area(state, subject)
    share = shapes.filled_share(lying_shape(state, subject), bounds_of(state, subject, "aspect-ratio"))
    return _by_fit(state, subject, {"whole": times(screen, share), "cropped": screen, "stretched": screen})


def _picture_width(state: GivesValues, subject: str) -> Interval:
    return shapes.turned_side(*_on_screen(state, subject), turn_of_picture(state, subject))


def _picture_height(state: GivesValues, subject: str) -> Interval:
    across, upright = _on_screen(state, subject)
    return shapes.turned_side(upright, across, turn_of_picture(state, subject))


def _on_screen(state: GivesValues, subject: str) -> tuple[Interval, Interval]:
    """How much of the screen's width and of its height the picture takes, whichever way it is turned on it."""
    sides, lying = _sides(state, subject), lying_shape(state, subject)
    whole = shapes.shown_width(*sides, lying), shapes.shown_height(*sides, lying)
    across, upright = (
        _by_fit(state, subject, {"whole": shown, "cropped": side, "stretched": side})
        for shown, side in zip(whole, sides, strict=True)
    )
    return across, upright


def _sides(state: GivesValues, subject: str) -> tuple[Interval, Interval]:
    return bounds_of(state, subject, "visible-width"), bounds_of(state, subject, "visible-height")


def _lost_share(state: GivesValues, subject: str) -> Interval:
    share = shapes.filled_share(lying_shape(state, subject), bounds_of(state, subject, "aspect-ratio"))
    lost = minus(point(1), share)
    return _by_fit(state, subject, {"whole": point(0), "cropped": lost, "stretched": point(0)})


def _distortion(state: GivesValues, subject: str) -> Interval:
    drawn = shapes.distortion(lying_shape(state, subject), bounds_of(state, subject, "aspect-ratio"))
    return _by_fit(state, subject, {"whole": point(0), "cropped": point(0), "stretched": drawn})


def _picture_rotation(state: GivesValues, subject: str) -> Interval:
    device, turn = known(bounds_of(state, subject, "rotation")), known(turn_of_picture(state, subject))
    return EVERYTHING if device is None or turn is None else point((device + turn) % 360)


def _contrast(state: GivesValues, subject: str) -> Interval:
    return photometry.contrast(white_of(state, subject), bounds_of(state, subject, "black-level"))


def _room_contrast(state: GivesValues, subject: str) -> Interval:
    return contrast_in(state, subject, light_on(state, subject))


def contrast_in(state: GivesValues, subject: str, illuminance: Interval) -> Interval:
    """The contrast that is left of a display in some light."""
    throws_back = smaller(bounds_of(state, subject, "reflectance"), point(1))
    reflected = photometry.reflected_luminance(throws_back, illuminance)
    return photometry.contrast(white_of(state, subject), black_of(state, subject), reflected)


def white_of(state: GivesValues, subject: str) -> Interval:
    """The white of a display in the dark: as stated, or from the light that it throws on a screen."""
    if is_stated(state, subject, "luminance") or not is_stated(state, subject, "light-output"):
        return natural(bounds_of(state, subject, "luminance"))
    thrown, gain = bounds_of(state, subject, "light-output"), bounds_of(state, subject, "screen-gain")
    return photometry.projected_luminance(thrown, _screen_area(state, subject), gain)


def black_of(state: GivesValues, subject: str) -> Interval:
    """The black of a display in the dark: as stated, or from its contrast."""
    if is_stated(state, subject, "black-level"):
        return bounds_of(state, subject, "black-level")
    if is_stated(state, subject, "contrast"):
        return photometry.black_from(white_of(state, subject), bounds_of(state, subject, "contrast"))
    return NATURAL


def light_on(state: GivesValues, subject: str) -> Interval:
    """The light that falls on a part: as stated of it, else that of the room."""
    own = is_stated(state, subject, "illuminance")
    return bounds_of(state, subject, "illuminance") if own else bounds_of(state, THE_VENUE, "ambient-light")


def _light_dose(state: GivesValues, subject: str) -> Interval:
    """The light of the room falls on an object while the venue is open, however long the work runs."""
    return photometry.dose(light_on(state, subject), _time_open(state))


def _time_in_operation(state: GivesValues, _subject: str) -> Interval:
    """The time that it is open; all of every day where it runs continuously, at most that where it runs on demand.

    Where nobody said when it runs, all that it may be.
    """
    time = _time_open(state)
    by_running = {
        "continuous": times(state.days, point(HOURS_A_DAY * SECONDS_AN_HOUR)),
        "opening-hours": time,
        "on-demand": Interval(Fraction(0), time.high),
    }
    named = (local_name(name) for name in names_of(state, THE_WORK, "running"))
    return hull([by_running[name] for name in named if name in by_running] or by_running.values())


def _time_open(state: GivesValues) -> Interval:
    """The hours of each day on which it is open, and the days; of a work that runs while it is open, its own time."""
    runs = names_of(state, THE_WORK, "running")
    if is_stated(state, THE_WORK, "time-in-operation") and runs == {term_iri("opening-hours")}:
        return bounds_of(state, THE_WORK, "time-in-operation")
    stated = is_stated(state, THE_VENUE, "days-open")
    days = bounds_of(state, THE_VENUE, "days-open") if stated else Interval(Fraction(0), state.days.high)
    hours = smaller(bounds_of(state, THE_VENUE, "opening-time"), point(HOURS_A_DAY * SECONDS_AN_HOUR))
    return times(days, hours)


def _heat_output(state: GivesValues, subject: str) -> Interval:
    """What a device takes in it gives to the room as heat, sooner or later."""
    return bounds_of(state, subject, "power")


def _apparent_power(state: GivesValues, subject: str) -> Interval:
    """From power and power factor, and from a rated current that is stated; where the two disagree, from that."""
    by_factor = electricity.apparent_power(
        bounds_of(state, subject, "power"), bounds_of(state, subject, "power-factor")
    )
    if not is_stated(state, subject, "rated-current"):
        return by_factor
    by_current = times(bounds_of(state, subject, "rated-current"), bounds_of(state, subject, "rated-voltage"))
    both = by_factor.meet(by_current)
    return by_current if both.is_empty else both


def _rated_current(state: GivesValues, subject: str) -> Interval:
    apparent, voltage = (bounds_of(state, subject, name) for name in ("apparent-power", "rated-voltage"))
    return electricity.current(apparent, voltage)


def _standing_area(state: GivesValues, subject: str) -> Interval:
    return times(bounds_of(state, subject, "outer-width"), bounds_of(state, subject, "outer-depth"))


FORMULAS: Mapping[str, Callable[[GivesValues, str], Interval]] = {
    "height": _height,
    "loop-length": _loop_length,
    "throw-distance": _throw_distance,
    "visible-width": _visible_width,
    "visible-height": _visible_height,
    "picture-shape": _picture_shape,
    "picture-area": _picture_area,
    "picture-width": _picture_width,
    "picture-height": _picture_height,
    "lost-share": _lost_share,
    "distortion": _distortion,
    "picture-rotation": _picture_rotation,
    "contrast": _contrast,
    "room-contrast": _room_contrast,
    "light-dose": _light_dose,
    "time-in-operation": _time_in_operation,
    "heat-output": _heat_output,
    "apparent-power": _apparent_power,
    "rated-current": _rated_current,
    "standing-area": _standing_area,
}
"""By the local name of the characteristic; the vocabulary marks the same ones as computed."""
