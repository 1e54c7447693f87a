"""Which instructions prevail for which values on a day: the space of values cut where any of them draws a border."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from intent.analysis.examination.topic_claims import TopicClaims
from intent.analysis.explanation.value_words import ANYTHING_ELSE, values_words
from intent.language.message import Words
from intent.model.assertions import Aggregate
from intent.values.partition import ValuePiece, cut
from intent.values.sets import ValueSet, union
from intent.variance.case import Case
from intent.variance.change import Deviation
from intent.variance.reasons import opens_words
from intent.variance.result import SetAside, Verdict
from intent.variance.says import Inquiry, ask
from intent.variance.speaking import speakers
from intent.variance.verdict import Judgement, judge_ground

_NOT_CUT = {Aggregate.SAME, Aggregate.DIFFERENT, Aggregate.RELATION}


@dataclass(frozen=True, slots=True, kw_only=True)
class Fate:
    """What would be said of a value, by which instructions, over which others, and what is open."""

    verdict: Verdict | None
    """None where nobody asks."""
    governing: tuple[str, ...] = ()
    set_aside: tuple[SetAside, ...] = ()
    open: Words = ""
    """What has to happen first."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """Values that fare alike, in words."""

    values: Words
    fate: Fate


def stretches(case: Case, topics: Sequence[TopicClaims], day: datetime.date) -> tuple[Stretch, ...]:
    """What the instructions of all grounds on one topic say of each value, were it other than documented."""
    first = topics[0]
    speaking = [
        (topic, {speaker.line.identifier for speaker in speakers(case, topic.lines, topic.members, day)})
        for topic in topics
    ]
    claims = [claim for topic, held in speaking for claim in topic.claims if claim.line.identifier in held]
    if not claims or first.aggregate in _NOT_CUT:
        return ()
    sets = [claim.admitted for claim in claims if claim.admitted is not None]
    fates: dict[tuple[bool, Fate], ValueSet] = {}
    for piece in cut(first.whole, sets):
        key = (any(piece.within), _fate(case, topics, piece, day))
        values = fates.get(key)
        fates[key] = piece.values if values is None else union(values, piece.values)
    lines = [claim.line for claim in claims]
    return tuple(
        Stretch(values_words(case, first, values, lines) if is_named else ANYTHING_ELSE, fate)
        for (is_named, fate), values in sorted(fates.items(), key=_named_first)
    )


def _named_first(item: tuple[tuple[bool, Fate], ValueSet]) -> tuple[bool, int]:
    """What some instruction names, the best first; then the rest."""
    (is_named, fate), _ = item
    return not is_named, fate.verdict.badness if fate.verdict else 0


def _fate(case: Case, topics: Sequence[TopicClaims], piece: ValuePiece, day: datetime.date) -> Fate:
    judged = list(_judgements(case, topics, piece, day))
    if not judged:
        return Fate(verdict=None)
    worst = max(judged, key=lambda judgement: judgement.verdict.badness)
    return Fate(
        verdict=worst.verdict,
        governing=tuple(said.line.identifier for said in worst.governing),
        set_aside=tuple(dict.fromkeys(aside for judgement in judged for aside in judgement.set_aside)),
        open=opens_words(case, worst.open) if worst.open else "",
    )


def _judgements(
    case: Case, topics: Sequence[TopicClaims], piece: ValuePiece, day: datetime.date
) -> Iterator[Judgement]:
    for topic in topics:
        counts = topic.characteristic is not None and any(
            case.counts_unasked(member, topic.characteristic) for member in topic.members
        )
        admitted = {claim.line.identifier: claim.admitted for claim in topic.claims}
        questions = [
            Inquiry(
                speaker=speaker,
                value=piece.values,
                admitted=admitted[speaker.line.identifier],
                text=topic.name,
            )
            for speaker in speakers(case, topic.lines, topic.members, day)
        ]
        said = ask(case, questions, topic.members, day)
        judgement = judge_ground(
            case, said, Deviation(is_unchanged=False, counts_unasked=counts), topic.ground
        )
        if judgement is not None:
            yield judgement
