"""The cards of a proposal, from what was judged of it to the page that is printed."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from intent.diagnostics import Diagnostic, Span, Unusable
from intent.language.locale import tongue_of
from intent.papers.cards.card_sheet import write_cards
from intent.papers.cards.draw_up import draw_up
from intent.papers.cards.whereabouts import whereabouts_of
from intent.papers.withheld import without_what_stays
from intent.reading.proposal import Proposal
from intent.variance.result import Variance


def cards_of_proposal(
    proposal: Proposal, judged: Variance, sheet: str, unit: str, parts: Sequence[str] = ()
) -> str:
    """The cards as one page, of some parts alone where any are named, in the language of the vocabulary.

    Raises `Unusable` for a part that is not there.
    """
    leaving = without_what_stays(proposal, judged)
    _refuse_absent(leaving, parts)
    vocabulary = judged.work.vocabulary
    tongue = tongue_of(vocabulary.language, vocabulary)
    return write_cards(draw_up(leaving, unit, parts), whereabouts_of(leaving), sheet, tongue)


def _refuse_absent(variance: Variance, wanted: Sequence[str]) -> None:
    omitted = {one.part for one in variance.installation.omissions}
    known = [part.identifier for part in (*variance.work.parts, *variance.installation.additions)]
    faults = [*_faults(wanted, known, omitted)]
    if faults:
        raise Unusable(
            [Diagnostic(slug="no-card", message=fault, span=Span(file="parts")) for fault in faults]
        )


def _faults(wanted: Sequence[str], known: Collection[str], omitted: Collection[str]) -> list[str]:
    unknown = [part for part in wanted if part not in known]
    absent = [part for part in wanted if part in omitted]
    return [
        *(f"the installation has no part `{part}`; it has {', '.join(known)}" for part in unknown),
        *(f"`{part}` is left out of this installation, so it has no card" for part in absent),
    ]
