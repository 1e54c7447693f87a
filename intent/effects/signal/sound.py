"""What is to be heard, and what is not: devices that could sound in a silent work, sound that is lost in another."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from intent.effects.scene import Scene, Sides
from intent.effects.signal.arrival import lost_effect
from intent.effects.signal.paths import SOUND, ways_of
from intent.language.message import Message, say
from intent.model.assertions import Aggregate, ScopeKind
from intent.model.meaning import admitted_values
from intent.model.subject import one, several
from intent.model.work import Modality
from intent.names import TERM, THE_WORK
from intent.values.bounds import ONE, ZERO, between, point
from intent.values.regions import Interval
from intent.values.sets import Answer, Labels, is_within
from intent.variance.result import Effect, EffectTopic
from intent.variance.speaking import speakers

STATED = say("what is stated of devices, material and the work")
PRACTICE = say("common practice, no source")
SOUNDING = say("devices that can sound")
YES, NO, EITHER = ONE, ZERO, between(0, 1)
"""How many devices sound, of one: all of them, none, or either."""
ANSWERS = {Answer.IN: YES, Answer.OUT: NO, Answer.OPEN: EITHER}


def sound_effects(sides: Sides) -> Iterator[Effect]:
    """The effects of the proposal on what is heard."""
    if _must_be_silent(sides):
        yield from _disturbing(sides)
        return
    yield from _left_out(sides)
    yield from _no_longer_sounding(sides)
    yield from _lost_ways(sides)
    yield from _material(sides)


def _must_be_silent(sides: Sides) -> bool:
    """Whether silence is part of the work: documented, or required by an instruction in force."""
    scene = sides.proposed
    if sides.documented.states(THE_WORK, "sound"):
        return sides.documented.is_(THE_WORK, "sound", "silent") is Answer.IN
    sound, silence = scene.characteristic("sound"), Labels(frozenset({str(TERM.silent)}))
    lines = [
        line
        for line in sides.work.instructions
        if line.modality is Modality.REQUIRED
        and line.assertion.characteristic == sound.iri
        and line.assertion.aggregate is Aggregate.EACH
        and line.assertion.scope.kind is ScopeKind.WORK
    ]
    speaking = speakers(scene.case, lines, (THE_WORK,), sides.installation.dates.first) if lines else ()
    for speaker in speaking:
        admitted = admitted_values(speaker.line.assertion.expression, sound, scene.vocabulary)
        if admitted is not None and is_within(admitted, silence):
            return True
    return False


def _can_sound(scene: Scene, part: str) -> Interval:
    """1 where a part has a loudspeaker that is not muted, 0 where it cannot sound, between them where nobody says.

    What is switched off cannot sound.
    """
    return scene.as_it_runs(part, _sounds_if_on(scene, part))


def _sounds_if_on(scene: Scene, part: str) -> Interval:
    if scene.is_(part, "muted", "yes") is Answer.IN and scene.states(part, "muted"):
        return NO
    if _is_loudspeaker(scene, part):
        return YES
    if not scene.states(part, "own-loudspeaker"):
        return EITHER
    return ANSWERS[scene.is_(part, "own-loudspeaker", "yes")]


def _is_loudspeaker(scene: Scene, part: str) -> bool:
    found = scene.case.scopes.proposed.every[part]
    return scene.vocabulary.is_kind(found.kind.iri, str(TERM.loudspeaker))


def _disturbing(sides: Sides) -> Iterator[Effect]:
    """What could now be heard of a silent work."""
    scene = sides.proposed
    for part in scene.parts("display", "player", "loudspeaker"):
        name = part.identifier
        was_there, now = sides.was_there(name), _can_sound(scene, name)
        before = _can_sound(sides.documented, name) if was_there else None
        is_new = not was_there or name in scene.case.substituted
        if now == NO or (before == now and not (is_new and now == EITHER)):
            continue
        if now == EITHER and not is_new:
            continue
        yield Effect(
            topic=EffectTopic.SIGNAL,
            subject=one(name),
            quantity=SOUNDING,
            documented=before,
            proposed=now,
            sentence=_disturbance_words(scene, name, now),
            source=PRACTICE,
            missing=() if now == YES else (scene.called("own-loudspeaker"),),
        )


def _disturbance_words(scene: Scene, part: str, now: Interval) -> Message:
    if scene.runs(part) is not Answer.IN:
        return _off_words(scene, part)
    if now == EITHER:
        return say("whether the new device has a loudspeaker of its own is not said, and the work is silent")
    sounds = [scene.is_(material, "sound", "audible") for material in scene.material(part)]
    if Answer.IN in sounds:
        return say("its material has sound and the device can play it, in a work that is silent: mute it")
    return say("the device can hum, chime or play sound in a work that is silent: mute it")


def _left_out(sides: Sides) -> Iterator[Effect]:
    """Loudspeakers that the work had and has no longer."""
    before = [
        part.identifier for part in sides.documented.parts("loudspeaker") if sides.was_there(part.identifier)
    ]
    after = [part.identifier for part in sides.proposed.parts("loudspeaker")]
    gone = tuple(part for part in before if part not in after)
    if not gone:
        return
    sentence = (
        say("less is heard, or from fewer places than documented")
        if after
        else say("no loudspeaker is left: nothing is heard but what displays sound by themselves")
    )
    yield Effect(
        topic=EffectTopic.SIGNAL,
        subject=several(gone),
        quantity=say("loudspeakers"),
        documented=point(len(before)),
        proposed=point(len(after)),
        sentence=sentence,
        source=STATED,
    )


def _no_longer_sounding(sides: Sides) -> Iterator[Effect]:
    """Parts that could be heard, and now surely or perhaps cannot."""
    for part in sides.proposed.parts("display", "player", "loudspeaker"):
        name = part.identifier
        if not sides.was_there(name) or is_silent(sides.documented, name):
            continue
        before, now = _can_sound(sides.documented, name), _can_sound(sides.proposed, name)
        if before != YES or now == YES:
            continue
        yield Effect(
            topic=EffectTopic.SIGNAL,
            subject=one(name),
            quantity=SOUNDING,
            documented=before,
            proposed=now,
            sentence=_silence_words(sides.proposed, name, now),
            source=STATED,
            missing=() if now == NO else (sides.proposed.called("own-loudspeaker"),),
        )


def _silence_words(scene: Scene, part: str, now: Interval) -> Message:
    if scene.runs(part) is not Answer.IN:
        return _off_words(scene, part)
    if now == EITHER:
        return say("whether the new device has a loudspeaker, as the documented one has, is not said")
    if scene.states(part, "muted") and scene.is_(part, "muted", "yes") is Answer.IN:
        return say("it is muted: its sound is no longer heard from here")
    return say(
        "the device has no loudspeaker, as the documented one has: its sound is no longer heard from here"
    )


def _off_words(scene: Scene, part: str) -> Message:
    if scene.runs(part) is Answer.OUT:
        return say("it is switched off: its sound is no longer heard from here")
    return say("whether it is switched on is not said, and so not whether it is heard")


def is_silent(scene: Scene, part: str) -> bool:
    """Whether all that a part's channel shows is surely silent."""
    shown = scene.material(part)
    return bool(shown) and all(scene.is_(material, "sound", "silent") is Answer.IN for material in shown)


def _lost_ways(sides: Sides) -> Iterator[Effect]:
    """Loudspeakers that their player no longer reaches."""
    loudspeakers = [part.identifier for part in sides.proposed.running("loudspeaker")]
    ways = ways_of(sides, SOUND) if loudspeakers else None
    for part in loudspeakers:
        lost = ways.lost(part) if ways is not None else None
        if lost is not None:
            yield lost_effect(sides, part, lost, say("players whose sound arrives"))


def _material(sides: Sides) -> Iterator[Effect]:
    """Material that had sound and has none any more."""
    for material in sides.work.material:
        before, now = (_audible(scene, material.identifier) for scene in (sides.documented, sides.proposed))
        if before == YES and now != YES:
            yield Effect(
                topic=EffectTopic.SIGNAL,
                subject=several(_playing(sides.proposed, material.identifier)),
                quantity=say("material with sound"),
                documented=before,
                proposed=now,
                sentence=say("the material is silent, and had sound as documented")
                if now == NO
                else say("whether the material still has sound is not said"),
                source=STATED,
            )


def _audible(scene: Scene, material: str) -> Interval:
    if not scene.states(material, "sound"):
        return EITHER
    return ANSWERS[scene.is_(material, "sound", "audible")]


def _playing(scene: Scene, material: str) -> tuple[str, ...]:
    parts: Sequence[str] = [part.identifier for part in scene.parts("player", "loudspeaker")]
    return tuple(part for part in parts if material in scene.material(part)) or (material,)
