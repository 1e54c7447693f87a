"""What the analysis finds, before it is placed in the text, and the words that its findings share."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from intent.analysis.examination.matters import Matter
from intent.diagnostics import Severity
from intent.language.message import listed
from intent.model.assertions import Aggregate
from intent.model.work import Instruction, Work
from intent.names import THE_WORK
from intent.variance.result import Because
from intent.variance.scopes import subject_name


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """One finding about the documentation, at the node that it is to be read at."""

    slug: str
    message: str
    node: str
    """The IRI of the instruction, heading, source, consent or attestation."""
    subject: str
    severity: Severity = Severity.WARNING


RULES = {
    Because.SUPERSEDES: "it supersedes the other",
    Because.AUTHORITY: "it has the higher authority",
    Because.SCOPE: "it speaks of fewer parts",
    Because.DATE: "it is later",
    Because.EXCEPTION: "one is the exception to the other",
    Because.DISPENSATION: "it was dispensed from",
}
"""Why one instruction prevails over another."""


def names(lines: Iterable[Instruction]) -> str:
    """Instructions by their identifiers: `R1.1, R2.1 and R4.2`."""
    return listed(dict.fromkeys(line.identifier for line in lines))


def about(work: Work, matters: Iterable[Matter]) -> str:
    """What several matters of one characteristic are about: `technology of Monitors`."""
    every = list(matters)
    if every[0].aggregate in {Aggregate.SAME, Aggregate.DIFFERENT, Aggregate.RELATION}:
        return "arrangement"
    subjects = list(dict.fromkeys(matter.subject for matter in every))
    named = subject_name(subjects, work) if len(subjects) > 1 else subjects[0]
    if named == THE_WORK and subjects != [THE_WORK]:
        named = "every part"
    return f"{every[0].label} of {named}"


def in_force_on(lines: Iterable[Instruction]) -> str:
    """A clause for what rests on conditions: nothing where none of them does."""
    conditional = [line for line in lines if line.conditions]
    return f", where the conditions of {names(conditional)} hold" if conditional else ""
