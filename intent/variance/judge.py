"""A proposal judged: every topic, ground by ground and day by day, and the outcome of all."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass, replace

from intent.language.message import Words, closed, joined, say
from intent.model.installation import Installation
from intent.model.work import Instruction, Work
from intent.values.dates import ONE_DAY, DaySpan
from intent.variance.asking import who_could_lift
from intent.variance.case import Case, lay_out
from intent.variance.days import segments
from intent.variance.denials import denials_of
from intent.variance.device_obstacles import device_obstacles
from intent.variance.dilemmas import dilemma_words, dilemmas_about
from intent.variance.found import Found, gravity
from intent.variance.grounds import judge_day, together
from intent.variance.obstacle import Obstacle, Unchecked
from intent.variance.outcome import concluded
from intent.variance.reasons import over_words, reason_for, remarks
from intent.variance.relied_on import resting_words
from intent.variance.result import BROKEN, NOT_COVERED, Effect, Row, RowKey, Variance, Verdict
from intent.variance.topics import EachIndex, Topic, TopicKind, index_lines, topics_of
from intent.variance.verdict import Judgement
from intent.variance.worth_asking import worth_asking


@dataclass(frozen=True, slots=True)
class Ruling:
    """A row with the topic that it answers, and the judgement of the day that counts."""

    row: Row
    topic: Topic
    judgement: Judgement


def judge(work: Work, installation: Installation) -> Variance:
    """The variance of an installation from the work as documented and instructed."""
    return judged(lay_out(work, installation))


def judged(
    case: Case,
    *,
    effects: Sequence[Effect] = (),
    obstacles: Sequence[Obstacle] = (),
    unchecked: Sequence[Unchecked] = (),
) -> Variance:
    """The variance of a case, with what the change does, what stands in its way, and what could not be checked."""
    rows = tuple(ruling.row for ruling in rulings(case))
    found = Variance(
        work=case.work,
        installation=case.installation,
        rows=rows,
        obstacles=(*device_obstacles(case), *obstacles),
        unchecked=tuple(dict.fromkeys(unchecked)),
        effects=tuple(effects),
    )
    return concluded(found, case)


def rulings(case: Case) -> tuple[Ruling, ...]:
    """Every row, worst first, with what it rests on."""
    index, spans = index_lines(case), segments(case)
    found = [ruling for topic in topics_of(case, index) for ruling in _ruling(case, index, topic, spans)]
    order = {key: place for place, key in enumerate(dict.fromkeys(one.row.subject.written for one in found))}
    found.sort(key=lambda one: (-one.row.verdict.badness, order[one.row.subject.written], one.topic.order))
    return tuple(found)


def rows_about(work: Work, installation: Installation, wanted: Collection[RowKey]) -> tuple[Row, ...]:
    """The rows of some subjects and characteristics alone, by their keys, as `judge` gives them."""
    case = lay_out(work, installation)
    index, spans = index_lines(case), segments(case)
    topics = (topic for topic in topics_of(case, index) if (topic.subject.key, topic.name) in wanted)
    return tuple(one.row for topic in topics for one in _ruling(case, index, topic, spans))


def _ruling(case: Case, index: EachIndex, topic: Topic, spans: Sequence[DaySpan]) -> Iterator[Ruling]:
    """The topic's row: the worst verdict of any day, with its days where not all have it."""
    found = [
        (span, judged) for span in spans if (judged := judge_day(case, index, topic, span.first)) is not None
    ]
    if not found:
        return
    gravest = max(judged.judgement.verdict.badness for _, judged in found)
    worst = [(span, judged) for span, judged in found if judged.judgement.verdict.badness == gravest]
    runs = _runs([span for span, _ in worst])
    days = None if len(worst) == len(spans) else DaySpan(runs[0].first, runs[-1].last)
    judged = max((judged for _, judged in worst), key=lambda one: _telling(case, one))
    judgement = together(judged.judgement, [each.judgement for _, each in worst if each is not judged])
    judgement = replace(judgement, open=worth_asking(case, index, topic, spans, judgement))
    row = Row(
        subject=topic.subject,
        characteristic=topic.name,
        term=topic.characteristic.iri if topic.characteristic else None,
        is_whole=topic.kind is TopicKind.AGGREGATE,
        also_counted=_also_counted(topic),
        documented=judged.documented,
        proposed=judged.proposed,
        verdict=judgement.verdict,
        reason="",
        ground=judged.ground,
        governing=(*(said.line for said in judgement.governing), *judgement.excused_by),
        set_aside=judgement.set_aside,
        days=days,
        open=judgement.open,
        offered=_offered(judgement),
        rests_on_practice=gravest >= Verdict.BREACH.badness
        and not any(each.is_broken_beyond_practice for _, each in found),
    )
    row = replace(row, also_against=_also_against(row, [each for _, each in found]))
    day = (days or spans[0]).first
    row = replace(row, denied=denials_of(case, judgement, topic.members, day))
    apart: list[Words] = [say("It is so on {days}.", days=tuple(runs))] if len(runs) > 1 else []
    over = [over_words(case, said) for said in judgement.over] if judgement.verdict.is_departure else []
    resting = resting_words(case, judgement.governing, topic.members, day)
    found_dilemmas = dilemmas_about(case, topic, [span.first for span in spans])
    dilemmas = [closed(dilemma_words(case, dilemma, day)) for dilemma in found_dilemmas]
    reason = joined(
        [
            reason_for(case, row),
            *apart,
            *_remarks(case, topic, row),
            *resting,
            *dict.fromkeys(over),
            *dilemmas,
        ]
    )
    yield Ruling(replace(row, reason=reason, ask=who_could_lift(case, row, day)), topic, judgement)


def _offered(judgement: Judgement) -> tuple[Instruction, ...]:
    return tuple(said.line for said in judgement.offers) if judgement.verdict in NOT_COVERED else ()


def _telling(case: Case, judged: Found) -> tuple[tuple[int, bool], int]:
    """Of days that are equally bad, what is told first: what weighs most, with most open."""
    return gravity(case, judged.judgement), len(judged.judgement.open)


def _also_against(row: Row, found: Sequence[Found]) -> tuple[Instruction, ...]:
    """What else stands against the value on a day on which something does, beside what governs."""
    if row.verdict not in BROKEN:
        found = [judged for judged in found if judged.judgement.verdict is row.verdict]
    against = dict.fromkeys(line for judged in found for line in judged.also_against)
    against |= dict.fromkeys(said.line for judged in found for said in judged.judgement.broken)
    return tuple(line for line in against if line not in row.governing)


def _also_counted(topic: Topic) -> tuple[str, ...]:
    """The members of a whole that its subject, which is named as documented, does not name."""
    if topic.kind is not TopicKind.AGGREGATE:
        return ()
    return tuple(member for member in topic.members if member not in topic.subject.members)


def _remarks(case: Case, topic: Topic, row: Row) -> Iterator[Words]:
    """How the values of a departure came to be compared."""
    if topic.kind is TopicKind.EACH and row.verdict.is_departure and topic.characteristic is not None:
        yield from remarks(case, topic.members[0], topic.characteristic)


def _runs(spans: Sequence[DaySpan]) -> list[DaySpan]:
    """Spans of days, those that follow on without a gap joined."""
    runs = [spans[0]]
    for span in spans[1:]:
        if span.first == runs[-1].last + ONE_DAY:
            runs[-1] = DaySpan(runs[-1].first, span.last)
        else:
            runs.append(span)
    return runs
