"""From the two states of a proposal to what there is to draw.

A value that is not known closely is not drawn: the part is then listed, or drawn as a mark, with what is missing.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from intent.drawings.measuring import angle, length, place
from intent.drawings.picturing import screen_of
from intent.drawings.rooms import room_of
from intent.drawings.solid import Corners, Pose, box
from intent.drawings.stage import Item, Stage, Stages, Stand, Symbol, Unplaced, Which
from intent.drawings.thrown import projector_of
from intent.effects.scene import Scene, Sides, sides_of
from intent.language.message import Words
from intent.model.subject import SubjectKind
from intent.model.work import Part
from intent.planning.feeding import links_of
from intent.variance.case import lay_out
from intent.variance.result import Row, Variance, Verdict

_SYMBOLS = {"display": Symbol.DISPLAY, "loudspeaker": Symbol.LOUDSPEAKER, "player": Symbol.PLAYER}
_MEASURES = ("outer-width", "outer-height", "outer-depth")
_ANGLES = ("rotation", "tilt", "facing")


def stages_of(variance: Variance) -> Stages:
    """What is documented and what is proposed, ready to be drawn."""
    sides = sides_of(lay_out(variance.work, variance.installation))
    verdicts = worst_by_part(variance.rows)
    return Stages(
        documented=_stage(sides.documented, sides, {}, Which.DOCUMENTED),
        proposed=_stage(sides.proposed, sides, verdicts, Which.PROPOSED),
    )


def worst_by_part(rows: Iterable[Row]) -> dict[str, Verdict]:
    """The worst verdict on each part by itself, of those that depart; rows are worst first."""
    found: dict[str, Verdict] = {}
    for row in rows:
        if row.verdict.is_departure and row.subject.kind is SubjectKind.PART:
            part = row.subject.members[0]
            worst = found.setdefault(part, row.verdict)
            if row.verdict.badness > worst.badness:
                found[part] = row.verdict
    return found


def _stage(scene: Scene, sides: Sides, verdicts: Mapping[str, Verdict], which: Which) -> Stage:
    items: list[Item] = []
    unplaced: list[Unplaced] = []
    there = {part.identifier: part for part in scene.parts()}
    for part in _in_order(sides, which):
        present = part.identifier in there
        standing = _standing(sides, part, present)
        seen = scene if present else sides.documented
        verdict = verdicts.get(part.identifier)
        found = _item(seen, part, standing, verdict)
        if isinstance(found, Item):
            items.append(found)
        else:
            unplaced.append(found)
    thrown = [
        _thrown(scene if item.standing is not Stand.OMITTED else sides.documented, item) for item in items
    ]
    return Stage(
        items=tuple(item for item, _ in thrown),
        unplaced=tuple(unplaced),
        links=links_of(scene),
        projectors=tuple(body for _, body in thrown if body),
        room=room_of(scene),
    )


def _thrown(scene: Scene, item: Item) -> tuple[Item, Item | None]:
    """A part, and the body of the projector where what is drawn of the part is its picture."""
    if not item.is_picture:
        return item, None
    body = projector_of(scene, item)
    missing = item.missing if body else (*item.missing, scene.called("throw-distance"))
    return replace(item, missing=missing), body


def _in_order(sides: Sides, which: Which) -> tuple[Part, ...]:
    """The parts of the work; in the proposed state what is left out is shown too, and what is added."""
    if which is Which.DOCUMENTED:
        return tuple(part for part in sides.work.parts if sides.was_there(part.identifier))
    return (*sides.work.parts, *sides.installation.additions)


def _standing(sides: Sides, part: Part, present: bool) -> Stand:
    if not present:
        return Stand.OMITTED
    return Stand.KEPT if sides.was_there(part.identifier) else Stand.ADDED


def _item(scene: Scene, part: Part, standing: Stand, verdict: Verdict | None) -> Item | Unplaced:
    where = place(scene, part.identifier)
    if where is None:
        kind = scene.vocabulary.named(part.kind.iri)
        return Unplaced(
            identifier=part.identifier,
            name=part.name,
            kind=kind,
            missing=(scene.called("position"),),
            standing=standing,
            verdict=verdict,
        )
    symbol = _symbol(scene, part)
    pose, unsure = _pose(scene, part.identifier, where, symbol)
    known = pose is not None
    pose = pose or Pose(centre=where)
    screen, lacking = (
        screen_of(scene, part.identifier, pose) if known and symbol is Symbol.DISPLAY else (None, ())
    )
    thrown = screen is not None and screen.is_projected
    outline, unmeasured = ((), ()) if thrown or not known else _block(scene, part.identifier, pose, symbol)
    missing = (*unsure, *lacking) if screen or symbol is Symbol.DISPLAY else (*unsure, *unmeasured)
    turn = angle(scene, part.identifier, "picture-rotation") if symbol is Symbol.DISPLAY else None
    return Item(
        identifier=part.identifier,
        name=part.name,
        group=part.group or "",
        symbol=symbol,
        pose=pose,
        outline=outline,
        screen=screen,
        channel=scene.text(part.identifier, "channel"),
        picture_rotation=turn if known else None,
        standing=standing,
        verdict=verdict,
        missing=missing,
        called=part.identifier,
    )


def _symbol(scene: Scene, part: Part) -> Symbol:
    for kind, symbol in _SYMBOLS.items():
        if scene.vocabulary.is_kind(part.kind.iri, scene.term(kind).iri):
            return symbol
    return Symbol.OTHER


def _pose(
    scene: Scene, part: str, where: tuple[float, float, float], symbol: Symbol
) -> tuple[Pose | None, tuple[Words, ...]]:
    """How a part lies. A display whose way up is not given has none; what else is not given is taken as level."""
    angles = {name: angle(scene, part, name) for name in _ANGLES}
    asked = [
        name
        for name in _ANGLES
        if scene.is_given(part, name) or (name, symbol) == ("rotation", Symbol.DISPLAY)
    ]
    unsure = tuple(scene.called(name) for name in asked if angles[name] is None)
    if unsure:
        return None, unsure
    return Pose(centre=where, **{name: angles[name] or 0.0 for name in _ANGLES}), ()


def _block(scene: Scene, part: str, pose: Pose, symbol: Symbol) -> tuple[Corners, tuple[Words, ...]]:
    """The block that a part fills: a display behind its face, anything else about its middle."""
    width, height, depth = (length(scene, part, name) for name in _MEASURES)
    missing = tuple(
        scene.called(name)
        for name, size in zip(_MEASURES, (width, height, depth), strict=True)
        if size is None
    )
    if width is None or (height is None and depth is None):
        return (), missing
    deep = depth or 0.0
    front = 0.0 if symbol is Symbol.DISPLAY else deep / 2
    return box(pose, width, height or 0.0, front, front - deep), missing
