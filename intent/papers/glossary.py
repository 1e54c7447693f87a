"""The vocabulary for people: which words there are, what each means, and how its values are written."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Mapping

from intent.diagnostics import nearest, offered
from intent.language.locale import ENGLISH
from intent.language.message import Words, listed, say
from intent.model.phrasing import decimal
from intent.names import TERM
from intent.vocabulary.phrases import normal
from intent.vocabulary.terms import Characteristic, Concept, Vocabulary

_BEARERS = ("device", "place", "work", "venue", "material", "connection", "box")
_WRITTEN = {
    "ratio": "a ratio: `4:3`, `1.85`",
    "position": "a position: `x, y, z m`",
    "count": "a whole number",
    "text": "words",
    "raster": "columns × rows: `720×576`",
    "date": "a date: `1993`, `1999-05-14`, `1993/1995`, `199X`, `1993~`",
}


class UnknownTerm(Exception):
    """A word that the vocabulary does not have; offers what is near."""

    def __init__(self, message: Words) -> None:
        super().__init__(message)
        self.message = message

    def __str__(self) -> str:
        return ENGLISH.say(self.message)


def overview(vocabulary: Vocabulary) -> str:
    """Every kind and characteristic by name, under what it is said of."""
    blocks = [_listing("Kinds of part", [kind.label for kind in vocabulary.in_scheme(str(TERM.kinds))])]
    for bearer in _BEARERS:
        labels = [found.label for found in vocabulary.characteristics.values() if bearer in found.bearers]
        blocks.append(_listing(f"Said of the {bearer}", sorted(labels)))
    return "\n\n".join(blocks) + "\n"


def _listing(title: str, labels: list[str]) -> str:
    return f"{title}\n" + textwrap.fill(", ".join(labels), 80, initial_indent="  ", subsequent_indent="  ")


def entry(vocabulary: Vocabulary, name: str) -> str:
    """All that bears a name: characteristics, and values. Raises `UnknownTerm`."""
    wanted = normal(name)
    found = [*_characteristics(vocabulary, wanted), *_concepts(vocabulary, wanted)]
    if not found:
        known = [
            *vocabulary.by_name,
            *(label for concept in vocabulary.concepts.values() for label in concept.names),
        ]
        message = say("`{name}` is not in the vocabulary", name=name)
        raise UnknownTerm(offered(message, nearest(name, known)))
    return "\n\n".join(found) + "\n"


def _characteristics(vocabulary: Vocabulary, wanted: str) -> Iterator[str]:
    for found in vocabulary.by_name.get(wanted, ()):
        lines = [f"{found.label}, said of the {listed(sorted(found.bearers), 'or')}", found.definition]
        lines += [f"Written as {_values(vocabulary, found)}."]
        if found.tolerance_written and found.is_measured:
            lines.append(f"Tolerance where none is stated: {found.tolerance_written}.")
        if found.applies_to:
            kinds = [vocabulary.concepts[kind].label for kind in sorted(found.applies_to)]
            lines.append(f"Usual of: {', '.join(kinds)}.")
        lines.append(
            "It counts without anybody asking." if found.counts_unasked else "It counts only where asked."
        )
        yield _paragraphs(lines, found.labels)


def _values(vocabulary: Vocabulary, characteristic: Characteristic) -> str:
    named = [concept.label for concept in vocabulary.in_scheme(*characteristic.schemes)]
    if characteristic.space in {"concept", "yes-no"}:
        return f"one of: {', '.join(named)}"
    if characteristic.space in _WRITTEN:
        return _WRITTEN[characteristic.space]
    units = [
        unit for unit in vocabulary.units.values() if characteristic.quantity_kind in unit.quantity_kinds
    ]
    symbols = ", ".join(sorted(unit.symbol for unit in units if unit.symbol))
    return f"a number with a unit ({symbols})" + (f", or {listed(named, 'or')}" if named else "")


def _concepts(vocabulary: Vocabulary, wanted: str) -> Iterator[str]:
    for concept in vocabulary.concepts.values():
        if wanted in concept.names:
            yield _paragraphs(list(_concept(vocabulary, concept)), concept.labels)


def _concept(vocabulary: Vocabulary, concept: Concept) -> Iterator[str]:
    used = [found.label for found in vocabulary.characteristics.values() if found.schemes & concept.schemes]
    yield f"{concept.label}, a value of {listed(used, 'or')}" if used else concept.label
    yield concept.definition
    if concept.magnitude is not None:
        yield f"It stands for {decimal(concept.magnitude)}."
    if concept.broader:
        yield f"Narrower than: {', '.join(vocabulary.concepts[wider].label for wider in concept.broader)}."
    narrower = vocabulary.narrower.get(concept.iri, frozenset()) - {concept.iri}
    if narrower:
        yield f"It takes in: {', '.join(sorted(vocabulary.concepts[found].label for found in narrower))}."


def _paragraphs(lines: list[str], labels: Mapping[str, str]) -> str:
    head, *rest = lines
    translated = [f"{language}: {label}" for language, label in sorted(labels.items()) if language != "en"]
    body = [line for line in [*rest, "; ".join(translated)] if line]
    return "\n".join(
        [head, *(textwrap.fill(line, 80, initial_indent="  ", subsequent_indent="  ") for line in body)]
    )
