"""The cards of a proposal, from what was judged of it to the page that is printed."""

from __future__ import annotations

import datetime
from collections.abc import Collection, Iterator, Sequence

from intent.diagnostics import Diagnostic, Span, Unusable
from intent.language.locale import ENGLISH, Locale
from intent.language.message import Words, say
from intent.papers.cards.card_sheet import write_cards
from intent.papers.cards.draw_up import draw_up
from intent.papers.cards.whereabouts import whereabouts_of
from intent.papers.withheld import without_what_stays
from intent.reading.proposal import Proposal
from intent.variance.result import Variance


def cards_of_proposal(
    proposal: Proposal,
    judged: Variance,
    *,
    sheet: str,
    unit: str,
    made: datetime.date,
    parts: Sequence[str] = (),
    locale: Locale = ENGLISH,
) -> str:
    """The cards as one page, of some parts alone where any are named.

    ``sheet`` is `four` (cards to a sheet of A4) or `labels`; lengths are told in ``unit``: `m`, `cm`, `mm`
    or `in`; the cards bear the day ``made``.
    Raises `Unusable` for a part that is not there.
    """
    leaving = without_what_stays(proposal, judged)
    _refuse_absent(leaving, parts)
    return write_cards(draw_up(leaving, unit, made, parts), whereabouts_of(leaving), sheet, locale)


def _refuse_absent(variance: Variance, wanted: Sequence[str]) -> None:
    omitted = {one.part for one in variance.installation.omissions}
    known = [part.identifier for part in (*variance.work.parts, *variance.installation.additions)]
    faults = tuple(_faults(wanted, known, omitted))
    if faults:
        raise Unusable(
            [Diagnostic(slug="no-card", message=fault, span=Span(file="parts")) for fault in faults]
        )


def _faults(wanted: Sequence[str], known: Collection[str], omitted: Collection[str]) -> Iterator[Words]:
    for part in wanted:
        if part not in known:
            parts = ", ".join(known)
            yield say("the installation has no part `{part}`; it has {parts}", part=part, parts=parts)
        elif part in omitted:
            yield say("`{part}` is left out of this installation, so it has no card", part=part)
