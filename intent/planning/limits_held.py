"""The limits to which a showing is held while it lasts: of the venue and of how the work runs.

They are rules of safety, law, loan and care, whatever the artist says.

What the artist wants of the venue is judged with the proposal; these are the rules of others that go on holding after
it was accepted, and that whoever shows the work has to keep every day.
"""

from __future__ import annotations

from collections.abc import Iterator

from intent.model.assertions import ScopeKind
from intent.model.installation import Installation
from intent.model.work import Instruction, Modality, Work
from intent.values.sets import Answer
from intent.variance.case import lay_out
from intent.variance.conditions import conditions_answer
from intent.variance.speaking import is_in_force

GROUNDS = ("safety", "law", "loan", "care")
"""In the order in which nobody can lift them."""
_SCOPES = {ScopeKind.VENUE, ScopeKind.WORK}


def limits_held(work: Work, installation: Installation) -> tuple[Instruction, ...]:
    """The requirements and prohibitions of those grounds that hold on a day of the showing, ground by ground."""
    case, dates = lay_out(work, installation), installation.dates
    found = []
    for line in _of_showing(work):
        begun = line.on.first if line.on else dates.first
        for day in dict.fromkeys((dates.first, min(max(begun, dates.first), dates.last), dates.last)):
            subjects = case.members.get(line.identifier, ())
            if (
                is_in_force(case, line, day)
                and conditions_answer(case, line, subjects, day)[0] is not Answer.OUT
            ):
                found.append(line)
                break
    return tuple(sorted(found, key=lambda line: GROUNDS.index(line.ground)))


def _of_showing(work: Work) -> Iterator[Instruction]:
    for line in work.instructions:
        if (
            line.ground in GROUNDS
            and line.assertion.scope.kind in _SCOPES
            and line.modality is not Modality.ALLOWED
        ):
            yield line
