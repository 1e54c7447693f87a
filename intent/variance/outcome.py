"""The outcome of a proposal, in one sentence, and who must be asked."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import replace

from intent.diagnostics import nearest
from intent.installation import Consent
from intent.model import Instruction, Modality, Work
from intent.phrasing import listed
from intent.record.load_work import OBSERVED_PRACTICE
from intent.variance.case import Case
from intent.variance.people import authority_of, speaks_for
from intent.variance.reasons import opens_words
from intent.variance.result import Open, OpenKind, Outcome, Row, Variance, Verdict
from intent.vocabulary.phrases import normal

_REFERRED = (Verdict.CONTRADICTION, Verdict.UNKNOWN, Verdict.UNCOVERED)
_BROKEN = {
    Verdict.FORBIDDEN: ("is broken, which forbids something", "are broken, which forbid something"),
    Verdict.BREACH: ("requires something else", "require something else"),
}
_COUNTED = {
    Verdict.CONTRADICTION: ("contradiction is to be resolved", "contradictions are to be resolved"),
    Verdict.UNKNOWN: ("value cannot be judged", "values cannot be judged"),
    Verdict.UNCOVERED: ("departure is covered by no instruction", "departures are covered by no instruction"),
}


def concluded(variance: Variance, case: Case) -> Variance:
    """The variance with its outcome, sentence, people and notes."""
    outcome = outcome_of(variance, case)
    people = _people(variance, case.work)
    found = replace(variance, outcome=outcome, refer_to=people, notes=tuple(_notes(case)))
    return replace(found, sentence=_sentence(found, case))


def outcome_of(variance: Variance, case: Case) -> Outcome:
    verdicts = {row.verdict for row in variance.rows if not _is_of_practice(row, case)}
    if verdicts & {Verdict.FORBIDDEN, Verdict.BREACH}:
        return Outcome.NOT_ACCEPTABLE
    if (
        verdicts & set(_REFERRED)
        or variance.findings
        or any(_is_of_practice(row, case) for row in variance.rows)
    ):
        return Outcome.REFER
    return Outcome.ON_CONDITIONS if Verdict.CONDITIONAL in verdicts else Outcome.ACCEPTABLE


def _is_of_practice(row: Row, case: Case) -> bool:
    """A breach only of what ranks with observed practice: to be referred, not refused."""
    return row.verdict is Verdict.BREACH and all(
        case.ranks[line.identifier] == OBSERVED_PRACTICE for line in row.governing
    )


def _people(variance: Variance, work: Work) -> tuple[str, ...]:
    named = {person for row in variance.rows for person in row.ask}
    named |= {person for finding in variance.findings for person in finding.ask}
    ranked = sorted(work.people, key=lambda person: person.authority)
    return tuple(person.identifier for person in ranked if person.identifier in named)


def _sentence(variance: Variance, case: Case) -> str:
    consents = _consents(variance.rows)
    until = f"Not to be installed until {opens_words(case, consents)}" if consents else ""
    match variance.outcome:
        case Outcome.ACCEPTABLE:
            return "Acceptable: all is as required or documented, or allowed without conditions."
        case Outcome.ON_CONDITIONS:
            rest = [item for item in _opens(variance.rows) if item.kind is not OpenKind.CONSENT]
            if until and rest:
                return f"{until}, and {opens_words(case, rest)}; then acceptable."
            return f"{until}; then acceptable." if until else f"Acceptable once {opens_words(case, rest)}."
        case Outcome.REFER:
            head = f"{until}, and not" if until else "Not to be installed"
            return f"{head} before this is settled: {_counts(variance)}."
    head = f"{until}; and as proposed not acceptable" if until else "Not acceptable as proposed"
    return f"{head}: {_counts(variance)}."


def _counts(variance: Variance) -> str:
    """What stands in the way: the instructions that are broken, by name, and how many questions there are."""
    parts = []
    for verdict, words in _BROKEN.items():
        rows = [row for row in variance.rows if row.verdict is verdict]
        names = list(dict.fromkeys(line.identifier for row in rows for line in row.governing))
        if names:
            parts.append(f"{_few(names)} {words[len(names) > 1]}")
    counted = Counter(row.verdict for row in variance.rows)
    parts += [
        f"{counted[verdict]} {words[counted[verdict] > 1]}"
        for verdict, words in _COUNTED.items()
        if counted[verdict]
    ]
    if variance.findings:
        parts.append(
            f"{len(variance.findings)} {'finding' if len(variance.findings) == 1 else 'findings'} on devices"
        )
    return listed(parts)


def _few(names: list[str]) -> str:
    """The names, where there are few; else how many instructions they are."""
    return listed(names) if len(names) <= 4 else f"{len(names)} instructions"


def _opens(rows: Iterable[Row]) -> list[Open]:
    found = [item for row in rows if row.verdict is Verdict.CONDITIONAL for item in row.open]
    return list(dict.fromkeys(found))


def _consents(rows: Iterable[Row]) -> list[Open]:
    found = [item for row in rows for item in row.open if item.kind is OpenKind.CONSENT]
    return list(dict.fromkeys(found))


def _notes(case: Case) -> Iterator[str]:
    """What was recorded but counts for nothing, and why."""
    for identifier, consents in case.consents.items():
        line = case.work.instruction(identifier)
        for consent in consents:
            reason = _idle_consent(case, line, consent) if line is not None else ""
            if reason:
                who = case.work.person(consent.person)
                name = who.name if who and who.name else consent.person
                yield f"{name} {'consented' if consent.answer else 'did not consent'} to {identifier}, {reason}"
    asked = {normal(fact): fact for fact in _facts_asked(case)}
    for attestation in case.installation.attestations:
        if normal(attestation.fact) not in asked:
            near = nearest(attestation.fact, list(asked.values())) or ", and it counts for nothing."
            yield f"“{attestation.fact}” is attested, but nothing asks for this fact{near}"


def _idle_consent(case: Case, line: Instruction, consent: Consent) -> str:
    """Why a consent has no effect; nothing where it has, or may have."""
    if line.modality is Modality.ALLOWED:
        if not any(speaks_for(case.work, consent.person, person, consent.date) for person in line.consents):
            return "but their consent is not asked for there, or they could not give it then; it is ignored."
        return ""
    if not consent.answer:
        return ""
    if line.ground == "safety":
        return "but nobody can dispense from a rule of safety."
    if authority_of(case.work, consent.person, consent.date) > case.ranks[line.identifier]:
        return "but has not the authority of who gave it; it is ignored."
    if not speaks_for(case.work, consent.person, consent.person, consent.date):
        return "but outside their time; it is ignored."
    return ""


def _facts_asked(case: Case) -> Iterator[str]:
    """Every fact that a condition, a choice or the terms of a consent ask for."""
    for line in case.work.instructions:
        yield from (condition.fact for condition in line.conditions if condition.fact)
        if line.choice is not None:
            yield f"{line.identifier} cannot be had"
    for consent in case.installation.consents:
        yield from consent.terms
