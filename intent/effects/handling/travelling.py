"""What travels to the venue: the boxes that something of the proposal is in, and what comes without a box."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass

from intent.effects.limits_kept import Input, inputs, inputs_of_box
from intent.effects.scene import Scene, Sides
from intent.effects.unsaid import Missing
from intent.formulas.openings import Sides as Extent
from intent.formulas.openings import Turning
from intent.model.as_proposed import packed_boxes
from intent.model.work import Crate
from intent.values.bounds import natural
from intent.values.regions import Interval
from intent.values.sets import Answer

BOX_SIDES = ("length", "width", "height")
OUTER_SIDES = ("outer-width", "outer-depth", "outer-height")
BULKY = ("display", "loudspeaker", "object", "furniture")
"""Of players, cables and the like nobody asks whether they go through a door (common practice, no source)."""
TURNINGS: Mapping[str, Turning] = {
    "transport-upright": Turning.UPRIGHT,
    "transport-screen-forward": Turning.UPRIGHT,
    "transport-on-edge": Turning.ON_EDGE,
    "transport-on-back": Turning.ON_BACK,
    "transport-any": Turning.ANY,
}
"""How far a thing may be turned, by how it may lie."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Load:
    """A box, or a thing without one, on its way into the room."""

    identifier: str
    scene: Scene
    """In which it is asked about."""
    sides_named: tuple[str, str, str]
    is_bulky: bool = False
    """Whether anybody asks how it comes in, though nothing be said of it."""
    is_new: bool = False
    """Whether it comes from elsewhere, in the place of a part or besides them all, and may be bulky."""

    @property
    def is_box(self) -> bool:
        return self.sides_named == BOX_SIDES

    def bounds(self, characteristic: str) -> Interval:
        return self.scene.bounds(self.identifier, characteristic)

    @property
    def extent(self) -> Extent:
        """Length (of a thing: width), width (depth) and height, in metres."""
        length, width, height = (natural(self.bounds(name)) for name in self.sides_named)
        return length, width, height

    @property
    def weight(self) -> Interval:
        """In kilograms."""
        return natural(self.bounds("weight"))

    @property
    def turnings(self) -> frozenset[Turning]:
        """The ways in which it may be allowed to travel, every one where nothing is said of that."""
        names = self.scene.names(self.identifier, "transport-orientation")
        return frozenset(TURNINGS[name] for name in names if name in TURNINGS) or frozenset(Turning)

    @property
    def freest(self) -> Turning:
        """How far it may be turned at the most."""
        return max(self.turnings, key=lambda turning: turning.value)

    @property
    def standing(self) -> Turning:
        """As it stands: what may travel on its edge alone is set on it, however its sides are named."""
        return Turning.ON_EDGE if self.turnings == {Turning.ON_EDGE} else Turning.UPRIGHT

    def passing(self, passes: Callable[[Turning], Answer]) -> Answer:
        """Whether it passes as it may be turned: surely, if it does in every way that may be meant."""
        stated = self.scene.states(self.identifier, "transport-orientation")
        answers = {passes(turning) for turning in (self.turnings if stated else {self.freest})}
        return answers.pop() if len(answers) == 1 else Answer.OPEN

    def is_asked_about(self, *characteristics: str) -> bool:
        """Whether it is to be held against a limit: a box, a bulky thing, or one of which something is said."""
        said = any(self.scene.is_given(self.identifier, name) for name in characteristics)
        return self.is_box or self.is_bulky or said

    def inputs(self, sides: Sides, *characteristics: str) -> tuple[Input, ...]:
        """The values on which it depends whether it passes."""
        if self.is_box:
            return inputs_of_box(self.scene, self.identifier, *characteristics)
        return inputs(sides, self.identifier, *characteristics)

    def unknown(self, *characteristics: str) -> Missing:
        """What those characteristics are called of which nothing is given."""
        return self.scene.unknown(self.identifier, *characteristics)


def travelling(sides: Sides) -> tuple[Load, ...]:
    """All that travels: boxes first, in the order of the work, then what has none."""
    return (*travelling_boxes(sides), *_unboxed(sides))


def travelling_boxes(sides: Sides) -> Iterator[Load]:
    """The boxes that travel; one of the work's whose parts are all omitted or substituted stays at home."""
    boxes = [packed.box for packed in packed_boxes(sides.work, sides.installation)]
    scene = _scene_of(sides.proposed, boxes)
    for box in boxes:
        yield Load(identifier=box.identifier, scene=scene, sides_named=BOX_SIDES)


def _unboxed(sides: Sides) -> Iterator[Load]:
    case = sides.proposed.case
    boxed = {part for packed in packed_boxes(sides.work, sides.installation) for part in packed.parts}
    parts = [part.identifier for part in sides.proposed.parts() if part.identifier not in boxed]
    bulky = {part.identifier for part in sides.proposed.parts(*BULKY)}
    for part in sides.proposed.one_a_device(parts):
        is_new = part in bulky and (part in case.substituted or not sides.was_there(part))
        yield Load(
            identifier=part,
            scene=sides.proposed,
            sides_named=OUTER_SIDES,
            is_bulky=part in bulky,
            is_new=is_new,
        )


def is_bulky(scene: Scene, part: str) -> bool:
    """Whether anybody asks how a part comes in, though nothing be said of its size."""
    return part in {found.identifier for found in scene.parts(*BULKY)}


def _scene_of(scene: Scene, boxes: Iterable[Crate]) -> Scene:
    """A scene in which the boxes can be asked about."""
    return Scene(scene.case, scene.state.asked_of({box.identifier: box.statements for box in boxes}))
