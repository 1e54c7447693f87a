"""From an installation to what stands on its cards, part by part; what is left out has no card."""

from __future__ import annotations

from collections.abc import Collection, Iterator

from intent.drawings.measuring import angle
from intent.effects.scene import Sides, sides_of
from intent.language.message import Saying, joined, listed, say
from intent.model.work import Part
from intent.names import term_iri
from intent.papers.calling import called_for
from intent.papers.cards.card import CardRow, Deck, Placement
from intent.papers.cards.forbidding import prohibitions, speaking_of, words_of_the_artist
from intent.papers.cards.lengths import position_row
from intent.papers.cards.signals import Signals, signals_of
from intent.papers.naming import characteristic_label, labelled_fields
from intent.papers.wording import characterised, date_in_words, verdict_word
from intent.variance.case import lay_out
from intent.variance.result import Variance, Verdict
from intent.vocabulary.terms import Vocabulary

_OF_DEVICE = ("technology", "maker", "model", "serial", "visible-diagonal", "aspect-ratio", "weight")
_OF_PLACE = ("support", "picture-turn", "tilt", "facing", "height", "fit", "start-offset", "synchronisation")
_PLAIN = {"support"}
"""Characteristics whose values say by themselves what they are of: `in a rack`."""
_HEAD = ("artist", "year", "number")
_UNSETTLED = {
    Verdict.FORBIDDEN,
    Verdict.BREACH,
    Verdict.CONTRADICTION,
    Verdict.UNKNOWN,
    Verdict.UNCOVERED,
    Verdict.CONDITIONAL,
}


def draw_up(variance: Variance, unit: str, wanted: Collection[str] = ()) -> Deck:
    """The cards of a proposal, of some parts alone where any are named; lengths in a unit of `lengths.UNITS`."""
    sides = sides_of(lay_out(variance.work, variance.installation))
    signals, cautions = signals_of(sides), called_for(variance)
    cards = tuple(
        _placement(variance, sides=sides, signals=signals, part=part, unit=unit, cautions=cautions)
        for part in sides.proposed.parts()
        if not wanted or part.identifier in wanted
    )
    fields = labelled_fields(variance.work.vocabulary, variance.work.fields, _section())
    byline = ", ".join(value for label, value in fields.items() if label in _HEAD and value)
    return Deck(
        work=variance.work.title,
        byline=byline,
        installation=variance.installation.title,
        occasion=_occasion(variance),
        cards=cards,
    )


def _section() -> str:
    return term_iri("work-head")


def _occasion(variance: Variance) -> Saying:
    """`Kunsthalle Halmsee, 6 March 2027 to 27 June 2027, proposed`."""
    installation = variance.installation
    status = installation.status.label if installation.status else ""
    return joined([installation.venue, date_in_words(installation.dates), status], ", ")


def _placement(
    variance: Variance,
    sides: Sides,
    signals: Signals,
    part: Part,
    unit: str,
    cautions: dict[str, tuple[str, ...]],
) -> Placement:
    scene, name = sides.proposed, part.identifier
    speaking = speaking_of(scene.case, name)
    turn, turn_words = _turn(sides, name)
    rows = (
        *_device(sides, part),
        *_place(sides, name),
        *signals.rows(name),
    )
    return Placement(
        identifier=name,
        iri=part.iri,
        name=part.name,
        kind=joined([part.kind.label, part.group or ""], ", "),
        standing=_standing(sides, part),
        turn=turn,
        turn_label=say("{term}", term=sides.proposed.term("rotation")),
        turn_words=turn_words,
        position=position_row(scene, variance, name, unit),
        rows=rows,
        unsettled=_unsettled(variance, name),
        cautions=tuple(_cautions(variance.work.vocabulary, cautions, name)),
        prohibitions=prohibitions(scene.case, speaking),
        quotation=words_of_the_artist(scene.case, speaking),
    )


def _turn(sides: Sides, part: str) -> tuple[float | None, str]:
    """The way up, as an angle and in words; of a display without one, that it is not given."""
    scene = sides.proposed
    if scene.is_given(part, "rotation"):
        return angle(scene, part, "rotation"), scene.text(part, "rotation")
    is_display = any(one.identifier == part for one in scene.parts("display"))
    return None, say("not given") if is_display else ""


def _standing(sides: Sides, part: Part) -> str:
    if not sides.was_there(part.identifier):
        return say("added for this installation")
    return say("another device than documented") if _is_replaced(sides, part.identifier) else ""


def _is_replaced(sides: Sides, part: str) -> bool:
    return part in sides.proposed.case.substituted


def _device(sides: Sides, part: Part) -> Iterator[CardRow]:
    """The device, by what one can tell it by."""
    scene, name = sides.proposed, part.identifier
    device = scene.device(name) or ""
    told = [scene.text(name, one) for one in _OF_DEVICE]
    what = joined([device, *told], ", ")
    before = sides.documented.device(name) if _is_replaced(sides, name) else None
    if before:
        yield CardRow(say("device"), (say("{device}, in the place of {other}", device=what, other=before),))
    elif what:
        yield CardRow(say("device"), (what,))


def _place(sides: Sides, part: str) -> Iterator[CardRow]:
    """What else is said of the place, in one row."""
    scene = sides.proposed
    told = [
        scene.text(part, one) if one in _PLAIN else characterised(scene.called(one), scene.text(part, one))
        for one in _OF_PLACE
        if scene.is_given(part, one) and scene.states(part, one)
    ]
    if told:
        yield CardRow(say("placed"), (joined(told, ", "),))


def _unsettled(variance: Variance, part: str) -> str:
    """What of this part the proposal may not do yet, or not at all, each with its verdict."""
    found = [
        say(
            "{characteristic} ({verdict})",
            characteristic=characteristic_label(variance.work.vocabulary, row.term)
            if row.term
            else row.characteristic,
            verdict=verdict_word(row.verdict),
        )
        for row in variance.rows
        if row.subject == part and row.verdict in _UNSETTLED
    ]
    return say("Not settled, ask before installing: {matters}", matters=listed(found)) if found else ""


def _cautions(vocabulary: Vocabulary, cautions: dict[str, tuple[str, ...]], part: str) -> Iterator[str]:
    """The names of the cautions that a part calls for."""
    for iri, parts in cautions.items():
        concept = vocabulary.concepts.get(iri)
        if part in parts and concept is not None:
            yield concept.label
