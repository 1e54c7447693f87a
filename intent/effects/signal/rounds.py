"""How long a round of looped material lasts, from one start to the next."""

from __future__ import annotations

from intent.effects.scene import Scene
from intent.values.bounds import ZERO, plus
from intent.values.regions import Interval


def recorded_round(scene: Scene, part: str, *subjects: str) -> Interval | None:
    """A round at the recorded speed, in seconds, of the first subject of which its length is stated; none of none.

    A loop length is stated with its gap (definition of the vocabulary). To a duration the gap is added: that of the
    part that plays it, else that of what is played; none where no gap is stated.
    """
    for subject in subjects:
        if scene.states(subject, "loop-length"):
            return scene.bounds(subject, "loop-length")
        if scene.states(subject, "duration"):
            stating = (giver for giver in (part, subject) if scene.states(giver, "loop-gap"))
            gaps = (scene.bounds(giver, "loop-gap") for giver in stating)
            return plus(scene.bounds(subject, "duration"), next(gaps, ZERO))
    return None
