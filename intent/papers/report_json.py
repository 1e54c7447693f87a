"""A variance as JSON, for other programs: the rows as they are, with identifiers instead of names, in English."""

from __future__ import annotations

import json
from collections.abc import Sequence
from typing import TYPE_CHECKING

from intent.language.locale import ENGLISH
from intent.model.instruction_text import condition_text
from intent.model.subject import Subject, SubjectKind
from intent.papers.obstacles_told import obstacle_words
from intent.papers.report_evidence import Evidence
from intent.planning.duties_due import DueDuty, duties_due
from intent.values.regions import Interval
from intent.variance.denial import Denial
from intent.variance.obstacle import Need, Obstacle, needs_words
from intent.variance.result import (
    Effect,
    Open,
    OpenKind,
    Row,
    RowKey,
    SetAside,
    Variance,
    Verdict,
)
from intent.variance.venue_asked import who_is_asked
from intent.vocabulary.terms import Vocabulary

if TYPE_CHECKING:
    from intent.analysis.history.precedents import Forerunners, Precedent

Json = dict[str, object]


def write_json(
    variance: Variance,
    evidence: Evidence,
    *,
    as_documented: bool = False,
    standings: Sequence[Forerunners] = (),
) -> str:
    """The variance as one JSON object; rows that are as documented only where asked for."""
    before = _shown_before(standings)
    rows = [row for row in variance.rows if as_documented or row.verdict is not Verdict.AS_DOCUMENTED]
    installation = variance.installation
    document: Json = {
        "work": {"title": variance.work.title, "iri": variance.work.iri},
        "installation": {
            "title": installation.title,
            "date": installation.dates.first.isoformat(),
            "until": installation.dates.last.isoformat(),
            "iri": installation.iri,
            "venue": installation.venue,
        },
        "outcome": variance.outcome.value,
        "refer_to": list(variance.refer_to),
        "verdicts": [{**_row(row), **before.get(row.key, {})} for row in rows],
        "obstacles": [_obstacle(variance, obstacle) for obstacle in variance.obstacles],
        "effects": [_effect(effect) for effect in variance.effects],
        "notes": [ENGLISH.say(note) for note in variance.notes],
        "sentence": ENGLISH.say(variance.sentence),
        "denied": ENGLISH.say(variance.denied),
        "not_checked": list(
            map(ENGLISH.say, needs_words(Need(one.limit, one.subject) for one in variance.unchecked))
        ),
        "duties": [_duty(due, variance.work.vocabulary) for due in duties_due(variance.work, installation)],
        "evidence": _evidence(evidence),
    }
    return json.dumps(document, ensure_ascii=False, indent=2) + "\n"


def _row(row: Row) -> Json:
    return {
        "subject": row.subject.written,
        "characteristic": ENGLISH.say(row.characteristic),
        "documented": ENGLISH.say(row.documented),
        "proposed": ENGLISH.say(row.proposed),
        "verdict": row.verdict.value,
        "governing": [line.identifier for line in row.governing],
        "set_aside": [_set_aside(fallen) for fallen in row.set_aside],
        "ground": row.ground,
        "days": f"{row.days.first.isoformat()}/{row.days.last.isoformat()}" if row.days else None,
        "open": [_open(item) for item in row.open],
        "members": [*member_names(row.subject), *row.also_counted],
        "term": row.term,
        "reason": ENGLISH.say(row.reason),
        "ask": list(row.ask),
        "also_against": [line.identifier for line in row.also_against],
        "denied": [_denial(one) for one in row.denied],
    }


def _denial(one: Denial) -> Json:
    """What was refused, and by whom; or what is attested, where that speaks against the value."""
    if one.refused_by:
        return {"instruction": one.instruction, "refused_by": one.refused_by}
    return {"instruction": one.instruction, "fact": one.fact, "holds": one.holds}


def member_names(subject: Subject) -> tuple[str, ...]:
    """The identifiers that a subject stands for; the work and the venue by their names."""
    is_whole = subject.kind in {SubjectKind.WORK, SubjectKind.VENUE}
    return (subject.written,) if is_whole else subject.members


def _shown_before(standings: Sequence[Forerunners]) -> dict[RowKey, Json]:
    """What was shown before, by row; nothing of rows that have no precedent."""
    return {one.key: _standing(one) for one in standings}


def _standing(standing: Forerunners) -> Json:
    """The precedents and steps of one row; only what there is."""
    told: Json = {}
    if standing.precedents:
        told["precedents"] = [_precedent(one) for one in standing.precedents]
    if len(standing.steps) > 1:
        told["steps"] = {
            "count": len(standing.steps),
            "documented": ENGLISH.say(standing.documented),
            "values": [
                {
                    "installation": one.installation.title,
                    "date": one.installation.dates.first.isoformat(),
                    "value": ENGLISH.say(one.value),
                    "distance": ENGLISH.say(one.distance) or None,
                }
                for one in standing.steps
            ],
            "distance": ENGLISH.say(standing.distance) or None,
        }
    return told


def _precedent(one: Precedent) -> Json:
    return {
        "installation": one.installation.title,
        "iri": one.installation.iri,
        "date": one.installation.dates.first.isoformat(),
        "until": one.installation.dates.last.isoformat(),
        "reach": one.reach.value,
        "value": ENGLISH.say(one.value),
        "verdict": one.verdict.value if one.verdict else None,
        "consents": list(one.consents),
    }


def _set_aside(fallen: SetAside) -> Json:
    return {"instruction": fallen.instruction, "by": fallen.by, "because": fallen.because.value}


def _open(item: Open) -> Json:
    """A consent names its person first, everything else what it is about; what is not known is left out."""
    keys = ("person", "text") if item.kind is OpenKind.CONSENT else ("text", "person")
    known = {"text": ENGLISH.say(item.text), "person": item.person, "instruction": item.instruction}
    answer = {} if item.answer else {"answer": False}
    return {
        "kind": item.kind.value,
        **{key: known[key] for key in (*keys, "instruction") if known[key]},
        **answer,
    }


def _effect(effect: Effect) -> Json:
    """One quantity before and after: a number, or both its bounds, `null` where there is no end."""
    return {
        "topic": effect.topic.value,
        "members": list(effect.subject.members),
        "quantity": ENGLISH.say(effect.quantity),
        "unit": effect.unit,
        "documented": _bounds(effect.documented),
        "proposed": _bounds(effect.proposed),
        "change": _bounds(effect.change),
        "text": ENGLISH.say(effect.sentence),
        "source": ENGLISH.say(effect.source),
        "missing": [ENGLISH.say(one) for one in effect.missing],
    }


def _bounds(bounds: Interval | None) -> object:
    if bounds is None:
        return None
    low, high = (None if end is None else float(end) for end in (bounds.low, bounds.high))
    return low if low == high else [low, high]


def _obstacle(variance: Variance, obstacle: Obstacle) -> Json:
    return {
        "text": ENGLISH.say(obstacle_words(obstacle)),
        "sure": obstacle.is_sure,
        "as_documented": obstacle.is_as_documented,
        "missing": [ENGLISH.say(need) for need in needs_words(obstacle.missing)],
        "slug": obstacle.slug,
        "subject": obstacle.subject.written,
        "ask": list(who_is_asked(variance.work, variance.installation, obstacle)),
    }


def _duty(due: DueDuty, vocabulary: Vocabulary) -> Json:
    """Something to be done; of what recurs, how many times there are, and in how many it is attested as done."""
    duty, days = due.duty, due.days
    recurs = {"every": duty.timing.every, "times": due.times, "times_done": due.times_done}
    return {
        "duty": duty.identifier,
        "text": duty.what,
        "person": due.person,
        "role": vocabulary.named(duty.role).label_in("en") if duty.role else None,
        "first": days.first.isoformat() if days.first else None,
        "last": days.last.isoformat() if days.last else None,
        "done": due.is_done,
        "open": [condition_text(condition, vocabulary) for condition in due.open],
        **(recurs if duty.timing.every is not None else {}),
    }


def _evidence(evidence: Evidence) -> Json:
    files = [{"role": file.role.value, "name": file.name, "sha256": file.sha256} for file in evidence.files]
    return {"version": evidence.version, "date": evidence.date.isoformat(), "files": files}
