"""The pieces that a text is written of: headings, fields, aligned tables, quotations, prose."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence

from intent.dossier.own_labels import OwnLabels
from intent.model.assertions import Statements
from intent.names import TERM
from intent.vocabulary.terms import Vocabulary

Cells = Mapping[str, str]
"""A row by the names of its columns; a cell left blank may be missing."""


def field_line(name: str, value: object) -> str:
    text = re.sub(r"\s+", " ", str(value)).strip()
    return f"- {name}: {text}" if text else ""


def fields_block(fields: Iterable[tuple[str, object]]) -> str:
    """A list of the fields that have a value."""
    return "\n".join(line for name, value in fields if value and (line := field_line(name, value)))


def table_block(rows: Sequence[Cells]) -> str:
    """A table with just the columns that any row fills, each as wide as its widest cell."""
    columns = list(dict.fromkeys(name for row in rows for name, text in row.items() if text))
    if not columns:
        return ""
    grid = [columns, *[[_cell(row.get(name, "")) for name in columns] for row in rows]]
    widths = [max(3, *(len(line[place]) for line in grid)) for place in range(len(columns))]
    ruled = [grid[0], ["-" * width for width in widths], *grid[1:]]
    return "\n".join(
        "| " + " | ".join(text.ljust(width) for text, width in zip(line, widths, strict=True)) + " |"
        for line in ruled
    )


def _cell(text: str) -> str:
    return re.sub(r"\s*\n\s*", " ", text).replace("|", "\\|").strip()


def kept(internal: bool) -> str:
    """The cell or field that keeps a thing in the house."""
    return "internal" if internal else ""


def yes_no(answer: bool | None) -> str:
    """The cell of an answer; blank where none is given."""
    return "" if answer is None else "yes" if answer else "no"


def quote_block(words: str) -> str:
    return "\n".join(f"> {line}".rstrip() for line in words.split("\n")) if words else ""


def text_of(blocks: Iterable[str]) -> str:
    """The blocks of a file, a blank line between any two."""
    return "\n\n".join(block for block in blocks if block) + "\n"


def statement_cells(statements: Statements, labels: OwnLabels) -> dict[str, str]:
    """The statements of a thing as cells, in the order of the characteristics' labels in the vocabulary."""
    characteristics = labels.vocabulary.characteristics
    places = {iri: place for place, iri in enumerate(characteristics)}
    ordered = sorted(statements, key=lambda iri: places.get(iri, len(places)))
    return {
        labels.of(characteristics[iri]): labels.cell(statements[iri])
        for iri in ordered
        if iri in characteristics
    }


def property_cells(fields: Mapping[str, str], section: str, vocabulary: Vocabulary) -> dict[str, str]:
    """Fields held by property, as cells under the names that a section gives them."""
    forms = {
        form.property: form.label
        for form in vocabulary.fields.values()
        if str(TERM[section]) in form.sections
    }
    return {forms[found]: text for found, text in fields.items() if found in forms}


def section_label(term: str, vocabulary: Vocabulary) -> str:
    form = vocabulary.sections.get(term)
    return form.label if form else term
