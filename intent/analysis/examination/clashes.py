"""Requirements and prohibitions that no value meets together."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from intent.analysis.examination.compatibility import can_hold_together
from intent.analysis.examination.findings import (
    RULES,
    Finding,
    identifiers,
    topic_words,
    where_conditions_hold,
)
from intent.analysis.examination.topic_claims import TopicClaims
from intent.diagnostics import Severity
from intent.language.message import Words, say
from intent.model.work import Modality
from intent.values.partition import smallest_clashes
from intent.values.sets import are_disjoint, is_within
from intent.variance.case import Case
from intent.variance.precedence import Claim, prevails
from intent.variance.result import Because

Clash = tuple[Claim, ...]


def clashes_of(case: Case, topic: TopicClaims) -> tuple[Clash, ...]:
    """The smallest sets of demands in force together that no value satisfies together."""
    demands = topic.demands
    sets = [topic.satisfied_by[claim.line.identifier] for claim in demands]
    found = (
        tuple(demands[place] for place in sorted(clash)) for clash in smallest_clashes(topic.whole, sets)
    )
    return tuple(
        clash for clash in found if can_hold_together(case, [claim.line for claim in clash], topic.members)
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


def cannot_be_met(case: Case, topics: Sequence[TopicClaims]) -> Iterator[Finding]:
    """One finding for each set of instructions, over all the subjects on which it clashes."""
    found: dict[tuple[tuple[str, ...], tuple[str, ...]], list[tuple[TopicClaims, Clash]]] = {}
    for topic in topics:
        for clash in clashes_of(case, topic):
            verdict = decided(case, clash)
            outcome = (verdict[0].line.identifier, verdict[2].value) if verdict else ()
            key = (tuple(claim.line.identifier for claim in clash), outcome)
            found.setdefault(key, []).append((topic, clash))
    for every in found.values():
        yield _finding(case, [topic for topic, _ in every], every[0][1])


def _finding(case: Case, topics: Sequence[TopicClaims], clash: Clash) -> Finding:
    lines = [claim.line for claim in clash]
    named, last = identifiers(lines), lines[-1]
    gap = where_conditions_hold(_gap(topic_words(case.work, topics), len(clash)), lines)
    if len(clash) == 1:
        message = say("{line} can never be met: {gap}", line=last.identifier, gap=gap)
        return Finding(
            slug="cannot-be-met", message=message, node=last.iri, subject=last.identifier, lines=named
        )
    verdict = decided(case, clash)
    outcome = _undecided(case, clash) if verdict is None else _decided(*verdict)
    fallen = last if verdict is None else verdict[1].line
    return Finding(
        slug="cannot-be-met",
        message=say(
            "{lines} cannot be met together: {gap}; {outcome}", lines=named, gap=gap, outcome=outcome
        ),
        node=fallen.iri,
        subject=fallen.identifier,
        lines=named,
        severity=Severity.WARNING if verdict is None else Severity.NOTE,
    )


def _gap(topic: Words, number: int) -> Words:
    match number:
        case 1:
            return say("no {topic} satisfies it", topic=topic)
        case 2:
            return say("no {topic} satisfies both", topic=topic)
    return say("no {topic} satisfies all {number}", topic=topic, number=number)


def _decided(winner: Claim, loser: Claim, because: Because) -> Words:
    return say(
        "{line} prevails, since {because}, and {other} never counts there",
        line=winner.line.identifier,
        because=RULES[because],
        other=loser.line.identifier,
    )


def _undecided(case: Case, clash: Clash) -> Words:
    if len(clash) > 2:
        return say("meeting some of them excuses from none of the others")
    for winner, loser in (clash, clash[::-1]):
        if prevails(case, winner, loser) is not None:
            return say(
                "{line} prevails, but a prohibition does not excuse from {other}",
                line=winner.line.identifier,
                other=loser.line.identifier,
            )
    return say("nothing decides between {lines}", lines=identifiers(claim.line for claim in clash))
