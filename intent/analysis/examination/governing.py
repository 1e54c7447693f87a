"""Which instructions prevail for which values on a day: the space of values cut where any of them draws a border."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from intent.analysis.examination.matters import Matter, joined
from intent.analysis.examination.pieces import Piece, cut
from intent.analysis.examination.valuing import values_words
from intent.model.assertions import Aggregate
from intent.values.sets import ValueSet
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
    open: str = ""


@dataclass(frozen=True, slots=True)
class Stretch:
    """Values that fare alike, in words."""

    values: str
    fate: Fate


def stretches(case: Case, matters: Sequence[Matter], day: datetime.date) -> tuple[Stretch, ...]:
    """What the instructions of all grounds on one matter say of each value, were it other than documented."""
    first = matters[0]
    speaking = [
        (matter, {speaker.line.identifier for speaker in speakers(case, matter.lines, matter.members, day)})
        for matter in matters
    ]
    claims = [claim for matter, held in speaking for claim in matter.claims if claim.line.identifier in held]
    if not claims or first.aggregate in _NOT_CUT:
        return ()
    sets = [claim.admitted for claim in claims if claim.admitted is not None]
    fates: dict[tuple[bool, Fate], ValueSet] = {}
    for piece in cut(first.whole, sets):
        key = (any(piece.within), _fate(case, matters, piece, day))
        values = fates.get(key)
        fates[key] = piece.values if values is None else joined(values, piece.values)
    lines = [claim.line for claim in claims]
    return tuple(
        Stretch(values_words(case, first, values, lines) if is_named else "anything else", fate)
        for (is_named, fate), values in sorted(fates.items(), key=_named_first)
    )


def _named_first(item: tuple[tuple[bool, Fate], ValueSet]) -> tuple[bool, int]:
    """What some instruction names, the best first; then the rest."""
    (is_named, fate), _ = item
    return not is_named, fate.verdict.badness if fate.verdict else 0


def _fate(case: Case, matters: Sequence[Matter], piece: Piece, day: datetime.date) -> Fate:
    judged = list(_judgements(case, matters, piece, day))
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
    case: Case, matters: Sequence[Matter], piece: Piece, day: datetime.date
) -> Iterator[Judgement]:
    for matter in matters:
        counts = matter.characteristic is not None and matter.characteristic.counts_unasked
        admitted = {claim.line.identifier: claim.admitted for claim in matter.claims}
        questions = [
            Inquiry(
                speaker=speaker,
                value=piece.values,
                admitted=admitted[speaker.line.identifier],
                text=matter.label,
            )
            for speaker in speakers(case, matter.lines, matter.members, day)
        ]
        said = ask(case, questions, matter.members, day)
        judgement = judge_ground(
            case, said, Deviation(is_unchanged=False, counts_unasked=counts), matter.ground
        )
        if judgement is not None:
            yield judgement
