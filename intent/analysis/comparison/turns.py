"""Which verdicts on an installation change because its work's documentation did."""

from __future__ import annotations

from dataclasses import dataclass

from intent.language.message import Words
from intent.model.subject import Subject
from intent.variance.result import Outcome, Row, Variance, Verdict


@dataclass(frozen=True, slots=True, kw_only=True)
class Turned:
    """One row whose verdict is another now."""

    subject: Subject
    characteristic: Words
    before: Verdict | None
    """None where nothing was judged."""
    after: Verdict | None
    governing: tuple[str, ...]
    """The instructions that govern it now."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Turn:
    """What the change of a documentation does to one installation."""

    title: str
    before: Outcome
    after: Outcome
    rows: tuple[Turned, ...]


def compare_verdicts(old: Variance, new: Variance) -> Turn:
    """The rows whose verdict changes, worst now first; that nothing is judged is as good as documented."""
    before, after = ({row.key: row for row in one.rows} for one in (old, new))
    turned = [
        _turned(before.get(key), after.get(key))
        for key in dict.fromkeys([*after, *before])
        if _weighs(before.get(key)) != _weighs(after.get(key))
    ]
    return Turn(title=new.installation.title, before=old.outcome, after=new.outcome, rows=tuple(turned))


def _weighs(row: Row | None) -> Verdict:
    return row.verdict if row else Verdict.AS_DOCUMENTED


def _turned(before: Row | None, after: Row | None) -> Turned:
    told = after or before
    assert told is not None
    lines = tuple(line.identifier for line in after.governing) if after else ()
    return Turned(
        subject=told.subject,
        characteristic=told.characteristic,
        before=before.verdict if before else None,
        after=after.verdict if after else None,
        governing=lines,
    )
