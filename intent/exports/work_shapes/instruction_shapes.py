"""A work's instructions as a shapes graph: a shape each for what is required and forbidden, whatever the installation.

Violation: the instruction stands against what the data say. Warning: these shapes do not decide a row. The shapes
called canary must fail.
"""

from __future__ import annotations

from collections.abc import Iterator

from intent.exports.work_shapes.alternatives import Alternative
from intent.exports.work_shapes.canaries import canary_shapes
from intent.exports.work_shapes.held_values import one_of_parts
from intent.exports.work_shapes.needed_data import needed_shapes
from intent.exports.work_shapes.node_shapes import ALWAYS, NEVER, any_of, each_on, inside_of
from intent.exports.work_shapes.part_shapes import PartShapes
from intent.exports.work_shapes.shape_layout import set_out
from intent.exports.work_shapes.shape_names import (
    ITS_DAYS,
    OF_SUBJECT,
    ShapeNames,
)
from intent.exports.work_shapes.undecided import (
    Undecided,
    UndecidedLine,
    is_excusable,
    undecided_lines,
)
from intent.exports.work_shapes.warning_shapes import WARNING, warning_shapes
from intent.exports.work_shapes.whole_shapes import WholeShapes
from intent.model.assertions import Aggregate
from intent.model.installation import Installation
from intent.model.work import Instruction, Modality, Work
from intent.names import INTENT, TERM
from intent.record.turtle_text import (
    block_of_lines,
    nested_node,
    prefix_lines,
    prologue,
    subject_block,
    text_term,
)
from intent.values.dates import FIRST_DAY, DaySpan
from intent.variance.case import Case, lay_out

SHAPE, ASKED, VIOLATION = "shape", "asked", "sh:Violation"
COMMENT = """The instructions of a work as shapes (SHACL, W3C Recommendation, 20 July 2017, Core and sh:sparql).
They hold for every installation of it, described as in the data that came with them; nothing of one is in them.
sh:Violation: an instruction stands against what is shown, or data are missing. sh:Warning: these shapes do not decide.
Every shape called canary must fail: an engine that does not report one does not know what that one uses."""


def shapes_of_work(work: Work) -> str:
    """The shapes graph of a work as Turtle; the same bytes for the same work."""
    case, names = bare_case(work), ShapeNames(work)
    undecided = list(undecided_lines(case))
    blocks = [_prefixes(names)]
    for line in work.instructions:
        if line.modality is not Modality.ALLOWED:
            blocks += _instruction(case, names, line, undecided)
        blocks += warning_shapes(case, names, line)
    blocks += [*needed_shapes(case, names), *canary_shapes(names).values()]
    used = ["intent", "rdfs", "sh", "term", "xsd"]
    own = prefix_lines({names.prefix: names.namespace})
    return "\n".join([prologue(used, COMMENT) + own, *blocks])


def bare_case(work: Work) -> Case:
    """The work with nothing proposed: what shapes are made from, so that nothing of an installation is in them."""
    day = DaySpan(FIRST_DAY, FIRST_DAY)
    return lay_out(work, Installation(iri=work.iri, title="", dates=day, work=work.iri))


def _prefixes(names: ShapeNames) -> str:
    declared = [
        nested_node([("sh:prefix", text_term(name)), ("sh:namespace", f"{text_term(iri)}^^xsd:anyURI")])
        for name, iri in (("intent", str(INTENT)), ("term", str(TERM)), (names.prefix, names.namespace))
    ]
    return subject_block(names.prefixes, [("sh:declare", ", ".join(declared))])


def _instruction(
    case: Case, names: ShapeNames, line: Instruction, undecided: list[UndecidedLine]
) -> Iterator[str]:
    """The shape of a requirement or a prohibition, but for what it does not decide."""
    of_line = [one for one in undecided if one.line.identifier == line.identifier]
    is_each = line.assertion.aggregate is Aggregate.EACH
    if any(one.part is None for one in of_line):
        return
    shapes = PartShapes(case, names) if is_each else WholeShapes(case, names)
    ways = [one for one in shapes.alternatives(line) if one.shape != NEVER]
    beyond = [one.part for one in of_line if one.part is not None]
    if beyond:
        shape = each_on(OF_SUBJECT, one_of_parts(names, beyond))
        ways.append(Alternative("undecided", f"What it asks {Undecided.DOCUMENTED.value}.", shape))
    if any(one.shape == ALWAYS for one in ways):
        return
    is_unsure = is_excusable(case, line)
    listed = any_of(names.of(SHAPE, line.identifier, one.name) for one in ways)
    yield subject_block(
        names.of(SHAPE, line.identifier),
        [
            ("a", "sh:NodeShape"),
            ("rdfs:comment", text_term(_said(case, line), "en")),
            ("rdfs:seeAlso", names.short(line.iri)),
            ("sh:targetClass", names.scope(line) if is_each else "intent:WholeShowing"),
            ("sh:property", names.of(SHAPE, line.identifier, ASKED)),
        ],
    )
    severity = WARNING if is_unsure else VIOLATION
    yield block_of_lines(
        names.of(SHAPE, line.identifier, ASKED),
        [
            "a sh:PropertyShape",
            f"sh:path {ITS_DAYS}",
            f"sh:severity {severity}",
            f"sh:message {text_term(_message(line, is_unsure), 'en')}",
            set_out(inside_of(listed)),
        ],
    )
    for one in ways:
        yield _way(names.of(SHAPE, line.identifier, one.name), one)


def _way(name: str, way: Alternative) -> str:
    """A way by itself, which nothing targets."""
    head = [("a", "sh:NodeShape"), ("rdfs:comment", text_term(way.why, "en"))]
    return block_of_lines(
        name, [*(f"{joint} {value}" for joint, value in head), set_out(inside_of(way.shape))]
    )


def _said(case: Case, line: Instruction) -> str:
    heading = case.work.heading(line.heading)
    words = line.words or (heading.words if heading else "")
    quoted = f" “{words}”" if words else ""
    return f"{line.identifier}: {line.modality.value}: {line.sentence}.{quoted}"


def _message(line: Instruction, is_unsure: bool) -> str:
    if is_unsure:
        return f"{line.identifier} {Undecided.EXCUSED.value}."
    return f"{line.identifier} is broken: {line.modality.value}: {line.sentence}."
