"""The first screen and the first printed page: what somebody with one minute must be able to act on."""

from __future__ import annotations

import datetime
import io
import re
from pathlib import Path

import pypdf
import pytest
from examples_read import EXAMPLES, checked, variance

from intent import verbs
from intent.effects import assess
from intent.language.languages import LANGUAGES, locale_of
from intent.language.locale import ENGLISH
from intent.names import THE_VENUE
from intent.papers.departures import departures
from intent.papers.document import Facts
from intent.papers.obstacles_told import IN_SHORT, obstacle_blocks, obstacles_in_short, remedy_words
from intent.papers.requests import AskingKind, requests
from intent.variance import device_obstacles
from intent.variance.result import BROKEN, Outcome, Verdict
from papers.test_pdf import needs_pango

INSTALLATIONS = sorted(EXAMPLES.glob("*/installations/*.md"))
TELLING_OBSTACLES = [*sorted(Path(assess.__file__).parent.rglob("*.py")), Path(device_obstacles.__file__)]
DAY = datetime.date(2026, 11, 25)
CONSENTED = {"en": "has consented", "de": "zugestimmt hat", "fr": "a consenti"}


def name(path: Path) -> str:
    return path.stem


@pytest.mark.parametrize("path", INSTALLATIONS, ids=name)
@pytest.mark.parametrize("language", LANGUAGES)
def test_the_outcome_explains_itself(path: Path, language: str) -> None:
    """No instruction is named by an identifier that nobody can know, and what is to be done comes first."""
    found = variance(path)
    told = locale_of(language).say(found.sentence)
    lines = {line.identifier for line in found.work.instructions}
    assert not lines & set(re.findall(r"\b[A-Z]+\d+\.\d+\b", told)), told
    asked = any(row.open for row in found.rows) and CONSENTED[language] in told
    if asked and found.outcome is not Outcome.ACCEPTABLE:
        assert told.startswith(
            ("Not to be installed until", "Nicht zu installieren, bis", "À ne pas installer")
        )


@pytest.mark.parametrize("path", INSTALLATIONS, ids=name)
def test_each_question_is_put_once_and_to_somebody_who_can_answer(path: Path) -> None:
    found = variance(path)
    told = departures(found)
    asked = requests(found, told)
    for request in asked:
        assert len({one.text for one in request.questions}) == len(request.questions)
        for one in request.questions:
            if one.kind is AskingKind.WAIVE:
                assert {departure.verdict for departure in one.departures} <= BROKEN
    safety = [one for one in told if one.ground and one.rows[0].ground == "safety" and one.verdict in BROKEN]
    kinds = {
        one.kind for request in asked for one in request.questions for d in one.departures if d in safety
    }
    assert AskingKind.WAIVE not in kinds, "nobody can waive a rule of safety"


@pytest.mark.parametrize("file", TELLING_OBSTACLES, ids=name)
def test_every_sort_of_obstacle_has_its_words_for_the_first_page(file: Path) -> None:
    slugs = set(re.findall(r'slug(?:=| = )"([a-z-]+)"', file.read_text("utf-8")))
    assert slugs <= IN_SHORT.keys(), "name it in `IN_SHORT` of papers/obstacles_told.py"


@needs_pango
@pytest.mark.parametrize("path", INSTALLATIONS, ids=name)
def test_the_first_printed_page_has_all_that_decides(path: Path) -> None:
    """Up to 32 points have a line each on the first sheet; the outcome's sentence always stands on it whole."""
    found = variance(path)
    told = departures(found)
    printed = verbs.pdf(verbs.report(checked(path), "html", date=DAY))
    first = "".join(pypdf.PdfReader(io.BytesIO(printed)).pages[0].extract_text().split())
    assert "".join(ENGLISH.say(found.sentence).split()) in first
    for one in told[:32]:
        assert f"{one.number}.{''.join(ENGLISH.say(one.title).split())}" in first


@pytest.mark.parametrize("path", INSTALLATIONS, ids=name)
def test_each_sort_of_obstacle_is_one_item_in_the_words_of_the_first_page(path: Path) -> None:
    found = variance(path)
    every = [block for block in obstacle_blocks(found, remedy_words(found)) if isinstance(block, Facts)]
    in_the_way = [one for one in found.obstacles if not one.is_as_documented]
    if not in_the_way:
        return
    headings = [ENGLISH.say(line.label) for line in every[0].lines]
    first = {ENGLISH.say(one).casefold() for one in obstacles_in_short(found.obstacles)}
    assert len(headings) == len(set(headings))
    for heading in headings:
        words = heading.removeprefix("Perhaps: ").casefold()
        assert any(words in line for line in first), heading
    assert sum(len(line.texts) for line in every[0].lines) == len(in_the_way)


@pytest.mark.parametrize("path", INSTALLATIONS, ids=name)
def test_a_value_of_the_venue_is_asked_of_the_venue_and_once(path: Path) -> None:
    """No dossier here knows a borrower whose house the venue is, so the venue itself is asked."""
    found = variance(path)
    for request in requests(found, departures(found)):
        told = [ENGLISH.say(one.text) for one in request.questions if one.kind is AskingKind.SUPPLY]
        assert request.person == THE_VENUE or not any("(the venue)" in text for text in told), request
    unknown = {row.subject.written for row in found.rows if row.verdict is Verdict.UNKNOWN}
    asked = {request.person for request in requests(found, departures(found))}
    assert THE_VENUE in asked or THE_VENUE not in unknown
