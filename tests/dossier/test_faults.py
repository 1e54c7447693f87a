"""Faults in what is read: files as text, and the diagnostics that each must bring.

A file under `faults` holds the files that are read in blocks named after them, and what is expected in a block
of its own; `…` stands for any words, and on a line of its own for any lines. Unless a block `command` says
otherwise the first file is validated.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest

import intent
from intent import verbs
from intent.diagnostics import Diagnostic, Unusable

FAULTS = Path(__file__).parent / "faults"
TESTS = Path(__file__).parent.parent
SOURCE = Path(intent.__file__).parent
_BLOCK = re.compile(r"^```(\S+)\n(.*?)^```$", re.DOTALL | re.MULTILINE)
_EMITTERS = {"Diagnostic", "wrong", "fault", "Unreadable", "Misread", "_unusable", "refuse", "_refuse"}
_SLUG = re.compile(r"[a-z]+(-[a-z0-9]+)*")
_OF_RECORDS = SOURCE / "record"


@dataclass(frozen=True, slots=True)
class Fault:
    file: Path
    files: dict[str, str]
    command: list[str]
    expected: str

    def __str__(self) -> str:
        return self.file.stem


def read_fault(file: Path) -> Fault:
    found = dict(_BLOCK.findall(file.read_text(encoding="utf-8")))
    expected = found.pop("expected")
    command = found.pop("command", "validate " + next(iter(found))).split()
    return Fault(file, found, command, expected.strip())


def every_fault() -> list[Fault]:
    return [read_fault(file) for file in sorted(FAULTS.glob("*.md"))]


def diagnostics_of(command: list[str]) -> tuple[Diagnostic, ...]:
    verb, *arguments = command
    try:
        if verb == "validate":
            return verbs.validate(arguments[0])
        if verb == "check":
            return verbs.check(arguments[-1], *arguments[:-1]).findings
        return verbs.convert(arguments[0], arguments[-1])[1]
    except Unusable as error:
        return error.diagnostics


def pattern_of(expected: str) -> re.Pattern[str]:
    lines = (re.escape(line).replace("…", ".*") + "\n" for line in expected.splitlines())
    return re.compile("".join("(?:.*\n)*" if line == ".*\n" else line for line in lines))


@pytest.mark.parametrize("fault", every_fault(), ids=str)
def test_fault(fault: Fault, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for name, text in fault.files.items():
        (tmp_path / name).write_text(text, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    found = "\n".join(map(str, diagnostics_of(fault.command)))
    if not pattern_of(fault.expected).fullmatch(found + "\n"):
        pytest.fail(f"{fault.file}\n\nexpected\n{fault.expected}\n\nfound\n{found}", pytrace=False)


def test_nothing_is_said_beside_the_diagnostics(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    """A library that logs what it thinks of a bad IRI would say it on the writer's screen."""
    fault = read_fault(FAULTS / "fields.md")
    (tmp_path / "work.md").write_text(fault.files["work.md"], encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    diagnostics_of(fault.command)
    assert not caplog.records


def emitted() -> Iterator[tuple[str, str]]:
    """Every slug in the source, as a pattern, with its place; those about records received have their own tests."""
    for file in sorted(SOURCE.rglob("*.py")):
        if _OF_RECORDS in file.parents and file.stem != "consistency":
            continue
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
            first = first_word(node)
            slug = slug_of(first) if first is not None else None
            if slug is not None:
                yield slug, f"{file.relative_to(SOURCE)}:{node.lineno}"  # type: ignore[attr-defined]


def first_word(node: ast.AST) -> ast.expr | None:
    """What may be a slug: the first argument of what makes a diagnostic, or the first of a pair returned."""
    if isinstance(node, ast.Call) and node.args:
        called = node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")
        is_subclass = called == "__init__" and len(node.args) > 1
        return node.args[0] if called in _EMITTERS or is_subclass else None
    if isinstance(node, ast.Return) and isinstance(node.value, ast.Tuple) and len(node.value.elts) == 2:
        return node.value.elts[0]
    return None


def slug_of(node: ast.expr) -> str | None:
    if isinstance(node, ast.JoinedStr):
        parts = (part.value if isinstance(part, ast.Constant) else "[a-z]+" for part in node.values)
        pattern = "".join(map(str, parts))
        return pattern if re.fullmatch(r"[a-z]+-\[a-z\]\+", pattern) else None
    if isinstance(node, ast.Constant) and isinstance(node.value, str) and _SLUG.fullmatch(node.value):
        return node.value
    return None


def slugs_tested() -> set[str]:
    """The slugs in the faults here, and those that another test names."""
    found = {slug for fault in every_fault() for slug in re.findall(r"\[([a-z0-9-]+)\]", fault.expected)}
    for file in (*TESTS.rglob("*.py"), *TESTS.rglob("cases/*.md")):
        found |= set(re.findall(r"[\[\"]([a-z0-9-]+)[\]\"]", file.read_text(encoding="utf-8")))
    return found


def test_every_slug_is_tested() -> None:
    known = slugs_tested()
    untested = {slug: place for slug, place in emitted() if not any(re.fullmatch(slug, one) for one in known)}
    assert not untested
