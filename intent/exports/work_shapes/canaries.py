"""Shapes that must fail, one for each constraint component that is used, and one where data are missing.

An engine that does not report each of them does not know the component, or has not read these shapes.
"""

from __future__ import annotations

from collections.abc import Iterator

from intent.exports.work_shapes.node_shapes import NEVER, queried
from intent.exports.work_shapes.shape_names import ShapeNames
from intent.record.turtle_text import Statement, nested_node, subject_block, text_term

CANARY = "canary"
MISSING = "where-data-are-missing"
_FALSE = "[ sh:property [ sh:path intent:fails ; sh:hasValue false ] ]"
_TRUE = "[ sh:property [ sh:path intent:fails ; sh:hasValue true ] ]"
_ON_NUMBER = {
    "minInclusive": "2.0",
    "maxInclusive": "0.0",
    "minExclusive": "1.0",
    "maxExclusive": "1.0",
}
_ON_PATH = {
    "hasValue": "false",
    "in": "( false )",
    "class": "intent:Bounds",
    "node": NEVER,
    "minCount": "2",
    "maxCount": "0",
}
_WAYS = {
    "inverse-path": "[ sh:inversePath intent:shown ]",
    "sequence-path": "( [ sh:inversePath intent:shown ] intent:shown )",
    "alternative-path": "[ sh:alternativePath ( intent:atLeast intent:moreThan ) ]",
}


def canary_data(names: ShapeNames) -> str:
    """What the canaries are of, in the data."""
    canary = names.of(CANARY)
    day = ("intent:fromDay", '"2000-01-01"^^xsd:date')
    return "\n".join(
        [
            subject_block(
                canary, [("a", "intent:Fact"), ("intent:fails", "true"), ("intent:atLeast", "1.0")]
            ),
            subject_block(names.of(CANARY, "day"), [("intent:shown", canary), day]),
        ]
    )


def canary_shapes(names: ShapeNames) -> dict[str, str]:
    """The canaries as shapes, by what each shows to work."""
    found = {name: _shape(names, name, statements) for name, statements in _failing(names)}
    missing = nested_node([("sh:path", "intent:fails"), ("sh:minCount", "1")])
    target = names.of(CANARY, "that-is-not-there")
    return {**found, MISSING: _shape(names, MISSING, [("sh:property", missing)], target)}


def _failing(names: ShapeNames) -> Iterator[tuple[str, list[Statement]]]:
    for word, value in _ON_NUMBER.items():
        yield word, [_property(("sh:path", "intent:atLeast"), (f"sh:{word}", value))]
    for word, value in _ON_PATH.items():
        yield word, [_property(("sh:path", "intent:fails"), (f"sh:{word}", value))]
    yield "property", [_property(("sh:path", "intent:fails"), ("sh:in", "( false )"))]
    yield "or", [("sh:or", f"( {_FALSE} {NEVER} )")]
    yield "not", [("sh:not", _TRUE)]
    qualified = [("sh:path", "intent:fails"), ("sh:qualifiedValueShape", "[ sh:in ( true ) ]")]
    yield "qualifiedMinCount", [_property(*qualified, ("sh:qualifiedMinCount", "2"))]
    yield "qualifiedMaxCount", [_property(*qualified, ("sh:qualifiedMaxCount", "0"))]
    for word, path in _WAYS.items():
        yield word, [_property(("sh:path", path), ("sh:maxCount", "0"))]
    day = "( [ sh:inversePath intent:shown ] intent:fromDay )"
    yield "days", [_property(("sh:path", day), ("sh:minInclusive", '"2000-01-02"^^xsd:date'))]
    found = "SELECT $this WHERE { $this intent:fails true FILTER(EXISTS { $this intent:atLeast ?n FILTER(?n < 2) }) }"
    yield "sparql", [queried(names.prefixes, found)]
    summed = """SELECT $this WHERE {
  { SELECT $this (SUM(?n) AS ?all) WHERE { $this intent:atLeast ?n } GROUP BY $this } FILTER(?all = 1.0) }"""
    yield "sparql-sum", [queried(names.prefixes, summed)]


def _property(*statements: Statement) -> Statement:
    return "sh:property", nested_node(statements)


def _shape(names: ShapeNames, name: str, statements: list[Statement], target: str = "") -> str:
    said = text_term(f"This shape must fail: it shows that an engine knows {name}.", "en")
    return subject_block(
        names.of(CANARY, name),
        [
            ("a", "sh:NodeShape"),
            ("sh:targetNode", target or names.of(CANARY)),
            ("sh:message", said),
            *statements,
        ],
    )
