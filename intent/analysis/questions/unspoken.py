"""What nobody has spoken of, as questions: what is asked, what is documented of it, and what was shown."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from itertools import islice

from intent.analysis.questions.device_wear import wear_of
from intent.analysis.questions.gaps import Gap, gaps_of_parts, gaps_of_work
from intent.analysis.questions.measure import Factors, Wear
from intent.analysis.questions.occasion import (
    Occasion,
    differs,
    highest,
    parts_words,
    times_differed,
    times_shown,
)
from intent.analysis.questions.question import Question
from intent.language.message import Joint, Message, Words, joined, listed, named, say
from intent.model.naming import runs
from intent.model.work import Instruction, Part
from intent.names import PRESENCE, THE_WORK
from intent.vocabulary.terms import Characteristic

NEAR = 2
"""So many instructions that come near are told with a question."""
FEW = 8
"""Up to so many values are told; of more, that they are many."""
UNSAID = say("No instruction speaks of it.")


def unspoken(occasion: Occasion) -> Iterator[Question]:
    """A question for each gap in what has been said of the parts and of the work as a whole."""
    for gap in gaps_of_parts(occasion):
        yield _of_parts(occasion, gap)
    for characteristics in gaps_of_work(occasion):
        yield _of_work(occasion, characteristics)


def _of_parts(occasion: Occasion, gap: Gap) -> Question:
    names = [part.identifier for part in gap.parts]
    hardest = max(gap.characteristics, key=lambda one: one.seen + one.undone)
    factors = Factors(
        wear=wear_of(occasion, gap.parts) if gap.goes_with_device else Wear(),
        seen=hardest.seen,
        undone=hardest.undone,
        differed=times_differed(occasion, names, gap.characteristics),
        shown=times_shown(occasion, names, gap.characteristics),
        bearing=2,
    )
    known = tuple(
        _documented(occasion, gap.parts, one)
        for one in gap.characteristics
        if one.iri != PRESENCE and _is_documented(occasion, gap.parts, one)
    )
    past = tuple(found for one in gap.characteristics for found in _shown(occasion, gap.parts, one))
    return Question(
        text=_asked(occasion, gap),
        why=UNSAID,
        factors=factors,
        whom=highest(occasion),
        known=known + past,
        near=_near(occasion, gap),
    )


def _asked(occasion: Occasion, gap: Gap) -> Message:
    subject = parts_words(occasion.work, gap.parts)
    if len(gap.characteristics) > 1:
        return say(
            "Of {parts}: may {characteristics} be other than documented, how far, and which of them must stay?",
            parts=subject,
            characteristics=listed(gap.characteristics, Joint.OR),
        )
    one, state = gap.characteristics[0], occasion.case.documented
    if one.iri == PRESENCE and len(gap.parts) == 1:
        return say("May {parts} be left out, and when?", parts=subject)
    if one.iri == PRESENCE:
        return say("May any of {parts} be left out, and when?", parts=subject)
    values = {state.words(part.identifier, one) for part in gap.parts if state.is_given(part.identifier, one)}
    return _about_value(one, subject, values)


def _about_value(one: Characteristic, subject: Words, values: Collection[Words]) -> Message:
    """What to ask of a characteristic of which these values are documented."""
    if not values:
        return _undocumented(named(one), subject)
    if len(values) == 1:
        pattern = (
            say("How far may the {characteristic} of {subject} depart from {value}?")
            if one.is_measured
            else say(
                "May the {characteristic} of {subject} be other than {value}? What else, and what never?"
            )
        )
    else:
        pattern = (
            say("How far may the {characteristic} of {subject} depart from what is documented?")
            if one.is_measured
            else say(
                "May the {characteristic} of {subject} be other than documented? What else, and what never?"
            )
        )
    value = next(iter(values)) if len(values) == 1 else ""
    return pattern.filled(characteristic=one, subject=subject, value=value)


def _undocumented(characteristics: Words, subject: Words) -> Message:
    """What to ask of characteristics of which nothing is documented."""
    return say(
        "What should the {characteristic} of {subject} be? Nothing is documented.",
        characteristic=characteristics,
        subject=subject,
    )


def _is_documented(occasion: Occasion, parts: Sequence[Part], one: Characteristic) -> bool:
    return any(occasion.case.documented.is_given(part.identifier, one) for part in parts)


def _documented(occasion: Occasion, parts: Sequence[Part], one: Characteristic) -> Message:
    """`casing: original (M1 to M3), altered (M4)`."""
    values: dict[Words, list[str]] = {}
    for part in parts:
        values.setdefault(occasion.case.documented.words(part.identifier, one), []).append(part.identifier)
    if len(values) > FEW:
        return say(
            "{characteristic}, as documented: {number} values among {parts} parts",
            characteristic=one,
            number=len(values),
            parts=len(parts),
        )
    told = next(iter(values)) if len(values) == 1 else _whose(values)
    return say("{characteristic}, as documented: {value}", characteristic=one, value=told)


def _whose(values: Mapping[Words, Sequence[str]]) -> Words:
    """Values with the parts that have them, a few at most."""
    told = (say("{value} ({members})", value=value, members=runs(names)) for value, names in values.items())
    return joined(islice(told, FEW), "; ")


def _shown(occasion: Occasion, parts: Sequence[Part], one: Characteristic) -> Iterator[Message]:
    """What past installations made of it, where that was something else."""
    for installation, state in zip(occasion.past, occasion.shown, strict=True):
        values: dict[Words, list[str]] = {}
        for part in parts:
            if differs(occasion, state, part.identifier, one):
                values.setdefault(state.words(part.identifier, one), []).append(part.identifier)
        if values:
            yield say(
                "{characteristic} in {year}, {installation}: {values}",
                characteristic=one,
                year=installation.dates.first.year,
                installation=installation.title,
                values=_whose(values),
            )


def _of_work(occasion: Occasion, every: tuple[Characteristic, ...]) -> Question:
    documented = occasion.case.documented
    one = max(every, key=lambda one: one.seen + one.undone)
    factors = Factors(
        wear=Wear(),
        seen=one.seen,
        undone=one.undone,
        differed=times_differed(occasion, [THE_WORK], every),
        shown=times_shown(occasion, [THE_WORK], every),
        bearing=2,
    )
    values = [documented.words(THE_WORK, one)] if documented.is_given(THE_WORK, one) else []
    whole = say("the work as a whole")
    return Question(
        text=_about_value(one, whole, values) if values else _undocumented(listed(every), whole),
        why=UNSAID,
        factors=factors,
        whom=highest(occasion),
        known=tuple(
            say("{characteristic}, as documented: {value}", characteristic=one, value=value)
            for value in values
        ),
    )


def _near(occasion: Occasion, gap: Gap) -> tuple[Instruction, ...]:
    """Instructions about other parts of the same kind, in one of the same respects."""
    wanted = {one.iri for one in gap.characteristics}
    kinds = {part.identifier: part.kind for part in occasion.work.parts}
    of_kind = (
        line
        for line in occasion.lines
        if line.assertion.characteristic in wanted
        and any(kinds.get(name) == gap.parts[0].kind for name in occasion.case.members[line.identifier])
    )
    return tuple(of_kind)[:NEAR]
