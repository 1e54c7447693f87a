"""What was written is read again, and must say what the record's numbers and triples say beside it.

Readers are shown what was written, and judged by the numbers; where the two disagree nobody can tell which is meant.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from rdflib.term import Node

from intent.diagnostics import Diagnostic, Span
from intent.dossier.expressions import read_with_tolerance
from intent.dossier.measured_text import unit_written
from intent.dossier.own_words import own_words_of
from intent.dossier.unreadable import Unreadable
from intent.language.message import Words, say
from intent.model.assertions import Aggregate, Expression, Form, Measured
from intent.model.duty import Duty
from intent.model.meaning import scale
from intent.model.work import Instruction, Work
from intent.names import INTENT
from intent.record.indexed import IndexedGraph
from intent.record.load_assertions import load_expression
from intent.record.places import Places
from intent.record.view import GraphView
from intent.vocabulary.terms import Characteristic, Vocabulary


def compared_of(view: GraphView, node: Node, vocabulary: Vocabulary) -> Characteristic | None:
    """The characteristic on whose scale the values of a statement, a line or a consent are; none, if unknown.

    The value of a consent is on the scale of the line that it answers, or of the first line of a heading.
    """
    for line in view.in_order(view.values(node, INTENT.consentsTo)):
        lines = view.in_order(
            one for one, said in view.subjects.items() if line in said.get(INTENT.inHeading, ())
        )
        for one in lines or [line]:
            found = compared_of(view, one, vocabulary)
            if found is not None:
                return found
    named = vocabulary.characteristics.get(view.text(node, INTENT.characteristic))
    aggregate = view.local(node, INTENT.aggregate)
    return scale(Aggregate(aggregate or "each"), named, vocabulary) if named or aggregate else None


def compared_expressions(
    data: IndexedGraph, view: GraphView, vocabulary: Vocabulary
) -> Iterator[tuple[Node, Characteristic, Expression]]:
    """Every expression in a graph, with its node and the characteristic on whose scale its values are, where known."""
    for node in dict.fromkeys(node for node, _ in data.subject_objects(INTENT.form)):
        compared = compared_of(view, node, vocabulary)
        if compared is not None:
            yield node, compared, load_expression(view, node, vocabulary)


def belied_values(
    data: IndexedGraph, places: Places, view: GraphView, vocabulary: Vocabulary
) -> Iterator[Diagnostic]:
    """Measured values whose numbers, unit or tolerance are not those that were written."""
    for node, compared, expression in compared_expressions(data, view, vocabulary):
        shared = _shared_unit(expression)
        for item in expression.items:
            fault = _belied(item, compared, vocabulary, shared) if isinstance(item, Measured) else ""
            if fault:
                yield places.finding("belied-value", fault, node)


def _shared_unit(expression: Expression) -> str | None:
    """The unit of a range, which its upper end states for both: `between 12 and 14 in`."""
    last = expression.items[-1] if expression.form is Form.BETWEEN and expression.items else None
    return unit_written(last.written) if isinstance(last, Measured) else None


def _belied(
    item: Measured, characteristic: Characteristic, vocabulary: Vocabulary, shared_unit: str | None
) -> Words:
    """What to say where a value is not what was written."""
    try:
        again = read_with_tolerance(item.written, characteristic, vocabulary, shared_unit=shared_unit)
    except Unreadable as error:
        return say("what was written cannot be read again: {fault}", fault=error.message)
    if again == item:
        return ""
    return say(
        "`{written}` was written, and the number, unit or ± beside it says otherwise", written=item.written
    )


def belied_sentences(work: Work, spans: Mapping[str, Span]) -> Iterator[Diagnostic]:
    """Instructions whose own sentence says something else than their triples."""
    own_words = own_words_of(work)
    belied: list[Instruction | Duty] = [
        one for one in work.instructions if one.written and not own_words.says(one)
    ]
    belied += [one for one in work.duties if one.written and not own_words.says_duty(one)]
    for line in belied:
        message = say(
            "`{line}` was written as “{written}”, and the record says “{told}”; make the two agree",
            line=line.identifier,
            written=line.written,
            told=line.sentence,
        )
        span = spans.get(line.iri) or spans.get(work.iri) or Span(file="")
        yield Diagnostic(slug="belied-sentence", message=message, span=span, subject=line.identifier)
