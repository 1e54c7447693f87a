"""What must not be done with a part during the showing, safety first; and what the artist said of it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from intent.language.calendar import span_words
from intent.language.message import Words, joined, named, say
from intent.model.assertions import Aggregate, Condition
from intent.model.authority import ARTIST_RANK
from intent.model.citing import citations_of, words_behind
from intent.model.meaning import admitted_values
from intent.model.naming import person_name
from intent.model.phrasing import characteristic_words, expression_words
from intent.model.work import Instruction, Modality, Work
from intent.papers.cards.card import ArtistWords, Prohibition
from intent.papers.instructions_told import TypesetCondition, instruction_words
from intent.papers.statements_told import characterised
from intent.values.sets import are_disjoint
from intent.variance.case import Case
from intent.variance.days import segments
from intent.variance.speaking import speakers

_GROUNDS = ("safety", "law", "loan", "care", "intent")
"""In the order in which a card tells them: what can hurt somebody first."""


def speaking_of(case: Case, part: str) -> tuple[Instruction, ...]:
    """The instructions whose scope holds the part and that are in force on any day of the showing."""
    lines = [line for line in case.work.instructions if part in case.members[line.identifier]]
    days = [span.first for span in segments(case)]
    heard = {
        one.line.identifier for day in days for one in speakers(case, lines, (part,), day) if one.over is None
    }
    return tuple(line for line in lines if line.identifier in heard)


def prohibitions(case: Case, lines: Iterable[Instruction]) -> tuple[Prohibition, ...]:
    """Of the instructions that speak of a part, those that forbid, safety first."""
    every = tuple(lines)
    found = [_prohibition(case, line, every) for line in every if line.modality is Modality.FORBIDDEN]
    order = {ground: place for place, ground in enumerate(_GROUNDS)}
    return tuple(sorted(found, key=lambda one: order.get(one.ground, len(order))))


def _prohibition(case: Case, line: Instruction, speaking: tuple[Instruction, ...]) -> Prohibition:
    return Prohibition(
        line=line.identifier,
        ground=line.ground,
        what=_what(case, line),
        conditions=joined((_condition(case, one) for one in line.conditions), ", "),
        permitted=tuple(
            instruction_words(case.work, one) for one in speaking if _permits_some(case, one, line)
        ),
    )


def _condition(case: Case, condition: Condition) -> Words:
    return named(TypesetCondition(condition, case.vocabulary))


def _what(case: Case, line: Instruction) -> Words:
    """`rotation upside down`; `any support but on the floor`."""
    assertion, vocabulary = line.assertion, case.vocabulary
    subject = characteristic_words(assertion, vocabulary)
    if assertion.aggregate in {Aggregate.RELATION, Aggregate.SAME, Aggregate.DIFFERENT}:
        return subject
    value = expression_words(assertion.expression, vocabulary)
    if assertion.expression.negated:
        return say("any {characteristic} but {value}", characteristic=subject, value=value)
    return characterised(subject, value)


def _permits_some(case: Case, line: Instruction, forbids: Instruction) -> bool:
    """Whether a permission and a prohibition speak of the same, and some of what is forbidden is permitted."""
    one, other = line.assertion, forbids.assertion
    if line.modality is not Modality.ALLOWED or (one.aggregate, one.characteristic) != (
        other.aggregate,
        other.characteristic,
    ):
        return False
    characteristic = case.vocabulary.characteristics.get(one.characteristic or "")
    if characteristic is None or one.aggregate is not Aggregate.EACH:
        return False
    admitted = [admitted_values(each.expression, characteristic, case.vocabulary) for each in (one, other)]
    permitted, forbidden = admitted
    return permitted is None or forbidden is None or not are_disjoint(permitted, forbidden)


def words_of_the_artist(case: Case, lines: Iterable[Instruction]) -> ArtistWords | None:
    """What the artist said under the heading that is most about this part: that of the fewest parts."""
    own = (line for line in lines if case.ranks[line.identifier] == ARTIST_RANK)
    for line in _closest(case, own):
        words = words_behind(case.work, line)
        if words:
            return ArtistWords(words, _source(case.work, line))
    return None


def _source(work: Work, line: Instruction) -> Words:
    """`Runa Quillmark, 1991 (S2; S1 at 0:21:40)`: in short, since the report has it in full."""
    name = person_name(work, line.by) if work.person(line.by) else ""
    said = joined([name, span_words(line.on)], ", ")
    cited = [
        say("{source} at {times}", source=one.source, times=one.at) if one.at else one.source
        for one in citations_of(line, work.heading(line.heading))
    ]
    return say("{said} ({sources})", said=said, sources=joined(cited, "; ")) if cited else said


def _closest(case: Case, lines: Iterable[Instruction]) -> Iterator[Instruction]:
    """Those of the narrowest scope first; of two alike, that whose heading speaks of fewer parts."""
    spoken: dict[str, set[str]] = {}
    for line in case.work.instructions:
        spoken.setdefault(line.heading, set()).update(case.members[line.identifier])
    yield from sorted(lines, key=lambda line: (len(case.members[line.identifier]), len(spoken[line.heading])))
