"""The venue's mains against what each device was built for: voltage, frequency, plug and earth.

A rated voltage or frequency given as a range is what the device takes. What is told here is for planning: a licensed
electrician connects what was built for another supply.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from intent.effects.limits_kept import unchecked
from intent.effects.power.built_for import (
    CONVERTER,
    TRANSFORMER,
    feeding,
    is_fed,
    rating_obstacles,
    suits_frequency,
    suits_voltage,
)
from intent.effects.power.consumers import has_own_supply
from intent.effects.scene import Scene, Sides
from intent.language.figures import Figure, figure
from intent.language.message import Message, say, say_of
from intent.model.subject import several
from intent.names import THE_VENUE
from intent.values.bounds import natural, over, total
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.variance.obstacle import Obstacle, Unchecked
from intent.variance.result import Effect, EffectTopic

BANDS = say(
    "EN 50160 (220, 230 and 240 V: 207 to 253 V) and ANSI C84.1 range A (110, 115 and 120 V: 114 to 126 V), both as "
    "quoted, their names and 208 V (197 to 218 V) from memory; else ± 10 % (common practice, no source); ± 1 % of the "
    "frequency (EN 50160, from memory); volt-amperes at least"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Misfed:
    """Devices built for the same supply, which the venue's mains does not suit."""

    parts: tuple[str, ...]
    voltage: Interval
    frequency: Interval
    wrong_voltage: bool
    wrong_frequency: bool

    @property
    def needed(self) -> str:
        return CONVERTER if self.wrong_frequency else TRANSFORMER


def mains_effects(sides: Sides, takers: Sequence[str]) -> Iterator[Effect | Obstacle | Unchecked]:
    """The effects of the venue's mains on the devices that take power, where it says what it gives."""
    scene = sides.proposed
    on_mains = [part for part in takers if not has_own_supply(scene, part)]
    if on_mains:
        yield from unchecked(sides, THE_VENUE, "mains", "mains-frequency")
    if on_mains and any(scene.states(THE_VENUE, name) for name in ("mains", "mains-frequency")):
        fed = feeding(sides)
        for misfed in _misfed(scene, on_mains):
            yield _converted(scene, misfed)
            bare = [part for part in misfed.parts if not is_fed(fed, part, misfed.needed)]
            sure = tuple(part for part in bare if scene.runs(part) is Answer.IN)
            if sure:
                yield _finding(sides, misfed, sure)
        yield from rating_obstacles(sides, on_mains, fed)


def _misfed(scene: Scene, parts: Sequence[str]) -> Iterator[Misfed]:
    found: dict[tuple[Interval, Interval], list[str]] = {}
    for part in parts:
        built = natural(scene.bounds(part, "rated-voltage")), natural(scene.bounds(part, "rated-frequency"))
        found.setdefault(built, []).append(part)
    for (voltage, frequency), members in found.items():
        wrong_voltage = suits_voltage(scene, voltage) is Answer.OUT
        wrong_frequency = suits_frequency(scene, frequency) is Answer.OUT
        if wrong_voltage or wrong_frequency:
            yield Misfed(
                parts=tuple(members),
                voltage=voltage,
                frequency=frequency,
                wrong_voltage=wrong_voltage,
                wrong_frequency=wrong_frequency,
            )


def _converted(scene: Scene, misfed: Misfed) -> Effect:
    """What it takes to run devices on the venue's mains, and what would happen without."""
    apparent = total(natural(scene.bounds(part, "apparent-power")) for part in misfed.parts)
    missing = dict.fromkeys(
        label
        for part in misfed.parts
        for name in ("power", "power-factor", "rated-frequency")
        if _matters(scene, part, name)
        for label in scene.unknown(part, name)
    )
    return Effect(
        topic=EffectTopic.POWER,
        subject=several(misfed.parts),
        quantity=say("converter for the mains"),
        unit="VA",
        proposed=apparent if apparent.low else None,
        sentence=_converted_words(scene, misfed),
        source=BANDS,
        missing=tuple(missing),
    )


def _matters(scene: Scene, part: str, name: str) -> bool:
    """Whether a closer answer depends on a characteristic: on the frequency only where the venue gives its own."""
    if name == "rated-frequency":
        return scene.states(THE_VENUE, "mains-frequency")
    return scene.bounds(part, "apparent-power").high is None


def _converted_words(scene: Scene, misfed: Misfed) -> Message:
    built, given = _supplies(scene, misfed)
    if not misfed.wrong_frequency:
        return say(
            "built for {built} and the venue gives {given}: a mains transformer is needed, which does not change the "
            "frequency; a licensed electrician connects it",
            built=built,
            given=given,
        )
    share = over(natural(scene.venue("mains-frequency")), misfed.frequency)
    return say(
        "built for {built} and the venue gives {given}: a frequency converter is needed; without it, "
        "motors that keep to the mains run at {speed} of their speed, and transformers may overheat",
        built=built,
        given=given,
        speed=figure(share, "%"),
    )


def _supplies(scene: Scene, misfed: Misfed) -> tuple[Message, Message]:
    """What the devices are built for, and what the venue gives, of voltage and frequency as far as they differ."""
    given = scene.venue("mains"), scene.venue("mains-frequency")
    built, there = (
        [figure(voltage, "V")] * misfed.wrong_voltage + [figure(frequency, "Hz")] * misfed.wrong_frequency
        for voltage, frequency in ((misfed.voltage, misfed.frequency), given)
    )
    return _supply(built), _supply(there)


def _supply(figures: Sequence[Figure]) -> Message:
    if len(figures) == 1:
        return say("{figure}", figure=figures[0])
    return say("{voltage}, {frequency}", voltage=figures[0], frequency=figures[1])


def _finding(sides: Sides, misfed: Misfed, parts: tuple[str, ...]) -> Obstacle:
    built, given = _supplies(sides.proposed, misfed)
    text = say_of(
        len(parts),
        "built for {built}, and the mains of the venue gives {given}; no transformer or converter is named "
        "that feeds it",
        "built for {built}, and the mains of the venue gives {given}; no transformer or converter is named "
        "that feeds them",
        built=built,
        given=given,
    )
    slug = "mains-voltage" if misfed.wrong_voltage else "mains-frequency"
    return Obstacle(slug=slug, text=text, subject=several(parts), ask=sides.asks)
