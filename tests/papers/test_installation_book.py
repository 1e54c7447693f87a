"""The installation book: what whoever installs a work has to have in hand, each thing in it once.

That such a book tells order of work, places, channels, cables and whom to call is common practice, no source.
"""

from __future__ import annotations

import datetime
from collections import Counter
from functools import cache
from pathlib import Path

import pytest
from examples_read import EXAMPLES, INSTALLATIONS, proposal, variance

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
