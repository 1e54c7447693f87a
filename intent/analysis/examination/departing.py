"""The documented state laid against the instructions: what it departs from, and on which days."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from intent.analysis.examination.findings import Finding, names
from intent.analysis.examination.matters import Matter
from intent.diagnostics import Severity
from intent.language.message import listed
from intent.model.assertions import Aggregate
from intent.model.meaning import scale
from intent.model.phrasing import assertion_words, region_words
from intent.model.work import Instruction, Modality
from intent.values.dates import LAST_DAY, DaySpan
from intent.values.regions import Region
from intent.values.sets import Answer, ValueSet
from intent.variance.aggregates import Amount, amounts
from intent.variance.case import Case
from intent.variance.conditions import admitted_amounts, documented_amounts, lies_among
from intent.variance.days import segments
from intent.variance.says import Inquiry, ask
from intent.variance.scopes import subject_name
from intent.variance.speaking import speakers
from intent.variance.verdict import Weighed, weigh

_BAD = {Modality.REQUIRED: Answer.OUT, Modality.FORBIDDEN: Answer.IN}


@dataclass(frozen=True, slots=True, kw_only=True)
class DocumentedDeparture:
    """A documented value that is against an instruction on some days, and does not fall."""

    line: Instruction
    matter: Matter
    documented: str
    ties_with: tuple[Instruction, ...]
    last: DaySpan
    """The last days on which it does."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stated:
    """One documented value, with what each instruction about it admits."""

    value: ValueSet
    words: str
    lines: tuple[Instruction, ...]
    admitted: Mapping[str, ValueSet | None]


def documented_departs(case: Case, matters: Sequence[Matter]) -> Iterator[Finding]:
    """One finding for each instruction that the documented state departs from, and what speaks for it."""
    spans = segments(case)
    found: dict[tuple[str, ...], list[DocumentedDeparture]] = {}
    for matter in matters:
        for departure in _departures(case, matter, spans):
            ties = (tie.identifier for tie in departure.ties_with)
            found.setdefault((departure.line.identifier, *ties), []).append(departure)
    for every in found.values():
        yield _finding(case, every)


def _finding(case: Case, departures: Sequence[DocumentedDeparture]) -> Finding:
    line = departures[0].line
    message = f"what is documented departs from {line.identifier}: {_told(case, departures)}"
    ties = departures[0].ties_with
    if ties:
        verb = "speaks" if len(ties) == 1 else "speak"
        message += f"; {names(ties)} {verb} for it, and no rule says which prevails"
    last = max(departure.last.last for departure in departures)
    is_past = (line.until is None or last < line.until.last) and last < LAST_DAY
    if is_past:
        message += f"; {line.identifier} held until {last}"
    severity = Severity.NOTE if is_past else Severity.WARNING
    return Finding(
        slug="documented-departs", message=message, node=line.iri, subject=line.identifier, severity=severity
    )


def _told(case: Case, departures: Sequence[DocumentedDeparture]) -> str:
    """The documented values, and whose they are; of a whole that has none, that it is not as the sentence says."""
    line, label = departures[0].line, departures[0].matter.label
    by_value: dict[str, list[str]] = {}
    for departure in departures:
        by_value.setdefault(departure.documented, []).append(departure.matter.subject)
    if "" in by_value:
        holds = "it holds" if line.modality is Modality.FORBIDDEN else "it does not hold"
        return f"{holds} that {assertion_words(line.assertion, case.vocabulary)}"
    of_subjects = (f"{value} for {subject_name(subjects, case.work)}" for value, subjects in by_value.items())
    return f"{label} is documented as {listed(of_subjects)}"


def _departures(case: Case, matter: Matter, spans: Sequence[DaySpan]) -> Iterator[DocumentedDeparture]:
    told: set[str] = set()
    for stated in _documented(case, matter):
        for line in stated.lines:
            answer = lies_among(stated.value, stated.admitted[line.identifier])
            if answer is not _BAD.get(line.modality) or line.identifier in told:
                continue
            days = [
                (span, weighed)
                for span in spans
                if (weighed := _weighed(case, stated, line, matter, span)) and not weighed.falls
            ]
            if days:
                span, weighed = days[-1]
                ties = tuple(said.line for said in weighed.ties_with)
                told.add(line.identifier)
                yield DocumentedDeparture(
                    line=line, matter=matter, documented=stated.words, ties_with=ties, last=span
                )


def _weighed(case: Case, stated: Stated, line: Instruction, matter: Matter, span: DaySpan) -> Weighed | None:
    """How an instruction that the documented value is against fares on some days; none where it is silent."""
    questions = [
        Inquiry(
            speaker=speaker,
            value=stated.value,
            admitted=stated.admitted[speaker.line.identifier],
            text=matter.label,
        )
        for speaker in speakers(case, stated.lines, matter.members, span.first)
    ]
    weighed = weigh(case, ask(case, questions, matter.members, span.first))
    return next((one for one in weighed if one.said.line is line and one.is_sure), None)


def _documented(case: Case, matter: Matter) -> Iterator[Stated]:
    """The documented value; of an aggregate one for each pair, and for each relation."""
    if matter.aggregate is Aggregate.EACH:
        characteristic, member = matter.characteristic, matter.members[0]
        if characteristic is not None and member in case.documented.statements:
            words = case.documented.words(member, characteristic)
            admitted = {claim.line.identifier: claim.admitted for claim in matter.claims}
            yield Stated(
                value=case.documented.value(member, characteristic),
                words=words,
                lines=matter.lines,
                admitted=admitted,
            )
        return
    alike: dict[tuple[object, ...], list[Instruction]] = {}
    for line in matter.lines:
        key = (line.assertion.aggregate, line.assertion.relation, line.assertion.other)
        alike.setdefault(key, []).append(line)
    for lines in alike.values():
        first = lines[0].assertion
        documented = documented_amounts(case, first, matter.members)
        for amount in amounts(first, matter.members, case.documented):
            admitted = {
                line.identifier: admitted_amounts(case, line.assertion, documented.get(amount.members))
                for line in lines
            }
            yield Stated(
                value=amount.value, words=_words(case, matter, amount), lines=tuple(lines), admitted=admitted
            )


def _words(case: Case, matter: Matter, amount: Amount) -> str:
    """A number in words; nothing of a distance, which is held as its square, nor of what is true or not."""
    if matter.aggregate is Aggregate.DISTANCE or not isinstance(amount.value, Region):
        return ""
    compared = scale(matter.aggregate, matter.characteristic, case.vocabulary)
    return region_words(amount.value, compared, case.vocabulary)
