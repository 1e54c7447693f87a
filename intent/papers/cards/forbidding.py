"""What must not be done with a part during the showing, safety first; and what the artist said of it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from intent.language.calendar import span_words
from intent.language.message import Joint, Words, joined, listed, named, say
from intent.model.assertions import Aggregate, Assertion, Condition, Expression, Form, Named
from intent.model.authority import ARTIST_RANK
from intent.model.citing import citations_of, words_behind
from intent.model.meaning import admitted_values
from intent.model.naming import person_name
from intent.model.phrasing import characteristic_words, expression_words, scope_words
from intent.model.work import Instruction, Modality, Work
from intent.names import ABSENT, PRESENCE
from intent.papers.cards.card import ArtistWords, Prohibition
from intent.papers.instructions_told import TypesetCondition, instruction_words
from intent.values.sets import are_disjoint
from intent.variance.case import Case
from intent.variance.days import segments
from intent.variance.speaking import speakers
from intent.vocabulary.terms import Vocabulary

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
        conditions=joined((condition_words(case, one) for one in line.conditions), ", "),
        permitted=tuple(
            instruction_words(case.work, one) for one in speaking if _permits_some(case, one, line)
        ),
    )


def condition_words(case: Case, condition: Condition) -> Words:
    """`if “the work leaves the house”`, typeset."""
    return named(TypesetCondition(condition, case.vocabulary))


def _what(case: Case, line: Instruction) -> Words:
    """What must not be, as a sentence without its full stop: `rotation must not be upside down`."""
    assertion, vocabulary = line.assertion, case.vocabulary
    presence = _of_presence(assertion)
    if presence:
        return presence
    subject = _subject(assertion, vocabulary)
    match assertion.aggregate:
        case Aggregate.RELATION:
            scope = scope_words(assertion.scope, vocabulary)
            return say(
                "{subject} must not be {value}",
                subject=scope,
                value=characteristic_words(assertion, vocabulary),
            )
        case Aggregate.SAME:
            return say("{subject} must not be the same for all", subject=subject)
        case Aggregate.DIFFERENT:
            return say("{subject} must not be different for all", subject=subject)
    return _compared(subject, assertion.expression, vocabulary)


def _of_presence(assertion: Assertion) -> Words:
    """Of what must not be there, or must not be missing; of any other assertion nothing."""
    forbidden = [item.concept for item in assertion.expression.items if isinstance(item, Named)]
    if (
        assertion.aggregate is not Aggregate.EACH
        or assertion.characteristic != PRESENCE
        or len(forbidden) != 1
    ):
        return ""
    is_absence = (forbidden == [ABSENT]) != assertion.expression.negated
    return say("this part must not be left out") if is_absence else say("this part must not be shown")


def _subject(assertion: Assertion, vocabulary: Vocabulary) -> Words:
    """`rotation`, of this part alone; `total power of Monitors`, of several together."""
    term = named(vocabulary.named(assertion.characteristic or ""))
    if assertion.aggregate is Aggregate.EACH:
        return term
    together = assertion.aggregate in {Aggregate.SAME, Aggregate.DIFFERENT}
    spoken = term if together else characteristic_words(assertion, vocabulary)
    return say(
        "{characteristic} of {subject}",
        characteristic=spoken,
        subject=scope_words(assertion.scope, vocabulary),
    )


def _compared(subject: Words, expression: Expression, vocabulary: Vocabulary) -> Words:
    """What a characteristic must not be; a forbidden least is told as what it must stay below."""
    if expression.negated:
        value = expression_words(replace(expression, negated=False), vocabulary)
        return say("{subject} must not be anything but {value}", subject=subject, value=value)
    bare = listed(
        (
            expression_words(Expression(form=Form.ONE_OF, items=(item,)), vocabulary)
            for item in expression.items
        ),
        Joint.OR,
    )
    match expression.form:
        case Form.ONE_OF:
            return say("{subject} must not be {value}", subject=subject, value=bare)
        case Form.AT_LEAST:
            return say("{subject} must be less than {value}", subject=subject, value=bare)
        case Form.AT_MOST:
            return say("{subject} must be more than {value}", subject=subject, value=bare)
        case Form.AS_DOCUMENTED:
            return say("{subject} must not stay as documented", subject=subject)
    return say(
        "{subject} must not be {value}", subject=subject, value=expression_words(expression, vocabulary)
    )


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


def words_of_the_artist(case: Case, part: str, lines: Iterable[Instruction]) -> ArtistWords | None:
    """What the artist said of this part: the words of a line of its own, else those of a heading all about it.

    Words under a heading that speaks of other parts as well, each in a line of its own, may be about any of them,
    and are told on no card. The line of the narrowest scope goes first.
    """
    own = [line for line in lines if case.ranks[line.identifier] == ARTIST_RANK and _is_of_each(line)]
    closest = sorted(own, key=lambda line: len(case.members[line.identifier]))
    for line in closest:
        if line.words.strip():
            return ArtistWords(line.words.strip(), _source(case.work, line))
    for line in closest:
        words = words_behind(case.work, line)
        if words and _is_all_about(case, line.heading, part):
            return ArtistWords(words, _source(case.work, line))
    return None


def _is_of_each(line: Instruction) -> bool:
    """Whether it speaks of each part by itself, and not of how many there are, or of all together."""
    return line.assertion.aggregate in {Aggregate.EACH, Aggregate.RELATION}


def _is_all_about(case: Case, heading: str, part: str) -> bool:
    """Whether every line under a heading speaks of a part."""
    under = [line for line in case.work.instructions if line.heading == heading]
    return all(part in case.members[line.identifier] for line in under)


def _source(work: Work, line: Instruction) -> Words:
    """`Runa Quillmark, 1991 (S2; S1 at 0:21:40)`: in short, since the report has it in full."""
    name = person_name(work, line.by) if work.person(line.by) else ""
    said = joined([name, span_words(line.on)], ", ")
    cited = [
        say("{source} at {times}", source=one.source, times=one.at) if one.at else one.source
        for one in citations_of(line, work.heading(line.heading))
    ]
    return say("{said} ({sources})", said=said, sources=joined(cited, "; ")) if cited else said
