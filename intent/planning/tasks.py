"""The work of installing in the order in which it can be done, and how many hours it takes."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from intent.model.as_proposed import parts_as_proposed
from intent.model.installation import Installation
from intent.model.task import Task
from intent.model.work import Work
from intent.values.bounds import NATURAL, point, total
from intent.values.regions import Interval
from intent.values.units import SECONDS_AN_HOUR
from intent.vocabulary.terms import Vocabulary

_TIME = "http://qudt.org/vocab/quantitykind/Time"
_PIECE = re.compile(r"(\d+(?:[.,]\d+)?)\s*([^\W\d]+)\.?")


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedTask:
    """A task with what it takes."""

    task: Task
    clock: Interval
    """In seconds, with the people that it says; from nothing up where that is not written in hours or minutes."""
    labour: Interval
    """In seconds: those of all its people together."""
    parts: tuple[str, ...]
    """The parts and groups that it works on and of which something is there."""
    left_out: tuple[str, ...]
    """Those that the documentation names for it and of which nothing is shown."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkPlan:
    """All tasks, none before one that it has to follow."""

    tasks: tuple[PlannedTask, ...]
    clock: Interval
    """In seconds: the longest chain of tasks that have to follow each other."""
    untold: tuple[str, ...]
    """The parts that are there and that no task names."""

    @property
    def labour(self) -> Interval:
        """In seconds: of all people in all tasks."""
        return total(one.labour for one in self.tasks)

    @property
    def uncounted(self) -> tuple[str, ...]:
        """The tasks of which it is not known how long or how many they take."""
        return tuple(one.task.identifier for one in self.tasks if one.labour.high is None)

    @property
    def most_people(self) -> int:
        """The most that a single task takes."""
        return max((one.task.people or 0 for one in self.tasks), default=0)


def work_plan_of(work: Work, installation: Installation) -> WorkPlan:
    """The tasks of the documentation, for the parts that are shown; none is made up."""
    there = parts_as_proposed(work, installation)
    names = {name for part in there for name in (part.identifier, part.group) if name}
    tasks = tuple(_planned(task, names, work.vocabulary) for task in in_order(work.tasks))
    told = {name for task in work.tasks for name in task.parts}
    untold = (part.identifier for part in there if not {part.identifier, part.group} & told)
    return WorkPlan(tasks=tasks, clock=_longest(tasks), untold=tuple(untold))


def in_order(tasks: Iterable[Task]) -> tuple[Task, ...]:
    """Each task after those that it names; else in the order of the file. One in a circle stands last."""
    waiting, done = list(tasks), list[Task]()
    known = {task.identifier for task in waiting}
    while waiting:
        ready = {task.identifier for task in done}
        found = next((one for one in waiting if set(one.after) & known <= ready), waiting[0])
        waiting.remove(found)
        done.append(found)
    return tuple(done)


def _planned(task: Task, there: set[str], vocabulary: Vocabulary) -> PlannedTask:
    clock = time_of(task.time, vocabulary)
    people = NATURAL if task.people is None else point(task.people)
    most = None if clock.high is None or people.high is None else clock.high * people.high
    least = (clock.low or 0) * (people.low or 1)  # nothing is done by nobody
    return PlannedTask(
        task=task,
        clock=clock,
        labour=Interval(Fraction(least), most),
        parts=tuple(name for name in task.parts if name in there),
        left_out=tuple(name for name in task.parts if name not in there),
    )


def time_of(written: str, vocabulary: Vocabulary) -> Interval:
    """A time as a writer put it (`4 h`, `1 h 30 min`), in seconds; from nothing up where it is not known.

    A day of work has not 24 hours, and nobody says how many: only hours and what is shorter are counted.
    """
    pieces = _PIECE.findall(written)
    if not pieces or _PIECE.sub("", written).strip():
        return NATURAL
    seconds = Fraction(0)
    for number, name in pieces:
        unit = vocabulary.find_unit(name, _TIME)
        if unit is None or unit.factor > SECONDS_AN_HOUR:
            return NATURAL
        seconds += unit.in_reference(Fraction(number.replace(",", ".")))
    return point(seconds)


def _longest(tasks: tuple[PlannedTask, ...]) -> Interval:
    """The latest end, if each task begins as soon as those before it are done."""
    ends: dict[str, Interval] = {}
    for one in tasks:
        before = [ends[name] for name in one.task.after if name in ends]
        ends[one.task.identifier] = total([_latest(before), one.clock])
    return _latest(ends.values())


def _latest(ends: Iterable[Interval]) -> Interval:
    found = tuple(ends)
    highs = [end.high for end in found]
    low = max((end.low or Fraction(0) for end in found), default=Fraction(0))
    known = [high for high in highs if high is not None]
    return Interval(low, max(known, default=Fraction(0)) if len(known) == len(highs) else None)
