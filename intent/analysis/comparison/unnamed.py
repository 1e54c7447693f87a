"""What has no name of its own in a documentation, told apart by what it says: expectations and entries of the log."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator

from intent.analysis.comparison.difference import VERDICT, Facets, Thing, ThingKind, facets, of_statements
from intent.language.message import Message, Words, joined, named, say
from intent.model.expectation import Expectation, GivenAnswer
from intent.model.log_entry import LogEntry
from intent.model.phrasing import compared_words, scope_words
from intent.model.work import Work


def unnamed_things(work: Work) -> Iterator[Thing]:
    """Expectations, of which the verdict may change, and what the log has been told."""
    yield from _numbered(
        (ThingKind.EXPECTATION, _case(work, one), _verdict(work, one)) for one in work.expectations
    )
    yield from _numbered((ThingKind.LOG_ENTRY, _event(one), _told(work, one)) for one in work.log)


def _numbered(found: Iterable[tuple[ThingKind, Message, Facets]]) -> Iterator[Thing]:
    """Of those that say the same, the second and later ones are told apart by their order."""
    seen: Counter[tuple[ThingKind, Message]] = Counter()
    for sort, what, told in found:
        seen[sort, what] += 1
        number = seen[sort, what]
        name = what if number == 1 else say("{thing} ({number})", thing=what, number=number)
        verdict = told.get(VERDICT)
        yield Thing(sort=sort, name=name, facets=told, told=verdict.words if verdict else "")


def _case(work: Work, one: Expectation) -> Message:
    """`M1, technology: LCD, given consent of estate`."""
    vocabulary = work.vocabulary
    stated = [
        say(
            "{characteristic}: {value}",
            characteristic=vocabulary.named(iri),
            value=compared_words(value, vocabulary),
        )
        for iri, value in one.value.items()
    ]
    given = joined((_answer(answer) for answer in one.given), "; ")
    day = say("on {day}", day=str(one.on)) if one.on else ""
    facts = say("given {facts}", facts=given) if given else ""
    return say("{case}", case=joined([scope_words(one.scope, vocabulary), *stated, facts, day], ", "))


def _answer(answer: GivenAnswer) -> Words:
    if answer.person is None:
        return say("“{fact}”", fact=answer.fact) if answer.holds else say("not “{fact}”", fact=answer.fact)
    who = (
        say("consent of {person}", person=answer.person)
        if answer.holds
        else say("refusal of {person}", person=answer.person)
    )
    return say("{answer} to {lines}", answer=who, lines=answer.to) if answer.to else who


def _verdict(work: Work, one: Expectation) -> Facets:
    word = work.vocabulary.verdict_words.get(one.verdict)
    return facets(verdict=word or say("no row"), note=one.note, internal=one.internal)


def _event(one: LogEntry) -> Message:
    """`E-02, 2024-03-02, reading`."""
    date = str(one.date) if one.date else ""
    return say("{event}", event=joined(filter(None, [one.about, date, named(one.event)]), ", "))


def _told(work: Work, one: LogEntry) -> Facets:
    told = facets(by=one.by, source=one.source, note=one.note, internal=one.internal)
    return told | of_statements(one.value, work.vocabulary)
