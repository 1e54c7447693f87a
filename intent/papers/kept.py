"""What is as required, and what is merely as documented: briefly, like parts together."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from intent.language.message import joined, say
from intent.papers.naming import WHOLES
from intent.papers.wording import characterised, given, listed, runs
from intent.variance.result import Row, Variance, Verdict


@dataclass(frozen=True, slots=True)
class Kept:
    """Some subjects, and everything that is kept of them all."""

    subjects: str
    facts: tuple[str, ...]
    """`channel A (R13.1)`; of what is merely as documented, the characteristic alone."""

    @property
    def told(self) -> str:
        return say("{subject}: {text}", subject=self.subjects, text=joined(self.facts, "; "))


def kept_lists(required: Sequence[Kept], documented: Sequence[Kept]) -> Iterator[tuple[str, Sequence[Kept]]]:
    """The two lists with what stands before each, of those that have anything."""
    if required:
        yield say("As required:"), required
    if documented:
        yield say("As documented:"), documented


def as_required(variance: Variance) -> tuple[Kept, ...]:
    """The rows that meet an instruction, in the order of the work."""
    facts: dict[str, list[str]] = {}
    for row in _rows(variance, Verdict.AS_REQUIRED):
        facts.setdefault(_fact(row), []).append(row.subject)
    return _together({fact: tuple(subjects) for fact, subjects in facts.items()})


def as_documented(variance: Variance) -> tuple[Kept, ...]:
    """The rows that are unchanged and that no instruction speaks of."""
    facts: dict[str, list[str]] = {}
    for row in _rows(variance, Verdict.AS_DOCUMENTED):
        facts.setdefault(row.characteristic, []).append(row.subject)
    return _together({fact: tuple(subjects) for fact, subjects in facts.items()})


def _rows(variance: Variance, verdict: Verdict) -> Iterable[Row]:
    return (row for row in variance.as_it_should_be if row.verdict is verdict)


def _fact(row: Row) -> str:
    """`channel A (R13.1)`; of a relation that holds, `left of B1 (R4.4)`."""
    value = given(row.proposed)
    words = row.characteristic if value == "yes" else characterised(row.characteristic, value)
    named = listed([line.identifier for line in row.governing])
    return say("{fact} ({lines})", fact=words, lines=named) if named else words


def _together(subjects_of: dict[str, tuple[str, ...]]) -> tuple[Kept, ...]:
    """The facts that hold of the same subjects as one."""
    alike: dict[tuple[str, ...], list[str]] = {}
    for fact, subjects in subjects_of.items():
        alike.setdefault(tuple(dict.fromkeys(subjects)), []).append(fact)
    return tuple(Kept(_in_words(subjects), tuple(facts)) for subjects, facts in alike.items())


def _in_words(subjects: Sequence[str]) -> str:
    """Parts and groups in one list; where some subjects are several parts, each apart from the next."""
    if any("," in subject for subject in subjects):
        return joined((runs(subject.split(", ")) for subject in subjects), "; ")
    return runs([WHOLES.get(subject, subject) for subject in subjects])
