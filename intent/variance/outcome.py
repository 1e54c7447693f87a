"""The outcome of a proposal, in one sentence, and who must be asked."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import replace

from intent.language.message import Words, listed, say, say_of
from intent.model.work import Work
from intent.variance.answer_notes import answer_notes
from intent.variance.case import Case
from intent.variance.obstacle import in_the_way, needs_words
from intent.variance.reasons import opens_words
from intent.variance.result import BROKEN, Open, OpenKind, Outcome, Row, Variance, Verdict

_REFERRED = BROKEN | {Verdict.CONTRADICTION, Verdict.UNKNOWN, Verdict.UNCOVERED}
"""What has to be referred; of what is broken, where it rests on observed practice alone."""


def concluded(variance: Variance, case: Case) -> Variance:
    """The variance with its outcome, sentence, people and notes."""
    outcome = outcome_of(variance)
    people = _people(variance, case.work)
    found = replace(variance, outcome=outcome, refer_to=people, notes=tuple(answer_notes(case)))
    return replace(found, sentence=_sentence(found, case))


def outcome_of(variance: Variance) -> Outcome:
    if any(row.verdict in BROKEN and not row.rests_on_practice for row in variance.rows):
        return Outcome.NOT_ACCEPTABLE
    verdicts, obstacles = {row.verdict for row in variance.rows}, in_the_way(variance.obstacles)
    if verdicts & _REFERRED or any(obstacle.is_sure for obstacle in obstacles):
        return Outcome.REFER
    is_conditional = Verdict.CONDITIONAL in verdicts or bool(obstacles)
    return Outcome.ON_CONDITIONS if is_conditional else Outcome.ACCEPTABLE


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
