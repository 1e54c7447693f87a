"""What hangs on a question that is about instructions: on the parts and characteristics that they speak of."""

from __future__ import annotations

from collections.abc import Sequence

from intent.analysis.questions.device_wear import wear_of
from intent.analysis.questions.measure import Factors, Wear
from intent.analysis.questions.occasion import Occasion, times_differed, times_shown
from intent.model.work import Instruction

UNNAMED = 1
"""How hard a loss is to see and to undo where no characteristic is named: a number of parts, an arrangement."""


def factors_of_lines(occasion: Occasion, lines: Sequence[Instruction], bearing: int) -> Factors:
    """The factors of what some instructions speak of, the hardest of their characteristics counting."""
    vocabulary = occasion.work.vocabulary
    named = dict.fromkeys(line.assertion.characteristic for line in lines if line.assertion.characteristic)
    characteristics = [vocabulary.characteristics[iri] for iri in named if iri in vocabulary.characteristics]
    members = list(dict.fromkeys(name for line in lines for name in occasion.case.members[line.identifier]))
    parts = [part for part in occasion.work.parts if part.identifier in set(members)]
    wears = any("device" in one.bearers for one in characteristics)
    hardest = max(characteristics, key=lambda one: one.seen + one.undone, default=None)
    return Factors(
        wear=wear_of(occasion, parts) if wears and parts else Wear(),
        seen=hardest.seen if hardest else UNNAMED,
        undone=hardest.undone if hardest else UNNAMED,
        differed=times_differed(occasion, members, characteristics),
        shown=times_shown(occasion, members, characteristics),
        bearing=bearing,
    )
