"""Small changes to the source of a module, one at a time, each of which may make a rule wrong."""

from __future__ import annotations

import ast
import copy
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

_COMPARISONS: dict[type[ast.cmpop], tuple[type[ast.cmpop], ...]] = {
    ast.Lt: (ast.LtE, ast.GtE),
    ast.LtE: (ast.Lt, ast.Gt),
    ast.Gt: (ast.GtE, ast.LtE),
    ast.GtE: (ast.Gt, ast.Lt),
    ast.Eq: (ast.NotEq,),
    ast.NotEq: (ast.Eq,),
    ast.Is: (ast.IsNot,),
    ast.IsNot: (ast.Is,),
    ast.In: (ast.NotIn,),
    ast.NotIn: (ast.In,),
}
_OPERATORS: dict[type[ast.operator], type[ast.operator]] = {
    ast.Add: ast.Sub,
    ast.Sub: ast.Add,
    ast.Mult: ast.Div,
    ast.Div: ast.Mult,
    ast.Mod: ast.Mult,
    ast.BitAnd: ast.BitOr,
    ast.BitOr: ast.BitAnd,
}
_CALLS = {"any": "all", "all": "any", "min": "max", "max": "min"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Mutant:
    """A module with one thing changed."""

    file: Path
    line: int
    what: str
    source: str


def mutants_of(file: Path) -> Iterator[Mutant]:
    """Every small change of a module; text that only people read is left alone."""
    tree = ast.parse(file.read_text(encoding="utf-8"))
    nodes = list(_that_count(tree))
    for place, node in enumerate(nodes):
        for what, changed in _changes(node):
            copied = copy.deepcopy(tree)
            _replace(copied, list(_that_count(copied))[place], changed)
            yield Mutant(file=file, line=getattr(node, "lineno", 0), what=what, source=ast.unparse(copied))


def _that_count(tree: ast.AST) -> Iterator[ast.AST]:
    """The nodes of a module that can change what it does: no types, no decorators, no text that people read."""
    for name, value in ast.iter_fields(tree):
        if name in {"annotation", "returns", "decorator_list"}:
            continue
        for node in value if isinstance(value, list) else [value]:
            if isinstance(node, ast.Constant) and isinstance(node.value, str):
                continue
            if isinstance(node, ast.AST):
                yield node
                yield from _that_count(node)


def _replace(tree: ast.AST, old: ast.AST, new: ast.AST) -> None:
    for parent in ast.walk(tree):
        for name, value in ast.iter_fields(parent):
            if value is old:
                setattr(parent, name, new)
            elif isinstance(value, list):
                value[:] = [new if one is old else one for one in value]
    ast.fix_missing_locations(tree)


def _changes(node: ast.AST) -> Iterator[tuple[str, ast.AST]]:
    """What else might stand in the place of a node, with a word for it."""
    match node:
        case ast.Compare(ops=[operator]):
            for other in _COMPARISONS.get(type(operator), ()):
                yield f"{ast.unparse(node)}: {other.__name__}", _with(node, ops=[other()])
        case ast.BoolOp(op=operator):
            other_word = ast.Or if isinstance(operator, ast.And) else ast.And
            yield f"{ast.unparse(node)}: {other_word.__name__}", _with(node, op=other_word())
            for place in range(len(node.values)):
                rest = [value for index, value in enumerate(node.values) if index != place]
                less = rest[0] if len(rest) == 1 else _with(node, values=rest)
                yield f"{ast.unparse(node)}: without {ast.unparse(node.values[place])}", less
        case ast.UnaryOp(op=ast.Not()):
            yield f"{ast.unparse(node)}: without not", node.operand
        case ast.BinOp(op=operator) if type(operator) in _OPERATORS:
            yield f"{ast.unparse(node)}: other sign", _with(node, op=_OPERATORS[type(operator)]())
        case ast.Constant(value=bool() as truth):
            yield f"{truth}: {not truth}", ast.Constant(not truth)
        case ast.Constant(value=int() as number):
            yield f"{number}: {number + 1}", ast.Constant(number + 1)
        case ast.If():
            yield f"if {ast.unparse(node.test)}: never", _with(node, test=ast.Constant(False))
        case ast.IfExp():
            yield f"{ast.unparse(node)}: the other", _with(node, body=node.orelse, orelse=node.body)
        case ast.Call(func=ast.Name(id=name)) if name in _CALLS:
            yield f"{ast.unparse(node)}: {_CALLS[name]}", _with(node, func=ast.Name(_CALLS[name], ast.Load()))


def _with(node: ast.AST, **changed: object) -> ast.AST:
    return type(node)(**{**dict(ast.iter_fields(node)), **changed})
