"""Which verdicts on an installation change because its work's documentation did."""

from __future__ import annotations

from dataclasses import dataclass

from intent.variance.result import Outcome, Row, Variance, Verdict


@dataclass(frozen=True, slots=True)
class Turned:
    """One row whose verdict is another now."""

    subject: str
    characteristic: str
    before: Verdict | None
    """None where nothing was judged."""
    after: Verdict | None
    governing: tuple[str, ...]
    """The instructions that govern it now."""


@dataclass(frozen=True, slots=True)
class Turn:
    """What the change of a documentation does to one installation."""

    title: str
    before: Outcome
    after: Outcome
    rows: tuple[Turned, ...]


def compare_verdicts(old: Variance, new: Variance) -> Turn:
    """The rows whose verdict changes, worst now first; that nothing is judged is as good as documented."""
    before, after = ({(row.subject, row.characteristic): row for row in one.rows} for one in (old, new))
    turned = [
        _turned(before.get(key), after.get(key))
        for key in dict.fromkeys([*after, *before])
        if _weighs(before.get(key)) != _weighs(after.get(key))
    ]
    return Turn(new.installation.title, old.outcome, new.outcome, tuple(turned))


def _weighs(row: Row | None) -> Verdict:
    return row.verdict if row else Verdict.AS_DOCUMENTED


def _turned(before: Row | None, after: Row | None) -> Turned:
    told = after or before
    assert told is not None
    verdicts = (before.verdict if before else None), (after.verdict if after else None)
    lines = tuple(line.identifier for line in after.governing) if after else ()
    return Turned(told.subject, told.characteristic, *verdicts, lines)
