"""A variance as JSON, for other programs: the rows as they are, with identifiers instead of words."""

from __future__ import annotations

import json

from intent.reports.evidence import Evidence
from intent.variance.result import Open, OpenKind, Row, SetAside, Variance, VenueFinding, Verdict

Json = dict[str, object]


def write_json(variance: Variance, evidence: Evidence, *, as_documented: bool = False) -> str:
    """The variance as one JSON object; rows that are as documented only where asked for."""
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
        "verdicts": [_row(row) for row in rows],
        "effects": [],
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
    }


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


def _finding(finding: VenueFinding) -> Json:
    return {"slug": finding.slug, "text": finding.text, "subject": finding.subject, "ask": list(finding.ask)}


def _evidence(evidence: Evidence) -> Json:
    files = [{"role": file.role.value, "name": file.name, "sha256": file.sha256} for file in evidence.files]
    return {"version": evidence.version, "date": evidence.date.isoformat(), "files": files}
