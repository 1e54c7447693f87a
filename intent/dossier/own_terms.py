"""A collection's own terms, from a Markdown table to Turtle that the vocabulary reads like its own."""

from __future__ import annotations

import uuid
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal, InvalidOperation

from rdflib import RDF, SKOS, XSD, Graph, Literal, URIRef

from intent.diagnostics import Diagnostic, Span, nearest, offered, with_known
from intent.dossier.bearers import BEARERS
from intent.dossier.blocks import read_blocks
from intent.dossier.draft import Draft
from intent.dossier.fields import Desk
from intent.dossier.register import Register
from intent.dossier.rows import TableRow, read_fields, read_rows
from intent.dossier.sections import head_form, place_sections
from intent.language.message import Message, Words, say
from intent.names import INTENT, QUDT, TERM, YES, local_iri
from intent.vocabulary.named_term import local_name
from intent.vocabulary.phrases import normal
from intent.vocabulary.terms import Characteristic, Vocabulary

SPACES = ("concept", "quantity", "ratio", "angle", "position", "count", "yes-no", "text", "raster", "date")
_NAMESPACE = uuid.uuid5(uuid.NAMESPACE_URL, f"{TERM}own")


@dataclass(frozen=True, slots=True)
class OwnTerms:
    """A file of own terms being read."""

    draft: Draft
    vocabulary: Vocabulary

    def iri(self, label: str) -> URIRef:
        return local_iri(self.draft.base, normal(label))


def read_terms(text: str, file: str, vocabulary: Vocabulary) -> tuple[bytes, tuple[Diagnostic, ...]]:
    """Turtle of the terms in a file with tables of Characteristics and Values, and what is wrong with them."""
    root, findings = read_blocks(text, file)
    draft = Draft(base="", vocabulary=vocabulary, file=file, findings=findings)
    if root is None:
        return b"", draft.reading().findings
    draft.base = uuid.uuid5(_NAMESPACE, root.title).urn
    own, desk = OwnTerms(draft, vocabulary), Desk(draft, Register())
    read_fields(desk, head_form(vocabulary, "terms-head"), root.fields)
    schemes: dict[str, URIRef] = {}
    values: list[tuple[TableRow, URIRef, URIRef]] = []
    placed = sorted(place_sections(draft, root, "terms"), key=lambda one: one.key)
    for one in placed:
        for row in read_rows(desk, one.form, one.section.tables):
            if one.key == "own-characteristics-section":
                _characteristic(own, row, schemes)
            else:
                values.extend(_value(own, row, schemes))
    for row, node, scheme in values:
        _broader(own, row, node, scheme)
    reading = draft.reading()
    return _turtle(reading.graph), reading.findings


def _turtle(graph: Graph) -> bytes:
    return "".join(sorted(f"{s.n3()} {p.n3()} {o.n3()} .\n" for s, p, o in graph)).encode()


def _texts(row: TableRow) -> Mapping[str, str]:
    return {term.iri.rsplit("/field-own-", 1)[-1]: cell.text for term, cell in row.cells}


def _place(row: TableRow, key: str) -> Span:
    """Where the column of this term has its cell, or else where the row begins."""
    cell = row.named(f"own-{key}")
    return cell.span if cell else row.span


def _labels(own: OwnTerms, node: URIRef, row: TableRow, label: str) -> None:
    texts = _texts(row)
    own.draft.add(node, SKOS.prefLabel, Literal(label, lang="en"))
    for key, language in (("german", "de"), ("french", "fr")):
        if key in texts:
            own.draft.add(node, SKOS.prefLabel, Literal(texts[key], lang=language))
    if "definition" in texts:
        own.draft.add(node, SKOS.definition, Literal(texts["definition"], lang="en"))


def _characteristic(own: OwnTerms, row: TableRow, schemes: dict[str, URIRef]) -> None:
    texts, draft = _texts(row), own.draft
    label = texts.get("characteristic")
    if label is None:
        draft.wrong("no-identifier", say("this row names no characteristic"), row.span)
        return
    if own.vocabulary.find_characteristic(label) is not None:
        message = say(
            "`{name}` is a characteristic already; give yours another name, or use that one", name=label
        )
        draft.wrong("repeated-identifier", message, _place(row, "characteristic"))
        return
    node = own.iri(label)
    space = texts.get("space", "text")
    draft.add(node, RDF.type, INTENT.Characteristic)
    draft.add(node, RDF.type, SKOS.Concept)
    draft.add(node, SKOS.inScheme, TERM.characteristics)
    _labels(own, node, row, label)
    for bearer in _words(texts.get("bearer", "device")):
        _known(own, bearer, BEARERS, say("bearer"), _place(row, "bearer"))
        draft.add(node, INTENT.bearer, Literal(bearer))
    _known(own, space, SPACES, say("sort of values"), _place(row, "space"))
    draft.add(node, INTENT.space, Literal(space))
    if space == "concept":
        schemes[label] = own.iri(f"{label} values")
        draft.add(node, INTENT.valuesFrom, schemes[label])
    elif space == "yes-no":
        draft.add(node, INTENT.valuesFrom, TERM["yes-no"])
    if normal(texts.get("unasked", "")) in own.vocabulary.concepts[YES].names:
        draft.add(node, INTENT.countsUnasked, Literal(True))
    _quantity(own, node, row, space)
    _kinds(own, node, texts, _place(row, "applies"))


def _quantity(own: OwnTerms, node: URIRef, row: TableRow, space: str) -> None:
    """The quantity kind is that of a unit, or of a characteristic that ships: `m`, `Length`, `height`."""
    texts, kind = _texts(row), None
    if space in {"quantity", "angle", "position"}:
        written = texts.get("quantity", "deg" if space == "angle" else "m" if space == "position" else "")
        kind = _quantity_kind(own.vocabulary, written)
        if kind is None:
            message = say(
                "`{text}` names no kind of quantity; write a unit such as `mm`, or a known characteristic",
                text=written,
            )
            own.draft.wrong("bad-quantity", message, _place(row, "quantity"))
            return
        own.draft.add(node, QUDT.hasQuantityKind, URIRef(kind))
    if "tolerance" in texts:
        _tolerance(own, node, texts["tolerance"], kind, _place(row, "tolerance"))


def _quantity_kind(vocabulary: Vocabulary, written: str) -> str | None:
    known = vocabulary.find_characteristic(written)
    if known is not None and known.quantity_kind:
        return known.quantity_kind
    for unit in vocabulary.units.values():
        if written in unit.names or normal(written) in unit.names:
            return min(unit.quantity_kinds)
        for kind in unit.quantity_kinds:
            if normal(local_name(kind)) == normal(written):
                return kind
    return None


def _tolerance(own: OwnTerms, node: URIRef, written: str, kind: str | None, span: Span) -> None:
    number, _, unit_name = written.strip().partition(" ")
    try:
        exact = Literal(Decimal(number), datatype=XSD.decimal)
    except InvalidOperation:
        message = say("`{text}` is not a tolerance; write `5 mm` or `2 %`", text=written)
        own.draft.wrong("bad-number", message, span)
        return
    if unit_name.strip() == "%":
        own.draft.add(node, INTENT.tolerancePercent, exact)
        return
    unit = own.vocabulary.find_unit(unit_name.strip(), kind) if unit_name else None
    if kind is not None and unit is None:
        message = say("`{text}` has no unit that fits its quantity", text=written)
        own.draft.wrong("bad-unit", message, span)
        return
    own.draft.add(node, INTENT.tolerance, exact)
    if unit is not None:
        own.draft.add(node, INTENT.toleranceUnit, URIRef(unit.iri))


def _value(
    own: OwnTerms, row: TableRow, schemes: Mapping[str, URIRef]
) -> Iterator[tuple[TableRow, URIRef, URIRef]]:
    """Enter the value of a row; it comes back with its scheme, since a later row may be what it is narrower than."""
    texts, draft = _texts(row), own.draft
    label, of = texts.get("value"), texts.get("value-of", "")
    added = next((iri for name, iri in schemes.items() if normal(name) == normal(of)), None)
    scheme = added or _scheme_of(own.vocabulary.find_characteristic(of))
    if label is None:
        draft.wrong("no-identifier", say("this row names no value"), row.span)
        return
    if scheme is None:
        near = nearest(of, [*schemes, *own.vocabulary.spelled(own.vocabulary.characteristics)])
        message = say("`{name}` is not a characteristic with named values", name=of)
        draft.wrong("unknown-characteristic", offered(message, near), _place(row, "value-of"))
        return
    node = own.iri(f"{of} {label}")
    draft.add(node, RDF.type, SKOS.Concept)
    draft.add(node, SKOS.inScheme, scheme)
    _labels(own, node, row, label)
    _kinds(own, node, texts, _place(row, "applies"))
    yield row, node, scheme


def _broader(own: OwnTerms, row: TableRow, node: URIRef, scheme: URIRef) -> None:
    """What a value is narrower than: a value of the vocabulary's, or of this file's, that there is."""
    texts, draft = _texts(row), own.draft
    name = texts.get("broader")
    if name is None:
        return
    shipped = own.vocabulary.find_value([str(scheme)], name)
    wider = URIRef(shipped.iri) if shipped else own.iri(f"{texts.get('value-of', '')} {name}")
    if shipped is None and (wider, SKOS.inScheme, scheme) not in draft.triples:
        added = [str(label) for one, key, label in draft.triples if key == SKOS.prefLabel and one != node]
        spelled = own.vocabulary.spelled(one.iri for one in own.vocabulary.in_scheme(str(scheme)))
        message = say("`{word}` is not a {what}", word=name, what=say("value"))
        draft.wrong(
            "unknown-value", offered(message, nearest(name, [*added, *spelled])), _place(row, "broader")
        )
        return
    draft.add(node, SKOS.broader, wider)


def _scheme_of(characteristic: Characteristic | None) -> URIRef | None:
    if characteristic is None or not characteristic.schemes:
        return None
    return URIRef(min(characteristic.schemes))


def _kinds(own: OwnTerms, node: URIRef, texts: Mapping[str, str], span: Span) -> None:
    for name in _words(texts.get("applies", "")):
        kind = own.vocabulary.find_value([str(TERM.kinds)], name)
        if kind is None:
            known = [found.label for found in own.vocabulary.in_scheme(str(TERM.kinds))]
            message = say("`{name}` is not a kind of part", name=name)
            near = nearest(name, known)
            told = offered(message, near) if near else with_known(message, known)
            own.draft.wrong("unknown-kind", told, span)
        else:
            own.draft.add(node, INTENT.appliesTo, URIRef(kind.iri))


def _known(own: OwnTerms, word: str, known: tuple[str, ...], what: Message, span: Span) -> None:
    if word not in known:
        own.draft.wrong("unknown-value", told_word(word, known, what), span)


def told_word(word: str, known: tuple[str, ...], what: Message) -> Words:
    """That a word is none of those that are known, with the nearest of them, or all."""
    message, near = say("`{word}` is not a {what}", word=word, what=what), nearest(word, known)
    return offered(message, near) if near else with_known(message, known)


def _words(text: str) -> Iterator[str]:
    yield from (word.strip() for word in text.replace(" and ", ",").split(",") if word.strip())
