"""What was answered in an installation and counts for nothing, or for more than it says, and why."""

from __future__ import annotations

from collections.abc import Iterator

from intent.diagnostics import nearest
from intent.language.message import Words, listed, say
from intent.model.installation import Consent
from intent.model.naming import person_name
from intent.model.work import Instruction, Modality
from intent.variance.attesting import attestation_days, cannot_be_had
from intent.variance.case import Case
from intent.variance.dispensing import may_dispense
from intent.variance.people import speaks_for
from intent.vocabulary.phrases import normal


def answer_notes(case: Case) -> Iterator[Words]:
    """Consents that count for nothing, those to a whole heading that dispense, and facts that nobody asked for."""
    for identifier, consents in case.consents.items():
        line = case.work.instruction(identifier)
        for consent in consents:
            reason = _idle_consent(case, line, consent) if line is not None else ""
            if reason:
                yield _idle(person_name(case.work, consent.person), consent, identifier, reason)
    for consent in case.installation.consents:
        yield from _of_headings(case, consent)
    asked = {normal(fact): fact for fact in _facts_asked(case)}
    for attestation in case.installation.attestations:
        if normal(attestation.fact) not in asked:
            yield _unasked(attestation.fact, nearest(attestation.fact, list(asked.values())))
        elif attestation_days(case.work, attestation) is None:
            yield say(
                "{person} attested “{fact}”, but outside their time; it is ignored.",
                person=person_name(case.work, attestation.by),
                fact=attestation.fact,
            )


def _of_headings(case: Case, consent: Consent) -> Iterator[Words]:
    """A consent to a heading that calls for none is taken as a dispensation: a reader is told so."""
    for name in consent.to if consent.answer else ():
        lines = [line for line in case.work.instructions if line.heading == name]
        demands = [line.identifier for line in lines if line.modality is not Modality.ALLOWED]
        if demands and not any(line.consents for line in lines):
            yield say(
                "{person} consented to {heading} as a whole, where no line calls for a consent; "
                "so it is taken as a dispensation from {lines}.",
                person=person_name(case.work, consent.person),
                heading=name,
                lines=listed(demands),
            )


def _idle(person: Words, consent: Consent, line: str, reason: Words) -> Words:
    if consent.answer:
        return say("{person} consented to {line}, {reason}", person=person, line=line, reason=reason)
    return say("{person} did not consent to {line}, {reason}", person=person, line=line, reason=reason)


def _unasked(fact: str, near: str) -> Words:
    if near:
        return say(
            "“{fact}” is attested, but nothing asks for this fact; did you mean `{name}`?",
            fact=fact,
            name=near,
        )
    return say("“{fact}” is attested, but nothing asks for this fact, and it counts for nothing.", fact=fact)


def _idle_consent(case: Case, line: Instruction, consent: Consent) -> Words:
    """Why a consent has no effect; nothing where it has, or may have."""
    if line.modality is Modality.ALLOWED:
        if not any(speaks_for(case.work, consent.person, person, consent.date) for person in line.consents):
            return say(
                "but their consent is not asked for there, or they could not give it then; it is ignored."
            )
        return ""
    if not consent.answer:
        return ""
    if line.ground == "safety":
        return say("but nobody can dispense from a rule of safety.")
    able = may_dispense(case, line)
    if any(speaks_for(case.work, consent.person, person.identifier, consent.date) for person in able):
        return ""
    if not speaks_for(case.work, consent.person, consent.person, consent.date):
        return say("but outside their time; it is ignored.")
    if line.lifted_by is None:
        return say("but has not the authority of who gave it; it is ignored.")
    if not line.lifted_by:
        return say("but nobody may dispense from it; it is ignored.")
    return say(
        "but only {people} may dispense from it; it is ignored.",
        people=listed(person_name(case.work, person) for person in line.lifted_by),
    )


def _facts_asked(case: Case) -> Iterator[str]:
    """Every fact that a condition, a choice, a duty or the terms of a consent ask for."""
    for duty in case.work.duties:
        yield from (duty.identifier, duty.what)
        yield from (condition.fact for condition in duty.conditions if condition.fact)
    for line in case.work.instructions:
        yield from (condition.fact for condition in line.conditions if condition.fact)
        if line.choice is not None:
            yield cannot_be_had(line)
    for consent in case.installation.consents:
        yield from consent.terms
