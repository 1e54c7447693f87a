"""The circuits that feed the work: which parts each feeds, as far as that is said, and what the venue's bear."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from intent.effects.scene import THE_VENUE, THE_WORK, Scene
from intent.formulas import electricity
from intent.language.message import Saying, figure, say
from intent.values.bounds import natural, point, surely_above, surely_within, times
from intent.values.regions import Interval
from intent.values.sets import Answer

ONE = point(1)


@dataclass(frozen=True, slots=True)
class Feed:
    """The parts on one circuit; or those that name none, on any of the venue's."""

    name: str
    parts: tuple[str, ...]
    circuits: Interval
    """On how many circuits they may be."""

    @property
    def is_one(self) -> bool:
        return self.circuits == ONE

    def surely_exceeds(self, taken: Interval, limit: Interval) -> bool:
        """Whether at least one circuit is beyond a limit, however the parts are spread."""
        return surely_above(taken, times(self.circuits, limit))

    def told(self, words: Saying) -> Saying:
        """What holds of one circuit, as it is told of these parts."""
        if self.name:
            return say("on circuit {name}, {words}", name=self.name, words=words)
        return words if self.is_one else say("were all on one circuit, {words}", words=words)


@dataclass(frozen=True, slots=True, kw_only=True)
class Circuits:
    """What the venue's circuits give: volts, how many, and amperes each."""

    mains: Interval
    number: Interval
    rating: Interval
    share: Interval
    """Of the rating, that may be drawn for as long as the work runs."""
    is_stated: bool
    """Whether that share is the venue's, rather than the usual one."""

    @property
    def allowed(self) -> Interval:
        """In amperes, on each."""
        return electricity.may_draw(self.rating, self.share)

    @property
    def bearable(self) -> Interval:
        """In amperes, on each: beyond this a circuit is overloaded whatever the local code says."""
        return self.allowed if self.is_stated else self.rating

    @property
    def allowance(self) -> Saying:
        places = {"share": figure(self.share, "%", 100), "rating": figure(self.rating, "A")}
        if self.share == ONE:
            return say("{rating}", rating=places["rating"])
        if self.is_stated:
            return say("{share} of {rating}, as the venue allows", **places)
        return say("{share} of {rating}, the usual allowance for loads of three hours or more", **places)


def circuits_of(scene: Scene) -> Circuits:
    mains, number, rating = (natural(scene.venue(name)) for name in ("mains", "circuits", "circuit-current"))
    is_short = (
        scene.is_(THE_WORK, "running", "continuous") is Answer.OUT
        and surely_within(scene.venue("opening-time"), electricity.CONTINUOUS_FROM)
        and scene.venue("opening-time") != electricity.CONTINUOUS_FROM
    )
    if is_short:
        return Circuits(mains=mains, number=number, rating=rating, share=ONE, is_stated=True)
    is_stated = scene.states(THE_VENUE, "continuous-load-share")
    share = natural(scene.venue("continuous-load-share")) if is_stated else electricity.CONTINUOUS_SHARE
    return Circuits(mains=mains, number=number, rating=rating, share=share, is_stated=is_stated)


def feeds_of(scene: Scene, parts: Sequence[str], number: Interval) -> tuple[Feed, ...]:
    """The circuits that are named, and then the parts that name none."""
    named: dict[str, list[str]] = {}
    for part in parts:
        named.setdefault(scene.text(part, "circuit"), []).append(part)
    unnamed = named.pop("", [])
    found = [Feed(name, tuple(members), ONE) for name, members in named.items()]
    return (*found, Feed("", tuple(unnamed), number)) if unnamed else tuple(found)
