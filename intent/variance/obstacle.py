"""What stands in the way of a proposal whoever allows it, and what could not be held against any limit."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from intent.language.message import Words, say
from intent.model.naming import runs, subject_name
from intent.model.subject import WHOLE_VENUE, Subject, several


@dataclass(frozen=True, slots=True)
class Need:
    """Something that has to be known: a characteristic, by its label, and of what."""

    characteristic: Words
    subject: Subject = WHOLE_VENUE


@dataclass(frozen=True, slots=True, kw_only=True)
class Obstacle:
    """What cannot be as proposed, or of which it is not known whether it can."""

    slug: str
    """What sort of obstacle it is, for programs."""
    text: Words
    """Without its subject, which a report puts before it, unless ``names_subject``."""
    subject: Subject = WHOLE_VENUE
    is_sure: bool = True
    """Whether it surely is so; else a stated limit is not surely met, and ``missing`` would settle it."""
    is_as_documented: bool = False
    """Whether the documented state has it too and the proposal changes nothing of it: told, but no obstacle."""
    missing: tuple[Need, ...] = ()
    """What would have to be known; nothing where it is sure."""
    ask: tuple[str, ...] = ()
    """Identifiers of people."""
    names_subject: bool = False
    """Whether the text names its subject itself."""


@dataclass(frozen=True, slots=True)
class Unchecked:
    """A limit that nobody stated, so that what would be held against it was not checked."""

    limit: Words
    """What it is called."""
    subject: Subject = WHOLE_VENUE
    """Whose limit it would be."""


def in_the_way(obstacles: Iterable[Obstacle]) -> tuple[Obstacle, ...]:
    """The obstacles that count in the outcome."""
    return tuple(one for one in obstacles if not one.is_as_documented)


def needs_words(needs: Iterable[Need]) -> tuple[Words, ...]:
    """`weight (M1 to M3)`, `mains (the venue)`: each characteristic once, with all of which it has to be known."""
    wanted: dict[Words, dict[Words, None]] = {}
    for need in needs:
        subject = need.subject
        names = subject.members if subject.is_named_by_members else (subject_name(subject),)
        wanted.setdefault(need.characteristic, {}).update(dict.fromkeys(names))
    return tuple(say("{name} ({role})", name=name, role=runs(list(whose))) for name, whose in wanted.items())


def alike_together(obstacles: Iterable[Obstacle]) -> tuple[Obstacle, ...]:
    """The obstacles in their order, those of parts that are alike in all else as one obstacle of them all."""
    alike: dict[Obstacle, dict[Obstacle, None]] = {}
    for obstacle in obstacles:
        alike.setdefault(_of_nobody(obstacle), {})[obstacle] = None
    return tuple(_of_all(list(members)) for members in alike.values())


_NOBODY = several(())


def _of_nobody(obstacle: Obstacle) -> Obstacle:
    """The obstacle without the parts that it is about; of the work or the venue, and of what its text names, itself."""
    if obstacle.names_subject or not obstacle.subject.is_named_by_members:
        return obstacle
    missing = [
        Need(need.characteristic, _NOBODY) if need.subject == obstacle.subject else need
        for need in obstacle.missing
    ]
    return replace(obstacle, subject=_NOBODY, missing=tuple(missing))


def _of_all(members: list[Obstacle]) -> Obstacle:
    if len(members) == 1:
        return members[0]
    parts = dict.fromkeys(part for member in members for part in member.subject.members)
    needs = dict.fromkeys(need for member in members for need in member.missing)
    return replace(members[0], subject=several(parts), missing=tuple(needs))
