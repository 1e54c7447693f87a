"""What is found in a documentation, before it is placed in its text, and the words that the findings share."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from intent.analysis.examination.topic_claims import TopicClaims
from intent.diagnostics import Diagnostic, Severity, Span, in_order
from intent.language.message import Words, say
from intent.model.assertions import Aggregate
from intent.model.duty import Duty
from intent.model.naming import subject_name
from intent.model.subject import SubjectKind
from intent.model.work import Instruction, Work
from intent.variance.result import Because
from intent.variance.scopes import subject_called, subject_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """One finding about the documentation, at the node that it is to be read at."""

    slug: str
    message: Words
    node: str
    """The IRI of the instruction, heading, source, consent or attestation."""
    subject: str
    """The identifier of the instruction, heading, source or person that it is about."""
    lines: tuple[str, ...] = ()
    """The identifiers of the instructions that it names."""
    severity: Severity = Severity.WARNING


RULES = {
    Because.AUTHORITY: say("it has the higher authority"),
    Because.SCOPE: say("it speaks of fewer parts"),
    Because.DATE: say("it is later"),
    Because.EXCEPTION: say("one is the exception to the other"),
    Because.DISPENSATION: say("it was dispensed from"),
}
"""Why one instruction prevails over another."""


def identifiers(lines: Iterable[Instruction | Duty]) -> tuple[str, ...]:
    """The identifiers of lines, each once; as they stand in a place of a message: `R1.1, R2.1 and R4.2`."""
    return tuple(dict.fromkeys(line.identifier for line in lines))


def topic_words(work: Work, topics: Sequence[TopicClaims]) -> Words:
    """What topics of one characteristic are about: `technology of Monitors`; of how parts stand, an arrangement."""
    first = topics[0]
    if first.aggregate in {Aggregate.SAME, Aggregate.DIFFERENT, Aggregate.RELATION}:
        return say("arrangement")
    return say(
        "{characteristic} of {subject}", characteristic=first.name, subject=subjects_words(work, topics)
    )


def subjects_words(work: Work, topics: Iterable[TopicClaims]) -> Words:
    """The subjects of topics, as few words as will do: the group that they make up, else each by its name."""
    subjects = dict.fromkeys(topic.subject for topic in topics)
    if len(subjects) == 1:
        return subject_name(next(iter(subjects)))
    return members_words(work, [subject.written for subject in subjects])


def members_words(work: Work, members: Iterable[str]) -> Words:
    """Subjects by the names by which states are asked: the group that they make up, else each by its name."""
    every = tuple(members)
    subject = subject_of(every, work)
    if len(every) == 1 and subject.kind is not SubjectKind.GROUP:
        return subject_name(subject_called(every[0]))
    return say("every part") if subject.kind is SubjectKind.WORK else subject_name(subject)


def where_conditions_hold(message: Words, lines: Iterable[Instruction]) -> Words:
    """A message, narrowed to where the conditions hold that some instructions rest on, if any does."""
    conditional = identifiers(line for line in lines if line.conditions)
    if not conditional:
        return message
    return say("{text}, where the conditions of {lines} hold", text=message, lines=conditional)


def heading_node(work: Work, line: Instruction | Duty) -> str:
    """The IRI of an instruction's heading."""
    heading = work.heading(line.heading)
    return heading.iri if heading is not None else line.iri


def placed(findings: Iterable[Finding], spans: Mapping[str, Span], whole: str) -> tuple[Diagnostic, ...]:
    """Findings at their places in the text, in its order; what has none stands at the whole."""
    nowhere = spans.get(whole, Span(file=""))
    return in_order(
        Diagnostic(
            slug=found.slug,
            message=found.message,
            span=spans.get(found.node, nowhere),
            severity=found.severity,
            subject=found.subject,
        )
        for found in findings
    )
