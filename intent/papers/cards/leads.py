"""The cables at a part: from where and to where, of what signal, how long, and with which connector."""

from __future__ import annotations

from collections.abc import Iterator

from intent.effects.scene import Scene
from intent.language.message import Words, joined, say
from intent.model.assertions import Statements
from intent.model.phrasing import expression_words
from intent.names import term_iri
from intent.papers.cards.card import CardRow
from intent.papers.cards.signals import part_named
from intent.papers.statements_told import characterised, in_order
from intent.vocabulary.named_term import local_name

_PLAIN = {term_iri(name) for name in ("signal", "connector", "length")}
"""What says by itself what it is: `composite, BNC, 3 m`."""
_SOCKETS = ("input-connector", "output-connector")


def leads_rows(scene: Scene, part: str) -> Iterator[CardRow]:
    """A line for the cables from and to each other part, those that are alike together; and the part's own sockets."""
    lines = [*_arriving(scene, part), *_leaving(scene, part)]
    sockets = (
        characterised(scene.called(name), scene.text(part, name))
        for name in _SOCKETS
        if scene.states(part, name)
    )
    told = joined(sockets, ", ")
    if lines or told:
        yield CardRow(say("cables"), (*lines, *([told] if told else [])))


def _arriving(scene: Scene, part: str) -> Iterator[Words]:
    ends = [(one.start, one.statements) for one in scene.connections if one.end == part]
    for lead, others in _alike(scene, ends):
        yield _told(say("from {parts}", parts=others), lead)


def _leaving(scene: Scene, part: str) -> Iterator[Words]:
    ends = [(one.end, one.statements) for one in scene.connections if one.start == part]
    for lead, others in _alike(scene, ends):
        yield _told(say("to {parts}", parts=others), lead)


def _told(way: Words, lead: Words) -> Words:
    return say("{subject}: {text}", subject=way, text=lead) if lead else way


def _alike(scene: Scene, ends: list[tuple[str, Statements]]) -> Iterator[tuple[Words, tuple[Words, ...]]]:
    """Each sort of cable in words, and the parts at its other end."""
    sorts: list[tuple[Statements, list[Words]]] = []
    for other, statements in ends:
        if other not in scene.state.present:
            continue
        found = next((parts for sort, parts in sorts if sort == statements), None)
        if found is None:
            sorts.append((statements, [part_named(scene, other)]))
        else:
            found.append(part_named(scene, other))
    for statements, parts in sorts:
        yield _lead_words(scene, statements), tuple(parts)


def _lead_words(scene: Scene, statements: Statements) -> Words:
    vocabulary = scene.vocabulary
    told: list[Words] = []
    for iri in in_order(vocabulary, statements):
        value = expression_words(statements[iri], vocabulary)
        called = scene.called(local_name(iri)) if iri in vocabulary.characteristics else ""
        told.append(value if iri in _PLAIN else characterised(called, value))
    return joined(told, ", ")
