"""Who must be asked, and for what: every open thing of a variance, under the person who can close it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum

from intent.language.message import Words, closed, listed, quoted, say, say_of
from intent.model.naming import person_words
from intent.names import THE_VENUE
from intent.papers.departures import Departure, merged, missing_words
from intent.papers.inline import Content, Phrase, Several
from intent.papers.obstacles_told import obstacle_words
from intent.variance.asking import needs_beside_rows
from intent.variance.obstacle import Obstacle, in_the_way, needs_words
from intent.variance.result import Open, OpenKind, Row, Variance, Verdict
from intent.variance.venue_asked import asked_for_needs

WHOLE = say("The proposal as a whole.")
ANYBODY = say("Whoever is in a position to say")


class AskingKind(StrEnum):
    """What an answer would be."""

    CONSENT = "consent"
    EXTEND = "extend"
    """A consent that was given lasts as long as the showing."""
    ATTEST = "attest"
    WAIVE = "waive"
    """What was asked for may be set aside this time."""
    REPLACE = "replace"
    """Something else is proposed, since what was asked for cannot be set aside."""
    REFUSED = "refused"
    """Something else is proposed, since the person has refused it."""
    CHOOSE = "choose"
    """Which of two instructions is to hold."""
    DECIDE = "decide"
    """Whether it may be, which nobody ever said."""
    TELL = "tell"
    """A value that is missing."""
    SUPPLY = "supply"
    """What has to be known to hold something against a limit."""
    CLEAR = "clear"
    """What is to be done about an obstacle."""
    WHOLE = "whole"


IN_SHORT = {
    AskingKind.CONSENT: say("to consent, or refuse"),
    AskingKind.EXTEND: say("to extend a consent that ends before the showing does"),
    AskingKind.ATTEST: say("to attest whether it is so"),
    AskingKind.WAIVE: say("whether what was asked for may be set aside this time"),
    AskingKind.REPLACE: say("what instead, since what was asked for cannot be set aside"),
    AskingKind.REFUSED: say("what instead, since it was refused"),
    AskingKind.CHOOSE: say("which instruction is to hold"),
    AskingKind.DECIDE: say("whether it may be, which no instruction settles"),
    AskingKind.TELL: say("to say what is missing"),
    AskingKind.SUPPLY: say("to say on what limits depend"),
    AskingKind.CLEAR: say("what is to be done about the obstacles"),
    AskingKind.WHOLE: say("about the proposal as a whole"),
}
"""Each kind of question without what it is about."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Asking:
    """One thing to be asked, and the departures from which it arises."""

    kind: AskingKind
    text: Words
    gist: Words = ""
    """What it is about, in few words; nothing where the kind says it all."""
    departures: tuple[Departure, ...] = ()

    @property
    def in_short(self) -> Words:
        """The question in few words, for a place that says what it is about."""
        return IN_SHORT[self.kind]


def departures_words(found: Sequence[Departure]) -> Content:
    """`points 2 and 3`, each number a link; nothing of none."""
    if not found:
        return ""
    numbers = tuple(Phrase(str(one.number), link=one.anchor) for one in found)
    return say_of(len(numbers), "point", "points"), " ", Several(numbers)


@dataclass(frozen=True, slots=True)
class Request:
    """What one person is to be asked."""

    person: str
    """The identifier; empty where nobody in particular is named."""
    name: Words
    questions: tuple[Asking, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Question:
    """One question as it arises, before it is put together with those of the same words."""

    person: str
    asking: Asking


def requests(variance: Variance, departures: Sequence[Departure]) -> tuple[Request, ...]:
    """The people in the order in which the variance names them, then others, then questions for anybody."""
    asked: dict[str, dict[Words, Asking]] = {person: {} for person in variance.refer_to}
    for question in _questions(variance, departures):
        told = asked.setdefault(question.person, {})
        before = told.get(question.asking.text)
        told[question.asking.text] = _joined(before, question.asking) if before else question.asking
    anybody = tuple(asked.pop("", {}).values())
    found = [
        Request(person, _name(variance, person), tuple(told.values()) or (_OF_THE_WHOLE,))
        for person, told in asked.items()
    ]
    return (*found, Request("", ANYBODY, anybody)) if anybody else tuple(found)


def _name(variance: Variance, person: str) -> Words:
    """Name and role; of the venue, which is nobody of the dossier, what it is called."""
    if person != THE_VENUE:
        return person_words(variance.work, person)
    venue = variance.installation.venue
    return say("{name} ({role})", name=venue, role=say("the venue")) if venue else say("The venue")


def asked_about(departure: Departure, asked: Iterable[Request]) -> tuple[Words, ...]:
    """Who is asked what about one departure: `Brandvold Estate (artist's estate): to consent, or refuse`."""
    return tuple(
        say("{subject}: {text}", subject=request.name, text=listed(dict.fromkeys(kinds)))
        for request in asked
        if (kinds := [one.in_short for one in request.questions if _arises_from(one, departure)])
    )


def _arises_from(asking: Asking, departure: Departure) -> bool:
    return any(one.number == departure.number for one in asking.departures)


_OF_THE_WHOLE = Asking(kind=AskingKind.WHOLE, text=WHOLE)


def _joined(one: Asking, other: Asking) -> Asking:
    """The same question, which arises from the departures of both."""
    return replace(one, departures=each_once((*one.departures, *other.departures)))


def each_once(departures: Iterable[Departure]) -> tuple[Departure, ...]:
    """The departures, each once, in their order."""
    return tuple({one.number: one for one in departures}.values())


def _questions(variance: Variance, departures: Sequence[Departure]) -> Iterator[_Question]:
    """Every question with the person it is for and the departure from which it arises."""
    for departure in departures:
        row = departure.rows[0]
        answered = set()
        for item, lines in merged(row.open):
            for person in _who_can_close(item, row):
                answered.add(person)
                yield _Question(person=person, asking=_to_close(departure, item, lines))
        for person in row.ask:
            if person not in answered:
                yield _Question(person=person, asking=_to_decide(departure, person))
    yield from _to_clear(in_the_way(variance.obstacles))
    yield from _to_supply(variance)


def _to_clear(obstacles: Sequence[Obstacle]) -> Iterator[_Question]:
    """What has to change where an obstacle is sure."""
    for obstacle in obstacles:
        for person in obstacle.ask or ("",):
            if obstacle.is_sure:
                told = closed(obstacle_words(obstacle))
                text = say("What is to be done about this: {obstacle}", obstacle=told)
                yield _Question(person=person, asking=Asking(kind=AskingKind.CLEAR, text=text))


def _to_supply(variance: Variance) -> Iterator[_Question]:
    """In one question to each, what has to be known where something may be in the way, and is not asked already."""
    needs = asked_for_needs(variance.work, variance.installation, in_the_way(variance.obstacles))
    for person, wanted in needs.items():
        left = needs_beside_rows(variance.rows, wanted)
        if left:
            matter = listed(needs_words(left))
            text = say("To say what is missing: {matter}.", matter=matter)
            yield _Question(person=person, asking=Asking(kind=AskingKind.SUPPLY, text=text, gist=matter))


def _who_can_close(item: Open, row: Row) -> Sequence[str]:
    """Whoever is named; for a consent nobody else will do, for the rest whoever the row asks."""
    if item.person:
        return [item.person]
    return ([] if item.kind is OpenKind.CONSENT else row.ask) or [""]


def _to_close(departure: Departure, item: Open, lines: tuple[str, ...]) -> Asking:
    matter = departure.matter
    match item.kind:
        case OpenKind.CONSENT if item.ends:
            text = say(
                "To extend the consent to {lines}, which ends on {date}: {matter}.",
                lines=lines,
                date=item.ends,
                matter=matter,
            )
            return _asking(AskingKind.EXTEND, text, departure)
        case OpenKind.CONSENT if lines:
            text = say("To consent to {lines}, or refuse: {matter}.", lines=lines, matter=matter)
            return _asking(AskingKind.CONSENT, text, departure)
        case OpenKind.CONSENT:
            return _asking(
                AskingKind.CONSENT, say("To consent, or refuse: {matter}.", matter=matter), departure
            )
        case OpenKind.ATTESTATION:
            fact = quoted(item.text)
            text = say("To attest whether this holds: {fact}.", fact=fact)
            return _asking(AskingKind.ATTEST, text, departure, gist=fact)
    text = say("To say what is missing: {matter}.", matter=missing_words(item))
    return _asking(AskingKind.TELL, text, departure, gist=departure.title)


def _asking(kind: AskingKind, text: Words, departure: Departure, gist: Words = "") -> Asking:
    return Asking(kind=kind, text=text, gist=gist or departure.gist, departures=(departure,))


def _to_decide(departure: Departure, person: str) -> Asking:
    """What is asked of a person who could lift the verdict, where nothing in particular is open."""
    lines, matter = listed(line.identifier for line in departure.rows[0].governing), departure.matter
    match departure.verdict:
        case Verdict.FORBIDDEN | Verdict.BREACH if _has_refused(departure, person):
            text = say("Refused on record; what instead: {matter}.", matter=matter)
            return _asking(AskingKind.REFUSED, text, departure)
        case Verdict.FORBIDDEN | Verdict.BREACH:
            return _to_lift(departure, lines)
        case Verdict.CONTRADICTION:
            text = say(
                "Which of {lines} is to hold: {matter}.",
                lines=lines or say("the instructions"),
                matter=matter,
            )
            return _asking(AskingKind.CHOOSE, text, departure)
        case Verdict.UNKNOWN:
            return _asking(
                AskingKind.TELL, say("To say what is missing: {matter}.", matter=matter), departure
            )
    text = say("Whether this may be, which no instruction settles: {matter}.", matter=matter)
    if departure.is_added:
        text = say("Whether {subject} may be added, which no instruction settles.", subject=departure.subject)
    return _asking(AskingKind.DECIDE, text, departure)


def _has_refused(departure: Departure, person: str) -> bool:
    return any(one.refused_by == person for one in departure.rows[0].denied)


def _to_lift(departure: Departure, lines: Words) -> Asking:
    """What is asked of who gave what is broken; of safety and law nobody in the house can dispense."""
    ground, matter = departure.rows[0].ground, departure.matter
    if ground == "safety":
        text = say(
            "{lines} is a rule of safety and cannot be waived; what instead: {matter}.",
            lines=lines,
            matter=matter,
        )
        return _asking(AskingKind.REPLACE, text, departure)
    if ground == "law":
        text = say(
            "{lines} is law: whether an exemption can be had, or what instead: {matter}.",
            lines=lines,
            matter=matter,
        )
        return _asking(AskingKind.REPLACE, text, departure)
    named = say("{name} ({role})", name=lines, role=departure.ground) if departure.ground else lines
    text = say(
        "Whether {lines} may be set aside for this installation: {matter}.", lines=named, matter=matter
    )
    return _asking(AskingKind.WAIVE, text, departure)
