"""How long the proposed installation runs, for what wears out while it does."""

from __future__ import annotations

from dataclasses import dataclass

from intent.effects.scene import Scene
from intent.effects.unsaid import Missing
from intent.names import THE_VENUE, THE_WORK
from intent.values.bounds import is_known
from intent.values.regions import Interval
from intent.values.sets import Answer


@dataclass(frozen=True, slots=True)
class Run:
    """The proposed installation, and how long it runs, in seconds."""

    scene: Scene
    time: Interval
    is_timed: bool
    """Whether it is known how long the work runs each day; that a day has 24 hours is not enough."""

    def time_of(self, part: str) -> Interval:
        """How long a part runs of it: not at all where it is switched off."""
        return self.scene.as_it_runs(part, self.time)

    @property
    def unsaid(self) -> Missing:
        """What would have to be given to know how long it runs."""
        if is_known(self.time) or self.scene.states(THE_WORK, "time-in-operation"):
            return ()
        is_one = len(self.scene.names(THE_WORK, "running")) == 1
        running = () if is_one else (self.scene.called("running"),)
        return (*running, *self.scene.unknown(THE_VENUE, "opening-time", "days-open"))


def run_of(scene: Scene) -> Run:
    is_timed = (
        scene.states(THE_WORK, "time-in-operation")
        or scene.is_given(THE_VENUE, "opening-time")
        or scene.is_(THE_WORK, "running", "continuous") is Answer.IN
    )
    return Run(scene, scene.bounds(THE_WORK, "time-in-operation"), is_timed)
