"""The rows of the table of expectations: a value of something, what is given, and the verdict that it is to have."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from rdflib import RDF, Literal, URIRef

from intent.diagnostics import nearest, offered
from intent.dossier.bearers import bearers_of, subject_to_name
from intent.dossier.entities import inscribe_numbered
from intent.dossier.fields import Desk
from intent.dossier.given_answers import read_given
from intent.dossier.register import IdentifierKind
from intent.dossier.rows import TableRow, inscribe_cells
from intent.dossier.tables import Cell
from intent.dossier.unreadable import Unreadable
from intent.dossier.words import Known
from intent.language.message import say
from intent.names import INTENT
from intent.vocabulary.grammar import Word
from intent.vocabulary.phrases import normal
from intent.vocabulary.terms import Characteristic, Vocabulary

_OWN = frozenset({"expected-of", "expected-characteristic", "expected-value", "given"})
"""The sorts of column that are read here."""


@dataclass(frozen=True, slots=True)
class _Expected:
    """What something is expected of, and what can be said of it."""

    node: URIRef | None = None
    bearers: frozenset[str] = frozenset()
    """None of them: whatever bears it."""
    kinds: tuple[str, ...] = ()


def inscribe_expectations(desk: Desk, known: Known, rows: Sequence[TableRow]) -> None:
    """The expectations of a work, each with its one value and the answers that it takes as given."""
    for number, row in enumerate(rows, start=1):
        local = f"expectation-{number}"
        node = inscribe_numbered(desk, row, local, INTENT.Expectation, number)
        inscribe_cells(desk, known, node, (local,), row.cells, elsewhere=_OWN)
        subject, given = row.cell("expected-of"), row.cell("given")
        expected = _expected_of(desk, subject) if subject else _Expected()
        if expected.node is not None:
            desk.draft.add(node, INTENT.expectedOf, expected.node)
        _inscribe_value(desk, known, row, local, expected)
        if given is not None:
            _inscribe_given(desk, local, given)


def _expected_of(desk: Desk, cell: Cell) -> _Expected:
    """A part, a group, the work or the venue; nothing, with a finding, where it is none of them."""
    for word, node, bearer in (
        (Word.THE_WORK, INTENT.work, "work"),
        (Word.THE_VENUE, INTENT.venue, "venue"),
    ):
        if any(normal(cell.text) in one.labels(word) for one in desk.draft.vocabulary.grammars):
            return _Expected(node, frozenset({bearer}))
    try:
        entry = desk.register.find(cell.text, IdentifierKind.PART, IdentifierKind.GROUP)
    except Unreadable as error:
        desk.draft.wrong(error.slug, error.message, cell.span)
        return _Expected()
    kinds = dict.fromkeys(part.kind for part in desk.register.parts_of(cell.text) if part.kind)
    return _Expected(URIRef(entry.iri), frozenset({"device", "place"}), tuple(kinds))


def _inscribe_value(desk: Desk, known: Known, row: TableRow, local: str, expected: _Expected) -> None:
    named, value = row.cell("expected-characteristic"), row.cell("expected-value")
    if named is None or value is None:
        return
    try:
        characteristic = _characteristic(desk.draft.vocabulary, named.text, expected)
    except Unreadable as error:
        desk.draft.wrong(error.slug, error.message, named.span)
        return
    inscribe_cells(
        desk,
        known=known,
        node=desk.draft.node(local),
        local=(local,),
        cells=[(characteristic, value)],
        kinds=expected.kinds,
    )


def _characteristic(vocabulary: Vocabulary, name: str, expected: _Expected) -> Characteristic:
    """The characteristic of a name, among those of its bearer. Raises `Unreadable`."""
    found = vocabulary.find_characteristic(name, expected.bearers)
    if found is not None:
        return found
    elsewhere = vocabulary.find_characteristic(name)
    if elsewhere is not None:
        message = say(
            "`{name}` is said of a {bearers}, not of this; {named}",
            name=name,
            bearers=bearers_of(elsewhere),
            named=subject_to_name(elsewhere, vocabulary),
        )
        raise Unreadable("wrong-bearer", message)
    every = vocabulary.characteristics.values()
    borne = [one for one in every if not expected.bearers or one.bearers & expected.bearers]
    near = nearest(name, vocabulary.spelled(one.iri for one in borne), [one.label for one in borne])
    raise Unreadable(
        "unknown-characteristic", offered(say("`{name}` is not a known characteristic", name=name), near)
    )


def _inscribe_given(desk: Desk, local: str, cell: Cell) -> None:
    draft = desk.draft
    try:
        answers = read_given(desk, cell.text)
    except Unreadable as error:
        draft.wrong(error.slug, error.message, cell.span)
        return
    for number, answer in enumerate(answers, start=1):
        node = draft.node(local, f"given-{number}", span=cell.span)
        draft.add(draft.node(local), INTENT.takesAsGiven, node)
        draft.add(node, RDF.type, INTENT.GivenAnswer)
        draft.add(node, INTENT.order, Literal(number))
        draft.add(node, INTENT.answer, Literal(answer.holds))
        draft.say(node, INTENT.fact, answer.fact)
        if answer.person is not None:
            draft.add(node, INTENT.person, URIRef(desk.register.find(answer.person).iri))
        for line in answer.to:
            draft.add(node, INTENT.consentsTo, URIRef(desk.register.find(line).iri))
