"""Shapes that fail where data are missing: a part that is not there, a value or days that nobody gives."""

from __future__ import annotations

import datetime
from collections.abc import Iterator

from intent.analysis.examination.validity import over_from
from intent.exports.work_shapes.asked_values import asked_of_members, every_scope
from intent.exports.work_shapes.node_shapes import queried
from intent.exports.work_shapes.shape_names import ITS_DAYS, ShapeNames
from intent.names import THE_VENUE, THE_WORK
from intent.record.turtle_text import Statement, iri_term, nested_node, subject_block, text_term
from intent.variance.case import Case

NEEDED = "needed"
_ONE = [("sh:minCount", "1"), ("sh:maxCount", "1")]
_NOT_CUT = """SELECT $this WHERE { $this intent:inInstallation ?showing .
  ?showing intent:fromDay ?from ; intent:toDay ?to . ?one intent:inInstallation ?showing .
  %s
  FILTER NOT EXISTS { ?days intent:shown ?one ; intent:fromDay ?start FILTER(STR(?start) = ?turn) } }"""
_WORDS_TURN = """{ ?word intent:earliest|intent:latest|intent:countsFrom|intent:overFrom ?day }
  UNION { $this intent:inInstallation/intent:fromDay ?day } BIND(STR(?day) AS ?turn)
  FILTER(STR(?from) <= ?turn && ?turn <= STR(?to))"""


def needed_shapes(case: Case, names: ShapeNames) -> Iterator[str]:
    """What data of an installation of the work must have, so that the other shapes can be answered."""
    shown = [part.identifier for part in case.work.parts] + [one.identifier for one in case.work.material]
    parts = ", ".join(map(names.subject, [*shown, THE_WORK, THE_VENUE]))
    yield _shape(names, "parts", ("sh:targetNode", parts), [_at("[ sh:inversePath intent:shows ]", *_ONE)])
    showing = "( [ sh:inversePath intent:ofWork ] [ sh:inversePath intent:inInstallation ] )"
    whole = [("sh:qualifiedValueShape", "[ sh:class intent:WholeShowing ]"), ("sh:qualifiedMinCount", "1")]
    yield _shape(
        names,
        "showing",
        ("sh:targetNode", iri_term(case.work.iri)),
        [_at("[ sh:inversePath intent:ofWork ]", *_ONE), _at(showing, *whole, ("sh:qualifiedMaxCount", "1"))],
    )
    once = ("intent:inInstallation", "intent:shows", "intent:order")
    yield _shape(
        names,
        "shown",
        ("sh:targetClass", "intent:Shown"),
        [*(_at(path, *_ONE) for path in once), _at(ITS_DAYS, ("sh:minCount", "1"))],
    )
    yield _shape(
        names,
        "days",
        ("sh:targetClass", "intent:DaysShown"),
        [_at(path, *_ONE) for path in ("intent:shown", "intent:fromDay", "intent:toDay")],
    )
    yield _shape(names, "turns", ("sh:targetClass", "intent:WholeShowing"), list(_cut(case, names)))
    for scope in every_scope(case, names):
        asked = asked_of_members(scope.assertion)
        if asked:
            value = _at(names.value(asked), ("sh:minCount", "1"))
            yield _shape(names, scope.name, ("sh:targetClass", scope.iri), [value])


def _cut(case: Case, names: ShapeNames) -> Iterator[Statement]:
    """That days are cut where something said begins or ends to count, and where an instruction does."""
    yield queried(names.prefixes, _NOT_CUT % _WORDS_TURN)
    turns = sorted(set(_turns(case)))
    if turns:
        among = " UNION ".join(f'{{ BIND("{day.isoformat()}" AS ?turn) }}' for day in turns)
        between = f"{among} FILTER(STR(?from) < ?turn && ?turn <= STR(?to))"
        yield queried(names.prefixes, _NOT_CUT % between)


def _turns(case: Case) -> Iterator[datetime.date]:
    """The days on which an instruction begins to hold, or no longer does."""
    for line in case.work.instructions:
        over = over_from(case, line)
        yield from [line.on.first] if line.on is not None else []
        yield from [over] if over is not None else []


def _at(path: str, *statements: Statement) -> Statement:
    return "sh:property", nested_node([("sh:path", path), *statements])


def _shape(names: ShapeNames, name: str, target: Statement, statements: list[Statement]) -> str:
    said = text_term("Data are missing, or are there more than once, so that nobody can tell the rest.", "en")
    return subject_block(
        names.of(NEEDED, name), [("a", "sh:NodeShape"), target, ("sh:message", said), *statements]
    )
