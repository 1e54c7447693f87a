"""A work's instructions for one installation as a SHACL shapes graph, and the installation as plain data.

Any engine that knows SHACL Core then finds what is found here: `sh:Violation` exactly where the verdict is forbidden
or breach, `sh:Warning` where it is contradiction, unknown, uncovered or conditional, and nothing else but the canary,
which must fail. Which instruction prevails is settled before; what fell is there too, deactivated, with the reason.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from intent.exports.value_shapes import (
    Statements,
    must_leave,
    must_lie_in,
    must_lie_out,
    must_touch,
    value_in_data,
)
from intent.language.locale import ENGLISH
from intent.language.message import Words
from intent.model.meaning import unchanged_values
from intent.model.work import Instruction, Modality
from intent.names import local_iri
from intent.record.turtle_text import iri_term, nested_node, prologue, subject_block, text_term
from intent.values.sets import ANY_LABEL, Answer, ValueSet
from intent.variance.case import Case
from intent.variance.change import documented_for
from intent.variance.conditions import lies_among
from intent.variance.judge import Ruling, rulings
from intent.variance.result import Row, SetAside, Verdict
from intent.variance.says import Said

VIOLATION, WARNING = "sh:Violation", "sh:Warning"
SEVERITIES = {
    Verdict.FORBIDDEN: VIOLATION,
    Verdict.BREACH: VIOLATION,
    Verdict.CONTRADICTION: WARNING,
    Verdict.UNKNOWN: WARNING,
    Verdict.UNCOVERED: WARNING,
    Verdict.CONDITIONAL: WARNING,
    Verdict.ALLOWED: WARNING,
    Verdict.AS_REQUIRED: VIOLATION,
}
"""Of what fails in a row of each verdict; what is allowed or as required is asked too, and does not fail."""
CANARY = "canary"
GIVEN = "intent:given"
DATA_COMMENT = """An installation as plain data, to be validated with the shapes graph that came with it.
A value that is not known exactly stands here as all that it may be: every name, or bounds of numbers."""
SHAPES_COMMENT = """The instructions for one installation as shapes of SHACL Core (W3C Recommendation, 20 July 2017).
sh:Violation: an instruction is broken. sh:Warning: something is to be settled first.
The shape called canary must fail: an engine that does not report it has not read these shapes."""


@dataclass(frozen=True, slots=True)
class ShaclGraphs:
    """The two graphs, as Turtle."""

    shapes: str
    data: str


def export_shacl(case: Case) -> ShaclGraphs:
    """The shapes and the data of one installation; the same bytes for the same case."""
    found = [one for one in rulings(case) if one.row.verdict in SEVERITIES]
    numbered = [(f"row-{place}", one) for place, one in enumerate(found, start=1)]
    shapes = [_shape(case, name, ruling) for name, ruling in numbered]
    data = [subject_block(_node(case, name), list(_facts(case, name, ruling))) for name, ruling in numbered]
    canary = _node(case, CANARY)
    data.append(subject_block(canary, [("a", "intent:Fact"), ("intent:fails", "true")]))
    shapes.append(_canary(case, canary))
    counted = dict.fromkeys(path for one in found for path in _values(case, one) if path != GIVEN)
    data += [
        subject_block(path, [("a", "rdf:Property"), ("rdfs:subPropertyOf", "intent:counted")])
        for path in counted
    ]
    used = ["intent", "rdf", "rdfs", "sh", "term", "xsd"]
    return ShaclGraphs(
        shapes="\n".join([prologue(used, SHAPES_COMMENT), *shapes]),
        data="\n".join([prologue(used, DATA_COMMENT), *data]),
    )


def _text(words: Words) -> str:
    return text_term(ENGLISH.say(words))


def _english(words: Words) -> str:
    return text_term(ENGLISH.say(words), ENGLISH.tag)


def _node(case: Case, name: str) -> str:
    return iri_term(str(local_iri(case.installation.iri, "fact", name)))


def _canary(case: Case, canary: str) -> str:
    never = [("sh:path", "intent:fails"), ("sh:hasValue", "false")]
    said = _english("This shape must fail. If it did not, nothing here was checked.")
    return subject_block(
        iri_term(str(local_iri(case.installation.iri, "shape", CANARY))),
        [
            ("a", "sh:NodeShape"),
            ("sh:targetNode", canary),
            ("sh:property", nested_node([*never, ("sh:severity", VIOLATION), ("sh:message", said)])),
        ],
    )


def _facts(case: Case, name: str, ruling: Ruling) -> Iterator[tuple[str, str]]:
    row = ruling.row
    yield "a", "intent:Fact"
    yield "intent:subjectName", text_term(row.subject.written)
    yield "intent:characteristicName", _text(row.characteristic)
    if row.term:
        yield "intent:characteristic", iri_term(row.term)
    yield "intent:proposed", _text(row.proposed)
    yield "intent:documented", _text(row.documented)
    for path, value in _values(case, ruling).items():
        yield path, ", ".join(value_in_data(value))
    opens = [text_term(_open_text(row, place)) for place in range(len(row.open))]
    if opens:
        yield "intent:openText", ", ".join(opens)


def _open_text(row: Row, place: int) -> str:
    item = row.open[place]
    return " ".join(filter(None, [item.kind.value, item.person, ENGLISH.say(item.text)])) + f" ({place + 1})"


def _values(case: Case, ruling: Ruling) -> dict[str, ValueSet]:
    """The values that instructions were asked about, by path; as a rule one, for presence also numbers."""
    found: dict[str, ValueSet] = {}
    for said in ruling.judgement.governing:
        found.setdefault(_path(case, ruling, said), said.value)
    if not found:
        found[GIVEN] = _given(case, ruling)
    return found


def _given(case: Case, ruling: Ruling) -> ValueSet:
    """The proposed value where no instruction was asked about it."""
    characteristic, members = ruling.topic.characteristic, ruling.topic.members
    if characteristic is None or len(members) != 1:
        return ANY_LABEL
    return case.proposed.value(members[0], characteristic)


def _path(case: Case, ruling: Ruling, said: Said) -> str:
    """One path for what is asked of one value: numbers of several scopes are several, with paths of their own."""
    measures = list(dict.fromkeys(one.claim.measure for one in ruling.judgement.governing))
    place = measures.index(said.claim.measure)
    return _node(case, f"counted-{place + 1}") if said.claim.measure else GIVEN


def _shape(case: Case, name: str, ruling: Ruling) -> str:
    row = ruling.row
    statements = [("a", "sh:NodeShape"), ("sh:targetNode", _node(case, name))]
    statements += [("rdfs:comment", _english(comment)) for comment in _comments(row)]
    statements += [("sh:property", nested_node(constraint)) for constraint in _constraints(case, ruling)]
    return subject_block(iri_term(str(local_iri(case.installation.iri, "shape", name))), statements)


def _comments(row: Row) -> Iterator[str]:
    named = f"{row.subject.written}, {ENGLISH.say(row.characteristic)}: {row.verdict.value}."
    yield ENGLISH.say(row.reason) or named
    yield from (f"{one.instruction} is set aside by {one.by}: {one.because.value}." for one in row.set_aside)


def _constraints(case: Case, ruling: Ruling) -> Iterator[Statements]:
    row, severity = ruling.row, SEVERITIES[ruling.row.verdict]
    for said in ruling.judgement.governing:
        asked = _asked(_path(case, ruling, said), said)
        if asked:
            yield [*asked, ("sh:severity", severity), ("sh:message", _english(_message(case, said.line)))]
    if row.verdict is Verdict.CONDITIONAL:
        yield _warning([("sh:path", "intent:openText"), ("sh:maxCount", "0")], row.reason)
    elif row.verdict in {Verdict.UNKNOWN, Verdict.UNCOVERED} and not ruling.judgement.governing:
        yield _warning(_as_documented(case, ruling), row.reason)
    for fallen in row.set_aside:
        yield from _deactivated(case, ruling, fallen)


def _warning(asked: Statements, message: Words) -> Statements:
    return [*asked, ("sh:severity", WARNING), ("sh:message", _english(message))]


def _asked(path: str, said: Said) -> Statements:
    """The constraint that fails just where an instruction says against, perhaps against, or perhaps permits."""
    admitted = said.claim.admitted
    if admitted is None:
        return [("sh:path", path), ("sh:in", "()")]
    answer = lies_among(said.value, admitted)
    is_forbidding = said.line.modality is Modality.FORBIDDEN
    if said.line.modality is Modality.ALLOWED:
        return must_lie_in(path, admitted)
    if is_forbidding:
        return must_lie_out(path, admitted) if answer is Answer.OPEN else must_leave(path, admitted)
    return must_lie_in(path, admitted) if answer is Answer.OPEN else must_touch(path, admitted)


def _as_documented(case: Case, ruling: Ruling) -> Statements:
    """That the value is the documented one; where none is documented, nothing satisfies."""
    characteristic, members = ruling.topic.characteristic, ruling.topic.members
    if characteristic is None or len(members) != 1 or ruling.row.verdict is Verdict.UNKNOWN:
        return [("sh:path", GIVEN), ("sh:in", "()")]
    documented = documented_for(case, members[0], characteristic)
    if documented is None:
        return [("sh:path", GIVEN), ("sh:in", "()")]
    return must_lie_in(GIVEN, unchanged_values(documented, characteristic))


def _deactivated(case: Case, ruling: Ruling, fallen: SetAside) -> Iterator[Statements]:
    """What fell, for readers: the sentence and the rule, asked by nobody."""
    line = case.work.instruction(fallen.instruction)
    if line is None:
        return
    said = f"{_message(case, line)} Set aside by {fallen.by}: {fallen.because.value}."
    yield [
        ("sh:path", GIVEN),
        ("sh:minCount", "1"),
        ("sh:deactivated", "true"),
        ("sh:severity", WARNING),
        ("sh:message", _english(said)),
    ]


def _message(case: Case, line: Instruction) -> str:
    """The instruction as its writer put it, with the words said, where they are recorded."""
    heading = case.work.heading(line.heading)
    quoted = f" “{heading.words}”" if heading and heading.words else ""
    return f"{line.identifier}: {line.modality.value}: {line.sentence}.{quoted}"
