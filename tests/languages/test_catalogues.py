"""Each catalogue gives every English pattern, nothing else, and with the same places."""

from __future__ import annotations

import re
import subprocess
import sys
import tomllib

import pytest

from intent.language.locale import LANGUAGES, read_catalogue, tongue_of
from intent.vocabulary.loader import read_vocabulary
from languages.patterns import SOURCE, has_words, patterns, places

TRANSLATED = tuple(language for language in LANGUAGES if language != "en")


@pytest.mark.parametrize("language", TRANSLATED)
def test_every_pattern_is_translated(language: str) -> None:
    known = read_catalogue(language)
    needed = {pattern: place for pattern, place in patterns().items() if has_words(pattern)}
    missing = [f"{place}: {pattern}" for pattern, place in needed.items() if pattern not in known]
    assert not missing, f"say these in intent/catalogues/{language}.toml"


@pytest.mark.parametrize("language", TRANSLATED)
def test_nothing_is_translated_that_nobody_says(language: str) -> None:
    said = patterns()
    assert not [pattern for pattern in read_catalogue(language) if pattern not in said]


@pytest.mark.parametrize("language", TRANSLATED)
def test_the_places_are_the_same(language: str) -> None:
    wrong = {
        pattern: told for pattern, told in read_catalogue(language).items() if places(pattern) != places(told)
    }
    assert not wrong


@pytest.mark.parametrize("language", TRANSLATED)
def test_no_pattern_stands_twice(language: str) -> None:
    """A pattern of two sections would be told as the later says."""
    tables = tomllib.loads((SOURCE / "catalogues" / f"{language}.toml").read_text(encoding="utf-8"))
    every = [pattern for section in tables.values() for pattern in section]
    assert len(every) == len(set(every))


def test_french_marks_are_held_to_their_words() -> None:
    """A narrow no-break space before `;`, `?`, `!` (Imprimerie nationale, Lexique des règles typographiques).

    Here it stands before `:` and inside guillemets too (common practice, no source).
    """
    for told in read_catalogue("fr").values():
        assert not re.search(
            r"[^\s\d{}]\s?(?<!\u202f)[;?!»](?!\w)|(?<=\w):(?!\d)|«(?!\u202f)| [:;?!»]", told
        ), told


def test_german_quotes_are_german() -> None:
    for told in read_catalogue("de").values():
        assert "”" not in told
        assert told.count("„") == told.count("“"), told


def test_an_unknown_language_is_refused() -> None:
    with pytest.raises(ValueError, match="en, de, fr"):
        tongue_of("la", read_vocabulary())


def test_english_reads_no_catalogue() -> None:
    program = (
        "import builtins, sys; from intent.language.locale import tongue_of; from intent.vocabulary.loader import "
        "read_vocabulary; import tomllib; tomllib.loads = None; tongue_of('en', read_vocabulary())"
    )
    subprocess.run([sys.executable, "-c", program], check=True)
