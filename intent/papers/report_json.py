"""A variance as JSON, for other programs: the rows as they are, with identifiers instead of words."""

from __future__ import annotations

import json
from collections.abc import Sequence
from typing import TYPE_CHECKING

from intent.papers.report_evidence import Evidence
from intent.values.regions import Interval
from intent.variance.result import Effect, Open, OpenKind, Row, SetAside, Variance, VenueFinding, Verdict

if TYPE_CHECKING:
    from intent.analysis.history.precedents import Forerunners

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
        "verdicts": [{**_row(row), **before.get((row.subject, row.characteristic), {})} for row in rows],
        "effects": [_effect(effect) for effect in variance.effects],
        "notes": list(variance.notes),
        "sentence": variance.sentence,
        "findings": [_finding(finding) for finding in variance.findings],
        "evidence": _evidence(evidence),
    }
    return json.dumps(document, ensure_ascii=False, indent=2) + "\n"


def _row(row: Row) -> Json:
    return {
        "subject": row.subject,
        "characteristic": row.characteristic,
        "documented": row.documented,
        "proposed": row.proposed,
        "verdict": row.verdict.value,
        "governing": [line.identifier for line in row.governing],
        "set_aside": [_set_aside(fallen) for fallen in row.set_aside],
        "ground": row.ground,
        "days": f"{row.days.first.isoformat()}/{row.days.last.isoformat()}" if row.days else None,
        "open": [_open(item) for item in row.open],
        "members": list(row.members),
        "term": row.term,
        "reason": row.reason,
        "ask": list(row.ask),
        "also_against": [line.identifier for line in row.also_against],
    }


def _shown_before(standings: Sequence[Forerunners]) -> dict[tuple[str, str], Json]:
    """What was shown before, by row; nothing of rows that have no precedent."""
    if not standings:
        return {}
    from intent.papers.precedents_told import by_row, standing_for_programs

    return {key: standing_for_programs(one) for key, one in by_row(standings).items()}


def _set_aside(fallen: SetAside) -> Json:
    return {"instruction": fallen.instruction, "by": fallen.by, "because": fallen.because.value}


def _open(item: Open) -> Json:
    """A consent names its person first, everything else what it is about; what is not known is left out."""
    keys = ("person", "text") if item.kind is OpenKind.CONSENT else ("text", "person")
    known = {"text": item.text, "person": item.person, "instruction": item.instruction}
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
        "members": list(effect.members),
        "quantity": effect.quantity,
        "unit": effect.unit,
        "documented": _bounds(effect.documented),
        "proposed": _bounds(effect.proposed),
        "change": _bounds(effect.change),
        "text": str(effect.sentence),
        "source": effect.source,
        "missing": list(effect.missing),
    }


def _bounds(bounds: Interval | None) -> object:
    if bounds is None:
        return None
    low, high = (None if end is None else float(end) for end in (bounds.low, bounds.high))
    return low if low == high else [low, high]


def _finding(finding: VenueFinding) -> Json:
    return {"slug": finding.slug, "text": finding.text, "subject": finding.subject, "ask": list(finding.ask)}


def _evidence(evidence: Evidence) -> Json:
    files = [{"role": file.role.value, "name": file.name, "sha256": file.sha256} for file in evidence.files]
    return {"version": evidence.version, "date": evidence.date.isoformat(), "files": files}
