"""What a row, a finding or an effect is about."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum
from typing import TypeAlias


class SubjectKind(StrEnum):
    """What sort of thing a subject is."""

    PART = "part"
    """One thing with an identifier: a part, an addition, material, a device, a box."""
    PARTS = "parts"
    """Several such things, by their identifiers."""
    GROUP = "group"
    """All the parts of a group, by its name."""
    WORK = "work"
    VENUE = "venue"
    ADDITIONS = "additions"
    """All that an installation adds."""


SubjectKey: TypeAlias = tuple[SubjectKind, tuple[str, ...]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Subject:
    """What something is said of. Two subjects are the same where they name the same things in the same way."""

    kind: SubjectKind
    members: tuple[str, ...] = ()
    """The identifiers that it stands for, in the order of the work."""
    group: str = ""
    """The name of a group."""

    @property
    def written(self) -> str:
        """As a sentence names it, for programs: `M1`, `M1, M2`, a group's name, `the work`, `the venue`."""
        match self.kind:
            case SubjectKind.GROUP:
                return self.group
            case SubjectKind.WORK | SubjectKind.VENUE:
                return f"the {self.kind}"
            case SubjectKind.ADDITIONS:
                return "additions"
        return ", ".join(self.members)

    @property
    def key(self) -> SubjectKey:
        """The same for a group whoever is in it, and otherwise for the same members."""
        return self.kind, self.members if self.is_named_by_members else (self.group,)

    @property
    def is_named_by_members(self) -> bool:
        """Whether it is called by the identifiers in it, and not by a name of its own."""
        return self.kind in {SubjectKind.PART, SubjectKind.PARTS}


WHOLE_WORK = Subject(kind=SubjectKind.WORK)
WHOLE_VENUE = Subject(kind=SubjectKind.VENUE)


def one(identifier: str) -> Subject:
    """One thing by its identifier."""
    return Subject(kind=SubjectKind.PART, members=(identifier,))


def several(identifiers: Iterable[str]) -> Subject:
    """Things by their identifiers; of a single one, that one."""
    members = tuple(identifiers)
    return Subject(kind=SubjectKind.PART if len(members) == 1 else SubjectKind.PARTS, members=members)


def group_of(name: str, members: Iterable[str]) -> Subject:
    """A group by its name."""
    return Subject(kind=SubjectKind.GROUP, members=tuple(members), group=name)


def additions(members: Iterable[str]) -> Subject:
    """All that an installation adds."""
    return Subject(kind=SubjectKind.ADDITIONS, members=tuple(members))
