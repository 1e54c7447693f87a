"""Which subjects a scope holds, in the documented work and as proposed."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from intent.assertions import Aggregate, Assertion, Scope, ScopeKind
from intent.installation import Installation
from intent.model import Part, Work
from intent.variance.state import THE_VENUE, THE_WORK
from intent.vocabulary.terms import Characteristic, Vocabulary


@dataclass(frozen=True, slots=True)
class Scopes:
    vocabulary: Vocabulary
    documented: tuple[Part, ...]
    added: tuple[Part, ...]
    material: frozenset[str]

    def of_work(self, assertion: Assertion) -> tuple[str, ...]:
        """The subjects in the documented work: what rule 3 compares."""
        return self._members(assertion, self.documented)

    def of_proposal(self, assertion: Assertion) -> tuple[str, ...]:
        """The same with additions, which count in their group and kind. Omitted parts are still named."""
        members = list(self._members(assertion, (*self.documented, *self.added)))
        if assertion.scope.kind is ScopeKind.ADDITIONS:
            members = [
                part.identifier
                for part in self.added
                if part.identifier not in self._excepted(assertion.scope)
            ]
        return tuple(members)

    def _members(self, assertion: Assertion, parts: Iterable[Part]) -> tuple[str, ...]:
        scope = assertion.scope
        if scope.kind is ScopeKind.VENUE:
            return (THE_VENUE,)
        if scope.kind is ScopeKind.WORK and self._is_of_work(assertion):
            return (THE_WORK,)
        if scope.kind is ScopeKind.ADDITIONS:
            return ()
        excepted = self._excepted(scope)
        material = tuple(name for name in scope.names if name in self.material)
        held = (part.identifier for part in parts if self._holds(scope, part))
        return (*(part for part in held if part not in excepted), *material)

    def _is_of_work(self, assertion: Assertion) -> bool:
        found = self._characteristic(assertion)
        return assertion.aggregate is Aggregate.EACH and found is not None and "work" in found.bearers

    def _characteristic(self, assertion: Assertion) -> Characteristic | None:
        return self.vocabulary.characteristics.get(assertion.characteristic or "")

    def _holds(self, scope: Scope, part: Part) -> bool:
        if scope.kind is ScopeKind.WORK:
            return True
        if scope.kind is ScopeKind.EVERY:
            return self.vocabulary.is_kind(part.kind.iri, scope.part_kind or "")
        return part.identifier in scope.names or (part.group is not None and part.group in scope.names)

    def _excepted(self, scope: Scope) -> frozenset[str]:
        return frozenset(
            part.identifier
            for part in (*self.documented, *self.added)
            if part.identifier in scope.excepted or part.group in scope.excepted
        )


def scopes_of(work: Work, installation: Installation | None = None) -> Scopes:
    added = installation.additions if installation else ()
    material = frozenset(found.identifier for found in work.material)
    return Scopes(work.vocabulary, work.parts, added, material)


def subject_name(members: Iterable[str], work: Work, scope: Scope | None = None) -> str:
    """A group's name where the members are just its own, else their identifiers in the order of the work."""
    every = tuple(members)
    if scope is not None and scope.kind is ScopeKind.NAMES and len(scope.names) == 1 and not scope.excepted:
        return scope.names[0]
    for group in work.groups:
        if every and frozenset(every) == frozenset(
            part.identifier for part in work.parts if part.group == group.name
        ):
            return group.name
    if every and frozenset(every) == frozenset(part.identifier for part in work.parts):
        return THE_WORK
    return ", ".join(every)
