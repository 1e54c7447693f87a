"""A shape set out for readers: what is long on lines of its own, further in the deeper it nests."""

from __future__ import annotations

import re
from collections.abc import Iterator

_LONG = 100
_PIECE = re.compile(r'"""(?:.|\n)*?"""|"(?:[^"\\\n]|\\.)*"|<[^>\s]*>|[^\s"<]+|\s+|.')
"""A quotation, an IRI, a word, or space between words."""


def set_out(statements: str, depth: int = 1) -> str:
    """The statements of one node with a line each, where together they are long."""
    indent = "    " * depth
    parts = [_set_out_statement(part, depth) for part in _split(statements, ";")]
    return f" ;\n{indent}".join(parts)


def _set_out_statement(statement: str, depth: int) -> str:
    """A property and its value, the value further in where it is long."""
    name, _, value = statement.partition(" ")
    if len(statement) <= _LONG or value[:2] not in {"[ ", "( "}:
        return statement
    indent = "    " * (depth + 1)
    if value.startswith("[ "):
        return f"{name} [\n{indent}{set_out(value[2:-2], depth + 1)} ]"
    items = [_item(item, depth + 1) for item in _split(value[2:-2], "")]
    return f"{name} (\n{indent}" + f"\n{indent}".join(items) + " )"


def _item(item: str, depth: int) -> str:
    return f"[ {set_out(item[2:-2], depth + 1)} ]" if item.startswith("[ ") and len(item) > _LONG else item


def _split(text: str, mark: str) -> Iterator[str]:
    """The parts of a text between marks that stand in no brackets; without a mark, the terms of a list."""
    part, depth = "", 0
    for piece in _PIECE.findall(text):
        depth += (piece in {"[", "("}) - (piece in {"]", ")"})
        is_between = piece == mark if mark else piece.isspace()
        if is_between and depth == 0:
            if part.strip():
                yield part.strip()
            part = ""
        else:
            part += piece
    if part.strip():
        yield part.strip()
