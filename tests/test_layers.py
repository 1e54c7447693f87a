"""The shape of the source: imports run one way, no module keeps state, and modules and functions fit a reader.

The order of the layers is written down here and nowhere else: a module may import what stands before it.
"""

from __future__ import annotations

import ast
from collections import Counter
from collections.abc import Container, Iterator
from functools import cache
from graphlib import CycleError, TopologicalSorter
from pathlib import Path

import pytest

import intent

SOURCE = Path(intent.__file__).parent
ORDER = (
    "version",
    "names",
    "values",
    "language",
    "diagnostics",
    "vocabulary",
    "model",
    "dossier",
    "record",
    "redaction",
    "reading",
    "formulas",
    "variance",
    "effects",
    "analysis",
    "planning",
    "media",
    "drawings",
    "papers",
    "exports",
    "packages",
    "collection",
    "desk",
    "verbs",
    "__init__",
    "commands",
    "__main__",
)
COMMAND_LINE_MAY_IMPORT = {"commands", "diagnostics", "language", "reading", "verbs"}
LONGEST_MODULE = 300
LONGEST_FUNCTION = 60
MOST_BY_PLACE = 5
"""So many arguments may be given by their place; more are given by name, or neighbours could be swapped unseen."""
MOST_UNNAMED_FIELDS = 3
GEOMETRY = {"Interval", "Box"}
"""Data with more fields whose order everybody knows: from low to high, left to right and top to bottom."""
_MUTATORS = {
    "add",
    "append",
    "clear",
    "discard",
    "extend",
    "insert",
    "pop",
    "popitem",
    "remove",
    "setdefault",
    "update",
}
Function = ast.FunctionDef | ast.AsyncFunctionDef


def modules() -> list[Path]:
    return sorted(SOURCE.rglob("*.py"))


def name_of(file: Path) -> str:
    return str(file.relative_to(SOURCE))


def layer_of(file: Path) -> str:
    return file.relative_to(SOURCE).parts[0].removesuffix(".py")


@cache
def tree_of(file: Path) -> ast.Module:
    return ast.parse(file.read_text(encoding="utf-8"))


def imported_layers(file: Path) -> Iterator[tuple[str, int]]:
    """The layers that a module imports from, wherever in it, with the line."""
    for node in ast.walk(tree_of(file)):
        if isinstance(node, ast.ImportFrom) and (node.module or "").split(".")[0] == "intent":
            steps = (node.module or "").split(".")
            names = [alias.name for alias in node.names] if len(steps) == 1 else [steps[1]]
            yield from ((name, node.lineno) for name in names if (SOURCE / name).exists() or is_module(name))
        elif isinstance(node, ast.Import):
            steps_of = (alias.name.split(".") for alias in node.names)
            yield from (
                (steps[1], node.lineno) for steps in steps_of if steps[0] == "intent" and len(steps) > 1
            )


def is_module(name: str) -> bool:
    return (SOURCE / f"{name}.py").exists()


@pytest.mark.parametrize("file", modules(), ids=name_of)
def test_imports_run_one_way(file: Path) -> None:
    layer = layer_of(file)
    assert layer in ORDER, f"say in the order of the layers where `{layer}` stands"
    allowed = {*ORDER[: ORDER.index(layer)], layer}
    wrong = [f"line {line}: {other}" for other, line in imported_layers(file) if other not in allowed]
    assert not wrong, f"{name_of(file)} imports what stands after it"


def test_no_modules_import_each_other_in_a_circle() -> None:
    """Wherever in a module an import stands; but for the surface of the package, which names what it offers."""
    names = {module_name(file): file for file in modules()}
    graph = {
        name: {other for other in imported_modules(file, names) if other != name}
        for name, file in names.items()
        if name != "intent"
    }
    try:
        list(TopologicalSorter(graph).static_order())
    except CycleError as error:
        pytest.fail(" → ".join(error.args[1]))


def module_name(file: Path) -> str:
    return ".".join(["intent", *file.relative_to(SOURCE).with_suffix("").parts]).removesuffix(".__init__")


def imported_modules(file: Path, names: Container[str]) -> Iterator[str]:
    for node in ast.walk(tree_of(file)):
        if isinstance(node, ast.ImportFrom) and (node.module or "").startswith("intent"):
            for alias in node.names:
                full = f"{node.module}.{alias.name}"
                yield full if full in names else node.module or ""


def test_the_command_line_only_calls() -> None:
    for file in (SOURCE / "commands").glob("*.py"):
        assert {layer for layer, _ in imported_layers(file)} <= COMMAND_LINE_MAY_IMPORT


def test_relative_imports_are_not_used() -> None:
    relative = [
        f"{name_of(file)}:{node.lineno}"
        for file in modules()
        for node in ast.walk(tree_of(file))
        if isinstance(node, ast.ImportFrom) and node.level
    ]
    assert not relative


@pytest.mark.parametrize("file", modules(), ids=name_of)
def test_every_module_says_what_it_is_for(file: Path) -> None:
    assert ast.get_docstring(tree_of(file)), name_of(file)


@pytest.mark.parametrize("file", modules(), ids=name_of)
def test_no_module_keeps_state(file: Path) -> None:
    """What is bound at the top of a module is never changed, and nothing is cached but what takes no arguments."""
    tree = tree_of(file)
    bound = {name for statement in tree.body for name in bound_names(statement)}
    changed = [f"line {line}: {name}" for name, line in changes(tree) if name in bound]
    assert not changed
    cached = [
        function.name for function in functions(tree) if is_cached(function) and takes_arguments(function)
    ]
    assert not cached


def bound_names(statement: ast.stmt) -> Iterator[str]:
    targets: list[ast.expr] = []
    if isinstance(statement, ast.Assign):
        targets = statement.targets
    elif isinstance(statement, ast.AnnAssign):
        targets = [statement.target]
    yield from (target.id for target in targets if isinstance(target, ast.Name))


def changes(tree: ast.Module) -> Iterator[tuple[str, int]]:
    """Names whose things are changed within functions: by a method, by an item, or by being bound anew."""
    for function in functions(tree):
        local = local_names(function)
        for node in ast.walk(function):
            name = changed_name(node)
            if name is not None and name not in local:
                yield name, getattr(node, "lineno", 0)
            if isinstance(node, ast.Global):
                yield from ((name, node.lineno) for name in node.names)


def changed_name(node: ast.AST) -> str | None:
    changed: ast.expr | None = None
    if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and node.func.attr in _MUTATORS:
        changed = node.func.value
    elif isinstance(node, ast.Subscript) and isinstance(node.ctx, ast.Store | ast.Del):
        changed = node.value
    return changed.id if isinstance(changed, ast.Name) else None


def local_names(function: Function) -> set[str]:
    arguments = {argument.arg for argument in ast.walk(function.args) if isinstance(argument, ast.arg)}
    stored = {
        node.id
        for node in ast.walk(function)
        if isinstance(node, ast.Name) and isinstance(node.ctx, ast.Store)
    }
    return arguments | stored


def functions(tree: ast.Module) -> Iterator[Function]:
    yield from (node for node in ast.walk(tree) if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef))


def is_cached(function: Function) -> bool:
    return any(
        "cache" in ast.unparse(found) and "cached_property" not in ast.unparse(found)
        for found in function.decorator_list
    )


def takes_arguments(function: Function) -> bool:
    return bool([*function.args.posonlyargs, *function.args.args, *function.args.kwonlyargs])


@pytest.mark.parametrize("file", modules(), ids=name_of)
def test_a_module_is_not_too_long(file: Path) -> None:
    assert len(file.read_text(encoding="utf-8").splitlines()) <= LONGEST_MODULE


@pytest.mark.parametrize("file", modules(), ids=name_of)
def test_a_function_fits_a_screen(file: Path) -> None:
    long = {
        function.name: length
        for function in functions(tree_of(file))
        if (length := (function.end_lineno or function.lineno) - function.lineno + 1) > LONGEST_FUNCTION
    }
    assert not long


def test_no_two_modules_have_one_name() -> None:
    names = Counter(file.stem for file in modules() if file.stem != "__init__")
    assert not [name for name, count in names.items() if count > 1]


def test_no_two_classes_have_one_name() -> None:
    names = Counter(found.name for file in modules() for found in classes(tree_of(file)))
    assert not [name for name, count in names.items() if count > 1]


@pytest.mark.parametrize("file", modules(), ids=name_of)
def test_data_with_many_fields_is_made_by_name(file: Path) -> None:
    by_place = [
        found.name
        for found in classes(tree_of(file))
        if is_dataclass(found)
        and len(fields_of(found)) > MOST_UNNAMED_FIELDS
        and "kw_only=True" not in ast.unparse(found.decorator_list[0])
    ]
    assert not {*by_place} - GEOMETRY


@pytest.mark.parametrize("file", modules(), ids=name_of)
def test_many_arguments_are_given_by_name(file: Path) -> None:
    by_place = [
        f"line {node.lineno}: {ast.unparse(node.func)}"
        for node in ast.walk(tree_of(file))
        if isinstance(node, ast.Call) and len(node.args) > MOST_BY_PLACE and not takes_alike(node)
    ]
    assert not by_place


def takes_alike(call: ast.Call) -> bool:
    """Whether all that it is given is of one kind, as the words of a table or the children of an element."""
    return ast.unparse(call.func) in {"words", "element"}


def classes(tree: ast.Module) -> Iterator[ast.ClassDef]:
    yield from (node for node in ast.walk(tree) if isinstance(node, ast.ClassDef))


def is_dataclass(found: ast.ClassDef) -> bool:
    return any("dataclass" in ast.unparse(decorator) for decorator in found.decorator_list)


def fields_of(found: ast.ClassDef) -> list[str]:
    return [ast.unparse(line.target) for line in found.body if isinstance(line, ast.AnnAssign)]


LANGUAGE_FREE = ("values", "variance", "effects", "analysis")
"""What these rooms know is the same in every language: nothing in them becomes text."""
TEXT_FOR_PROGRAMS = {"variance/topics.py", "analysis/questions/question.py"}
"""Where English words order rows and questions, the same in every language."""


@pytest.mark.parametrize("file", [file for file in modules() if layer_of(file) in LANGUAGE_FREE], ids=name_of)
def test_judging_knows_no_language(file: Path) -> None:
    said = [
        f"line {node.lineno}: {ast.unparse(node)}"
        for node in ast.walk(tree_of(file))
        if isinstance(node, ast.Attribute) and (node.attr == "label" or ast.unparse(node) == "ENGLISH.say")
    ]
    assert not said or name_of(file) in TEXT_FOR_PROGRAMS
