"""From an installation to what stands on its cards, part by part; what is left out has no card."""

from __future__ import annotations

import datetime
from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass

from intent.drawings.measuring import length
from intent.effects.handling.resting import sure_carriers
from intent.effects.scene import Scene, Sides, sides_of
from intent.language.calendar import span_words
from intent.language.message import Words, joined, listed, named, say
from intent.model.as_proposed import PackedBox, packed_boxes
from intent.model.installation import Installation
from intent.model.subject import one
from intent.model.work import Part
from intent.papers.cards.card import CardRow, Deck, Placement
from intent.papers.cards.forbidding import prohibitions, speaking_of, words_of_the_artist
from intent.papers.cards.keeping import keeping_rows
from intent.papers.cards.leads import leads_rows
from intent.papers.cards.lengths import is_display, position_row
from intent.papers.cards.particulars import particulars
from intent.papers.cards.posture import Lying, lying_of
from intent.papers.cards.signals import Signals, signals_of
from intent.papers.cautions import called_for_by
from intent.papers.duties_told import told_duties
from intent.papers.masthead import WORK_HEAD
from intent.papers.statements_told import labelled_fields
from intent.values.sets import Answer
from intent.variance.case import lay_out
from intent.variance.result import VERDICT_WORDS, Variance, Verdict

_DEEP, _DEEPEST = 0.7, 1.2
"""The depth of a set whose measures are not known, and the most that is drawn, as shares of its width."""
_HEAD = ("artist", "year", "number")
_UNSETTLED = {
    Verdict.FORBIDDEN,
    Verdict.BREACH,
    Verdict.CONTRADICTION,
    Verdict.UNKNOWN,
    Verdict.UNCOVERED,
    Verdict.CONDITIONAL,
}


@dataclass(frozen=True, slots=True, kw_only=True)
class CardBasis:
    """What is worked out once for all cards of an installation."""

    variance: Variance
    sides: Sides
    signals: Signals
    boxes: tuple[PackedBox, ...]
    carriers: Mapping[str, str]
    """By part, the one on which it surely stands."""
    unit: str
    """In which lengths are told: `mm`, `cm` or `in`."""


def draw_up(variance: Variance, unit: str, made: datetime.date, wanted: Collection[str] = ()) -> Deck:
    """The cards of a proposal, of some parts alone where any are named."""
    work, installation = variance.work, variance.installation
    sides = sides_of(lay_out(work, installation))
    basis = CardBasis(
        variance=variance,
        sides=sides,
        signals=signals_of(sides),
        boxes=packed_boxes(work, installation),
        carriers=sure_carriers(sides.proposed),
        unit=unit,
    )
    fields = labelled_fields(work.vocabulary, work.fields, WORK_HEAD)
    return Deck(
        work=work.title,
        byline=joined((fields.get(name, "") for name in _HEAD), ", "),
        installation=installation.title,
        occasion=_occasion(installation),
        made=made,
        cards=tuple(
            _placement(basis, part)
            for part in sides.proposed.parts()
            if not wanted or part.identifier in wanted
        ),
        duties=() if wanted else tuple(_duties(variance)),
    )


def _duties(variance: Variance) -> Iterator[CardRow]:
    """What is still to be done, whoever does it: who hangs a thing sees what hangs on it."""
    for duty in told_duties(variance):
        if not duty.is_done:
            lines = (duty.what, joined([duty.who, duty.when], ", "), duty.conditions)
            yield CardRow(duty.identifier, tuple(filter(None, lines)))


def _occasion(installation: Installation) -> Words:
    """`Kunsthalle Halmsee, 6 March 2027 to 27 June 2027, proposed`."""
    status: Words = named(installation.status) if installation.status else ""
    return joined([installation.venue, span_words(installation.dates), status], ", ")


def _placement(basis: CardBasis, part: Part) -> Placement:
    sides, name = basis.sides, part.identifier
    scene = sides.proposed
    kind = joined([named(part.kind), part.group or ""], ", ")
    speaking = speaking_of(scene.case, name)
    return Placement(
        identifier=name,
        iri=part.iri,
        name=part.name or kind,
        kind=kind,
        standing=_standing(sides, name),
        lying=_lying(scene, name),
        position=position_row(scene, basis.variance, name, basis.unit),
        rows=(
            *particulars(sides, name, basis.boxes, basis.carriers),
            *basis.signals.rows(name),
            *leads_rows(scene, name),
            *keeping_rows(scene.case, speaking, _set_aside(basis.variance, name)),
        ),
        unsettled=_unsettled(basis.variance, name),
        cautions=tuple(_cautions(scene, part)),
        prohibitions=prohibitions(scene.case, speaking),
        quotation=words_of_the_artist(scene.case, name, speaking),
    )


def _lying(scene: Scene, part: str) -> Lying | None:
    """The way up, as deep as the device is; what is thrown on a wall has no depth."""
    wide, deep = length(scene, part, "outer-width"), length(scene, part, "outer-depth")
    depth = min(deep / wide, _DEEPEST) if wide and deep else _DEEP
    if scene.stated_names(part, "technology") and scene.is_(part, "technology", "projector") is Answer.IN:
        depth = 0.0
    return lying_of(scene, part, hangs=is_display(scene, part), depth=depth)


def _standing(sides: Sides, part: str) -> Words:
    if not sides.was_there(part):
        return say("added for this installation")
    is_another = part in sides.proposed.case.substituted
    return say("another device than documented") if is_another else ""


def _unsettled(variance: Variance, part: str) -> Words:
    """What of this part the proposal may not do yet, or not at all, each with its verdict."""
    vocabulary, subject = variance.work.vocabulary, one(part)
    found = [
        say(
            "{characteristic} ({verdict})",
            characteristic=vocabulary.named(row.term) if row.term else row.characteristic,
            verdict=VERDICT_WORDS[row.verdict],
        )
        for row in variance.rows
        if row.subject == subject and row.verdict in _UNSETTLED
    ]
    return say("Not settled, ask before installing: {matters}", matters=listed(found)) if found else ""


def _set_aside(variance: Variance, part: str) -> frozenset[str]:
    """The lines that fall for a part, or may yet, to others that prevail over them."""
    rows = (row for row in variance.rows if row.subject == one(part))
    return frozenset(fallen.instruction for row in rows for fallen in row.set_aside)


def _cautions(scene: Scene, part: Part) -> Iterator[Words]:
    """The names of the cautions that a part calls for as it is proposed, not those of a device that left."""
    vocabulary, stated = scene.vocabulary, scene.state.statements.get(part.identifier, {})
    power = scene.bounds(part.identifier, "power") if scene.states(part.identifier, "power") else None
    for iri in called_for_by(vocabulary, part.kind.iri, stated, power):
        yield named(vocabulary.named(iri))
