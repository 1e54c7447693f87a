"""The displays and loudspeakers that no picture or sound reaches, or of which nobody can tell whether it does."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from intent.effects.limits_kept import Input, Limited, any_of, inputs, inputs_of_state, obstacles, unchecked
from intent.effects.scene import Sides
from intent.effects.signal.fits import STATE, Fit
from intent.effects.signal.links import Link, terms_of
from intent.effects.signal.mending import CONNECTION, loose_additions, mended, perhaps_mended
from intent.effects.signal.misfits import misfit_of
from intent.effects.signal.paths import (
    PICTURE,
    SOUND,
    Arrivals,
    Way,
    carries,
    carrying_channel,
    players_of,
    ways_of,
)
from intent.language.message import Message, Words, say
from intent.model.subject import WHOLE_WORK, one
from intent.values.sets import Answer
from intent.variance.obstacle import Need, Obstacle, Unchecked


def arrival_obstacles(sides: Sides) -> Iterator[Obstacle | Unchecked]:
    """Of every display its picture, and of every loudspeaker its sound."""
    for carriers, kind in ((PICTURE, "display"), (SOUND, "loudspeaker")):
        ways = ways_of(sides, carriers)
        before, after = ways.before, ways.after
        told: dict[Fit, Link] = {}
        for part in sides.proposed.running(kind):
            yield from _arriving(sides, part.identifier, before, after)
            for way in after.ways(part.identifier).values():
                for link in way:
                    told.update({fit: link for fit in after.fits[link] if fit.answer is Answer.OPEN})
        for fit, link in told.items():
            yield from _unsure(sides, fit, link, is_new=link not in before.links)


def _arriving(sides: Sides, part: str, before: Arrivals, after: Arrivals) -> Iterator[Obstacle]:
    """What does not arrive of what its connections would bring, and whether anything of its channel does."""
    intended, arriving = after.ways(part, working=False), after.ways(part)
    documented = before.ways(part) if sides.was_there(part) else {}
    broken = [player for player in intended if player not in arriving]
    for player in broken:
        yield from _broken(sides, part, after, intended[player], was_broken=player not in documented)
    if broken:
        return
    if documented and not arriving:
        words = say("no player reaches it any more: nothing is to be seen or heard of it")
        yield from _dark(sides, part, words, after)
    elif not sides.was_there(part) and not arriving and after.links:
        words = say("no connection leads from a player to it: nothing is to be seen or heard of it")
        yield from _dark(sides, part, words, after)
    else:
        yield from _channel(sides, part, documented, arriving)


def _broken(sides: Sides, part: str, after: Arrivals, way: Way, *, was_broken: bool) -> Iterator[Obstacle]:
    """The first connection on the way that surely does not fit, and what would mend it."""
    link = next(link for link in way if after.misfit(link) is not None)
    fit = after.misfit(link)
    assert fit is not None
    scene = sides.proposed
    why = misfit_of(scene, link, fit)
    beyond = say("{why}, so that {player} does not reach it", why=why.beyond, player=way[0].start)
    words = why.here if link.end == part else beyond
    found = [
        *inputs(sides, link.start, "output-signal", "output-connector"),
        *inputs_of_state(sides, link.start),
        *inputs(sides, link.end, "input-signal", "input-connector"),
        *inputs(sides, part, "presence"),
    ]
    is_new = not was_broken
    yield from _told(
        sides,
        part,
        say("{why}; {mending}", why=words, mending=mended(sides, fit)),
        after,
        found,
        is_new=is_new,
    )


def _dark(sides: Sides, part: str, words: Message, after: Arrivals) -> Iterator[Obstacle]:
    yield from _told(sides, part, words, after, list(inputs(sides, part, "presence")), is_new=True)


def _told(
    sides: Sides, part: str, words: Words, after: Arrivals, found: list[Input], *, is_new: bool
) -> Iterator[Obstacle]:
    """Surely so, unless something is added that no connection joins: it may mend it, which nobody says."""
    loose = loose_additions(sides, after.links)
    needs = [Input(need=Need(CONNECTION, one(name)), is_exact=False, is_changed=True) for name in loose]
    changed = [Input(need=Need(CONNECTION, WHOLE_WORK), is_exact=True, is_changed=True)]
    limited = Limited(
        slug="not-arriving",
        subject=one(part),
        inputs=[
            *needs,
            *(changed if is_new else ()),
            *(() if loose else found),
            *inputs_of_state(sides, part),
        ],
        sure=words,
        unsure=perhaps_mended(words, loose) if loose else words,
    )
    # to what may be switched off, nothing need arrive
    answer = any_of([Answer.OPEN if loose else Answer.OUT, sides.proposed.runs(part).negated])
    yield from obstacles(sides, answer, limited)


def _channel(
    sides: Sides, part: str, documented: Mapping[str, Way], arriving: Mapping[str, Way]
) -> Iterator[Obstacle]:
    """Whether what arrives is of the channel of the part; where no connections are recorded, whether any player is."""
    scene = sides.proposed
    if not scene.states(part, "channel"):
        return
    before: tuple[str, ...] = ()
    if sides.was_there(part):
        before = carrying_channel(sides.documented, part, documented or players_of(sides.documented))
    players = players_of(scene)
    answer = any_of(carries(scene, part, source) for source in arriving or players)
    if answer is Answer.IN or (sides.was_there(part) and not before) or (not players and not before):
        return
    sources = tuple(arriving) or players
    found = [*inputs(sides, part, "channel", "presence"), *inputs_of_channels(sides, sources)]
    is_new = bool(before)
    changed = [Input(need=Need(scene.called("channel"), one(part)), is_exact=True, is_changed=is_new)]
    limited = Limited(
        slug="other-channel",
        subject=one(part),
        inputs=[*found, *changed],
        sure=say("no player that reaches it carries channel {channel}", channel=scene.text(part, "channel")),
        unsure=say("whether a player that reaches it carries its channel is not said"),
    )
    yield from obstacles(sides, any_of([answer, scene.runs(part).negated]), limited)


def inputs_of_channels(sides: Sides, players: tuple[str, ...]) -> tuple[Input, ...]:
    """The channels that players carry."""
    return tuple(one_ for player in players for one_ in inputs(sides, player, "channel"))


def _unsure(sides: Sides, fit: Fit, link: Link, *, is_new: bool) -> Iterator[Obstacle | Unchecked]:
    """An end of a connection of which it is not known whether it fits; of what nobody ever stated, not checked."""
    found = [*inputs(sides, fit.bearer, fit.characteristic)]
    if not fit.is_stated and not is_new and not any(one_.is_changed for one_ in found):
        yield from unchecked(sides, fit.bearer, fit.characteristic)
        return
    scene = sides.proposed
    wanted = terms_of(scene, frozenset(fit.wanted))
    if fit.characteristic == STATE:
        unsure = say("whether it is switched on is not said")
    elif not fit.wanted:
        unsure = say("what it sends to {end} is not said", end=link.end)
    elif fit.is_end:
        unsure = say("whether it takes {wanted} from {start} is not said", wanted=wanted, start=link.start)
    else:
        unsure = say("whether it gives {wanted} for {end} is not said", wanted=wanted, end=link.end)
    changed = [Input(need=Need(CONNECTION, WHOLE_WORK), is_exact=True, is_changed=True)] if is_new else []
    limited = Limited(
        slug="may-not-fit", subject=one(fit.bearer), inputs=[*found, *changed], sure="", unsure=unsure
    )
    yield from obstacles(sides, Answer.OPEN, limited)
