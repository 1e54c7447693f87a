"""The outcome of a proposal, in one sentence, and who must be asked."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import replace

from intent.diagnostics import nearest
from intent.language.message import Words, listed, say, say_of
from intent.model.authority import OBSERVED_PRACTICE_RANK
from intent.model.installation import Consent
from intent.model.work import Instruction, Modality, Work
from intent.variance.case import Case
from intent.variance.obstacle import in_the_way, needs_words
from intent.variance.people import authority_of, speaks_for
from intent.variance.reasons import opens_words
from intent.variance.result import Open, OpenKind, Outcome, Row, Variance, Verdict
from intent.vocabulary.phrases import normal

_REFERRED = (Verdict.CONTRADICTION, Verdict.UNKNOWN, Verdict.UNCOVERED)


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
    obstacles = in_the_way(variance.obstacles)
    if (
        verdicts & set(_REFERRED)
        or any(obstacle.is_sure for obstacle in obstacles)
        or any(_is_of_practice(row, case) for row in variance.rows)
    ):
        return Outcome.REFER
    is_conditional = Verdict.CONDITIONAL in verdicts or bool(obstacles)
    return Outcome.ON_CONDITIONS if is_conditional else Outcome.ACCEPTABLE


def _is_of_practice(row: Row, case: Case) -> bool:
    """A breach only of what ranks with observed practice: to be referred, not refused."""
    return row.verdict is Verdict.BREACH and all(
        case.ranks[line.identifier] == OBSERVED_PRACTICE_RANK for line in row.governing
    )


def _people(variance: Variance, work: Work) -> tuple[str, ...]:
    named = {person for row in variance.rows for person in row.ask}
    named |= {person for obstacle in in_the_way(variance.obstacles) for person in obstacle.ask}
    ranked = sorted(work.people, key=lambda person: person.authority)
    return tuple(person.identifier for person in ranked if person.identifier in named)


def _sentence(variance: Variance, case: Case) -> Words:
    consents = _consents(variance.rows)
    needed = opens_words(case, consents)
    match variance.outcome:
        case Outcome.ACCEPTABLE:
            return say("Acceptable: all is as required or documented, or allowed without conditions.")
        case Outcome.ON_CONDITIONS:
            return _on_conditions(variance, case, needed)
        case Outcome.REFER if consents:
            return say(
                "Not to be installed until {needed}, and not before this is settled: {matters}.",
                needed=needed,
                matters=_counts(variance),
            )
        case Outcome.REFER:
            return say("Not to be installed before this is settled: {matters}.", matters=_counts(variance))
    if consents:
        return say(
            "Not to be installed until {needed}; and as proposed not acceptable: {matters}.",
            needed=needed,
            matters=_counts(variance),
        )
    return say("Not acceptable as proposed: {matters}.", matters=_counts(variance))


def _on_conditions(variance: Variance, case: Case, needed: Words) -> Words:
    rest = [item for item in _opens(variance.rows) if item.kind is not OpenKind.CONSENT]
    further = listed([*_if_any(opens_words(case, rest)), *_to_know(variance)])
    if needed and further:
        return say(
            "Not to be installed until {needed}, and {further}; then acceptable.",
            needed=needed,
            further=further,
        )
    if needed:
        return say("Not to be installed until {needed}; then acceptable.", needed=needed)
    return say("Acceptable once {needed}.", needed=further)


def _if_any(words: Words) -> tuple[Words, ...]:
    return (words,) if words else ()


def _to_know(variance: Variance) -> Iterator[Words]:
    """What has to be known for the limits that are not surely met."""
    needs = needs_words(need for obstacle in in_the_way(variance.obstacles) for need in obstacle.missing)
    if needs:
        yield say_of(len(needs), "this is known: {values}", "these are known: {values}", values=needs)


def _counts(variance: Variance) -> Words:
    """What stands in the way: the instructions that are broken, by name, and how many questions there are."""
    parts = [*_broken(variance), *_counted(Counter(row.verdict for row in variance.rows))]
    return listed([*parts, *_obstructed(variance)])


def _obstructed(variance: Variance) -> Iterator[Words]:
    obstacles = in_the_way(variance.obstacles)
    if number := sum(obstacle.is_sure for obstacle in obstacles):
        yield say_of(
            number,
            "{number} obstacle at the venue or of a device",
            "{number} obstacles at the venue or of devices",
            number=number,
        )
    if number := sum(not obstacle.is_sure for obstacle in obstacles):
        yield say_of(
            number,
            "of {number} limit it is not known whether it is kept",
            "of {number} limits it is not known whether they are kept",
            number=number,
        )


def _broken(variance: Variance) -> Iterator[Words]:
    names = _governing(variance, Verdict.FORBIDDEN)
    if names:
        yield say_of(
            len(names),
            "{lines} is broken, which forbids something",
            "{lines} are broken, which forbid something",
            lines=_few(names),
        )
    names = _governing(variance, Verdict.BREACH)
    if names:
        yield say_of(
            len(names),
            "{lines} requires something else",
            "{lines} require something else",
            lines=_few(names),
        )


def _governing(variance: Variance, verdict: Verdict) -> list[str]:
    rows = (row for row in variance.rows if row.verdict is verdict)
    return list(dict.fromkeys(line.identifier for row in rows for line in row.governing))


def _counted(number: Counter[Verdict]) -> Iterator[Words]:
    if count := number[Verdict.CONTRADICTION]:
        yield say_of(
            count,
            "{number} contradiction is to be resolved",
            "{number} contradictions are to be resolved",
            number=count,
        )
    if count := number[Verdict.UNKNOWN]:
        yield say_of(
            count, "{number} value cannot be judged", "{number} values cannot be judged", number=count
        )
    if count := number[Verdict.UNCOVERED]:
        yield say_of(
            count,
            "{number} departure is covered by no instruction",
            "{number} departures are covered by no instruction",
            number=count,
        )


def _few(names: list[str]) -> Words:
    """The names, where there are few; else how many instructions they are."""
    return listed(names) if len(names) <= 4 else say("{number} instructions", number=len(names))


def _opens(rows: Iterable[Row]) -> list[Open]:
    found = [item for row in rows if row.verdict is Verdict.CONDITIONAL for item in row.open]
    return list(dict.fromkeys(found))


def _consents(rows: Iterable[Row]) -> list[Open]:
    found = [item for row in rows for item in row.open if item.kind is OpenKind.CONSENT]
    return list(dict.fromkeys(found))


def _notes(case: Case) -> Iterator[Words]:
    """What was recorded but counts for nothing, and why."""
    for identifier, consents in case.consents.items():
        line = case.work.instruction(identifier)
        for consent in consents:
            reason = _idle_consent(case, line, consent) if line is not None else ""
            if reason:
                who = case.work.person(consent.person)
                yield _idle(who.name if who and who.name else consent.person, consent, identifier, reason)
    asked = {normal(fact): fact for fact in _facts_asked(case)}
    for attestation in case.installation.attestations:
        if normal(attestation.fact) not in asked:
            yield _unasked(attestation.fact, nearest(attestation.fact, list(asked.values())))


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
    if authority_of(case.work, consent.person, consent.date) > case.ranks[line.identifier]:
        return say("but has not the authority of who gave it; it is ignored.")
    if not speaks_for(case.work, consent.person, consent.person, consent.date):
        return say("but outside their time; it is ignored.")
    return ""


def _facts_asked(case: Case) -> Iterator[str]:
    """Every fact that a condition, a choice or the terms of a consent ask for."""
    for line in case.work.instructions:
        yield from (condition.fact for condition in line.conditions if condition.fact)
        if line.choice is not None:
            yield f"{line.identifier} cannot be had"
    for consent in case.installation.consents:
        yield from consent.terms
