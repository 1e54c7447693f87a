"""Explanations as text for a terminal."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Iterator

from intent.explanation import Explained, Explanation


def write_explanations(explanations: Iterable[Explanation]) -> str:
    """Each characteristic with what is documented, and each instruction with its words and whether it holds."""
    blocks = ["\n".join(_lines(explanation)) for explanation in explanations]
    return (
        "\n\n".join(blocks) + "\n" if blocks else "Nothing is documented, and no instruction speaks of it.\n"
    )


def _lines(explanation: Explanation) -> Iterator[str]:
    name = f" ({explanation.name})" if explanation.name else ""
    head = f"{explanation.subject}{name}, {explanation.characteristic}"
    yield f"{head}: {explanation.documented}" if explanation.documented else head
    if not explanation.instructions:
        yield "  No instruction speaks of it."
    for told in explanation.instructions:
        yield from _instruction(told)


def _instruction(told: Explained) -> Iterator[str]:
    line = told.line
    state = "" if told.holds else " (does not hold)"
    yield from _wrapped(f"{line.identifier} {line.modality}: {line.sentence}{state}", "  ")
    ground = f"; on the ground of {line.ground}" if line.ground != "intent" else ""
    yield from _wrapped(f"{told.giver}, {line.on or 'undated'}{ground}", "      ")
    yield from _wrapped(told.cited or "no source is named", "      ")
    if told.because:
        yield from _wrapped(told.because, "      ")
    if told.heading.words:
        yield from _wrapped(f"“{told.heading.words}”", "      ")


def _wrapped(text: str, indent: str) -> list[str]:
    return textwrap.wrap(" ".join(text.split()), 80, initial_indent=indent, subsequent_indent=indent + "    ")
