"""Node shapes put together: all of some, any of some, none of one; of every value on a path, or of one at least.

A shape is its Turtle text. What always or never holds is folded away, so that a reader meets only what decides.
Source: W3C, Shapes Constraint Language (SHACL), 20 July 2017, sections 4.6 (logical) and 4.7 (shape-based).
"""

from __future__ import annotations

from collections.abc import Iterable

from intent.record.turtle_text import collection, nested_node, text_term

ALWAYS = "[ ]"
"""A shape to which everything conforms."""
NEVER = "[ sh:in ( ) ]"
"""A shape to which nothing conforms."""


def all_of(shapes: Iterable[str]) -> str:
    """That a node conforms to each of some shapes: one shape that says all that they say."""
    kept = [one for one in dict.fromkeys(shapes) if one != ALWAYS]
    if NEVER in kept:
        return NEVER
    return f"[ {' ; '.join(map(inside_of, kept))} ]" if kept else ALWAYS


def any_of(shapes: Iterable[str]) -> str:
    """That a node conforms to one of some shapes at least."""
    kept = [one for one in dict.fromkeys(shapes) if one != NEVER]
    if ALWAYS in kept:
        return ALWAYS
    if len(kept) > 1:
        return nested_node([("sh:or", collection(kept))])
    return kept[0] if kept else NEVER


def none_of(shape: str) -> str:
    """That a node does not conform to a shape."""
    if shape in {ALWAYS, NEVER}:
        return NEVER if shape == ALWAYS else ALWAYS
    return f"[ sh:not {shape} ]"


def inside_of(shape: str) -> str:
    """What a shape says, to stand in another: of one with a name, that a node conforms to it."""
    return shape[2:-2] if shape.startswith("[ ") else f"sh:node {shape}"


def each_on(path: str, shape: str) -> str:
    """That every value on a path conforms to a shape."""
    return shape if shape in {ALWAYS, NEVER} else f"[ sh:property [ sh:path {path} ; {inside_of(shape)} ] ]"


def some_on(path: str, shape: str) -> str:
    """That one value on a path at least conforms to a shape."""
    return counted_on(path, shape, least=1)


def counted_on(path: str, shape: str, *, least: int | None = None, most: int | None = None) -> str:
    """That so many values on a path conform to a shape."""
    statements = [("sh:qualifiedValueShape", shape)]
    statements += [("sh:qualifiedMinCount", str(least))] if least is not None else []
    statements += [("sh:qualifiedMaxCount", str(most))] if most is not None else []
    return constrained(path, *statements)


def constrained(path: str, *statements: tuple[str, str]) -> str:
    """A node shape of one property."""
    return nested_node([("sh:property", nested_node([("sh:path", path), *statements]))])


def unless_query_finds(prefixes: str, query: str) -> str:
    """That a query finds nothing of a node."""
    return nested_node([queried(prefixes, query)])


def queried(prefixes: str, query: str) -> tuple[str, str]:
    """The statement of a shape to which a node conforms where a query finds nothing.

    Source: SHACL, section 5 (SPARQL-based constraints); none of what section 5.3.1 does not let a query use is used.
    """
    constraint = [
        ("a", "sh:SPARQLConstraint"),
        ("sh:prefixes", prefixes),
        ("sh:select", text_term(query)),
    ]
    return "sh:sparql", nested_node(constraint)
