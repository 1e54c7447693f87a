"""The vocabulary for people: which words there are, what each means, and how its values are written."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from intent.diagnostics import UnknownName, nearest, offered
from intent.language.figures import Written, decimal
from intent.language.message import Joint, Words, joined, listed, named, opened, say
from intent.names import TERM
from intent.papers.document import Block, Document, PaperSection, Paragraph
from intent.papers.form_glossary import LISTS, form_sections
from intent.vocabulary.definition import Definition
from intent.vocabulary.meaning_search import is_called, labels_in, terms_about
from intent.vocabulary.phrases import normal
from intent.vocabulary.terms import Characteristic, Concept, Vocabulary

_BEARERS = {
    "device": say("Said of the device"),
    "place": say("Said of the place"),
    "work": say("Said of the work"),
    "venue": say("Said of the venue"),
    "material": say("Said of the material"),
    "connection": say("Said of the connection"),
    "box": say("Said of the box"),
}
_OF = {
    "device": say("the device"),
    "place": say("the place"),
    "work": say("the work"),
    "venue": say("the venue"),
    "material": say("the material"),
    "connection": say("the connection"),
    "box": say("the box"),
}
_WRITTEN = {
    "ratio": say("a ratio: `4:3`, `1.85`"),
    "position": say("a position: `x, y, z m`"),
    "count": say("a whole number"),
    "text": say("words"),
    "raster": say("columns × rows: `720×576`"),
    "date": say("a date: `1993`, `1999-05-14`, `1993/1995`, `199X`, `1993~`"),
}


def glossary_paper(vocabulary: Vocabulary) -> Document:
    """Every kind and characteristic by name, under what it is said of, and the words that stand in other columns."""
    sections = [_listing("kinds", say("Kinds of part"), vocabulary.in_scheme(str(TERM.kinds)))]
    for bearer, title in _BEARERS.items():
        found = [one for one in vocabulary.characteristics.values() if bearer in one.bearers]
        sections.append(_listing(f"of-{bearer}", title, sorted(found, key=lambda one: one.iri)))
    for scheme, title in LISTS.items():
        sections.append(_listing(scheme, title, vocabulary.in_scheme(str(TERM[scheme]))))
    return Document(title=say("The words of the vocabulary"), sections=tuple(sections))


def _listing(anchor: str, title: Words, terms: Sequence[Concept | Characteristic]) -> PaperSection:
    return PaperSection(title=title, anchor=anchor, blocks=(Paragraph(joined(map(named, terms), ", ")),))


def entry_paper(vocabulary: Vocabulary, name: str, language: str = "en") -> Document:
    """All that bears a name, or where nothing does, what is about it, in a language and in English.

    Raises `UnknownName` where there is neither.
    """
    called: list[Concept | Characteristic]
    called = [*vocabulary.by_name.get(normal(name), ()), *_concepts(vocabulary, normal(name))]
    spoken = [one for one in called if is_called(one, name, vocabulary, language)]
    entries = [_told(vocabulary, one) for one in spoken or called]
    entries += form_sections(vocabulary, name, language)
    if not entries:
        return _about(vocabulary, name, language)
    numbered = (replace(one, anchor=f"entry-{number}") for number, one in enumerate(entries, start=1))
    return Document(title=name, sections=tuple(numbered))


def _about(vocabulary: Vocabulary, name: str, language: str) -> Document:
    """The terms that a word is about, each with what it means."""
    found = terms_about(vocabulary, name, language)
    if not found:
        message = say("`{name}` is not in the vocabulary", name=name)
        known, first = (labels_in(vocabulary, one) for one in ("en", language))
        raise UnknownName(offered(message, nearest(name, known, first)))
    lines = (say("{term}: {meaning}", term=one, meaning=_meaning(one)) for one in found)
    section = PaperSection(
        title=say("No term is called so; these are about it"),
        anchor="about",
        blocks=tuple(map(Paragraph, lines)),
    )
    return Document(title=name, sections=(section,))


def _meaning(term: Concept | Characteristic) -> Words:
    return named(Definition(term)) if isinstance(term, Concept) else term.definition


def _told(vocabulary: Vocabulary, term: Concept | Characteristic) -> PaperSection:
    if isinstance(term, Concept):
        return _told_concept(vocabulary, term)
    bearers = listed((_OF[bearer] for bearer in sorted(term.bearers)), Joint.OR)
    title = say("{characteristic}, said of {bearers}", characteristic=term, bearers=bearers)
    return _entry(title, _said_of(vocabulary, term), term)


def _said_of(vocabulary: Vocabulary, found: Characteristic) -> Iterator[Words]:
    yield found.definition
    yield say("Written as {form}.", form=_form(vocabulary, found))
    if found.tolerance_written and found.is_measured:
        yield say("Tolerance where none is stated: {tolerance}.", tolerance=Written(found.tolerance_written))
    if found.applies_to:
        kinds = tuple(vocabulary.concepts[kind] for kind in sorted(found.applies_to))
        yield say("Usual of: {kinds}.", kinds=joined(map(named, kinds), ", "))
    if found.unasked_of >= found.bearers:
        yield say("It counts without anybody asking.")
    elif found.counts_unasked:
        bearers = listed((_OF[bearer] for bearer in sorted(found.unasked_of)), Joint.OR)
        yield say(
            "It counts without anybody asking where it is said of {bearers}, else only where asked.",
            bearers=bearers,
        )
    else:
        yield say("It counts only where asked.")


def _form(vocabulary: Vocabulary, found: Characteristic) -> Words:
    values = tuple(vocabulary.in_scheme(*found.schemes))
    if found.space in {"concept", "yes-no"}:
        return say("one of: {values}", values=joined(map(named, values), ", "))
    if found.space in _WRITTEN:
        return _WRITTEN[found.space]
    fitting = (unit for unit in vocabulary.units.values() if found.quantity_kind in unit.quantity_kinds)
    symbols = ", ".join(sorted(unit.symbol for unit in fitting if unit.symbol))
    if values:
        return say(
            "a number with a unit ({units}), or {values}", units=symbols, values=listed(values, Joint.OR)
        )
    return say("a number with a unit ({units})", units=symbols)


def _concepts(vocabulary: Vocabulary, wanted: str) -> tuple[Concept, ...]:
    return tuple(concept for concept in vocabulary.concepts.values() if wanted in concept.names)


def _told_concept(vocabulary: Vocabulary, concept: Concept) -> PaperSection:
    used = tuple(one for one in vocabulary.characteristics.values() if one.schemes & concept.schemes)
    title: Words = named(concept)
    if used:
        title = say("{value}, a value of {used}", value=concept, used=listed(used, Joint.OR))
    return _entry(title, _said_of_concept(vocabulary, concept), concept)


def _said_of_concept(vocabulary: Vocabulary, concept: Concept) -> Iterator[Words]:
    if concept.definition:
        yield named(Definition(concept))
    if concept.magnitude is not None:
        yield say("It stands for {number}.", number=Written(decimal(concept.magnitude)))
    if concept.broader:
        wider = (named(vocabulary.concepts[iri]) for iri in concept.broader)
        yield say("Narrower than: {terms}.", terms=joined(wider, ", "))
    narrower = vocabulary.narrower.get(concept.iri, frozenset()) - {concept.iri}
    if narrower:
        within = (named(vocabulary.concepts[iri]) for iri in sorted(narrower))
        yield say("It takes in: {terms}.", terms=joined(within, ", "))


def _entry(title: Words, told: Iterator[Words], term: Concept | Characteristic) -> PaperSection:
    others = "; ".join(f"{language}: {label}" for language, label in sorted(term.labels.items()))
    blocks: tuple[Block, ...] = tuple(Paragraph(text) for text in (*told, others) if text)
    return PaperSection(title=opened(title), blocks=blocks)
