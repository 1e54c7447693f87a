"""Who must be asked, and for what: every open thing of a variance, under the person who can close it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from intent.language.message import say, say_of
from intent.papers.departures import Departure, merged, missing_in_words
from intent.papers.naming import finding_in_words, person_in_words
from intent.papers.wording import closed, listed, quoted
from intent.variance.result import Open, OpenKind, Row, Variance, Verdict

WHOLE = say("The proposal as a whole.")
ANYBODY = say("Whoever is in a position to say")


@dataclass(frozen=True, slots=True)
class Asking:
    """One thing to be asked, and the numbers of the departures from which it arises."""

    text: str
    departures: tuple[int, ...] = ()

    @property
    def whence(self) -> str:
        """`Departures 2 and 3`."""
        if not self.departures:
            return ""
        return say_of(
            len(self.departures), "Departure {numbers}", "Departures {numbers}", numbers=self.departures
        )

    @property
    def label(self) -> str:
        """What to write before the numbers of its departures."""
        return say_of(len(self.departures), "Departure", "Departures")

    @property
    def told(self) -> str:
        """The question, and from which departures it arises."""
        whence = self.whence
        return say("{name} ({role})", name=self.text, role=whence) if whence else self.text


@dataclass(frozen=True, slots=True)
class Request:
    """What one person is to be asked."""

    person: str
    """The identifier; empty where nobody in particular is named."""
    name: str
    questions: tuple[Asking, ...]


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
    questions = [Asking(text, tuple(dict.fromkeys(numbers))) for text, numbers in texts.items()]
    return Request(person, name, tuple(questions) or (Asking(WHOLE),))


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
            yield (
                person,
                say("What is to be done about this: {finding}", finding=closed(finding_in_words(finding))),
                0,
            )


def _who_can_close(item: Open, row: Row) -> Sequence[str]:
    """Whoever is named; for a consent nobody else will do, for the rest whoever the row asks."""
    if item.person:
        return [item.person]
    return ([] if item.kind is OpenKind.CONSENT else row.ask) or [""]


def _to_close(departure: Departure, item: Open) -> str:
    match item.kind:
        case OpenKind.CONSENT if item.instruction:
            return say(
                "To consent to {lines}, or refuse: {matter}.",
                lines=item.instruction,
                matter=departure.matter,
            )
        case OpenKind.CONSENT:
            return say("To consent, or refuse: {matter}.", matter=departure.matter)
        case OpenKind.ATTESTATION:
            return say("To attest whether this holds: {fact}.", fact=quoted(item.text))
        case OpenKind.VALUE:
            return say("To say what is missing: {matter}.", matter=missing_in_words(item))


def _to_decide(departure: Departure) -> str:
    """What is asked of a person who could lift the verdict, where nothing in particular is open."""
    names = listed([line.identifier for line in departure.rows[0].governing])
    match departure.verdict:
        case Verdict.FORBIDDEN | Verdict.BREACH:
            return _to_lift(departure, names)
        case Verdict.CONTRADICTION:
            conflicting = names or say("the instructions")
            return say("Which of {lines} is to hold: {matter}.", lines=conflicting, matter=departure.matter)
        case Verdict.UNKNOWN:
            return say("To say what is missing: {matter}.", matter=departure.matter)
        case _ if departure.adds:
            return say(
                "Whether {subject} may be added, which no instruction settles.", subject=departure.subject
            )
    return say("Whether this may be, which no instruction settles: {matter}.", matter=departure.matter)


def _to_lift(departure: Departure, names: str) -> str:
    """What is asked of who gave what is broken; of safety and law nobody in the house can dispense."""
    ground, matter = departure.rows[0].ground, departure.matter
    if ground == "safety":
        return say(
            "{lines} is a rule of safety and cannot be waived; what instead: {matter}.",
            lines=names,
            matter=matter,
        )
    if ground == "law":
        return say(
            "{lines} is law: whether an exemption can be had, or what instead: {matter}.",
            lines=names,
            matter=matter,
        )
    named = say("{name} ({role})", name=names, role=departure.ground) if departure.ground else names
    return say(
        "Whether {lines} may be set aside for this installation: {matter}.", lines=named, matter=matter
    )
