"""Which of the consents that are open in a row are worth asking for: those that could still better it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from intent.model.meaning import unchanged_values
from intent.values.dates import DaySpan
from intent.values.partition import cut
from intent.variance.case import Case
from intent.variance.change import documented_for
from intent.variance.grounds import admitted_by, judge_day
from intent.variance.result import Open, OpenKind
from intent.variance.supposed import answered
from intent.variance.topics import EachIndex, Topic, TopicKind


def worth_asking(
    case: Case, index: EachIndex, topic: Topic, spans: Sequence[DaySpan], opens: Sequence[Open]
) -> tuple[Open, ...]:
    """What is open in a row, without the consents that would not better it even if all else were answered favourably.

    The row is judged again with the answers given; there is no rule of its own here.
    """
    consents = dict.fromkeys(asked for item in opens if (asked := _consent_asked(item)))
    if not consents or any(item.kind is OpenKind.STATEMENT for item in opens):
        # of a condition on other values nobody can tell here which of them would make it hold
        return tuple(opens)

    def badness(world: Case) -> int:
        """How bad the row is on its worst day; as good as can be where there is none."""
        found = (judge_day(world, index, topic, span.first) for span in spans)
        return max((one.judgement.verdict.badness for one in found if one is not None), default=0)

    now, worlds, kept = badness(case), list(_with_values(case, topic, opens)), list(opens)
    for consent in reversed(consents):
        # one after the other, for of two of which each would do one has to be asked for
        others = [item for item in kept if _consent_asked(item) != consent]
        if not any(
            badness(answered(world, kept)) < min(now, badness(answered(world, others))) for world in worlds
        ):
            kept = others
    return tuple(kept)


def _consent_asked(item: Open) -> tuple[str | None, str | None] | None:
    """Whose consent is open, to what: one may be open twice, not given yet and ended later."""
    return (item.person, item.instruction) if item.kind is OpenKind.CONSENT else None


def _with_values(case: Case, topic: Topic, opens: Sequence[Open]) -> Iterator[Case]:
    """The case; where its value is not known well enough, with each value that would be judged otherwise."""
    if topic.kind is not TopicKind.EACH or not any(item.kind is OpenKind.VALUE for item in opens):
        yield case
        return
    assert topic.characteristic is not None
    characteristic, (subject,) = topic.characteristic, topic.members
    documented = documented_for(case, subject, characteristic)
    sets = [admitted_by(case, line, documented) for line in topic.lines]
    sets.append(None if documented is None else unchanged_values(documented, characteristic))
    whole = case.proposed.value(subject, characteristic)
    for piece in cut(whole, [values for values in sets if values is not None]):
        proposed = case.proposed.assuming({(subject, characteristic.iri): piece.values})
        yield replace(case, proposed=proposed)
