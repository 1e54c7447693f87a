"""Which subjects a scope holds, in the documented work and as proposed."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from intent.model.assertions import Aggregate, Assertion, Scope, ScopeKind
from intent.model.installation import Installation
from intent.model.subject import WHOLE_VENUE, WHOLE_WORK, Subject, additions, group_of, one, several
from intent.model.work import Part, Work
from intent.names import THE_VENUE, THE_WORK
from intent.vocabulary.terms import Vocabulary

_WHOLES = {THE_WORK: WHOLE_WORK, THE_VENUE: WHOLE_VENUE}


@dataclass(frozen=True, slots=True)
class Parts:
    """Some parts, in the order of the work, found by identifier and by group."""

    every: Mapping[str, Part]
    places: Mapping[str, int]
    of_group: Mapping[str, tuple[str, ...]]

    def named(self, names: Iterable[str]) -> tuple[str, ...]:
        """The parts of these identifiers and groups, in order."""
        found = {part for name in names for part in self.of_group.get(name, (name,)) if part in self.every}
        return tuple(sorted(found, key=lambda part: self.places[part]))


def _parts(parts: Iterable[Part]) -> Parts:
    every = {part.identifier: part for part in parts}
    groups: dict[str, list[str]] = {}
    for part in every.values():
        if part.group is not None:
            groups.setdefault(part.group, []).append(part.identifier)
    places = {identifier: place for place, identifier in enumerate(every)}
    return Parts(every, places, {group: tuple(members) for group, members in groups.items()})


@dataclass(frozen=True, slots=True, kw_only=True)
class Scopes:
    vocabulary: Vocabulary
    documented: Parts
    proposed: Parts
    """The documented parts with the additions; omitted parts are still named."""
    added: tuple[str, ...]
    material: frozenset[str]

    def of_work(self, assertion: Assertion) -> tuple[str, ...]:
        """The subjects in the documented work: what rule 2 compares."""
        return self._members(assertion, self.documented)

    def of_proposal(self, assertion: Assertion) -> tuple[str, ...]:
        """The same with additions, which count in their group and kind."""
        if assertion.scope.kind is ScopeKind.ADDITIONS:
            return self._less(self.added, assertion.scope)
        return self._members(assertion, self.proposed)

    def _members(self, assertion: Assertion, parts: Parts) -> tuple[str, ...]:
        scope = assertion.scope
        if scope.kind is ScopeKind.VENUE:
            return (THE_VENUE,)
        if scope.kind is ScopeKind.WORK and self._is_of_work(assertion):
            return (THE_WORK,)
        if scope.kind is ScopeKind.ADDITIONS:
            return ()
        if scope.kind is ScopeKind.NAMES:
            material = tuple(name for name in scope.names if name in self.material)
            return (*self._less(parts.named(scope.names), scope), *material)
        if scope.kind is ScopeKind.WORK:
            return self._less(tuple(parts.every), scope)
        held = (part.identifier for part in parts.every.values() if self._is_kind(part, scope))
        return self._less(tuple(held), scope)

    def _is_of_work(self, assertion: Assertion) -> bool:
        found = self.vocabulary.characteristics.get(assertion.characteristic or "")
        return assertion.aggregate is Aggregate.EACH and found is not None and "work" in found.bearers

    def _is_kind(self, part: Part, scope: Scope) -> bool:
        return self.vocabulary.is_kind(part.kind.iri, scope.part_kind or "")

    def _less(self, members: tuple[str, ...], scope: Scope) -> tuple[str, ...]:
        if not scope.excepted:
            return members
        excepted = frozenset(self.proposed.named(scope.excepted))
        return tuple(member for member in members if member not in excepted)


def scopes_of(work: Work, installation: Installation | None = None) -> Scopes:
    added = installation.additions if installation else ()
    return Scopes(
        vocabulary=work.vocabulary,
        documented=_parts(work.parts),
        proposed=_parts((*work.parts, *added)),
        added=tuple(part.identifier for part in added),
        material=frozenset(found.identifier for found in work.material),
    )


def subject_of(members: Iterable[str], work: Work, scope: Scope | None = None) -> Subject:
    """What some members are together: the group that a scope names or that has just these, else each by its name.

    ``members`` are in the order of the work.
    """
    every = tuple(members)
    if scope is not None and scope.kind is ScopeKind.ADDITIONS:
        return additions(every)
    if scope is not None and scope.kind is ScopeKind.NAMES and len(scope.names) == 1 and not scope.excepted:
        return _named(scope.names[0], every, work)
    for group in work.groups:
        if every and frozenset(every) == frozenset(
            part.identifier for part in work.parts if part.group == group.name
        ):
            return group_of(group.name, every)
    if every and frozenset(every) == frozenset(part.identifier for part in work.parts):
        return replace(WHOLE_WORK, members=every)
    return several(every)


def _named(name: str, members: tuple[str, ...], work: Work) -> Subject:
    is_group = any(group.name == name for group in work.groups) and members != (name,)
    return group_of(name, members) if is_group else subject_called(name)


def subject_called(name: str) -> Subject:
    """The subject of a name by which a state is asked: a part or material, the work, the venue."""
    return _WHOLES.get(name) or one(name)
