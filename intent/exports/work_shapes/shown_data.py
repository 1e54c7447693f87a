"""An installation as data: each part as it is shown, what may be its values, what was attested and consented to.

Nothing here is judged. A value that is not known exactly stands as all that it may be, and one of which nothing is
known as anything; what of the work is meant is named by its IRI.
"""

from __future__ import annotations

from collections.abc import Iterator

from intent.exports.value_shapes import value_in_data
from intent.exports.work_shapes.asked_values import asked_values, every_scope, meant
from intent.exports.work_shapes.canaries import canary_data
from intent.exports.work_shapes.shape_names import THE_SHOWING, ShapeNames
from intent.exports.work_shapes.word_data import answer_blocks, attestation_blocks, day_term
from intent.names import PRESENCE, THE_VENUE, THE_WORK, local_iri
from intent.record.turtle_text import Statement, iri_term, prefix_lines, prologue, subject_block, text_term
from intent.values.dates import DaySpan
from intent.variance.case import Case
from intent.variance.days import segments

COMMENT = """An installation as data, to be validated with the shapes of its work that came with it.
A value that is not known exactly stands here as all that it may be: every name, or bounds of numbers in the reference
unit. Change what is said here, and the answer changes; take something out, and that it is missing is a violation."""


def installation_data(case: Case) -> str:
    """The data graph of an installation as Turtle; the same bytes for the same case."""
    names = ShapeNames(case.work)
    asked = asked_values(case, names)
    classes: dict[str, list[str]] = {}
    for scope in every_scope(case, names):
        for member in case.scopes.of_proposal(scope.assertion):
            classes.setdefault(member, []).append(scope.iri)
    blocks = [subject_block(_installation(case), list(_head(case)))]
    used: dict[str, None] = {}
    for place, subject in enumerate((THE_SHOWING, *_subjects(case)), start=1):
        characteristics = _characteristics(case, subject, asked.get(subject, []))
        used |= dict.fromkeys(characteristics)
        statements = [
            *_identity(case, names, subject, classes.get(subject, [])),
            ("intent:order", str(place)),
            *_values(case, names, subject, characteristics),
        ]
        blocks.append(subject_block(_node(case, "shown", subject), statements))
        blocks += [
            subject_block(_node(case, "days", subject, str(span.first)), _days(case, subject, span))
            for span in segments(case)
        ]
    blocks += [_property(names, characteristic) for characteristic in used]
    blocks += [*attestation_blocks(case), *answer_blocks(case, names), canary_data(names)]
    prefixes = prologue(["intent", "rdf", "rdfs", "term", "xsd"], COMMENT)
    prefixes += prefix_lines({names.prefix: names.namespace})
    return "\n".join([prefixes, *blocks])


def _installation(case: Case) -> str:
    return iri_term(case.installation.iri)


def _node(case: Case, *steps: str) -> str:
    return iri_term(str(local_iri(case.installation.iri, *steps)))


def _head(case: Case) -> Iterator[Statement]:
    dates = case.installation.dates
    yield "a", "intent:Installation"
    yield "rdfs:label", text_term(case.installation.title)
    yield "intent:ofWork", iri_term(case.work.iri)
    yield "intent:fromDay", day_term(dates.first)
    yield "intent:toDay", day_term(dates.last)


def _subjects(case: Case) -> Iterator[str]:
    yield from (part.identifier for part in case.work.parts)
    yield from (addition.identifier for addition in case.installation.additions)
    yield from (material.identifier for material in case.work.material)
    yield from (THE_WORK, THE_VENUE)


def _identity(case: Case, names: ShapeNames, subject: str, scopes: list[str]) -> Iterator[Statement]:
    """What is shown, what speaks of it, and what stands in its place."""
    kinds = ["intent:Shown"] + ["intent:WholeShowing"] * (subject == THE_SHOWING)
    yield "a", ", ".join(dict.fromkeys([*kinds, *sorted(scopes)]))
    yield "intent:inInstallation", _installation(case)
    yield "rdfs:label", text_term(subject)
    if subject == THE_SHOWING:
        yield "intent:shows", _installation(case)
        return
    yield "intent:shows", meant(case, names, subject)
    if subject in case.proposed.devices:
        yield "intent:isAdded", "true" if subject in case.scopes.added else "false"
        device = case.proposed.devices[subject]
        if device:
            yield "intent:shownWith", _node(case, "device", device)


def _characteristics(case: Case, subject: str, asked: list[str]) -> list[str]:
    """What is stated of a subject, and what is asked of it; of a part also whether it is there."""
    there = [PRESENCE] if subject in case.proposed.devices else []
    stated = case.proposed.statements.get(subject, {})
    known = case.vocabulary.characteristics
    return [one for one in dict.fromkeys([*there, *sorted(stated), *sorted(asked)]) if one in known]


def _values(case: Case, names: ShapeNames, subject: str, characteristics: list[str]) -> Iterator[Statement]:
    unknown = []
    for iri in characteristics:
        characteristic = case.vocabulary.characteristics[iri]
        value = case.proposed.value(subject, characteristic)
        yield names.value(iri), ", ".join(value_in_data(value))
        if iri != PRESENCE and not case.proposed.is_given(subject, characteristic):
            unknown.append(names.value(iri))
    if unknown:
        yield "intent:notGiven", ", ".join(unknown)


def _days(case: Case, subject: str, span: DaySpan) -> list[Statement]:
    return [
        ("a", "intent:DaysShown"),
        ("intent:shown", _node(case, "shown", subject)),
        ("intent:fromDay", day_term(span.first)),
        ("intent:toDay", day_term(span.last)),
    ]


def _property(names: ShapeNames, characteristic: str) -> str:
    label = names.vocabulary.characteristics[characteristic].label
    return subject_block(
        names.value(characteristic),
        [
            ("a", "rdf:Property"),
            ("rdfs:label", text_term(label, "en")),
            ("rdfs:subPropertyOf", "intent:shownValue"),
            ("rdfs:seeAlso", iri_term(characteristic)),
        ],
    )
