"""Who must be asked, and for what: every open thing of a variance, under the person who can close it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from intent.reports.departures import Departure, merged, missing_in_words
from intent.reports.naming import person_in_words
from intent.reports.wording import listed, quoted, sentence
from intent.variance.result import Open, OpenKind, Variance, Verdict

ANYBODY = "Whoever is in a position to say"


@dataclass(frozen=True, slots=True)
class Question:
    """One thing to be asked, and the departure it arises from (0: none)."""

    text: str
    departure: int = 0


@dataclass(frozen=True, slots=True)
class Request:
    """What one person is to be asked."""

    person: str
    """The identifier; empty where nobody in particular is named."""
    name: str
    questions: tuple[Question, ...]


def requests(variance: Variance, departures: Sequence[Departure]) -> tuple[Request, ...]:
    """The people in the order in which the variance names them, then others, then questions for anybody."""
    asked: dict[str, dict[Question, None]] = {person: {} for person in variance.refer_to}
    for person, question in _questions(variance, departures):
        asked.setdefault(person, {})[question] = None
    anybody = asked.pop("", {})
    found = [_request(variance, person, tuple(questions)) for person, questions in asked.items()]
    if anybody:
        found.append(Request("", ANYBODY, tuple(anybody)))
    return tuple(found)


def _request(variance: Variance, person: str, questions: tuple[Question, ...]) -> Request:
    name = person_in_words(variance.work, person)
    return Request(
        person, name, questions or (Question(sentence(f"the proposal as a whole: {variance.sentence}")),)
    )


def _questions(variance: Variance, departures: Sequence[Departure]) -> Iterator[tuple[str, Question]]:
    """Every question with the person it is for."""
    for departure in departures:
        row = departure.rows[0]
        answered = set()
        for item in merged(row.open):
            people = (
                [item.person] if item.person else list(row.ask) if item.kind is not OpenKind.CONSENT else []
            )
            for person in people or [""]:
                answered.add(person)
                yield person, Question(_to_close(departure, item), departure.number)
        for person in row.ask:
            if person not in answered:
                yield person, Question(_to_decide(departure), departure.number)
    for finding in variance.findings:
        for person in finding.ask:
            yield person, Question(f"What is to be done about this: {finding.text.rstrip('.')}.")


def _to_close(departure: Departure, item: Open) -> str:
    match item.kind:
        case OpenKind.CONSENT:
            to = f" to {item.instruction}" if item.instruction else ""
            return f"To consent{to}, or refuse: {departure.matter}."
        case OpenKind.ATTESTATION:
            return f"To attest whether this holds: {quoted(item.text)}."
        case OpenKind.VALUE:
            return f"To say what is missing: {missing_in_words(item)}."


def _to_decide(departure: Departure) -> str:
    """What is asked of a person who could lift the verdict, where nothing in particular is open."""
    names = listed([line.identifier for line in departure.rows[0].governing])
    match departure.verdict:
        case Verdict.FORBIDDEN | Verdict.BREACH if departure.rows[0].ground == "safety":
            return f"{names} is a rule of safety and cannot be waived; what to propose instead: {departure.matter}."
        case Verdict.FORBIDDEN | Verdict.BREACH:
            return f"Whether {names} may be set aside for this installation: {departure.matter}."
        case Verdict.CONTRADICTION:
            return f"Which of {names or 'the instructions'} is to hold: {departure.matter}."
        case Verdict.UNKNOWN:
            return f"To say what is missing: {departure.matter}."
        case _:
            return f"Whether this may be, which no instruction settles: {departure.matter}."
