"""Which of the consents that are open in a row are worth asking for: those that could still better it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from intent.model.meaning import unchanged_values
from intent.values.dates import DaySpan
from intent.values.partition import cut
from intent.variance.case import Case
from intent.variance.change import documented_for
from intent.variance.grounds import judge_day
from intent.variance.inquiring import admitted_by
from intent.variance.result import Open, OpenKind, Verdict
from intent.variance.supposed import answered
from intent.variance.topics import EachIndex, Topic, TopicKind
from intent.variance.verdict import Judgement


def worth_asking(
    case: Case, index: EachIndex, topic: Topic, spans: Sequence[DaySpan], judgement: Judgement
) -> tuple[Open, ...]:
    """What is open in a row, without the consents that would not better it even if all else were answered favourably.

    The row is judged again with the answers given; there is no rule of its own here. A conditional row says at least
    on what: somebody whose time begins within the showing cannot consent for its first days, and is asked all the same.
    """
    opens = judgement.open
    consents = dict.fromkeys(asked for item in opens if (asked := _consent_asked(item)))
    worlds = list(_worlds(case, topic, opens)) if consents else []
    if not worlds:
        return opens

    def badness(world: Case) -> int:
        """How bad the row is on its worst day; as good as can be where there is none."""
        found = (judge_day(world, index, topic, span.first) for span in spans)
        return max((one.judgement.verdict.badness for one in found if one is not None), default=0)

    now, kept = badness(case), list(opens)
    for consent in reversed(consents):
        # one after the other, for of two of which each would do one has to be asked for
        others = [item for item in kept if _consent_asked(item) != consent]
        if not any(
            badness(answered(world, kept)) < min(now, badness(answered(world, others))) for world in worlds
        ):
            kept = others
    return opens if not kept and judgement.verdict is Verdict.CONDITIONAL else tuple(kept)


def _consent_asked(item: Open) -> tuple[str | None, str | None] | None:
    """Whose consent is open, to what: one may be open twice, not given yet and ended later."""
    return (item.person, item.instruction) if item.kind is OpenKind.CONSENT else None


def _worlds(case: Case, topic: Topic, opens: Sequence[Open]) -> Iterator[Case]:
    """The case; where the value is not known well enough, with each value that would be judged otherwise.

    Nothing where something else than the value proposed would have to be known: a condition on other values, a member
    of a whole, what is documented.
    """
    kinds = {item.kind for item in opens}
    if OpenKind.VALUE not in kinds and OpenKind.STATEMENT not in kinds:
        yield case
    if OpenKind.STATEMENT in kinds or topic.kind is not TopicKind.EACH or OpenKind.VALUE not in kinds:
        return
    assert topic.characteristic is not None
    characteristic, (subject,) = topic.characteristic, topic.members
    documented = documented_for(case, subject, characteristic)
    sets = [values for line in topic.lines if (values := admitted_by(case, line, documented)) is not None]
    if len(sets) < len(topic.lines):
        return
    sets += [] if documented is None else [unchanged_values(documented, characteristic)]
    for piece in cut(case.proposed.value(subject, characteristic), sets):
        proposed = case.proposed.assuming({(subject, characteristic.iri): piece.values})
        yield replace(case, proposed=proposed)
