"""Rows that have one cause, to be told as one: alike in everything but what they are about."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from intent.language.message import Words, say
from intent.model.naming import subjects_by_name
from intent.model.subject import WHOLE_WORK, SubjectKind
from intent.names import PRESENCE
from intent.variance.amounts import HOLDS
from intent.variance.result import Row, Variance, Verdict

Cause = tuple[Row, ...]
"""The rows of one cause, in their order."""


def causes(rows: Iterable[Row]) -> tuple[Cause, ...]:
    """The rows by their causes, worst first, then in the order given."""
    groups: dict[Row, list[Row]] = {}
    for row in sorted(rows, key=lambda row: -row.verdict.badness):
        groups.setdefault(_likeness(row), []).append(row)
    return tuple(map(tuple, groups.values()))


def _likeness(row: Row) -> Row:
    """What two rows must share to have one cause.

    What nobody can tell has the instruction that asks for it as its cause, whatever is documented of each part.
    """
    alike = replace(row, subject=WHOLE_WORK, reason="", offered=())
    return replace(alike, documented="") if row.verdict is Verdict.UNKNOWN and row.open else alike


def concerned_words(variance: Variance, cause: Cause) -> Words:
    """Whom a cause is about: by name, or counted."""
    return subjects_by_name(variance.work, variance.installation, [row.subject for row in cause])


def proposed_words(variance: Variance, cause: Cause) -> Words:
    """What is proposed, in one phrase: `technology LCD for left window (M1)`, `to leave M3 out`, `to add X1`."""
    row, subject = cause[0], concerned_words(variance, cause)
    if row.term == str(PRESENCE) and row.documented == row.proposed:
        return say("the presence of {subject}", subject=subject)
    if row.term == str(PRESENCE):
        is_added = any(one.identifier in row.subject.members for one in variance.installation.additions)
        if is_added:
            return say("the addition of {subject}", subject=subject)
        return say("the omission of {subject}", subject=subject)
    if row.is_whole and row.documented == HOLDS:
        return say(
            "{characteristic} no longer for {subject}", characteristic=row.characteristic, subject=subject
        )
    if row.subject.kind is SubjectKind.VENUE:
        return say(
            "{characteristic} {value} at the venue", characteristic=row.characteristic, value=row.proposed
        )
    return say(
        "{characteristic} {value} for {subject}",
        characteristic=row.characteristic,
        value=row.proposed,
        subject=subject,
    )
