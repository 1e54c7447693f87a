"""The work of installing: in what order it can be done, and how many hours it takes, counted by hand."""

from __future__ import annotations

from fractions import Fraction

import pytest
from examples_read import vocabulary
from oracle.program import loaded

from intent.model.task import Task
from intent.planning.tasks import WorkPlan, in_order, time_of, work_plan_of
from intent.values.regions import Interval

WORK = """# Lamp Room

- number: 7
- owner: Thornacre Museum

## Parts

### Lamps

- kind: object

| part | name       |
| ---- | ---------- |
| O1   | left lamp  |
| O2   | right lamp |

### Chests

- kind: object

| part | name  |
| ---- | ----- |
| O3   | chest |

## Tasks

| task | what            | parts | after | people | time       | by         |
| ---- | --------------- | ----- | ----- | ------ | ---------- | ---------- |
| T3   | look at it all  |       | T1    | 1      | {time}     |            |
| T1   | hang the lamps  | Lamps |       | 3      | 1 h 30 min | technician |
| T2   | carry the chest | O3    |       | 2      | 1 h        | technician |
"""
LOAN = """# Loan

- work: work.md
- dates: 2027-03-01/2027-06-30
"""
HOUR = 3600


def _plan(time: str = "30 min", more: str = "") -> WorkPlan:
    found = loaded(WORK.format(time=time), LOAN + more, vocabulary())
    return work_plan_of(found.work, found.installation)


def _hours(least: str, most: str | None) -> Interval:
    return Interval(Fraction(least) * HOUR, None if most is None else Fraction(most) * HOUR)


def test_no_task_stands_before_one_that_it_follows() -> None:
    assert [one.task.identifier for one in _plan().tasks] == ["T1", "T3", "T2"]


def test_hours_are_those_of_all_people_and_the_clock_that_of_the_longest_row() -> None:
    """Three for 1.5 h, one for 0.5 h and two for 1 h are 7 h; T3 waits for T1, which makes 2 h by the clock."""
    plan = _plan()
    assert plan.labour == _hours("7", "7")
    assert plan.clock == _hours("2", "2")
    assert plan.uncounted == ()
    assert plan.most_people == 3


@pytest.mark.parametrize("time", ["", "1 day", "the afternoon", "1 h or so"])
def test_a_time_that_is_no_number_of_hours_makes_the_sum_a_least_one(time: str) -> None:
    plan = _plan(time)
    assert plan.labour == _hours("6.5", None)
    assert plan.clock == _hours("1.5", None)
    assert plan.uncounted == ("T3",)


@pytest.mark.parametrize(
    ("written", "hours"), [("4 h", "4"), ("90 min", "1.5"), ("1,5 h", "1.5"), ("2 Stunden", "2")]
)
def test_times_as_people_write_them(written: str, hours: str) -> None:
    assert time_of(written, vocabulary()) == _hours(hours, hours)


def test_what_has_no_task_is_named_and_what_is_left_out_is_marked() -> None:
    plan = _plan(
        more="""
## Omissions

- O3: too heavy

## Additions

| part | kind    |
| ---- | ------- |
| X1   | barrier |
"""
    )
    chest = plan.tasks[-1]
    assert (chest.parts, chest.left_out) == ((), ("O3",))
    assert plan.untold == ("X1",)


def test_tasks_in_a_circle_all_stay() -> None:
    """`validate` refuses a circle; a plan never runs round it."""
    tasks = [Task(iri="a", identifier="A", after=("B",)), Task(iri="b", identifier="B", after=("A",))]
    assert sorted(one.identifier for one in in_order(tasks)) == ["A", "B"]
