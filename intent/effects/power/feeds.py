"""The circuits that feed the work: which parts each feeds, as far as that is said, and what the venue's bear."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from intent.effects.power.consumers import losses, taken_by
from intent.effects.scene import Scene, Sides
from intent.effects.signal.links import links_of
from intent.formulas import electricity
from intent.language.figures import figure
from intent.language.message import Message, Words, say
from intent.names import THE_VENUE, THE_WORK
from intent.values.bounds import ONE, hull, natural, over, plus, surely_above, times
from intent.values.regions import Interval
from intent.values.sets import Answer


@dataclass(frozen=True, slots=True)
class Feed:
    """The parts on one circuit; or those of which no circuit is named, on any of the venue's."""

    name: Words
    """What the circuit is called; empty where none is named."""
    parts: tuple[str, ...]
    circuits: Interval
    """On how many circuits they may be."""

    @property
    def is_one(self) -> bool:
        return self.circuits == ONE

    def surely_exceeds(self, taken: Interval, limit: Interval) -> bool:
        """Whether at least one circuit is beyond a limit, however the parts are spread."""
        return surely_above(taken, times(self.circuits, limit))

    def told(self, words: Message) -> Message:
        """What is said of one circuit, with the circuit that these parts are on, or might be on."""
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
    is_north_american: bool
    """Whether the supply is one for which the usual share is a rule of the code."""

    @property
    def allowed(self) -> Interval:
        """The amperes that may be drawn of each for as long as the work runs."""
        return electricity.may_draw(self.rating, self.share)

    @property
    def bearable(self) -> Interval:
        """The amperes beyond which each is overloaded whatever the local code says."""
        return self.allowed if self.is_stated else self.rating

    @property
    def allowance(self) -> Message:
        """The same in words, as a share of the rating."""
        share, rating = figure(self.share, "%"), figure(self.rating, "A")
        if self.share == ONE:
            return say("{rating}", rating=rating)
        if self.is_stated:
            return say("{share} of {rating}, as the venue allows", share=share, rating=rating)
        if self.is_north_american:
            return say(
                "{share} of {rating}, the usual allowance for loads of three hours or more",
                share=share,
                rating=rating,
            )
        return say(
            "{share} of {rating}, which is taken here where the venue states no share",
            share=share,
            rating=rating,
        )


def circuits_of(scene: Scene) -> Circuits:
    """The venue's circuits; all of the rating may be drawn by a work that runs for less than three hours a day."""
    mains, number, rating = (natural(scene.venue(name)) for name in ("mains", "circuits", "circuit-current"))
    is_short = scene.is_(THE_WORK, "running", "continuous") is Answer.OUT and surely_above(
        electricity.CONTINUOUS_FROM, scene.venue("opening-time")
    )
    if is_short:
        share, is_stated = ONE, True
    else:
        share, is_stated = _share(scene)
    return Circuits(
        mains=mains,
        number=number,
        rating=rating,
        share=share,
        is_stated=is_stated,
        is_north_american=electricity.is_north_american(mains, scene.venue("mains-frequency")),
    )


def _share(scene: Scene) -> tuple[Interval, bool]:
    """What may be drawn of the rating, and whether the venue states it."""
    is_stated = scene.states(THE_VENUE, "continuous-load-share")
    share = natural(scene.venue("continuous-load-share")) if is_stated else electricity.CONTINUOUS_SHARE
    return share, is_stated


def feeds_of(scene: Scene, parts: Sequence[str], number: Interval) -> tuple[Feed, ...]:
    """The circuits that are named, and then the parts that name none."""
    named: dict[Words, list[str]] = {}
    for part in parts:
        named.setdefault(scene.text(part, "circuit"), []).append(part)
    unnamed = named.pop("", [])
    found = [Feed(name, tuple(members), ONE) for name, members in named.items()]
    return (*found, Feed("", tuple(unnamed), number)) if unnamed else tuple(found)


def voltages_of(scene: Scene) -> tuple[Interval, ...]:
    """The voltages that the venue's mains gives a device of one phase: of three, also that of one to the neutral."""
    mains = natural(scene.venue("mains"))
    is_three = scene.is_(THE_VENUE, "supply-phases", "three-phase") is Answer.IN
    return (
        (mains, over(mains, electricity.THREE_PHASES))
        if is_three and scene.states(THE_VENUE, "supply-phases")
        else (mains,)
    )


def current_of(scene: Scene, part: str) -> Interval:
    """What a part draws, in amperes; of a device of three phases, in each conductor: I = S/(√3·U)."""
    apparent, mains = taken_by(scene, part, "apparent-power"), natural(scene.venue("mains"))
    if scene.states(part, "supply-phases") and scene.is_(part, "supply-phases", "three-phase") is Answer.IN:
        return electricity.current(apparent, times(mains, electricity.THREE_PHASES))
    rated, given = natural(scene.bounds(part, "rated-voltage")), voltages_of(scene)
    fitting = [voltage for voltage in given if electricity.suits(rated, voltage) is not Answer.OUT]
    return hull(electricity.current(apparent, voltage) for voltage in fitting or given)


def with_losses_on_the_way(sides: Sides, loads: Mapping[str, Interval]) -> dict[str, Interval]:
    """The current of each part, with what is lost in the transformer or supply that feeds it.

    What is lost is counted as power that does work, the current of an unloaded transformer not at all. Of several parts
    that one feeds the first has it, of one that no connection joins the last of all, which names its circuit the least.
    """
    scene, found = sides.proposed, dict(loads)
    for supply, lost in losses(scene).items() if loads else ():
        fed = [link.end for link in links_of(sides) if link.start == supply and link.end in loads]
        part = (fed or list(loads)[-1:])[0]
        current = electricity.current(lost, natural(scene.venue("mains")))
        found[part] = plus(found[part], current)
    return found
