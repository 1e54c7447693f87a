"""The installation book: what whoever installs a work has to have in hand, each thing in it once.

That such a book tells order of work, places, channels, cables and whom to call is common practice, no source.
"""

from __future__ import annotations

import datetime
from collections import Counter
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest
from examples_read import EXAMPLES, INSTALLATIONS, proposal, variance, vocabulary
from oracle.program import loaded

from intent.effects.assess import assess
from intent.language.languages import LANGUAGES, locale_of
from intent.language.locale import ENGLISH
from intent.model.as_proposed import connections_as_proposed, parts_as_proposed
from intent.papers.document import Document, PaperSection, PaperTable
from intent.papers.inline import Break, Content, Phrase, Several, Stamp, inlines
from intent.papers.installation_book import installation_book
from intent.papers.telling import tell
from intent.papers.withheld import without_what_stays
from intent.variance.result import Variance

EXPECTED = Path(__file__).parent / "expected"
HALMSEE = EXAMPLES / "low-farms" / "installations" / "2027-halmsee-loan.md"
DAY = datetime.date(2027, 1, 10)


@cache
def _leaving(path: Path) -> Variance:
    return without_what_stays(proposal(path), variance(path))


@cache
def _book(path: Path) -> Document:
    return installation_book(_leaving(path), version="1", day=DAY)


def _section(book: Document, anchor: str) -> PaperSection:
    return next(section for section in book.sections if section.anchor == anchor)


def _heads(section: PaperSection) -> list[str]:
    """The first words of each row's first cell, in all tables of a section."""
    found = []
    for block in section.blocks:
        if isinstance(block, PaperSection):
            found += _heads(block)
        elif isinstance(block, PaperTable):
            found += [_said(row[0]) for row in block.rows]
    return found


def _said(cell: Content) -> str:
    first = inlines(cell, "en")[0]
    assert not isinstance(first, Phrase | Stamp | Several | Break)
    return ENGLISH.say(first)


def test_book_is_as_expected() -> None:
    path = EXPECTED / "book-halmsee.md"
    assert tell(_book(HALMSEE), "markdown", ENGLISH) == path.read_text(encoding="utf-8")


@pytest.mark.parametrize("path", INSTALLATIONS, ids=lambda path: path.stem)
def test_every_part_as_proposed_has_its_place_once(path: Path) -> None:
    leaving = _leaving(path)
    there = [part.identifier for part in parts_as_proposed(leaving.work, leaving.installation)]
    assert Counter(_heads(_section(_book(path), "places"))) == Counter(there)


@pytest.mark.parametrize("path", INSTALLATIONS, ids=lambda path: path.stem)
def test_every_connection_as_proposed_is_a_cable_once(path: Path) -> None:
    leaving = _leaving(path)
    ends = Counter(
        (one.start, one.end) for one in connections_as_proposed(leaving.work, leaving.installation)
    )
    told: Counter[tuple[str, ...]] = Counter()
    for section in _book(path).sections:
        for block in section.blocks:
            if section.anchor == "cables" and isinstance(block, PaperTable):
                told.update(tuple(_said(cell).split(" ")[0] for cell in row[:2]) for row in block.rows)
    assert told == ends


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("form", ["text", "markdown", "html"])
def test_book_is_told_in_every_form_and_language(form: str, language: str) -> None:
    told = tell(_book(HALMSEE), form, locale_of(language))
    assert "Quillmark" in told
    assert "X2" in told


SMALL = """# Lamp Room

- number: 7
- owner: Thornacre Museum

## People

| person | name             | role        | until | contact           |
| ------ | ---------------- | ----------- | ----- | ----------------- |
| cons   | Odile Varga-Finn | conservator |       | odile@example.org |
| gone   | Ilka Brandvold   | artist      | 2016  |                   |

## Parts

### Monitors

- kind: display

| part | device | technology | fit     | deliberate damage | burn-in |
| ---- | ------ | ---------- | ------- | ----------------- | ------- |
| M1   | E-01   | LCD        | cropped | yes               |         |
| M2   | E-02   | LCD        | cropped |                   | yes     |
| M3   | E-03   | LCD        |         |                   |         |

### Players

- kind: player

| part | technology   | channel |
| ---- | ------------ | ------- |
| P1   | media player | A       |

## Connections

| from | to | signal | length |
| ---- | -- | ------ | ------ |
| P1   | M1 | HDMI   |        |

## Log

| date       | device | event   | value | by   | source | remark            |
| ---------- | ------ | ------- | ----- | ---- | ------ | ----------------- |
| 2024-03-02 | M2     | fault   |       | cons |        | flickers          |
| 2025-11-19 | M2     | fault   |       | cons |        | upper third burnt |
| 2025-11-20 | E-03   | cleaned |       | cons |        |                   |
"""
LOAN = """# Loan

- work: work.md
- dates: 2027-03-01/2027-06-30
"""


def _small(more: str = "") -> Document:
    found = loaded(SMALL, LOAN + more, vocabulary())
    judged = assess(found.work, found.installation)
    return installation_book(judged, version="1", day=DAY)


def _lines(book: Document, anchor: str) -> list[str]:
    """The lines of a section as Markdown tells it."""
    told = tell(replace(book, lead=(), sections=(_section(book, anchor),)), "markdown", ENGLISH)
    return told.splitlines()


def test_the_condition_tells_what_is_wrong_first_and_the_latest_of_each_event() -> None:
    told = _lines(_small(), "condition")
    assert any(line.startswith("| M1, E-01 | deliberate damage") for line in told)
    (second,) = [line for line in told if line.startswith("| M2")]
    assert second == (
        "| M2, E-02 | **faulty**, burn-in yes | 19 November 2025: fault, upper third burnt (Odile Varga-Finn) |"
    )
    assert any("20 November 2025: cleaned (Odile Varga-Finn)" in line for line in told)


def test_what_happened_to_a_device_that_left_is_not_told_of_the_one_that_came() -> None:
    another = "\n## Substitutions\n\n| part | device |\n| ---- | ------ |\n| M2   | V-1    |\n"
    told = _lines(_small(another), "condition")
    assert not any("fault" in line for line in told)


def test_parts_that_are_set_alike_stand_together() -> None:
    assert "| ☐ | M1 and M2 | fit: cropped |" in _lines(_small(), "settings")


def test_what_is_not_given_of_a_cable_is_left_blank_and_that_is_said() -> None:
    told = _lines(_small(), "cables")
    assert "| ☐ | P1 | M1 | HDMI |   |   |" in told
    assert any("What is blank here is not given" in line for line in told)


def test_what_nothing_is_said_to_feed_is_named() -> None:
    assert "Nobody says which player feeds M2 and M3." in _lines(_small(), "channels")


def test_only_those_who_can_be_called_are_named_and_no_contact_that_stays() -> None:
    told = "\n".join(_lines(_small(), "contacts"))
    assert "Odile Varga-Finn" in told
    assert "Ilka Brandvold" not in told
    assert "odile@example.org" not in told


DAILY = """
## Instructions

### R1 Care

- duty: "wipe the glass", every day
- duty: "turn the fans", every 14 days
- duty: "write what came back dusty", within 14 days of the end
- by: cons
- on: 2020
"""


def test_what_recurs_is_with_the_daily_check_and_what_does_not_is_not() -> None:
    found = loaded(SMALL + DAILY, LOAN, vocabulary())
    book = installation_book(assess(found.work, found.installation), version="1", day=DAY)
    daily, once = "\n".join(_lines(book, "daily")), "\n".join(_lines(book, "duties"))
    assert "every day from 1 March 2027 to 30 June 2027" in daily
    assert "turn the fans" in daily
    assert "dusty" not in daily
    assert "dusty" in once
    assert "wipe" not in once


def test_the_daily_check_says_what_visitors_find_and_what_stays_off() -> None:
    header = "\n## Changes\n\n| part | rotation | power state |\n| - | - | - |\n"
    changes = f"{header}| M1 | turned left | |\n| M2 | | off |\n"
    told = _lines(_small(changes), "daily")
    assert any(line.startswith("| ☐ | M1 | turned left |") for line in told)
    assert any(line.startswith("| ☐ | M2 |") and "stays switched off" in line for line in told)
    assert "1. When it runs is not stated: ask before switching anything off." in told


def test_a_work_that_runs_day_and_night_is_not_switched_off() -> None:
    running = SMALL.replace("## Log", "## Whole work\n\n- running: continuous\n\n## Log")
    found = loaded(running, LOAN, vocabulary())
    book = installation_book(assess(found.work, found.installation), version="1", day=DAY)
    assert any("switch nothing off" in line for line in _lines(book, "daily"))


def test_work_of_which_nothing_is_said_is_not_made_up() -> None:
    assert "The documentation does not say what installing takes." in _lines(_small(), "work")
