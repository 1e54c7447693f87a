"""Cables that are longer than their signal is carried over plain cable, or than a device takes."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from intent.effects.limits_kept import Input, Limited, at_most, inputs, obstacles, unchecked
from intent.effects.scene import Scene, Sides
from intent.effects.signal.picture_detail import counted_at, detail_effects
from intent.effects.signal.runs import CableRun, helped, reaches_of, runs_of
from intent.formulas import cabling
from intent.language.figures import figure
from intent.language.message import Labelled, Message, Place, named, say
from intent.model.subject import several
from intent.values.bounds import ZERO, differs_by, hull, is_known
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.variance.obstacle import Need, Obstacle, Unchecked
from intent.variance.result import Effect, EffectTopic
from intent.vocabulary.reach import CableReach

LIMIT = "cable-length-limit"
BEYOND = say(
    "{signal} is carried over {limit} of plain cable at most, and the cable has {length}: it needs a repeater, "
    "an active cable or fibre"
)
DOUBTFUL = say(
    "{signal} is sure to be carried over {limit} of plain cable, and the cable has {length}: whether it arrives "
    "depends on the cable and both devices, so try these very ones"
)
UNMEASURED = say("{signal} is carried over {limit} of plain cable at most; how long the cable is is not said")
WEAK = say(
    "the cable takes {loss} from {signal}, which bears {limit} at most: it needs a repeater, a better cable or fibre"
)
WEAKER = say("the cable takes {loss} from {signal}, which is sure to bear {limit}: try these very devices")
SOFTER = say(
    "the cable takes {loss} from the finest detail of {signal}: where that shows, equalise it at the far end"
)
SEEN = Fraction(1)
"""Decibels: smaller changes of sharpness nobody sees (common practice, no source)."""


def cable_effects(sides: Sides) -> Iterator[Effect | Obstacle | Unchecked]:
    """What is said of each run of cable, as proposed."""
    scene = sides.proposed
    before = {(run.start, run.end): run for run in runs_of(sides.documented)}
    for run in runs_of(scene):
        was = before.get((run.start, run.end))
        yield from _limited(sides, run, was)
        reaches = reaches_of(scene, run)
        if not reaches or helped(scene, run) is Answer.IN:
            continue
        yield from _too_long(scene, run, was, reaches)
        yield from _too_lossy(sides, run, was, reaches)
        yield from detail_effects(scene, run, reaches, _detail(sides.documented, was))


def _limited(sides: Sides, run: CableRun, was: CableRun | None) -> Iterator[Obstacle | Unchecked]:
    """A cable that is longer than the device at either end takes, or may be."""
    for device in (run.start, run.end):
        scene = sides.proposed
        if not scene.states(device, LIMIT):
            if sides.documented.states(device, LIMIT):
                yield from unchecked(sides, device, LIMIT)
            continue
        limit = scene.bounds(device, LIMIT)
        length = Input(
            need=Need(scene.called("length"), several((run.start, run.end))),
            is_exact=is_known(run.length),
            is_changed=was is None or was.length != run.length,
        )
        told: dict[str, Place] = {
            "limit": figure(limit, "m"),
            "device": device,
            "length": figure(run.length, "m"),
        }
        limited = Limited(
            slug="cable-too-long",
            subject=several((run.start, run.end)),
            inputs=[length, *inputs(sides, device, LIMIT)],
            sure=say("the cable between them has {length}, and {device} takes {limit} at most", **told),
            unsure=say(
                "whether the cable between them is within the {limit} that {device} takes is not said", **told
            ),
        )
        yield from obstacles(sides, at_most(run.length, limit), limited)


def _too_long(
    scene: Scene, run: CableRun, was: CableRun | None, reaches: tuple[CableReach, ...]
) -> Iterator[Effect]:
    """Longer than plain cable carries the signal: surely, or, where anything is new, perhaps."""
    limits = [reach.length for reach in reaches if reach.length is not None]
    if len(limits) < len(reaches):
        return
    limit = hull(limits)
    is_new = was is None or was.length != run.length or was.signals != run.signals
    told = _length_words(scene, run, limit, is_new=is_new)
    if told is None:
        return
    yield Effect(
        topic=EffectTopic.SIGNAL,
        subject=several((run.start, run.end)),
        quantity=say("length of cable"),
        unit="m",
        documented=was.length if was is not None and was.is_measured else None,
        proposed=run.length if run.is_measured else None,
        sentence=told,
        source=_source(reaches),
        missing=() if run.is_measured else (scene.called("length"),),
    )


def _length_words(scene: Scene, run: CableRun, limit: Interval, *, is_new: bool) -> Message | None:
    """What is said of a length; nothing where it surely is short enough, or perhaps too long as documented."""
    told: dict[str, Place] = {"signal": _signals(scene, run), "length": figure(run.length, "m")}
    least, most = Interval(limit.low, limit.low), Interval(limit.high, limit.high)
    if at_most(run.length, most) is Answer.OUT and helped(scene, run) is Answer.OUT:
        return BEYOND.filled(**told, limit=figure(most, "m"))
    if is_new and not run.is_measured:
        return UNMEASURED.filled(signal=_signals(scene, run), limit=figure(most, "m"))
    if is_new and at_most(run.length, least) is not Answer.IN:
        return DOUBTFUL.filled(**told, limit=figure(least, "m"))
    return None


def _too_lossy(
    sides: Sides, run: CableRun, was: CableRun | None, reaches: tuple[CableReach, ...]
) -> Iterator[Effect]:
    """A cable that takes more from its signal than the signal bears, or than the documented one took."""
    scene = sides.proposed
    lost = _lost(scene, run, reaches)
    before = None if was is None else _lost(sides.documented, was, reaches_of(sides.documented, was))
    words = None if lost is None else _loss_words(scene, run, reaches, lost, before)
    if words is None:
        return
    yield Effect(
        topic=EffectTopic.SIGNAL,
        subject=several((run.start, run.end)),
        quantity=say("loss in the cable"),
        unit="dB",
        documented=before,
        proposed=lost,
        sentence=words,
        source=_source(reaches),
        missing=() if run.is_measured else (scene.called("length"),),
    )


def _loss_words(
    scene: Scene, run: CableRun, reaches: tuple[CableReach, ...], lost: Interval, before: Interval | None
) -> Message | None:
    """What is said of a loss; nothing where the signal surely bears it, or where it is what it was."""
    told: dict[str, Place] = {"signal": _signals(scene, run), "loss": figure(lost, "dB")}
    limits = [reach.loss for reach in reaches if reach.loss is not None]
    if len(limits) < len(reaches):
        return SOFTER.filled(**told) if differs_by(before or ZERO, lost, SEEN) else None
    limit = hull(limits)
    least, most = Interval(limit.low, limit.low), Interval(limit.high, limit.high)
    if at_most(lost, most) is Answer.OUT:
        return WEAK.filled(**told, limit=figure(most, "dB"))
    if before == lost or at_most(lost, least) is Answer.IN:
        return None
    return WEAKER.filled(**told, limit=figure(least, "dB"))


def _lost(scene: Scene, run: CableRun, reaches: tuple[CableReach, ...]) -> Interval | None:
    """What the cable takes from what it carries, at half the rate of its bits or of the elements of its picture.

    None where that cannot be computed.
    """
    stated = [cable for cable in run.cables if scene.states(cable, "cable-loss")]
    frequency = counted_at(scene, run, reaches)
    if frequency is None or not stated or len(stated) < len(run.cables):
        return None
    each = (
        cabling.loss_at(scene.bounds(cable, "cable-loss"), frequency, scene.bounds(cable, "loss-frequency"))
        for cable in stated
    )
    return cabling.loss(hull(each), run.length)


def _detail(scene: Scene, run: CableRun | None) -> Interval | None:
    return None if run is None else counted_at(scene, run, reaches_of(scene, run))


def _signals(scene: Scene, run: CableRun) -> tuple[Labelled, ...]:
    return tuple(map(scene.term, run.signals))


def _source(reaches: tuple[CableReach, ...]) -> Message:
    """Where it is said how far each signal is carried."""
    return say("{sources}", sources=tuple(dict.fromkeys(reaches))) if len(reaches) > 1 else named(reaches[0])
