"""From which side visitors look at a screen, and whether it keeps its contrast and colour there.

Formulas: `intent.formulas.directions`.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from intent.effects.limits_kept import at_most, every
from intent.effects.picture.facing_ways import TURNS, at, usual_looking
from intent.effects.scene import Scene, Sides
from intent.effects.unsaid import Missing
from intent.formulas import directions
from intent.formulas.directions import Arrow
from intent.language.figures import figure
from intent.language.message import Message, say
from intent.model.subject import one
from intent.names import THE_VENUE
from intent.values.bounds import between, differs_by, scaled
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.variance.result import Effect, EffectTopic

FROM_THE_MIDDLE = say(
    "the angle between the way in which the screen looks and that from the middle of its picture to visitors' eyes; "
    "geometry; a screen is taken to look straight ahead, and to stand upright, where nothing is said, and the "
    "documented one to be looked at from the same place"
)
HALF = Fraction(1, 2)
"""Of an angle from side to side: what it is to either side."""
LEAST_ANGLE = Fraction(5)
"""In degrees: the vocabulary's tolerance of a viewing angle (common practice, no source)."""
ANGLES = ("viewing-angle", "vertical-viewing-angle")
ANY_ANGLE = between(0, 180)
OFF_ITS_AXIS = say("looked at from off its axis")


def aside_effects(sides: Sides) -> Iterator[Effect]:
    """Every screen of which a viewing angle is stated, where visitors look at it otherwise, or from outside that."""
    for part in sides.proposed.parts("display", "screen"):
        name = part.identifier
        if any(scene.states(name, angle) for angle in ANGLES for scene in (sides.proposed, sides.documented)):
            yield from _looked_at(sides, name)


def _looked_at(sides: Sides, part: str) -> Iterator[Effect]:
    scene = sides.proposed
    is_changed = sides.touches(part)
    answers, after = _answers(scene, part), _angle(scene, scene, part)
    answer = every(answers.values()) if answers else Answer.OPEN
    before = _angle(sides.documented, scene, part) if sides.was_there(part) else None
    is_moved = before is not None and differs_by(before, after, LEAST_ANGLE)
    if answer is Answer.IN and not is_moved:
        return
    if answer is Answer.OPEN and not is_changed and not scene.states(THE_VENUE, "visitor-position"):
        return
    yield Effect(
        topic=EffectTopic.PICTURE,
        subject=one(part),
        quantity=OFF_ITS_AXIS,
        unit="°",
        documented=before if is_moved else None,
        proposed=None if after == ANY_ANGLE else after,
        sentence=_words(scene, part, answers),
        source=FROM_THE_MIDDLE,
        missing=_missing(scene, part),
    )


def _answers(scene: Scene, part: str) -> dict[str, Answer]:
    """Whether visitors stand within each angle that is stated, within which the screen keeps contrast and colour."""
    across, up, ahead = _eyes(scene, scene, part)
    return {
        angle: at_most(directions.off_axis(aside, ahead), scaled(scene.bounds(part, angle), HALF))
        for angle, aside in zip(ANGLES, (across, up), strict=True)
        if scene.states(part, angle)
    }


def _angle(scene: Scene, place: Scene, part: str) -> Interval:
    across, up, ahead = _eyes(scene, place, part)
    return directions.off_axis(directions.distance_aside(across, up), ahead)


def _eyes(scene: Scene, place: Scene, part: str) -> Arrow:
    """How far the eyes of visitors lie across, above and ahead of a screen, along its own axes."""
    return usual_looking(scene, part).parts_of(
        directions.way(at(scene, part, "position"), at(place, THE_VENUE, "visitor-position"))
    )


def _words(scene: Scene, part: str, answers: Mapping[str, Answer]) -> Message:
    """By the angle that is surely not kept, else by one of which that is open, else by the first."""
    if not answers:
        return say("nobody says from how far aside it keeps its contrast and colour")
    answer = every(answers.values())
    told = next(angle for angle, found in answers.items() if found is answer)
    limit = figure(scene.bounds(part, told), "°")
    if answer is Answer.OUT:
        return say(
            "visitors look at it from outside its viewing angle of {angle}: contrast and colour are not kept",
            angle=limit,
        )
    if answer is Answer.OPEN:
        return say(
            "whether visitors stand within its viewing angle of {angle} cannot be said from what is given",
            angle=limit,
        )
    return say("visitors look at it from within its viewing angle of {angle}", angle=limit)


def _missing(scene: Scene, part: str) -> Missing:
    """What would have to be given, or is taken for granted."""
    found = [
        *scene.unknown(THE_VENUE, "visitor-position"),
        *scene.unknown(part, "position", *TURNS, "viewing-angle"),
    ]
    return tuple(found)
