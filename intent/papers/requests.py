"""Who must be asked, and for what: every open thing of a variance, under the person who can close it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from intent.language.message import Words, closed, listed, quoted, say, say_of
from intent.model.naming import person_words
from intent.papers.departures import Departure, merged, missing_words
from intent.papers.inline import Content, Phrase, Several
from intent.papers.obstacles_told import obstacle_words
from intent.variance.obstacle import Need, Obstacle, in_the_way, needs_words
from intent.variance.result import Open, OpenKind, Row, Variance, Verdict

WHOLE = say("The proposal as a whole.")
ANYBODY = say("Whoever is in a position to say")


@dataclass(frozen=True, slots=True)
class Asking:
    """One thing to be asked, and the departures from which it arises."""

    text: Words
    departures: tuple[Departure, ...] = ()

    @property
    def whence(self) -> Content:
        """`Departures 2 and 3`, each number a link; nothing where it arises from none."""
        if not self.departures:
            return ""
        numbers = tuple(Phrase(str(one.number), link=one.anchor) for one in self.departures)
        return say_of(len(numbers), "Departure", "Departures"), " ", Several(numbers)

    @property
    def told(self) -> Content:
        """The question, and from which departures it arises."""
        whence = self.whence
        return (self.text, " (", *whence, ")") if isinstance(whence, tuple) else self.text


@dataclass(frozen=True, slots=True)
class Request:
    """What one person is to be asked."""

    person: str
    """The identifier; empty where nobody in particular is named."""
    name: Words
    questions: tuple[Asking, ...]


def requests(variance: Variance, departures: Sequence[Departure]) -> tuple[Request, ...]:
    """The people in the order in which the variance names them, then others, then questions for anybody."""
    asked: dict[str, dict[Words, list[int]]] = {person: {} for person in variance.refer_to}
    for person, text, number in _questions(variance, departures):
        asked.setdefault(person, {}).setdefault(text, []).extend([number] if number else [])
    anybody = asked.pop("", {})
    numbered = {one.number: one for one in departures}
    found = [
        Request(person, person_words(variance.work, person), _askings(texts, numbered))
        for person, texts in asked.items()
    ]
    return (*found, Request("", ANYBODY, _askings(anybody, numbered))) if anybody else tuple(found)


def _askings(texts: Mapping[Words, Sequence[int]], numbered: Mapping[int, Departure]) -> tuple[Asking, ...]:
    asked = (
        Asking(text, tuple(numbered[number] for number in dict.fromkeys(numbers)))
        for text, numbers in texts.items()
    )
    return tuple(asked) or (Asking(WHOLE),)


def _questions(variance: Variance, departures: Sequence[Departure]) -> Iterator[tuple[str, Words, int]]:
    """Every question with the person it is for and the departure from which it arises (0: none)."""
    for departure in departures:
        row = departure.rows[0]
        answered = set()
        for item, lines in merged(row.open):
            for person in _who_can_close(item, row):
                answered.add(person)
                yield person, _to_close(departure, item, lines), departure.number
        for person in row.ask:
            if person not in answered:
                yield person, _to_decide(departure), departure.number
    yield from _to_clear(in_the_way(variance.obstacles))


def _to_clear(obstacles: Sequence[Obstacle]) -> Iterator[tuple[str, Words, int]]:
    """What has to change where an obstacle is sure, and, in one question, what has to be known where it may be one."""
    needs: dict[str, list[Need]] = {}
    for obstacle in obstacles:
        for person in obstacle.ask or ("",):
            needs.setdefault(person, []).extend(obstacle.missing)
            if obstacle.is_sure:
                told = closed(obstacle_words(obstacle))
                yield person, say("What is to be done about this: {obstacle}", obstacle=told), 0
    for person, wanted in needs.items():
        if wanted:
            yield person, say("To say what is missing: {matter}.", matter=listed(needs_words(wanted))), 0


def _who_can_close(item: Open, row: Row) -> Sequence[str]:
    """Whoever is named; for a consent nobody else will do, for the rest whoever the row asks."""
    if item.person:
        return [item.person]
    return ([] if item.kind is OpenKind.CONSENT else row.ask) or [""]


def _to_close(departure: Departure, item: Open, lines: tuple[str, ...]) -> Words:
    match item.kind:
        case OpenKind.CONSENT if lines:
            return say("To consent to {lines}, or refuse: {matter}.", lines=lines, matter=departure.matter)
        case OpenKind.CONSENT:
            return say("To consent, or refuse: {matter}.", matter=departure.matter)
        case OpenKind.ATTESTATION:
            return say("To attest whether this holds: {fact}.", fact=quoted(item.text))
    return say("To say what is missing: {matter}.", matter=missing_words(item))


def _to_decide(departure: Departure) -> Words:
    """What is asked of a person who could lift the verdict, where nothing in particular is open."""
    lines = listed(line.identifier for line in departure.rows[0].governing)
    match departure.verdict:
        case Verdict.FORBIDDEN | Verdict.BREACH:
            return _to_lift(departure, lines)
        case Verdict.CONTRADICTION:
            conflicting = lines or say("the instructions")
            return say("Which of {lines} is to hold: {matter}.", lines=conflicting, matter=departure.matter)
        case Verdict.UNKNOWN:
            return say("To say what is missing: {matter}.", matter=departure.matter)
        case _ if departure.is_added:
            return say(
                "Whether {subject} may be added, which no instruction settles.", subject=departure.subject
            )
    return say("Whether this may be, which no instruction settles: {matter}.", matter=departure.matter)


def _to_lift(departure: Departure, lines: Words) -> Words:
    """What is asked of who gave what is broken; of safety and law nobody in the house can dispense."""
    ground, matter = departure.rows[0].ground, departure.matter
    if ground == "safety":
        return say(
            "{lines} is a rule of safety and cannot be waived; what instead: {matter}.",
            lines=lines,
            matter=matter,
        )
    if ground == "law":
        return say(
            "{lines} is law: whether an exemption can be had, or what instead: {matter}.",
            lines=lines,
            matter=matter,
        )
    named = say("{name} ({role})", name=lines, role=departure.ground) if departure.ground else lines
    return say(
        "Whether {lines} may be set aside for this installation: {matter}.", lines=named, matter=matter
    )
