"""Every English pattern that a report may say, found in the source: nothing is told that a catalogue cannot give.

A pattern is the text of a call of `say`, `say_of`, `words` or `Tongue.pattern`; in the rooms of the effects any text
that is made of several words is one, since quantities, units and sources are told by themselves.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import intent
from intent.language.message import AND, OR

SOURCE = Path(intent.__file__).parent
TOLD = ("saying.py", "phrasing.py", "variance", "effects", "history", "reports", "drawings", "cards")
"""The rooms whose sayings `check` tells."""
CALLS = {"say", "say_of", "words", "pattern", "joined"}
WORDS_OF_UNITS = re.compile(r"[a-z]{4,}$")


def patterns() -> dict[str, str]:
    """Each pattern, with a place where it is used."""
    found = {AND: "saying.py", OR: "saying.py"}
    for room in TOLD:
        place = SOURCE / room
        for file in sorted(place.rglob("*.py")) if place.is_dir() else [place]:
            name = str(file.relative_to(SOURCE))
            tree = ast.parse(file.read_text(encoding="utf-8"))
            for text, line in (*_said(tree), *(_told_alone(tree) if room == "effects" else ())):
                found.setdefault(text, f"{name}:{line}")
    return found


def has_words(pattern: str) -> bool:
    """Whether anything in a pattern is to be translated: a word, or a mark that a language sets otherwise."""
    return re.search(r"[^\W\d_]|[:;?!“]", re.sub(r"\{\w+\}", "", pattern)) is not None


def places(pattern: str) -> set[str]:
    return set(re.findall(r"\{(\w+)\}", pattern))


def _said(tree: ast.Module) -> Iterator[tuple[str, int]]:
    for node in ast.walk(tree):
        if isinstance(node, ast.Call) and _called(node) in CALLS:
            yield from _texts(node.args)


def _called(node: ast.Call) -> str:
    return str(getattr(node.func, "attr", "") or getattr(node.func, "id", ""))


def _texts(nodes: list[ast.expr]) -> Iterator[tuple[str, int]]:
    for node in nodes:
        if isinstance(node, ast.Constant) and isinstance(node.value, str):
            yield node.value, node.lineno


def _told_alone(tree: ast.Module) -> Iterator[tuple[str, int]]:
    """Texts of several words, but docstrings and what is put together; and the words of units and sources."""
    aside = {
        id(inner) for node in ast.walk(tree) if isinstance(node, ast.JoinedStr) for inner in ast.walk(node)
    }
    aside |= {id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)}
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in aside:
            if " " in node.value.strip():
                yield node.value, node.lineno
        elif isinstance(node, ast.Call) and _called(node) in {"Effect", "figure", "Figure"}:
            units = [text for text in _texts(node.args) if WORDS_OF_UNITS.match(text[0])]
            yield from units
        elif isinstance(node, ast.Assign) and getattr(node.targets[0], "id", "").isupper():
            yield from (text for text in _texts([node.value]) if WORDS_OF_UNITS.match(text[0]))
