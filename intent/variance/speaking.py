"""Step 1: which instructions speak of a subject on a day, and what each leaves open."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import Enum, auto

from intent.model.assertions import Condition
from intent.model.duty import Duty
from intent.model.installation import Consent
from intent.model.work import Instruction, Modality
from intent.values.sets import Answer
from intent.variance.case import Case
from intent.variance.conditions import conditions_answer, failing_condition
from intent.variance.result import Open


class OverBecause(Enum):
    """Why a permission no longer permits anything."""

    CONDITION = auto()
    """Its condition does not hold."""
    UNTIL = auto()
    WITHDRAWN = auto()
    SUPERSEDED = auto()
    REFUSED = auto()
    """A consent that it calls for is refused."""
    NOBODY_LEFT = auto()
    """Nobody can give a consent that it calls for any more."""
    EARLIER_CHOICE = auto()
    """What is to be chosen before it can be had."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Over:
    """That a permission is over: it permits nothing, and still speaks."""

    because: OverBecause
    by: str = ""
    """The instruction that superseded it, the earlier choice, or the person whose consent cannot be given."""
    consent: Consent | None = None
    """The refusal."""
    condition: Condition | None = None
    """The condition that does not hold."""

    @property
    def is_taken_back(self) -> bool:
        """Whether the permission itself has ended, whatever anybody answers."""
        return self.because in {OverBecause.UNTIL, OverBecause.WITHDRAWN, OverBecause.SUPERSEDED}


@dataclass(frozen=True, slots=True)
class Speaker:
    """An instruction that speaks of a subject, with what is open about its conditions."""

    line: Instruction
    open: tuple[Open, ...] = ()
    over: Over | None = None
    """Of a permission: why it is over. A requirement or prohibition that is over does not speak."""


def speakers(
    case: Case, lines: Sequence[Instruction], subjects: Sequence[str], day: datetime.date
) -> list[Speaker]:
    """Of the instructions whose scope holds a subject, those that speak on a day.

    A requirement or prohibition whose condition is known not to hold, or that has ended, is left out; a permission
    speaks on, for silence is not what becomes of it.
    """
    found = []
    for line in lines:
        if line.on is not None and day < line.on.first:
            continue
        over = over_by_itself(case, line, day)
        opens: tuple[Open, ...] = ()
        if over is None:
            answer, opens = conditions_answer(case, line, subjects, day)
            if answer is Answer.OUT:
                failing = failing_condition(case, line, subjects, day)
                over = Over(because=OverBecause.CONDITION, condition=failing)
        if over is None or line.modality is Modality.ALLOWED:
            found.append(Speaker(line, opens, over))
    return found


def over_by_itself(case: Case, line: Instruction, day: datetime.date) -> Over | None:
    """Whether an instruction that was given has ended by a day: withdrawn, superseded, or past its `until`."""
    if line.withdrawn is not None and line.withdrawn.first <= day:
        return Over(because=OverBecause.WITHDRAWN)
    by = next(superseding(case, line, day), None)
    if by is not None:
        return Over(because=OverBecause.SUPERSEDED, by=by.identifier)
    if line.until is not None and line.until.last < day:
        return Over(because=OverBecause.UNTIL)
    return None


def superseding(case: Case, line: Instruction, day: datetime.date) -> Iterator[Instruction | Duty]:
    """What has withdrawn an instruction by a day: for good, whatever becomes of the superseding one itself."""
    for later in case.superseders.get(line.identifier, ()):
        if later.on is None or later.on.first <= day:
            yield later


def is_in_force(case: Case, line: Instruction, day: datetime.date) -> bool:
    """Whether an instruction has been given and has not ended by a day, its conditions aside."""
    return (line.on is None or line.on.first <= day) and over_by_itself(case, line, day) is None
