"""Instructions that ask for a value which no part's row gives, so that every proposal will leave them open."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from intent.analysis.examination.findings import Finding
from intent.analysis.examination.topic_claims import TopicClaims
from intent.diagnostics import Severity
from intent.language.message import Words, named, say_of
from intent.model.assertions import Aggregate
from intent.model.naming import runs, subject_name
from intent.model.work import Instruction, Modality
from intent.names import PRESENCE, THE_VENUE
from intent.variance.case import Case
from intent.variance.scopes import subject_called


def asks_in_vain(case: Case, _: Sequence[TopicClaims]) -> Iterator[Finding]:
    """One note for each requirement or prohibition of a value that some of its parts do not give.

    Permissions ask for nothing, and of a venue nothing is documented.
    """
    for line in case.work.instructions:
        missing = _missing(case, line) if line.modality is not Modality.ALLOWED else ()
        if missing:
            yield Finding(
                slug="asks-in-vain",
                message=_message(case, line, missing),
                node=line.iri,
                subject=line.identifier,
                lines=(line.identifier,),
                severity=Severity.NOTE,
            )


def _missing(case: Case, line: Instruction) -> tuple[str, ...]:
    characteristic = case.vocabulary.characteristics.get(line.assertion.characteristic or "")
    if (
        characteristic is None
        or characteristic.iri == PRESENCE
        or line.assertion.aggregate is Aggregate.RELATION
    ):
        return ()
    return tuple(
        member
        for member in case.members[line.identifier]
        if member != THE_VENUE and not case.documented.is_given(member, characteristic)
    )


def _message(case: Case, line: Instruction, missing: Sequence[str]) -> Words:
    return say_of(
        len(missing),
        "{line} asks for the {characteristic} of {parts}, which is not given: "
        "no proposal can be judged by it until it is",
        "{line} asks for the {characteristic} of {number} parts that do not give it ({parts}): "
        "no proposal can be judged by it until they do",
        line=line.identifier,
        characteristic=named(case.vocabulary.characteristics[line.assertion.characteristic or ""]),
        number=len(missing),
        parts=runs([subject_name(subject_called(member)) for member in missing]),
    )
