"""The finest detail of a picture that a cable carries as a voltage: at which frequency a loss in the cable counts.

Formulas: `intent.formulas.video_timings`.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from intent.effects.scene import Scene
from intent.effects.signal.runs import CableRun
from intent.effects.unsaid import Missing
from intent.formulas import video_timings
from intent.language.figures import figure
from intent.language.message import Message, named, say
from intent.model.subject import several
from intent.values.bounds import hull, known, point
from intent.values.regions import Interval
from intent.values.units import in_unit
from intent.variance.result import Effect, EffectTopic
from intent.vocabulary.reach import CableReach

RASTER, RATE = "raster", "refresh-rate"
LOSSES = ("cable-loss", "loss-frequency")


def counted_at(scene: Scene, run: CableRun, reaches: Sequence[CableReach]) -> Interval | None:
    """The frequencies at which a loss counts, of all the signals that a run may carry; none where one is not known."""
    found = [_frequency(scene, run, reach) for reach in reaches]
    told = [each for each in found if each is not None]
    return hull(told) if told and len(told) == len(found) else None


def _frequency(scene: Scene, run: CableRun, reach: CableReach) -> Interval | None:
    if reach.is_by_raster:
        return _finest(scene, run)
    return None if reach.frequency is None else point(reach.frequency)


def _finest(scene: Scene, run: CableRun) -> Interval | None:
    """That of what the device at the end draws; none where its raster or its rate is not known exactly."""
    if not all(scene.states(run.end, name) for name in (RASTER, RATE)):
        return None
    columns, rows, rate = map(known, (*scene.axes(run.end, RASTER), scene.bounds(run.end, RATE)))
    if not (columns and rows and rate):
        return None
    return video_timings.finest_detail(video_timings.clocks(int(columns), int(rows), rate))


def detail_effects(
    scene: Scene, run: CableRun, reaches: Sequence[CableReach], before: Interval | None
) -> Iterator[Effect]:
    """What a cable would have to carry, where another picture or signal goes through it and nobody states its loss."""
    if not any(reach.is_by_raster for reach in reaches):
        return
    after = counted_at(scene, run, reaches)
    missing = _missing(scene, run)
    if not missing or (after is not None and after == before):
        return
    yield Effect(
        topic=EffectTopic.SIGNAL,
        subject=several((run.start, run.end)),
        quantity=say("finest detail of the picture"),
        unit="MHz",
        documented=None if before is None else in_unit(before, "MHz"),
        proposed=None if after is None else in_unit(after, "MHz"),
        sentence=_words(after, run),
        source=say(
            "{sources}: half the rate of the picture elements, by table or formula, whichever timing is used",
            sources=tuple(map(named, dict.fromkeys(reaches))),
        ),
        missing=missing,
    )


def _words(after: Interval | None, run: CableRun) -> Message:
    if after is None:
        return say("how fine a picture its cable has to carry cannot be said")
    if not run.is_measured:
        return say(
            "how much of that its cable takes cannot be said; a long one blurs and shadows upright edges"
        )
    return say(
        "how much of that {length} of cable take cannot be said; a long one blurs and shadows upright edges",
        length=figure(run.length, "m"),
    )


def _missing(scene: Scene, run: CableRun) -> Missing:
    """What would have to be given for the loss in the cable."""
    found = scene.unknown(run.end, RASTER, RATE)
    if not run.cables or not all(scene.states(cable, LOSSES[0]) for cable in run.cables):
        found = (*found, *map(scene.called, LOSSES))
    return found if run.is_measured else (*found, scene.called("length"))
