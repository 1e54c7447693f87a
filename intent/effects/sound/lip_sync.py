"""How long after the picture the sound is heard that belongs to it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from intent.effects.limits_kept import within
from intent.effects.scene import Scene, Sides
from intent.effects.signal.paths import PICTURE, SOUND, Way, Ways, ways_of
from intent.effects.signal.sound import is_silent
from intent.effects.sound.latencies import (
    PICTURE_LATENCY,
    SOUND_LATENCY,
    Delay,
    any_of_ways,
    delay_along,
    lacking_words,
    says_latency,
)
from intent.effects.sound.listening import distance_to, on_its_way
from intent.formulas import acoustics
from intent.language.figures import figure
from intent.language.message import Message, say
from intent.model.subject import one, several
from intent.values.bounds import minus, negative, plus
from intent.values.regions import Interval
from intent.values.sets import Answer
from intent.values.units import in_unit
from intent.variance.obstacle import Need
from intent.variance.result import Effect, EffectTopic

LATENCY = say(
    "the latencies along the way; nothing taken for cables, tubes, film and plain amplifiers, nor for a player, of "
    "which none is said"
)
LIP_SYNC = say(
    "ITU-R BT.1359-1, found with speech on television; the latencies along both ways, nothing taken for cables, tubes, "
    "passive loudspeakers and plain amplifiers, nor for a player, of which none is said; in air of 20 °C where no "
    "temperature is said"
)


def delay_effects(sides: Sides) -> Iterator[Effect]:
    """The effects of the proposal on when picture and sound come out."""
    pictures, sounds = ways_of(sides, PICTURE), ways_of(sides, SOUND)
    displays = [
        part.identifier for part in sides.proposed.parts("display") if sides.was_there(part.identifier)
    ]
    loudspeakers = [
        part.identifier for part in sides.proposed.parts("loudspeaker") if sides.was_there(part.identifier)
    ]
    for display in displays:
        yield from _picture_delay(sides, display, pictures)
        if not is_silent(sides.proposed, display):
            for loudspeaker in loudspeakers:
                yield from _lip_sync(sides, display, loudspeaker, pictures, sounds)


def _picture_delay(sides: Sides, display: str, ways: Ways) -> Iterator[Effect]:
    """How much later the picture comes than it leaves its player."""
    was, is_now = ways.documented(display), ways.proposed(display)
    if not was or not is_now:
        return
    if not says_latency(sides.documented, was) and not says_latency(sides.proposed, is_now):
        return
    before = any_of_ways(delay_along(sides.documented, way, PICTURE_LATENCY) for way in was.values())
    after = any_of_ways(delay_along(sides.proposed, way, PICTURE_LATENCY) for way in is_now.values())
    if before.seconds == after.seconds:
        return
    yield Effect(
        topic=EffectTopic.SIGNAL,
        subject=one(display),
        quantity=say("delay of the picture"),
        unit="ms",
        documented=in_unit(before.seconds, "ms"),
        proposed=in_unit(after.seconds, "ms"),
        sentence=say(
            "where the picture answers to visitors, or to sound or other pictures, it answers later or sooner than "
            "documented"
        ),
        source=LATENCY,
        missing=lacking_words(after.needs, one(display)),
    )


def _lip_sync(sides: Sides, display: str, loudspeaker: str, pictures: Ways, sounds: Ways) -> Iterator[Effect]:
    """How long after the picture of a display its sound is heard from a loudspeaker that one player feeds with both."""
    was = _behind(sides.documented, pictures.documented(display), sounds.documented(loudspeaker))
    now = _behind(sides.proposed, pictures.proposed(display), sounds.proposed(loudspeaker))
    if was is None or now is None:
        return
    ways = [distance_to(scene, loudspeaker) for scene in (sides.documented, sides.proposed)]
    far = [distance for distance in ways if distance is not None]
    is_heard_afar = len(far) == len(ways)
    before, after = was.seconds, now.seconds
    if is_heard_afar:
        # both in the air of the venue: the documentation has none
        before, after = (
            plus(delay, on_its_way(sides.proposed, distance))
            for delay, distance in zip((before, after), far, strict=True)
        )
    if before == after:
        return
    pair = several((display, loudspeaker))
    needs = now.needs if is_heard_afar else (*now.needs, _viewing_distance(sides.proposed, loudspeaker))
    yield Effect(
        topic=EffectTopic.SIGNAL,
        subject=pair,
        quantity=say("sound after the picture, where visitors stand")
        if is_heard_afar
        else say("sound after the picture, at the loudspeaker"),
        unit="ms",
        documented=in_unit(before, "ms"),
        proposed=in_unit(after, "ms"),
        sentence=_apart_words(after),
        source=LIP_SYNC,
        missing=lacking_words(needs, pair),
    )


def _viewing_distance(scene: Scene, part: str) -> Need:
    return Need(scene.called("viewing-distance"), one(part))


def _behind(scene: Scene, pictures: Mapping[str, Way], sounds: Mapping[str, Way]) -> Delay | None:
    """The delay of the sound less that of the picture, from any player that feeds both; none where none does."""
    shared = {player: (pictures[player], sounds[player]) for player in pictures if player in sounds}
    if not shared:
        return None
    return any_of_ways(_difference(scene, *ways) for ways in shared.values())


def _difference(scene: Scene, picture: Way, sound: Way) -> Delay:
    seen, heard = delay_along(scene, picture, PICTURE_LATENCY), delay_along(scene, sound, SOUND_LATENCY)
    return Delay(minus(heard.seconds, seen.seconds), (*seen.needs, *heard.needs))


def _apart_words(behind: Interval) -> Message:
    if within(behind, acoustics.DETECTED) is Answer.IN:
        return say("sound and picture belong together: hardly anybody notices what is left between them")
    if within(behind, acoustics.DETECTED) is Answer.OPEN:
        return say(
            "whether viewers notice that sound and picture come apart cannot be said from what is given"
        )
    is_late = behind.low is not None and behind.low > 0
    time = figure(behind if is_late else negative(behind), "ms")
    if within(behind, acoustics.ACCEPTED) is Answer.OUT:
        return (
            say("the sound comes {time} after the picture, later than viewers accept", time=time)
            if is_late
            else say(
                "the sound comes {time} before the picture, earlier than viewers accept: delay the sound by as much",
                time=time,
            )
        )
    return (
        say("the sound comes {time} after the picture, and viewers notice", time=time)
        if is_late
        else say("the sound comes {time} before the picture, and viewers notice: delay the sound", time=time)
    )
