"""Who must be asked, and for what: every open thing of a variance, under the person who can close it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from intent.reports.departures import Departure, merged, missing_in_words
from intent.reports.naming import person_in_words
from intent.reports.wording import listed, quoted
from intent.variance.result import Open, OpenKind, Row, Variance, Verdict

WHOLE = "The proposal as a whole."
ANYBODY = "Whoever is in a position to say"


@dataclass(frozen=True, slots=True)
class Question:
    """One thing to be asked, and the numbers of the departures from which it arises."""

    text: str
    departures: tuple[int, ...] = ()

    @property
    def whence(self) -> str:
        """`Departures 2 and 3`."""
        numbers = listed([str(number) for number in self.departures])
        return f"Departure{'s' if len(self.departures) > 1 else ''} {numbers}" if numbers else ""


@dataclass(frozen=True, slots=True)
class Request:
    """What one person is to be asked."""

    person: str
    """The identifier; empty where nobody in particular is named."""
    name: str
    questions: tuple[Question, ...]


def requests(variance: Variance, departures: Sequence[Departure]) -> tuple[Request, ...]:
    """The people in the order in which the variance names them, then others, then questions for anybody."""
    asked: dict[str, dict[str, list[int]]] = {person: {} for person in variance.refer_to}
    for person, text, number in _questions(variance, departures):
        asked.setdefault(person, {}).setdefault(text, []).extend([number] if number else [])
    anybody = asked.pop("", {})
    found = [
        _request(person, person_in_words(variance.work, person), texts) for person, texts in asked.items()
    ]
    return (*found, _request("", ANYBODY, anybody)) if anybody else tuple(found)


def _request(person: str, name: str, texts: Mapping[str, Sequence[int]]) -> Request:
    questions = [Question(text, tuple(dict.fromkeys(numbers))) for text, numbers in texts.items()]
    return Request(person, name, tuple(questions) or (Question(WHOLE),))


def _questions(variance: Variance, departures: Sequence[Departure]) -> Iterator[tuple[str, str, int]]:
    """Every question with the person it is for and the departure from which it arises (0: none)."""
    for departure in departures:
        row = departure.rows[0]
        answered = set()
        for item in merged(row.open):
            for person in _who_can_close(item, row):
                answered.add(person)
                yield person, _to_close(departure, item), departure.number
        for person in row.ask:
            if person not in answered:
                yield person, _to_decide(departure), departure.number
    for finding in variance.findings:
        for person in finding.ask:
            yield person, f"What is to be done about this: {finding.text.rstrip('.')}.", 0


def _who_can_close(item: Open, row: Row) -> Sequence[str]:
    """Whoever is named; for a consent nobody else will do, for the rest whoever the row asks."""
    if item.person:
        return [item.person]
    return ([] if item.kind is OpenKind.CONSENT else row.ask) or [""]


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
            return f"{names} is a rule of safety and cannot be waived; what instead: {departure.matter}."
        case Verdict.FORBIDDEN | Verdict.BREACH if departure.rows[0].ground == "law":
            return f"{names} is law: whether an exemption can be had, or what instead: {departure.matter}."
        case Verdict.FORBIDDEN | Verdict.BREACH:
            ground = f" ({departure.ground})" if departure.ground else ""
            return f"Whether {names}{ground} may be set aside for this installation: {departure.matter}."
        case Verdict.CONTRADICTION:
            return f"Which of {names or 'the instructions'} is to hold: {departure.matter}."
        case Verdict.UNKNOWN:
            return f"To say what is missing: {departure.matter}."
        case _:
            if departure.characteristic == "presence" and departure.documented == "absent":
                return f"Whether {departure.subject} may be added, which no instruction settles."
            return f"Whether this may be, which no instruction settles: {departure.matter}."
