"""What travels at an opening of the venue: a door, or the cross-section of a corridor."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from intent.effects.handling.travelling import Load
from intent.effects.scene import THE_VENUE, Scene, Sides, unknown_among
from intent.formulas.openings import Opening, Turning, clearance
from intent.language.message import Saying, figure, say
from intent.values.bounds import natural, negative, scaled
from intent.values.regions import Interval
from intent.variance.result import Effect, EffectTopic, VenueFinding

CRITERION = "arithmetic; on the slant, the criterion for a rectangle in another (Carver 1957, as quoted in Wetzel 2000)"


@dataclass(frozen=True, slots=True, kw_only=True)
class Passage:
    """An opening on the way in, with its sentences."""

    slug: str
    across: str
    upright: str
    quantity: str
    as_it_stands: str
    laid: str
    slanting: str
    unsure: str
    blocked: str


DOOR = Passage(
    slug="door-too-narrow",
    across="door-width",
    upright="door-height",
    quantity="clearance at the door",
    as_it_stands="the tightest of all that travels: it goes through the door as it stands",
    laid="it goes through the door only when it is turned onto another of its sides",
    slanting="it goes through the door only when it is tilted on the slant",
    unsure="whether it goes through the door cannot be said from what is given",
    blocked="{name}, {length} × {width} × {height}, does not go through the door of the venue, {hole}, "
    "in any way in which it may travel: it is {over} too large",
)
CORRIDOR = Passage(
    slug="corridor-too-narrow",
    across="corridor-width",
    upright="corridor-height",
    quantity="clearance in the corridor",
    as_it_stands="the tightest of all that travels: it goes through the corridor as it stands",
    laid="it goes through the corridor only when it is turned onto another of its sides",
    slanting="it goes through the corridor only when it is tilted on the slant",
    unsure="whether it goes through the corridor cannot be said from what is given",
    blocked="{name}, {length} × {width} × {height}, does not go through the corridor of the venue, {hole}, "
    "in any way in which it may travel: it is {over} too large",
)


@dataclass(frozen=True, slots=True)
class _Sorted:
    """What stands, what must be turned, and of what nobody can say."""

    standing: list[tuple[Load, Interval]] = field(default_factory=list)
    unsure: dict[tuple[str, ...], list[str]] = field(default_factory=dict)


def passage_effects(sides: Sides, loads: Sequence[Load], passage: Passage) -> Iterator[Effect | VenueFinding]:
    """The clearances at an opening, as far as the venue says how large it is."""
    scene = sides.proposed
    if not any(scene.states(THE_VENUE, name) for name in (passage.across, passage.upright)):
        return
    hole = natural(scene.venue(passage.across)), natural(scene.venue(passage.upright))
    found = _Sorted()
    for load in loads:
        yield from _at(sides, load, hole, passage, found)
    if found.standing:
        load, spare = min(found.standing, key=lambda one: one[1].low or 0)
        yield _effect(load, passage, spare, say(passage.as_it_stands))
    for missing, identifiers in found.unsure.items():
        yield Effect(
            topic=EffectTopic.HANDLING,
            members=tuple(identifiers),
            quantity=passage.quantity,
            unit="cm",
            documented=None,
            proposed=None,
            sentence=say(passage.unsure),
            source=CRITERION,
            missing=missing,
        )


def _at(
    sides: Sides, load: Load, hole: Opening, passage: Passage, found: _Sorted
) -> Iterator[Effect | VenueFinding]:
    extent = load.extent
    standing = clearance(extent, hole, Turning.UPRIGHT)
    if standing.low is not None and standing.low >= 0:
        found.standing.append((load, standing))
        return
    freest = max(load.turnings, key=lambda turning: turning.value)
    best = clearance(extent, hole, freest)
    if best.high is not None and best.high < 0:
        yield _blocked(sides, load, hole, passage, best)
        return
    stricter = Turning.LAID if freest is not Turning.UPRIGHT else freest
    for turning, pattern in ((stricter, passage.laid), (freest, passage.slanting)):
        spare = clearance(extent, hole, turning)
        if spare.low is not None and spare.low >= 0:
            yield _effect(load, passage, spare, say(pattern), load.unknown("transport-orientation"))
            return
    missing = _missing(sides.proposed, load, passage)
    if missing and (load.is_new or load.is_box or any(side.high is not None for side in extent)):
        found.unsure.setdefault(missing, []).append(load.identifier)


def _missing(scene: Scene, load: Load, passage: Passage) -> tuple[str, ...]:
    """The sides of the load or else of the opening of which nothing is given."""
    return (
        *load.unknown(*load.sides_named),
        *unknown_among(scene, THE_VENUE, passage.across, passage.upright),
    )


def _effect(
    load: Load, passage: Passage, spare: Interval, sentence: Saying, missing: tuple[str, ...] = ()
) -> Effect:
    return Effect(
        topic=EffectTopic.HANDLING,
        members=(load.identifier,),
        quantity=passage.quantity,
        unit="cm",
        documented=None,
        proposed=scaled(spare, 100),
        sentence=sentence,
        source=CRITERION,
        missing=missing,
    )


def _blocked(sides: Sides, load: Load, hole: Opening, passage: Passage, best: Interval) -> VenueFinding:
    length, width, height = (figure(side, "cm", 100) for side in load.extent)
    across, upright = (figure(side, "cm", 100) for side in hole)
    text = say(
        passage.blocked,
        name=load.identifier,
        length=length,
        width=width,
        height=height,
        hole=say("{across} wide", across=across)
        if hole[1].high is None
        else say("{across} × {upright}", across=across, upright=upright),
        over=figure(negative(best), "cm", 100),
    )
    return VenueFinding(slug=passage.slug, text=text, subject=load.identifier, ask=sides.asks)
