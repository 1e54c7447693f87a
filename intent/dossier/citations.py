"""Where a heading's words are to be found: the sources named, with times, and the words themselves."""

from __future__ import annotations

import re
from collections.abc import Sequence

from rdflib import DCTERMS, RDF, Literal, URIRef

from intent.dossier.draft import Draft
from intent.dossier.fields import Desk
from intent.dossier.media_time import read_clip
from intent.dossier.register import IdentifierKind
from intent.dossier.tables import Cell
from intent.dossier.unreadable import Unreadable
from intent.language.message import say
from intent.names import INTENT, MEDIA_FRAGMENTS, OA
from intent.vocabulary.grammar import Word
from intent.vocabulary.terms import Vocabulary

_TIME = r"(?P<at>[\d:.,]+)"
GAP = re.compile(r"\[\s*(?:…|\.\s*\.\s*\.)\s*\]|\(\s*(?:…|\.\.\.)\s*\)|…|\.{3,}")
"""What stands in a quotation for words left out."""


def read_citations(desk: Desk, identifier: str, cells: Sequence[Cell], words: str) -> None:
    """The sources that a heading cites, each with its time and, where it can only be there, the passage."""
    several = re.compile(rf"\s*(?:,(?!\d)|;|{desk.joints})\s*")
    written = [(part, cell) for cell in cells for part in several.split(cell.text) if part]
    for number, (text, cell) in enumerate(written, start=1):
        match = _citation(desk.draft.vocabulary).match(text)
        if match is None or not _is_time(match["at"]):
            message = say("`{text}` is no citation; write `S1`, or `S1 at 00:14:05`", text=text)
            desk.draft.wrong("bad-citation", message, cell.span)
            continue
        try:
            source = desk.register.find(match["source"], IdentifierKind.SOURCE)
        except Unreadable as error:
            desk.draft.wrong(error.slug, error.message, cell.span)
            continue
        node = desk.draft.node(identifier, f"citation-{number}", span=cell.span)
        _inscribe(desk.draft, identifier, node, URIRef(source.iri), number)
        if match["at"] is not None:
            _select_time(desk.draft, node, match["at"])
        if len(written) == 1 and words and len(passages_quoted(words)) == 1 and not GAP.search(words):
            _select_words(desk.draft, node, words)


def _citation(vocabulary: Vocabulary) -> re.Pattern[str]:
    """A source, and the time in it: `S1`, `S1 at 00:14:05`."""
    at = "|".join(re.escape(label) for one in vocabulary.grammars for label in one.labels(Word.AT))
    return re.compile(rf"(?P<source>\S+?)(?:\s+(?:{at})\s+{_TIME})?$")


def passages_quoted(words: str) -> tuple[str, ...]:
    """The paragraphs of what is quoted, each of which may come from another place."""
    return tuple(filter(None, (paragraph.strip() for paragraph in re.split(r"\n[ \t]*\n", words))))


def _is_time(at: str | None) -> bool:
    try:
        return at is None or bool(read_clip(at))
    except ValueError:
        return False


def _inscribe(draft: Draft, identifier: str, node: URIRef, source: URIRef, number: int) -> None:
    draft.add(draft.node(identifier), INTENT.cites, node)
    draft.add(node, RDF.type, OA.SpecificResource)
    draft.add(node, OA.hasSource, source)
    draft.add(node, INTENT.order, Literal(number))
    annotation = draft.node(identifier, f"annotation-{number}")
    draft.add(annotation, RDF.type, OA.Annotation)
    draft.add(annotation, OA.hasBody, draft.node(identifier))
    draft.add(annotation, OA.hasTarget, node)


def _select_time(draft: Draft, node: URIRef, at: str) -> None:
    selector = URIRef(f"{node}.time")
    draft.add(node, OA.hasSelector, selector)
    draft.add(selector, RDF.type, OA.FragmentSelector)
    draft.add(selector, DCTERMS.conformsTo, MEDIA_FRAGMENTS)
    draft.add(selector, RDF.value, Literal(f"t={at}"))


def _select_words(draft: Draft, node: URIRef, words: str) -> None:
    """The passage by its words, for those who read the record with other programs; the heading holds them too."""
    selector = URIRef(f"{node}.words")
    draft.add(node, OA.hasSelector, selector)
    draft.add(selector, RDF.type, OA.TextQuoteSelector)
    draft.add(selector, OA.exact, Literal(" ".join(words.split())))
