"""What is as required, and what is merely as documented: briefly, like parts together."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from intent.language.message import Words, joined, listed, say, term_of
from intent.model.naming import runs, subject_in_short, subject_name
from intent.model.subject import Subject, SubjectKind
from intent.names import YES
from intent.papers.document import Block, Column, PaperTable
from intent.papers.statements_told import characterised
from intent.variance.amounts import HOLDS
from intent.variance.result import Row, Variance, Verdict
from intent.vocabulary.terms import Concept

_PART_SHARE = 34
"""Per cent of the width for the parts."""


def kept_tables(variance: Variance) -> tuple[Block, ...]:
    """The rows that meet an instruction, in the order of the work; then those that are unchanged."""
    required = _subjects_of((_fact(row), row.subject) for row in _rows(variance, Verdict.AS_REQUIRED))
    documented = _subjects_of(
        (row.characteristic, row.subject) for row in _rows(variance, Verdict.AS_DOCUMENTED)
    )
    titled = ((say("as required"), required), (say("as documented"), documented))
    return tuple(_table(title, subjects_of) for title, subjects_of in titled if subjects_of)


def _rows(variance: Variance, verdict: Verdict) -> Iterator[Row]:
    return (row for row in variance.as_it_should_be if row.verdict is verdict)


def _fact(row: Row) -> Words:
    """`channel A (R13.1)`; of what is so, `left of B1 (R4.4)`."""
    fact = row.characteristic if _is_so(row.proposed) else characterised(row.characteristic, row.proposed)
    lines = listed(line.identifier for line in row.governing)
    return say("{fact} ({lines})", fact=fact, lines=lines) if lines else fact


def _is_so(value: Words) -> bool:
    """Whether a value is yes, so that the characteristic alone says it."""
    term = term_of(value)
    return value == HOLDS or (isinstance(term, Concept) and term.iri == YES)


def _subjects_of(facts: Iterable[tuple[Words, Subject]]) -> dict[Words, list[Subject]]:
    found: dict[Words, list[Subject]] = {}
    for fact, subject in facts:
        found.setdefault(fact, []).append(subject)
    return found


def _table(title: Words, subjects_of: Mapping[Words, Sequence[Subject]]) -> PaperTable:
    """The facts that hold of the same subjects, in one row."""
    alike: dict[tuple[Subject, ...], list[Words]] = {}
    for fact, subjects in subjects_of.items():
        alike.setdefault(tuple(dict.fromkeys(subjects)), []).append(fact)
    return PaperTable(
        columns=(Column(say("part"), _PART_SHARE), Column(title)),
        rows=tuple((_named(subjects), joined(facts, "; ")) for subjects, facts in alike.items()),
    )


def _named(subjects: Sequence[Subject]) -> Words:
    """Parts and groups in one list; where some subjects are several parts, each apart from the next."""
    if any(subject.kind is SubjectKind.PARTS for subject in subjects):
        return joined((subject_in_short(subject) for subject in subjects), "; ")
    return runs([subject_name(subject) for subject in subjects])
