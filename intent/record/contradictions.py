"""Two statements about one thing that cannot both be true: a height beside another position, black above white."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from intent.diagnostics import Diagnostic, Span
from intent.language.message import say
from intent.model.assertions import Expression, Statements
from intent.model.installation import Installation
from intent.model.meaning import given_value, is_relative, unchanged_values
from intent.model.work import Work
from intent.values.bounds import surely_above
from intent.values.regions import Region
from intent.values.sets import are_disjoint
from intent.vocabulary.named_term import local_name
from intent.vocabulary.terms import Characteristic, Vocabulary

_NOWHERE = Span(file="")
_BELIED = say(
    "{characteristic} of {part} is {value}, but its {other} says {other_value}: both cannot be true; "
    "correct one of them, or leave out the {characteristic}"
)
_ABOVE = say(
    "{characteristic} of {part} is {value}, above its {other}, {other_value}: both cannot be true; correct one of them"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Contradiction:
    """What is stated of a characteristic, and of the one of which it says a part again, or that is never less."""

    characteristic: Characteristic
    stated: Expression
    other: Characteristic
    other_stated: Expression


def contradictions(statements: Statements, vocabulary: Vocabulary) -> Iterator[Contradiction]:
    """What no value could be, beyond the vocabulary's tolerance."""
    for iri, stated in statements.items():
        characteristic = vocabulary.characteristics[iri]
        for other_iri, cannot_be in (
            (characteristic.never_above, _is_above),
            (characteristic.restates, _belies),
        ):
            other_stated = statements.get(other_iri or "")
            if other_stated is None or is_relative(stated) or is_relative(other_stated):
                continue
            other = vocabulary.characteristics[other_iri or ""]
            value = given_value(stated, characteristic, vocabulary)
            beside = given_value(other_stated, other, vocabulary)
            if (
                isinstance(value, Region)
                and isinstance(beside, Region)
                and cannot_be(characteristic, value, beside)
            ):
                yield Contradiction(
                    characteristic=characteristic, stated=stated, other=other, other_stated=other_stated
                )


def _is_above(_: Characteristic, value: Region, limit: Region) -> bool:
    """Whether it surely lies above a value of the same thing that is never less: black above white."""
    return surely_above(value.bounds, limit.bounds)


def _belies(characteristic: Characteristic, value: Region, whole: Region) -> bool:
    """Whether it is surely not the number of a position that it says again."""
    axis = "xyz".find(characteristic.restates_axis)
    if not characteristic.restates_axis or not 0 <= axis < len(whole.whole):
        return False
    again = Region(tuple((box[axis],) for box in whole.boxes), value.whole)
    return are_disjoint(unchanged_values(value, characteristic), again)


def contradictions_in_work(work: Work, spans: Mapping[str, Span]) -> Iterator[Diagnostic]:
    """An error at each statement of a part that another of the same part belies."""
    for part in work.parts:
        for found in contradictions(part.statements, work.vocabulary):
            yield _finding(found, part.identifier, part.iri, spans, work.iri)


def contradictions_in_installation(
    work: Work, installation: Installation, spans: Mapping[str, Span]
) -> Iterator[Diagnostic]:
    """The same of what a proposal states, beside what stays as documented."""
    documented = {part.identifier: part.statements for part in work.parts}
    stating = [
        *((one.part, one.iri, one.statements) for one in installation.substitutions),
        *((one.part, one.iri, one.statements) for one in installation.changes),
        *((one.identifier, one.iri, one.statements) for one in installation.additions),
    ]
    proposed = dict[str, Statements]()
    for name, iri, statements in stating:
        proposed[name] = {**proposed.get(name, documented.get(name, {})), **statements}
        for found in contradictions(proposed[name], work.vocabulary):
            if found.characteristic.iri in statements or found.other.iri in statements:
                yield _finding(found, name, iri, spans, installation.iri)


def _finding(found: Contradiction, name: str, node: str, spans: Mapping[str, Span], root: str) -> Diagnostic:
    statement = f"{node}.{local_name(found.characteristic.iri)}"
    is_above = found.characteristic.never_above == found.other.iri
    message = (_ABOVE if is_above else _BELIED).filled(
        characteristic=found.characteristic,
        part=name,
        value=found.stated.written,
        other=found.other,
        other_value=found.other_stated.written,
    )
    span = spans.get(statement) or spans.get(node) or spans.get(root) or _NOWHERE
    return Diagnostic(slug="disagreement", message=message, span=span, subject=name)
