"""Every English pattern that a paper may say, found in the source: nothing is told that a catalogue cannot give.

A pattern is a text in a call of `say`, `say_of`, `words` or `joined`, or the unit of a figure where it is a word. What
is wrong with a text or a file is told to whoever writes it, in English, and has no patterns here.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import intent

SOURCE = Path(intent.__file__).parent
ROOMS = (
    "language",
    "model",
    "redaction",
    "variance",
    "effects",
    "analysis",
    "drawings",
    "papers",
    "packages/start.py",
    "verbs/transfers.py",
)
"""The rooms whose messages stand on papers."""
CALLS = {"say", "words", "joined"}
UNITS = re.compile(r"[a-z]{3,}( [a-z]+)*$|% of white$|[a-z] a day$|a second$")
"""Units that are words, and not symbols."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Pattern:
    """A pattern for one thing, that for several if it counts, and where it is said."""

    one: str
    several: str = ""
    file: str
    line: int

    @property
    def place(self) -> str:
        """Where it is said: `intent/papers/annex.py:12`."""
        return f"{self.file}:{self.line}"

    @property
    def has_words(self) -> bool:
        """Whether anything in it is to be translated: a word, a mark that a language sets otherwise, a date."""
        fixed = re.sub(r"\{\w+\}", "", self.one + self.several)
        return re.search(r"[^\W\d_]|[:;?!“]", fixed) is not None or "{month}" in self.one


def patterns() -> dict[str, Pattern]:
    """Each pattern by what it says of one."""
    found: dict[str, Pattern] = {}
    for room in ROOMS:
        for file in sorted((SOURCE / room).rglob("*.py")) or [SOURCE / room]:
            for one, several, line in _said(ast.parse(file.read_text(encoding="utf-8"))):
                pattern = Pattern(
                    one=one, several=several, file=f"intent/{file.relative_to(SOURCE)}", line=line
                )
                known = found.get(one, pattern)
                assert "" in {several, known.several} or several == known.several, pattern.place
                found[one] = known if known.several or not several else pattern
    return {one: pattern for one, pattern in found.items() if pattern.has_words}


def places(pattern: str) -> set[str]:
    return set(re.findall(r"\{(\w+)\}", pattern))


def _said(tree: ast.Module) -> Iterator[tuple[str, str, int]]:
    constants = _constants(tree)
    for node in ast.walk(tree):
        if not isinstance(node, ast.Call):
            continue
        name = str(getattr(node.func, "attr", "") or getattr(node.func, "id", ""))
        if name == "say_of":
            one, several = (_text(argument) for argument in node.args[1:3])
            assert all((one, several)), f"line {node.lineno}: say the patterns of `say_of` where it is called"
            yield one, several, node.lineno
        elif name in CALLS:
            yield from ((text, "", line) for text, line in _texts(node.args))
        elif name in {"Effect", "figure", "Figure"}:
            given = [*node.args, *(one.value for one in node.keywords if one.arg == "unit")]
            given = [constants.get(one.id, one) if isinstance(one, ast.Name) else one for one in given]
            yield from ((text, "", line) for text, line in _texts(given) if UNITS.match(text))


def _constants(tree: ast.Module) -> dict[str, ast.expr]:
    """What names of the module stand for: a unit may be given by name."""
    return {
        target.id: node.value
        for node in tree.body
        if isinstance(node, ast.Assign)
        for target in node.targets
        if isinstance(target, ast.Name)
    }


def _texts(nodes: list[ast.expr]) -> Iterator[tuple[str, int]]:
    for node in nodes:
        text = _text(node)
        if text:
            yield text, node.lineno


def _text(node: ast.expr) -> str:
    return node.value if isinstance(node, ast.Constant) and isinstance(node.value, str) else ""
