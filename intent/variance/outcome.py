"""The outcome of a proposal, in one sentence, and who must be asked."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import replace

from intent.model import Work
from intent.phrasing import listed
from intent.record.load_work import OBSERVED_PRACTICE
from intent.variance.case import Case
from intent.variance.people import authority_of, speaks_for
from intent.variance.reasons import opens_words
from intent.variance.result import Open, OpenKind, Outcome, Row, Variance, Verdict

_REFERRED = (Verdict.CONTRADICTION, Verdict.UNKNOWN, Verdict.UNCOVERED)
_COUNTED = {
    Verdict.FORBIDDEN: ("departure is forbidden", "departures are forbidden"),
    Verdict.BREACH: ("requirement is broken", "requirements are broken"),
    Verdict.CONTRADICTION: ("instruction is contradicted", "contradictions are to be resolved"),
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
            return f"{head} before these are answered: {_counts(variance)}."
    head = f"{until}; and as proposed not acceptable" if until else "Not acceptable as proposed"
    return f"{head}: {_counts(variance)}."


def _counts(variance: Variance) -> str:
    counted = Counter(row.verdict for row in variance.rows)
    parts = [
        f"{counted[verdict]} {words[counted[verdict] > 1]}"
        for verdict, words in _COUNTED.items()
        if counted[verdict]
    ]
    if variance.findings:
        parts.append(
            f"{len(variance.findings)} {'finding' if len(variance.findings) == 1 else 'findings'} on devices"
        )
    return listed(parts)


def _opens(rows: Iterable[Row]) -> list[Open]:
    found = [item for row in rows if row.verdict is Verdict.CONDITIONAL for item in row.open]
    return list(dict.fromkeys(found))


def _consents(rows: Iterable[Row]) -> list[Open]:
    found = [item for row in rows for item in row.open if item.kind is OpenKind.CONSENT]
    return list(dict.fromkeys(found))


def _notes(case: Case) -> Iterator[str]:
    """Consents that were reported but count for nothing, and why."""
    for identifier, consents in case.consents.items():
        line = case.work.instruction(identifier)
        if line is None or line.modality == "allowed":
            continue
        for consent in consents:
            if not consent.answer:
                continue
            who = case.work.person(consent.person)
            name = who.name if who else consent.person
            if line.ground == "safety":
                yield f"{name} consented to {identifier}, but nobody can dispense from a rule of safety."
            elif authority_of(case.work, consent.person, consent.date) > case.ranks[identifier]:
                yield f"{name} consented to {identifier}, but has not the authority of who gave it; it is ignored."
            elif not speaks_for(case.work, consent.person, consent.person, consent.date):
                yield f"{name} consented to {identifier} outside their time; it is ignored."
