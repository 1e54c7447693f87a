"""Whole reports in German and French: nothing of ours is left in English, and what writers wrote stays as it is."""

from __future__ import annotations

import datetime
import re
from functools import cache
from pathlib import Path

import pytest
from examples_read import FIRST_OF_EACH, INSTALLATIONS, checked

from intent import verbs
from languages.patterns import patterns
from languages.test_catalogues import forms

DAY = datetime.date(2026, 11, 25)
LONG = 14
"""Fixed words of a pattern, from so many characters on, cannot stand in a writer's text by chance."""


@cache
def told(path: Path, form: str, language: str) -> str:
    return " ".join(verbs.report(checked(path), form, date=DAY, language=language).split())


@cache
def theirs(folder: Path) -> str:
    """All that the writers of an example wrote."""
    files = " ".join(file.read_text(encoding="utf-8") for file in folder.rglob("*.md"))
    return " ".join(files.split()).casefold()


def fixed_words(pattern: str) -> list[str]:
    return [piece.strip() for piece in re.split(r"\{\w+\}", pattern) if len(piece.strip()) >= LONG]


@pytest.fixture(scope="module")
def english() -> list[str]:
    """The fixed words of every pattern, but those that German or French says with the same words."""
    same = {told for language in ("de", "fr") for told in forms(language)}
    every = [text for pattern in patterns().values() for text in (pattern.one, pattern.several)]
    found = [piece for text in every for piece in fixed_words(text) if text not in same]
    return list(dict.fromkeys(found))


@pytest.mark.parametrize("language", ["de", "fr"])
@pytest.mark.parametrize("path", INSTALLATIONS, ids=lambda path: path.stem)
def test_nothing_of_ours_is_left_in_english(path: Path, language: str, english: list[str]) -> None:
    """What files hold is their writers'; below an instruction stands its line as they wrote it."""
    text = told(path, "text", language)
    left = [piece for piece in english if piece in text and piece.casefold() not in theirs(path.parents[1])]
    assert not left


@pytest.mark.parametrize("form", ["html", "markdown"])
@pytest.mark.parametrize("language", ["de", "fr"])
def test_every_form_is_in_the_language(form: str, language: str, english: list[str]) -> None:
    text = told(INSTALLATIONS[0], form, language)
    written = theirs(INSTALLATIONS[0].parents[1])
    shown = text.partition('<section id="sources"')[0].replace("</style>", "\n").rpartition("\n")[2]
    assert not [piece for piece in english if piece in shown and piece.casefold() not in written]
    if form == "html":
        assert f'<html lang="{language}">' in text


@pytest.mark.parametrize("form", ["json", "turtle"])
def test_what_is_for_programs_stays_english(form: str) -> None:
    assert told(INSTALLATIONS[0], form, "de") == told(INSTALLATIONS[0], form, "en")


def test_departures_have_the_same_numbers_in_every_language() -> None:
    """What can be linked to in a page, its departures among it, is named alike whatever the language."""
    for path in FIRST_OF_EACH:
        english, *others = (
            re.findall(r' id="([^"]+)"', told(path, "html", language)) for language in ("en", "de", "fr")
        )
        assert any(name.startswith("departure-") for name in english), path
        assert others == [english, english], path
