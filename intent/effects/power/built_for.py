"""What devices were built for, held against the venue's mains: voltage and frequency, and what feeds them otherwise.

A rated voltage or frequency given as a range is what the device takes.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from intent.effects.limits_kept import Limited, any_of, inputs, inputs_of_state, obstacles
from intent.effects.power.consumers import supplies
from intent.effects.power.feeds import voltages_of
from intent.effects.scene import Scene, Sides
from intent.effects.signal.links import links_of
from intent.formulas import electricity
from intent.language.figures import figure
from intent.language.message import Message, say
from intent.model.subject import one
from intent.names import THE_VENUE
from intent.values.bounds import natural
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.variance.obstacle import Obstacle

TRANSFORMER, CONVERTER, SUPPLY = "mains-transformer", "frequency-converter", "power-supply"
Fed = Mapping[str, set[str]]
"""The sorts of converter that feed each part, and by the empty name those that may feed any part."""


def suits_voltage(scene: Scene, built: Interval) -> Answer:
    """Whether a device may be connected to the venue's mains, in one way or another."""
    return any_of(electricity.suits(built, voltage) for voltage in voltages_of(scene))


def suits_frequency(scene: Scene, built: Interval) -> Answer:
    """Whether a device runs on the venue's frequency as it should."""
    return electricity.suits_frequency(built, natural(scene.venue("mains-frequency")))


def feeding(sides: Sides) -> Fed:
    """What feeds each part; a converter that is there but that no connection joins to a part may feed any."""
    found: dict[str, set[str]] = {}
    there = supplies(sides.proposed)
    joined: set[str] = set()
    for link in links_of(sides) if there else ():
        if link.start in there:
            found.setdefault(link.end, set()).add(there[link.start])
            joined.add(link.start)
    for part, supply in there.items():
        if part not in joined:
            found.setdefault("", set()).add(supply)
    return found


def is_fed(fed: Fed, part: str, needed: str) -> bool:
    """Whether a converter of the right sort feeds a part, or may do so; a power supply may be of either."""
    return bool((fed.get(part, set()) | fed.get("", set())) & {needed, CONVERTER, SUPPLY})


def rating_obstacles(sides: Sides, parts: Sequence[str], fed: Fed) -> Iterator[Obstacle]:
    """Devices of which it cannot be told whether the mains suits them, or that may be switched off there."""
    scene = sides.proposed
    for part in parts:
        built, frequency = (
            natural(scene.bounds(part, name)) for name in ("rated-voltage", "rated-frequency")
        )
        if scene.states(THE_VENUE, "mains"):
            answer = any_of([suits_voltage(scene, built), scene.runs(part).negated])
            if answer is Answer.OPEN and not is_fed(fed, part, TRANSFORMER):
                yield from obstacles(
                    sides, answer, _limited(sides, part, "voltage", _voltage_words(scene, built))
                )
        if scene.states(THE_VENUE, "mains-frequency"):
            answer = any_of([suits_frequency(scene, frequency), scene.runs(part).negated])
            if answer is Answer.OPEN and not is_fed(fed, part, CONVERTER):
                yield from obstacles(
                    sides, answer, _limited(sides, part, "frequency", _frequency_words(scene))
                )


def _limited(sides: Sides, part: str, what: str, unsure: Message) -> Limited:
    of_venue = "mains" if what == "voltage" else "mains-frequency"
    return Limited(
        slug=f"mains-{what}",
        subject=one(part),
        inputs=(
            *inputs(sides, part, f"rated-{what}"),
            *inputs(sides, THE_VENUE, of_venue),
            *inputs_of_state(sides, part),
        ),
        sure="",
        unsure=unsure,
    )


def _voltage_words(scene: Scene, built: Interval) -> Message:
    mains = natural(scene.venue("mains"))
    if not built.low or built.high is None or mains.high is None:
        return say(
            "whether it may be connected to {mains} cannot be said: look at its rating plate before",
            mains=figure(mains, "V"),
        )
    return say(
        "built for {built}, and the mains of the venue, {mains}, may lie {band}: whether it works on all of "
        "that cannot be said; look at its rating plate",
        built=figure(built, "V"),
        mains=figure(mains, "V"),
        band=figure(electricity.band_of(mains), "V"),
    )


def _frequency_words(scene: Scene) -> Message:
    return say(
        "whether it runs at {mains} as it should cannot be said: look at its rating plate before",
        mains=figure(natural(scene.venue("mains-frequency")), "Hz"),
    )
