"""Requirements and prohibitions that no value meets together."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from intent.analysis.examination.findings import RULES, Finding, about, in_force_on, names
from intent.analysis.examination.matters import Matter
from intent.analysis.examination.pieces import smallest_clashes
from intent.analysis.examination.together import can_hold_together
from intent.diagnostics import Severity
from intent.model.work import Modality
from intent.values.sets import are_disjoint, is_within
from intent.variance.case import Case
from intent.variance.precedence import Claim, prevails
from intent.variance.result import Because

Clash = tuple[Claim, ...]


def clashes_of(case: Case, matter: Matter) -> tuple[Clash, ...]:
    """The smallest sets of demands in force together that no value satisfies together."""
    demands = matter.demands
    sets = [matter.satisfied_by[claim.line.identifier] for claim in demands]
    found = (
        tuple(demands[place] for place in sorted(clash)) for clash in smallest_clashes(matter.whole, sets)
    )
    return tuple(
        clash for clash in found if can_hold_together(case, [claim.line for claim in clash], matter.members)
    )


def decided(case: Case, clash: Clash) -> tuple[Claim, Claim, Because] | None:
    """Of two that clash, the one that prevails, the one that falls to it, and the rule.

    Only a requirement that is met makes another instruction fall; three that clash only together fall to none.
    """
    if len(clash) != 2:
        return None
    for winner, loser in (clash, clash[::-1]):
        because = prevails(case, winner, loser)
        if (
            because is not None
            and winner.line.modality is Modality.REQUIRED
            and _leaves_nothing(winner, loser)
        ):
            return winner, loser, because
    return None


def _leaves_nothing(winner: Claim, loser: Claim) -> bool:
    """Whether meeting the first is always against the second."""
    mine, other = winner.admitted, loser.admitted
    if mine is None or other is None:
        return False
    return is_within(mine, other) if loser.line.modality is Modality.FORBIDDEN else are_disjoint(mine, other)


def cannot_be_met(case: Case, matters: Sequence[Matter]) -> Iterator[Finding]:
    """One finding for each set of instructions, over all the subjects on which it clashes."""
    found: dict[tuple[tuple[str, ...], tuple[str, ...]], list[tuple[Matter, Clash]]] = {}
    for matter in matters:
        for clash in clashes_of(case, matter):
            verdict = decided(case, clash)
            outcome = (verdict[0].line.identifier, verdict[2].value) if verdict else ()
            key = (tuple(claim.line.identifier for claim in clash), outcome)
            found.setdefault(key, []).append((matter, clash))
    for every in found.values():
        yield _finding(case, [matter for matter, _ in every], every[0][1])


def _finding(case: Case, matters: Sequence[Matter], clash: Clash) -> Finding:
    lines = [claim.line for claim in clash]
    last = lines[-1]
    subject, where = about(case.work, matters), in_force_on(lines)
    if len(clash) == 1:
        message = f"{last.identifier} can never be met: no {subject} satisfies it{where}"
        return Finding(slug="cannot-be-met", message=message, node=last.iri, subject=last.identifier)
    together = "both" if len(clash) == 2 else f"all {len(clash)}"
    message = f"{names(lines)} cannot be met together: no {subject} satisfies {together}{where}; "
    verdict = decided(case, clash)
    if verdict is None:
        message += _undecided(case, clash)
        return Finding(slug="cannot-be-met", message=message, node=last.iri, subject=last.identifier)
    winner, loser, because = verdict
    message += f"{winner.line.identifier} prevails, since {RULES[because]}, "
    message += f"and {loser.line.identifier} never counts there"
    return Finding(
        slug="cannot-be-met",
        message=message,
        node=loser.line.iri,
        subject=loser.line.identifier,
        severity=Severity.NOTE,
    )


def _undecided(case: Case, clash: Clash) -> str:
    if len(clash) > 2:
        return "meeting some of them excuses from none of the others"
    one, two = clash
    for winner, loser in (clash, clash[::-1]):
        if prevails(case, winner, loser) is not None:
            return f"{winner.line.identifier} prevails, but a prohibition does not excuse from {loser.line.identifier}"
    return f"nothing decides between {one.line.identifier} and {two.line.identifier}"
