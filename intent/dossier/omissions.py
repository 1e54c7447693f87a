"""Parts that are left out of an installation, and parts of which two departures say different things."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence

from rdflib import DCTERMS, RDF, Literal, URIRef

from intent.diagnostics import Span, nearest, offered
from intent.dossier.blocks import Field, Prose
from intent.dossier.fields import Desk
from intent.dossier.register import IdentifierKind, unknown_name
from intent.dossier.rows import TableRow
from intent.dossier.sections import PlacedSection
from intent.language.message import Message, say
from intent.names import INTENT, local_iri
from intent.vocabulary.phrases import normal

_BULLET = re.compile(r"^\s*[-*+]\s+(\S.*)$", re.MULTILINE)
_DEPARTURES = (
    ("substitutions-section", "substituted-part", "substituted"),
    ("changes-section", "changed-part", "changed"),
    ("additions-section", "part", "added"),
)
_DEPARTED = {
    "substituted": say("substituted"),
    "changed": say("changed"),
    "added": say("added"),
    "omitted": say("omitted"),
}
_TOGETHER = {frozenset({"substituted", "changed"})}
"""What may be said of one part: another device, which is placed otherwise too."""


def read_omissions(desk: Desk, one: PlacedSection) -> None:
    """A list of parts or groups, each with the reason; other prose is kept."""
    prose = []
    for block in one.section.blocks:
        if isinstance(block, Field):
            _inscribe_omission(desk, block)
            continue
        text = block.text if isinstance(block, Prose) else block.raw
        names = [match[1].strip() for match in _BULLET.finditer(text)]
        if names and all(desk.register.parts_of(name) for name in names):
            for name in names:
                _inscribe_omission(desk, Field(name=name, value="", span=block.span, value_span=block.span))
        else:
            prose.append(text)
    desk.draft.say(desk.draft.node(one.key), INTENT.note, "\n\n".join(prose))


def _inscribe_omission(desk: Desk, field: Field) -> None:
    draft = desk.draft
    parts = desk.register.parts_of(field.name)
    if not parts:
        known = [
            entry.identifier for entry in desk.register.of_sort(IdentifierKind.PART, IdentifierKind.GROUP)
        ]
        missing = unknown_name(field.name, IdentifierKind.PART, IdentifierKind.GROUP)
        draft.wrong("unknown-name", offered(missing, nearest(field.name, known)), field.span)
    for part in parts:
        iri = str(local_iri(draft.base, "omission", part.identifier))
        if iri in draft.spans:
            message = _told_twice(part.identifier, _both("omitted", "omitted"), draft.spans[iri])
            draft.wrong("repeated-part", message, field.span)
            continue
        node = draft.node("omission", part.identifier, span=field.span)
        draft.add(node, RDF.type, INTENT.Omission)
        draft.add(node, DCTERMS.isPartOf, URIRef(draft.base))
        draft.add(node, INTENT.part, URIRef(part.iri))
        draft.say(node, INTENT.reason, field.value)
        draft.add(node, INTENT.order, Literal(draft.next_order("omission")))


def find_repeated(desk: Desk, rows: Mapping[str, Sequence[TableRow]]) -> None:
    """Find each departure of a part that an earlier one already says something else of."""
    earlier: dict[str, list[tuple[str, Span]]] = {}
    for name, what, span in sorted(_departures(desk, rows), key=lambda found: found[2]):
        for before, place in earlier.setdefault(normal(name), []):
            if frozenset({what, before}) not in _TOGETHER:
                message = _told_twice(name, _both(before, what), place)
                desk.draft.wrong("repeated-part", message, span)
                break
        earlier[normal(name)].append((what, span))


def _both(before: str, what: str) -> Message:
    if what == before:
        return say("{departed} twice", departed=_DEPARTED[what])
    return say("both {before} and {after}", before=_DEPARTED[before], after=_DEPARTED[what])


def _told_twice(name: str, how: Message, first: Span) -> Message:
    return say(
        "`{name}` is {how}, first at line {line}; keep one of the two", name=name, how=how, line=first.line
    )


def _departures(desk: Desk, rows: Mapping[str, Sequence[TableRow]]) -> Iterator[tuple[str, str, Span]]:
    """Every part that departs, how, and where it is said."""
    for section, column, what in _DEPARTURES:
        for row in rows.get(section, ()):
            cell = row.named(column)
            entry = desk.register.get(cell.text) if cell else None
            is_taken = what == "added" and entry is not None and cell is not None and entry.span != cell.span
            if cell is not None and not is_taken:
                yield cell.text, what, cell.span
    for part in desk.register.of_sort(IdentifierKind.PART):
        span = desk.draft.spans.get(str(local_iri(desk.draft.base, "omission", part.identifier)))
        if span is not None:
            yield part.identifier, "omitted", span
