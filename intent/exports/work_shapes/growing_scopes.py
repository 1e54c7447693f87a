"""Which scopes a proposal can enlarge, so that two that hold the same parts of the work need not always do."""

from __future__ import annotations

from intent.model.assertions import Assertion, ScopeKind
from intent.model.work import Instruction
from intent.names import THE_WORK
from intent.variance.case import Case


def may_grow(case: Case, assertion: Assertion) -> bool:
    """Whether what is added to a work can come to be in a scope."""
    scope = assertion.scope
    if scope.kind is ScopeKind.NAMES:
        return any(group.name in scope.names for group in case.work.groups)
    if scope.kind is ScopeKind.WORK:
        return case.scopes.of_work(assertion) != (THE_WORK,)
    return scope.kind is not ScopeKind.VENUE


def is_same_by_chance(case: Case, one: Assertion, two: Assertion) -> bool:
    """Whether two scopes hold the same of the work, and may not hold the same of what is added."""
    if one.scope == two.scope or case.scopes.of_work(one) != case.scopes.of_work(two):
        return False
    return may_grow(case, one) or may_grow(case, two)


def may_meet(case: Case, one: Instruction, two: Instruction) -> bool:
    """Whether there can be a subject of which two instructions both speak."""
    if set(case.scopes.of_work(one.assertion)) & set(case.scopes.of_work(two.assertion)):
        return True
    return may_grow(case, one.assertion) and may_grow(case, two.assertion)


def holds_all_of(case: Case, wide: Instruction, narrow: Instruction) -> bool:
    """Whether an instruction speaks of everything that another does, whatever is added."""
    if wide.assertion.scope == narrow.assertion.scope:
        return True
    held = set(case.scopes.of_work(wide.assertion)) >= set(case.scopes.of_work(narrow.assertion))
    return held and not may_grow(case, narrow.assertion)
