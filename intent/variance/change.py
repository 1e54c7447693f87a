"""How a proposed value lies to the documented one."""

from __future__ import annotations

from dataclasses import dataclass

from intent.model.assertions import Named
from intent.model.meaning import unchanged_values
from intent.names import PRESENCE, THE_VENUE
from intent.values.sets import ValueSet, are_disjoint, is_within
from intent.variance.case import Case
from intent.vocabulary.terms import Characteristic


@dataclass(frozen=True, slots=True, kw_only=True)
class Deviation:
    """How the proposed value lies to the documented one, and whether silence about it counts."""

    is_unchanged: bool
    is_given: bool = True
    differs: bool = True
    """Whether it surely differs; not where either value is not known well enough to tell."""
    counts_unasked: bool = False
    is_documented: bool = True
    """Whether there can be a documented value at all: not for additions and venues."""


def change_of(case: Case, subject: str, characteristic: Characteristic) -> Deviation:
    """Whether a value is unchanged, differs, or cannot be told to."""
    counts = case.counts_unasked(subject, characteristic)
    given, was_given = (state.is_given(subject, characteristic) for state in (case.proposed, case.documented))
    if not _can_be_documented(case, subject):
        return Deviation(
            is_unchanged=False, is_given=given, differs=True, counts_unasked=counts, is_documented=False
        )
    if not given or not was_given:
        return Deviation(
            is_unchanged=_is_untouched(case, subject, characteristic),
            is_given=given,
            differs=False,
            counts_unasked=counts,
        )
    value = case.proposed.value(subject, characteristic)
    same = unchanged_values(case.documented.value(subject, characteristic), characteristic)
    return Deviation(
        is_unchanged=is_within(value, same) and not is_broad(case, subject, characteristic),
        is_given=True,
        differs=are_disjoint(value, same),
        counts_unasked=counts,
    )


def documented_for(case: Case, subject: str, characteristic: Characteristic) -> ValueSet | None:
    """What `as documented` and shares of the documented value are taken of.

    None where nothing is documented, unless nothing is touched: then whatever it is, it stays so. None also where a
    term that only gathers others is documented and another device comes with a value within it.
    """
    if characteristic.iri == PRESENCE or case.documented.is_given(subject, characteristic):
        documented = case.documented.value(subject, characteristic)
        if not is_broad(case, subject, characteristic):
            return documented
        return documented if are_disjoint(case.proposed.value(subject, characteristic), documented) else None
    if _can_be_documented(case, subject) and _is_untouched(case, subject, characteristic):
        return case.documented.value(subject, characteristic)
    return None


def is_broad(case: Case, subject: str, characteristic: Characteristic) -> bool:
    """Whether another device comes, and what is documented of the one that goes is a term that only gathers others.

    Nobody has then said which of them it was, so that nobody can tell whether a value within it differs.
    """
    return subject in case.substituted and is_gathered(case, subject, characteristic)


def is_gathered(case: Case, subject: str, characteristic: Characteristic) -> bool:
    """Whether what is documented of a device is a term that only gathers others."""
    expression = case.documented.expression(subject, characteristic)
    if expression is None or "device" not in characteristic.bearers:
        return False
    named = (item.concept for item in expression.items if isinstance(item, Named))
    return any(case.vocabulary.concepts[concept].only_gathers for concept in named)


def _can_be_documented(case: Case, subject: str) -> bool:
    """Whether there can be a documented value at all: not for additions and the venue."""
    return subject != THE_VENUE and (
        subject in case.documented.devices or subject not in case.proposed.devices
    )


def _is_untouched(case: Case, subject: str, characteristic: Characteristic) -> bool:
    """Whether a value that nobody gives belongs to the same device in the same place."""
    is_other = subject in case.substituted and "device" in characteristic.bearers
    neither = not case.proposed.is_given(subject, characteristic) and not case.documented.is_given(
        subject, characteristic
    )
    return neither and not is_other
