"""The duties of a showing: which stand on its papers, on what days, and which are marked as done.

The days are counted by hand on the calendar of 2027; the showing runs from 1 March to 30 June.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from examples_read import vocabulary
from oracle.program import loaded

from intent.language.languages import locale_of
from intent.language.locale import ENGLISH
from intent.model.installation import Installation
from intent.model.work import Work
from intent.papers.duties_told import done_words, when_words
from intent.planning.duties_due import DueDuty, duties_due
from intent.values.dates import read_date

WORK = """# Timetable for a Ferry

- number: 7
- owner: Thornacre Museum

## People

| person | name             | role            | until | successor |
| ------ | ---------------- | --------------- | ----- | --------- |
| artist | Ottiline Quarrow | artist          | 2016  | estate    |
| estate | Quarrow Estate   | artist's estate |       |           |
| cons   | Odile Varga-Finn | conservator     |       |           |

## Parts

### Monitors

- kind: display

| part | technology       |
| ---- | ---------------- |
| M1   | cathode-ray tube |
| M2   | LCD              |

## Instructions

### R1 Care

{duties}
- by: cons
- on: 1999-05-14

### R2 Later

- required: technology of M1 is cathode-ray tube
{later}
- by: estate
- on: 2027-04-15
"""
SHOWING = """# Loan to Halmsee

- work: work.md
- dates: 2027-03-01/2027-06-30

## Attestations

| fact | holds | by   | date |
| ---- | ----- | ---- | ---- |
{attested}
"""


def due(*duties: str, attested: str = "", later: str = "") -> tuple[DueDuty, ...]:
    work, showing = read(*duties, attested=attested, later=later)
    return duties_due(work, showing)


def read(*duties: str, attested: str = "", later: str = "") -> tuple[Work, Installation]:
    lines = "\n".join(f"- duty: {duty}" for duty in duties)
    found = loaded(WORK.format(duties=lines, later=later), SHOWING.format(attested=attested), vocabulary())
    return found.work, found.installation


WHEN = {
    '"x"': "from 1 March 2027 to 30 June 2027",
    '"x", during': "from 1 March 2027 to 30 June 2027",
    '"x", before': "by 28 February 2027",
    '"x", after': "from 1 July 2027",
    '"x", every day': "every day from 1 March 2027 to 30 June 2027",
    '"x", every 3 days': "every 3 days from 1 March 2027 to 30 June 2027",
    '"x", within 14 days of the end': "by 14 July 2027",
    '"x", after, within 14 days of the end': "by 14 July 2027",
    '"x", during, within 14 days of the end': "from 16 June 2027 to 30 June 2027",
    '"x", within 14 days of the start': "by 15 March 2027",
    '"x", during, within 300 days of the start': "by 30 June 2027",
    '"x", before, within 14 days of the start': "from 15 February 2027 to 28 February 2027",
    '"x", before, within 1 day of the start': "on 28 February 2027",
    '"x", every day, within 6 days of the start': "every day from 1 March 2027 to 7 March 2027",
    '"x", before, every day': "every day until 28 February 2027",
    '"x", after, every 30 days': "every 30 days from 1 July 2027",
    '"x", after, until 2029': "from 1 July 2027 to 31 December 2029",
    '"x", every 3 days, until 2027-05-01': "every 3 days from 1 March 2027 to 1 May 2027",
    '"x", within 9999 days of the end': "by 14 November 2054",
}


@pytest.mark.parametrize("duty", WHEN)
def test_the_days_are_worked_out_from_the_dates_of_the_showing(duty: str) -> None:
    (found,) = due(duty)
    assert ENGLISH.say(when_words(found.duty.timing, found.days)) == WHEN[duty]


def test_the_days_are_told_in_each_language() -> None:
    (found,) = due('"x", every 3 days')
    when = when_words(found.duty.timing, found.days)
    assert locale_of("de").say(when) == "alle 3 Tage vom 1. März 2027 bis zum 30. Juni 2027"
    assert locale_of("fr").say(when) == "tous les 3 jours du 1er mars 2027 au 30 juin 2027"


STANDS = {
    '"x", until 2026': False,
    '"x", until 2027-03-01': True,
    '"x", if "it is cold"': True,
    '"x", if "it is hot"': False,
    '"x", unless "it is hot"': True,
    '"x", if technology of M1 is cathode-ray tube': True,
    '"x", if technology of M1 is LCD': False,
    '"x", if technology of M1 and M2 is LCD': False,
    '"x", if technology of Monitors is one of LCD or cathode-ray tube': True,
}


@pytest.mark.parametrize("duty", STANDS)
def test_what_is_not_in_force_or_known_not_to_hold_is_left_out(duty: str) -> None:
    """An assertion is asked of every part that it names."""
    assert bool(due(duty, attested="| it is hot | no | cons | 2027-02-01 |")) == STANDS[duty]


def test_a_condition_that_nobody_has_answered_is_open() -> None:
    (found,) = due('"x", if "it is cold"')
    assert [condition.fact for condition in found.open] == ["it is cold"]
    (found,) = due('"x", if "it is cold"', attested="| it is cold | yes | cons | 2027-02-01 |")
    assert found.open == ()


@pytest.mark.parametrize("named", ["R1", "R1.1"])
def test_what_is_superseded_before_the_showing_is_left_out(named: str) -> None:
    """The heading that supersedes is of 15 April: the duty stands on the days before it."""
    assert due('"x"', later=f"- supersedes: {named}")
    work, showing = read('"x"', later=f"- supersedes: {named}")
    assert not duties_due(work, replace(showing, dates=read_date("2027-05-01/2027-06-30")))


def test_who_has_to_do_it() -> None:
    """A person's successor, once the person's time is over; a role; whoever installs."""
    found = due('"x", by artist', '"y", by borrower', '"z"')
    assert [one.person for one in found] == ["estate", None, None]
    assert [bool(one.duty.role) for one in found] == [False, True, False]


DONE = {
    "": "",
    "| R1.1 | yes | cons | 2027-07-03 |": "done, Odile Varga-Finn, 3 July 2027",
    "| wipe the disc | yes | cons | 2027-07-03 |": "done, Odile Varga-Finn, 3 July 2027",
    "| Wipe  the Disc | no | cons | 2027-07-03 |": "not done, Odile Varga-Finn, 3 July 2027",
    "| R1.1 | no | cons | 2027-07-01 |\n| wipe the disc | yes | cons | 2027-07-03 |": (
        "done, Odile Varga-Finn, 3 July 2027"
    ),
    "| R1.1 | no | cons | 2027-07-03 |\n| R1.1 | yes | cons | 2027-07-03 |": "",
    "| R1.1 | yes | artist | 2027-07-03 |": "",
    "| R1.1 | yes | | |": "done",
}


@pytest.mark.parametrize("attested", DONE)
def test_what_is_attested_by_its_number_or_its_words_is_done(attested: str) -> None:
    """The latest word counts, of those who could speak then."""
    work, showing = read('"wipe the disc", within 14 days of the end', attested=attested)
    (found,) = duties_due(work, showing)
    assert ENGLISH.say(done_words(work, found)) == DONE[attested]


PERIODS = {
    "": "",
    "| R1.1 | yes | cons | 2027-03-01 |": "done 1 of 41 times",
    "| R1.1 | yes | cons | 2027-03-03 |\n| dust | yes | cons | 2027-03-04 |": "done 2 of 41 times",
    "| R1.1 | yes | cons | 2027-03-01 |\n| dust | yes | cons | 2027-03-02 |": "done 1 of 41 times",
    "| R1.1 | yes | cons | 2027-03-01 |\n| dust | no | cons | 2027-03-02 |": "",
    "| R1.1 | yes | cons | 2027-02-28 |": "",
    "| R1.1 | yes | cons | 2027-03 |": "",
    "| R1.1 | yes | cons | |": "",
    "| R1.1 | yes | cons | 2027-06-30 |": "done 1 of 41 times",
}
"""Three days a period from 1 March: the forty-first begins on 29 June and has two."""


@pytest.mark.parametrize("attested", PERIODS)
def test_an_attestation_of_what_recurs_counts_for_the_period_of_its_date(attested: str) -> None:
    work, showing = read('"dust", every 3 days', attested=attested)
    (found,) = duties_due(work, showing)
    assert ENGLISH.say(done_words(work, found)) == PERIODS[attested]
    assert not found.is_done


def test_what_is_done_each_time_is_done() -> None:
    attested = "\n".join(f"| dust | yes | cons | 2027-03-{day:02} |" for day in range(1, 8))
    work, showing = read('"dust", every day, within 6 days of the start', attested=attested)
    (found,) = duties_due(work, showing)
    assert (found.is_done, ENGLISH.say(done_words(work, found))) == (True, "done each time")


def test_what_has_no_end_is_counted_without_one() -> None:
    work, showing = read('"dust", after, every 30 days', attested="| dust | yes | cons | 2027-09-01 |")
    (found,) = duties_due(work, showing)
    assert (found.is_done, ENGLISH.say(done_words(work, found))) == (False, "done once")
