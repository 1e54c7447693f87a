"""What an instruction withdraws by superseding it, where nothing speaks in its place: parts, days or cases."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Iterator, Sequence

from intent.analysis.examination.findings import Finding, identifiers, topic_words
from intent.analysis.examination.topic_claims import TopicClaims
from intent.analysis.examination.validity import days_of
from intent.language.message import Message, say
from intent.model.duty import Duty
from intent.model.work import Instruction, Modality
from intent.values.dates import FIRST_DAY, LAST_DAY, ONE_DAY, DaySpan, first_day, last_day
from intent.variance.case import Case

_NOTHING = say("{later} supersedes {earlier}, and then nothing speaks of {topic}")
_FROM_A_DAY = say("{later} supersedes {earlier}, and from {date} on nothing speaks of {topic}")
_UNLESS = say("{later} supersedes {earlier}, and where no condition holds nothing speaks of {topic}")


def left_silent(case: Case, topics: Sequence[TopicClaims]) -> Iterator[Finding]:
    """Each superseding that leaves something of which nothing speaks, told once for all that it leaves."""
    found: dict[tuple[str, str, Message, str], list[tuple[TopicClaims, Instruction, Instruction | Duty]]] = {}
    for topic in topics:
        for line in topic.lines:
            later = _first_superseding(case, line)
            silence = _silence(case, topic, line, later) if later is not None else None
            if later is not None and silence is not None:
                message, date = silence
                what = topic.characteristic.iri if topic.characteristic else str(topic.aggregate)
                key = (later.heading, f"{line.heading} {what}", message, date)
                found.setdefault(key, []).append((topic, line, later))
    for (_, _, message, date), every in found.items():
        earlier = identifiers(line for _, line, _ in every)
        later = every[0][2]
        yield Finding(
            slug="left-silent",
            message=message.filled(
                later=later.identifier,
                earlier=earlier,
                date=date,
                topic=topic_words(case.work, [topic for topic, _, _ in every]),
            ),
            node=later.iri,
            subject=later.identifier,
            lines=(later.identifier, *earlier),
        )


def _first_superseding(case: Case, line: Instruction) -> Instruction | Duty | None:
    return min(case.superseders.get(line.identifier, ()), key=lambda later: first_day(later.on), default=None)


def _silence(
    case: Case, topic: TopicClaims, line: Instruction, later: Instruction | Duty
) -> tuple[Message, str] | None:
    """How what is left is silent on days on which the superseded instruction would have held."""
    last = min(last_day(line.until), _last_before(line.withdrawn))
    gap = DaySpan(max(first_day(line.on), first_day(later.on)), last)
    if gap.last < gap.first:
        return None
    others = [one for one in topic.lines if one is not line]
    spans = [(one, span) for one in others if (span := _speaks(case, one)) is not None and span.overlaps(gap)]
    if not spans:
        return _NOTHING, ""
    day = _first_uncovered(gap, (span for _, span in spans))
    if day is not None:
        return (_NOTHING, "") if day == FIRST_DAY else (_FROM_A_DAY, str(day))
    sure = (span for one, span in spans if not one.conditions or one.modality is Modality.ALLOWED)
    return None if _first_uncovered(gap, sure) is None else (_UNLESS, "")


def _speaks(case: Case, line: Instruction) -> DaySpan | None:
    """The days on which an instruction speaks: a permission also when it is over."""
    return DaySpan(first_day(line.on), LAST_DAY) if line.modality is Modality.ALLOWED else days_of(case, line)


def _first_uncovered(gap: DaySpan, spans: Iterable[DaySpan]) -> datetime.date | None:
    """The first day of a span that none of some others holds."""
    day = gap.first
    for span in sorted(spans, key=lambda one: one.first):
        if span.first <= day <= span.last:
            if span.last >= gap.last:
                return None
            day = span.last + ONE_DAY
    return day


def _last_before(withdrawn: DaySpan | None) -> datetime.date:
    """The last day before something is withdrawn."""
    if withdrawn is None:
        return LAST_DAY
    return withdrawn.first - ONE_DAY if withdrawn.first > FIRST_DAY else FIRST_DAY
