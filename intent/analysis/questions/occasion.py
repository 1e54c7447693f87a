"""The day of a conversation: what is in force, what was shown before, and who is still there to be asked."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from intent.analysis.examination.examine import undisturbed
from intent.analysis.history.steps import departs, value_of
from intent.language.message import Words, listed, say
from intent.model.installation import Installation
from intent.model.naming import part_words, runs
from intent.model.work import Instruction, Part, Work
from intent.names import PRESENCE
from intent.values.dates import DaySpan
from intent.variance.case import Case
from intent.variance.people import chain, highest_living, is_in_time, who_can_answer
from intent.variance.speaking import is_in_force
from intent.variance.state import State
from intent.variance.two_states import proposed_state
from intent.vocabulary.terms import Characteristic


@dataclass(frozen=True, slots=True, kw_only=True)
class Occasion:
    """What is to be known before asking on a day."""

    day: datetime.date
    case: Case
    lines: tuple[Instruction, ...]
    """The instructions in force on the day, their conditions aside."""
    past: tuple[Installation, ...]
    shown: tuple[State, ...]
    """What each past installation made of the work."""

    @property
    def work(self) -> Work:
        return self.case.work


def occasion_of(work: Work, past: Sequence[Installation], day: datetime.date) -> Occasion:
    """What is to be known before asking; installations of a later day are left out."""
    case = undisturbed(work)
    before = tuple(one for one in past if one.dates.first <= day)
    lines = tuple(line for line in work.instructions if is_in_force(case, line, day))
    shown = tuple(proposed_state(work, one, case.documented) for one in before)
    return Occasion(day=day, case=case, lines=lines, past=before, shown=shown)


def highest(occasion: Occasion) -> tuple[str, ...]:
    """Those of the highest rank who are there; who is to succeed one of them waits."""
    work, day = occasion.work, occasion.day
    there = [name for name in highest_living(work, day) if _is_there(occasion, name)]
    waiting = {person.identifier for name in there for person in list(chain(work, name))[1:]}
    return tuple(name for name in there if name not in waiting) or tuple(there)


def givers(occasion: Occasion, lines: Iterable[Instruction]) -> tuple[str, ...]:
    """Those who gave the instructions, or who have succeeded them; else those of the highest rank."""
    found = (who_can_answer(occasion.work, line.by, occasion.day) for line in lines if line.by)
    names = (person.identifier for person in found if person is not None)
    return tuple(dict.fromkeys(name for name in names if _is_there(occasion, name))) or highest(occasion)


def _is_there(occasion: Occasion, name: str) -> bool:
    person = occasion.work.person(name)
    return person is not None and is_in_time(person, DaySpan(occasion.day, occasion.day))


def times_differed(
    occasion: Occasion, subjects: Sequence[str], characteristics: Sequence[Characteristic]
) -> int:
    """In how many past installations any of the subjects was otherwise than documented in any of the respects."""
    return sum(
        any(differs(occasion, state, subject, one) for subject in subjects for one in characteristics)
        for state in occasion.shown
    )


def times_shown(
    occasion: Occasion, subjects: Sequence[str], characteristics: Sequence[Characteristic]
) -> int:
    """How many past installations there are to compare with what is documented; none where nothing is."""
    documented = occasion.case.documented
    given = any(documented.is_given(subject, one) for subject in subjects for one in characteristics)
    return len(occasion.past) if given else 0


def differs(occasion: Occasion, state: State, subject: str, characteristic: Characteristic) -> bool:
    """Whether a past installation gave a subject another value than the documented one, where there is one."""
    documented = occasion.case.documented
    if characteristic.iri != PRESENCE and not documented.is_given(subject, characteristic):
        return False
    before = value_of(documented, subject, characteristic)
    return departs(value_of(state, subject, characteristic), before, characteristic)


def parts_words(work: Work, parts: Sequence[Part]) -> Words:
    """Parts group by group: a group by its name where all of it is meant, one part by its own name."""
    groups: dict[str, list[Part]] = {}
    for part in parts:
        groups.setdefault(part.group or part.identifier, []).append(part)
    return listed(_of_one_group(work, found) for found in groups.values())


def _of_one_group(work: Work, parts: Sequence[Part]) -> Words:
    if len(parts) == 1:
        return part_words(work, None, parts[0].identifier)
    group = parts[0].group
    if group and len(parts) == sum(part.group == group for part in work.parts):
        return group
    named = runs([part.identifier for part in parts])
    return say("{parts} ({group})", parts=named, group=group) if group else named
