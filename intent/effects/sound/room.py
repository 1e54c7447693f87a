"""What the room does to a sound: how far visitors can be from it at most, and how much of it comes back."""

from __future__ import annotations

from dataclasses import dataclass

from intent.effects.scene import Scene
from intent.effects.sound.listening import TWENTY_CELSIUS, distance_to
from intent.formulas import acoustics
from intent.model.subject import WHOLE_VENUE, one
from intent.names import THE_VENUE
from intent.values.bounds import NATURAL, natural, root, scaled, square, times, total
from intent.values.regions import Interval
from intent.variance.obstacle import Need

SIDES = ("room-width", "room-depth", "ceiling-height")
REVERBERATION = "reverberation-time"


@dataclass(frozen=True, slots=True)
class ListeningRoom:
    """The room of the showing: the documented devices are heard in it as well, so that like is compared with like."""

    scene: Scene
    """The proposed one, whose venue it is."""

    @property
    def needs(self) -> tuple[Need, ...]:
        """What is not stated of the room, and would have to be."""
        return tuple(
            Need(self.scene.called(name), WHOLE_VENUE)
            for name in (*SIDES, REVERBERATION)
            if not self.scene.states(THE_VENUE, name)
        )

    def heard(self, of: Scene, part: str, one_metre: Interval) -> Interval:
        """The level where visitors stand of a part of a state, from its level at one metre."""
        distance = distance_to(of, part)
        far = distance if distance is not None else Interval(NATURAL.low, self._diagonal.high)
        return acoustics.at_distance(one_metre, far, self._returned(of, part))

    def lacking(self, of: Scene, part: str) -> tuple[Need, ...]:
        """What is not stated of where a part is heard from."""
        is_known = distance_to(of, part) is not None
        return () if is_known else (Need(of.called("viewing-distance"), one(part)),)

    @property
    def _sides(self) -> tuple[Interval, Interval, Interval]:
        width, depth, height = (natural(self.scene.venue(name)) for name in SIDES)
        return width, depth, height

    @property
    def _diagonal(self) -> Interval:
        return root(total(square(side) for side in self._sides))

    def _returned(self, of: Scene, part: str) -> Interval:
        width, depth, height = self._sides
        stated = self.scene.states(THE_VENUE, "temperature")
        air = self.scene.venue("temperature") if stated else TWENTY_CELSIUS
        absorbing = acoustics.absorption(
            times(times(width, depth), height),
            natural(self.scene.venue(REVERBERATION)),
            acoustics.speed_of_sound(air),
        )
        pairs = ((width, depth), (width, height), (depth, height))
        surface = scaled(total(times(*pair) for pair in pairs), 2)
        return acoustics.returned(absorbing, surface, natural(of.bounds(part, "directivity-factor")))
