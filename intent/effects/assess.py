"""A proposal assessed: its verdicts, what it does to what visitors see and to the venue, and the outcome of all."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace

from intent.effects.handling.floor import floor_effects
from intent.effects.handling.hanging import hanging_effects
from intent.effects.handling.into_box import packing_obstacles
from intent.effects.handling.lifting import lifting_effects
from intent.effects.handling.placement import placement_effects
from intent.effects.handling.room_limits import room_obstacles
from intent.effects.handling.route import route_effects
from intent.effects.light.beams import beam_effects
from intent.effects.light.brightness import light_effects
from intent.effects.light.hazard_zone import hazard_effects
from intent.effects.light.ultraviolet import ultraviolet_effects
from intent.effects.picture.aside import aside_effects
from intent.effects.picture.keystone import keystone_effects
from intent.effects.picture.motion import motion_effects
from intent.effects.picture.resampling import raster_effects
from intent.effects.picture.shift_limits import shift_obstacles
from intent.effects.picture.size import picture_effects
from intent.effects.picture.throwing import throw_obstacles
from intent.effects.power.consumption import power_effects
from intent.effects.power.ventilation import ventilation_effects
from intent.effects.power.wear import wear_effects
from intent.effects.scene import Sides, sides_of
from intent.effects.signal.arrival import signal_effects
from intent.effects.signal.cable_lengths import cable_effects
from intent.effects.signal.not_arriving import arrival_obstacles
from intent.effects.signal.sound import sound_effects
from intent.effects.signal.standard_taken import standard_obstacles
from intent.effects.signal.timing import timing_effects
from intent.effects.sound.exposure import exposure_effects
from intent.effects.sound.lip_sync import delay_effects
from intent.effects.sound.loudness import loudness_effects
from intent.effects.sound.noise import noise_effects
from intent.effects.unlike import unlike_effects
from intent.model.installation import Installation
from intent.model.subject import several
from intent.model.work import Work
from intent.variance.case import lay_out
from intent.variance.judge import judged
from intent.variance.obstacle import Obstacle, Unchecked, alike_together
from intent.variance.result import Effect, EffectTopic, Variance

Told = Effect | Obstacle | Unchecked
Finds = Callable[[Sides], Iterable[Told]]
ROOMS: tuple[Finds, ...] = (
    picture_effects,
    aside_effects,
    throw_obstacles,
    shift_obstacles,
    keystone_effects,
    placement_effects,
    room_obstacles,
    raster_effects,
    motion_effects,
    signal_effects,
    arrival_obstacles,
    standard_obstacles,
    cable_effects,
    timing_effects,
    sound_effects,
    delay_effects,
    loudness_effects,
    noise_effects,
    exposure_effects,
    light_effects,
    ultraviolet_effects,
    beam_effects,
    hazard_effects,
    power_effects,
    ventilation_effects,
    wear_effects,
    lifting_effects,
    floor_effects,
    hanging_effects,
    route_effects,
    packing_obstacles,
)
"""What is computed, in the order in which it is told."""


def assess(work: Work, installation: Installation) -> Variance:
    """The variance of an installation, with its effects and obstacles; what stands in the way counts in the outcome."""
    case = lay_out(work, installation)
    sides = sides_of(case)
    found = [one for room in ROOMS for one in room(sides)]
    effects = [one for one in found if isinstance(one, Effect)]
    return judged(
        case,
        effects=together([*effects, *unlike_effects(sides, effects)]),
        obstacles=alike_together(one for one in found if isinstance(one, Obstacle)),
        unchecked=[one for one in found if isinstance(one, Unchecked)],
    )


def together(effects: Iterable[Effect]) -> tuple[Effect, ...]:
    """The effects in the order of their topics, those of parts that are alike in all else as one effect of them all."""
    members: dict[Effect, dict[str, None]] = {}
    for effect in effects:
        subject = effect.subject
        # parts make no difference to what is alike; the work or the venue as a whole stays by itself
        alike = replace(effect, subject=several(())) if subject.is_named_by_members else effect
        members.setdefault(alike, {}).update(dict.fromkeys(subject.members))
    joined = [
        replace(effect, subject=several(parts)) if effect.subject.is_named_by_members else effect
        for effect, parts in members.items()
    ]
    return tuple(sorted(joined, key=lambda effect: list(EffectTopic).index(effect.topic)))
