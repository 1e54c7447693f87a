"""What follows from a log as of a day: text in, status and running hours out, whatever the order of its rows."""

from __future__ import annotations

from datetime import date
from itertools import permutations

import pytest
from examples_read import vocabulary

from intent.dossier.work_text import read_work
from intent.model.logged import LoggedState, entries_about, state_of
from intent.record.load_work import load_work

HEAD = """# Timetable for a Ferry

- number: 7
- owner: Thornacre Museum

## Parts

### Monitors

- kind: display

| part | device |
| ---- | ------ |
| M1   | E-01   |

## Log

| date | device | event | value |
| ---- | ------ | ----- | ----- |
"""
LOGS = [
    pytest.param(["2020 | E-01 | fault |"], None, "faulty", "", id="a fault"),
    pytest.param(["2020 | M1 | fault |"], None, "faulty", "", id="a fault of the part it stands in"),
    pytest.param(["2020 | E-01 | cleaned |"], None, "", "", id="nothing that gives a status"),
    pytest.param(["2020 | E-01 | fault |"], "2019-12-31", "", "", id="not yet"),
    pytest.param(["2020 | E-01 | fault |", "2021 | E-01 | repair |"], None, "", "", id="put right"),
    pytest.param(["2020 | E-01 | fault |", "2021 | E-01 | repair |"], "2020-06", "faulty", "", id="before"),
    pytest.param(["2020 | E-01 | failed |", "2020 | E-01 | repair |"], None, "failed", "", id="one year"),
    pytest.param(
        ["2020 | E-01 | fault |", "2021 | E-01 | lent |"], None, "on-loan", "", id="lent with a fault"
    ),
    pytest.param(
        ["2020 | E-01 | fault |", "2021 | E-01 | lent |", "2022 | E-01 | returned |"],
        None,
        "faulty",
        "",
        id="as before the loan",
    ),
    pytest.param(
        ["2020 | E-01 | lent |", "2021 | E-01 | fault |", "2022 | E-01 | returned |"],
        None,
        "faulty",
        "",
        id="came back with a fault",
    ),
    pytest.param(["2020 | E-01 | retired |", "2021 | E-01 | cleaned |"], None, "retired", "", id="cleaned"),
    pytest.param(["| E-01 | failed |", "2021 | E-01 | repair |"], None, "failed", "", id="on some day"),
    pytest.param(
        ["2020-05-01 | E-01 | reading | 9000 h", "2021 | E-01 | reading | 300 h"],
        None,
        "",
        "300 h",
        id="a new meter",
    ),
    pytest.param(
        ["2021 | E-01 | reading | 9000 h", "2021-05-01 | E-01 | reading | 9400 h"],
        None,
        "",
        "9400 h",
        id="most of two",
    ),
    pytest.param(
        ["2020 | E-01 | reading | 9000 h", "2022 | E-01 | reading | 9400 h"],
        "2021-05-01",
        "",
        "9000 h",
        id="as of then",
    ),
]


def told(rows: tuple[str, ...], at: str | None) -> LoggedState:
    reading = read_work(HEAD + "".join(f"| {row} |\n" for row in rows), "work.md", vocabulary())
    assert not [found for found in reading.findings if found.is_error]
    work = load_work(reading.triples, reading.iri, vocabulary())
    day = date.fromisoformat(f"{at}-01" if len(at) == 7 else at) if at else None
    return state_of(entries_about("E-01", work.log, work.parts), vocabulary(), day)


@pytest.mark.parametrize(("rows", "at", "status", "hours"), LOGS)
def test_what_a_log_tells(rows: list[str], at: str | None, status: str, hours: str) -> None:
    for order in permutations(rows):
        found = told(order, at)
        assert (found.status or "").rsplit("/", 1)[-1] == status
        assert "".join(value.written for value in found.statements.values()) == hours
