"""Each catalogue gives every English pattern, nothing else, with the same places, in all its plural forms."""

from __future__ import annotations

import datetime
import re
import subprocess
import sys
from collections.abc import Iterator
from functools import cache

import babel
import pytest
from babel.lists import format_list
from babel.messages.catalog import Catalog
from babel.messages.pofile import read_po
from hypothesis import given
from hypothesis import strategies as st

from intent.language.calendar import day_words
from intent.language.catalogued import read_catalogue
from intent.language.figures import Month
from intent.language.languages import LANGUAGES, locale_of
from intent.language.locale import ENGLISH
from intent.language.message import Joint, Listing, say, say_of
from languages.patterns import SOURCE, patterns, places

TRANSLATED = tuple(language for language in LANGUAGES if language != "en")
CATALOGUES = SOURCE / "language" / "catalogues"
BRITISH = babel.Locale.parse("en_GB")


@cache
def catalogue(language: str) -> Catalog:
    with (CATALOGUES / f"{language}.po").open("rb") as file:
        return read_po(file, locale=language)


def entries(language: str) -> Iterator[tuple[tuple[str, ...], tuple[str, ...]]]:
    """What is said of one and of several, and each form in which it is told."""
    for entry in catalogue(language):
        if entry.id:
            said = entry.id if isinstance(entry.id, tuple | list) else (entry.id,)
            told = entry.string if isinstance(entry.string, tuple | list) else (entry.string or "",)
            yield tuple(said), tuple(told)


def forms(language: str) -> Iterator[str]:
    yield from (form for _, told in entries(language) for form in told)


@pytest.mark.parametrize("language", TRANSLATED)
def test_every_pattern_is_translated(language: str) -> None:
    known = {said: told for said, told in entries(language) if all(told)}
    missing = [
        f"{pattern.place}: {pattern.one}"
        for pattern in patterns().values()
        if ((pattern.one, pattern.several) if pattern.several else (pattern.one,)) not in known
    ]
    assert not missing, f"run tests/languages/refresh.py, and say these in {language}.po"


@pytest.mark.parametrize("language", TRANSLATED)
def test_nothing_is_translated_that_nobody_says(language: str) -> None:
    said = patterns()
    assert not [one for (one, *_), _ in entries(language) if one not in said]


@pytest.mark.parametrize("language", TRANSLATED)
def test_the_places_are_the_same(language: str) -> None:
    wrong = {
        said: told
        for said, told in entries(language)
        if any(places(form) != places(said[-1]) for form in told[1:] or told)
        or not places(told[0]) <= places(said[0]) | places(said[-1])
    }
    assert not wrong


@pytest.mark.parametrize("language", TRANSLATED)
def test_every_plural_form_is_given(language: str) -> None:
    assert not [
        said
        for said, told in entries(language)
        if len(said) > 1 and len(told) != catalogue(language).num_plurals
    ]


@pytest.mark.parametrize("language", TRANSLATED)
def test_what_is_compiled_is_what_is_written(language: str) -> None:
    found = read_catalogue(CATALOGUES, language)
    for said, told in entries(language):
        one = found.ngettext(said[0], said[1], 1) if len(said) > 1 else found.gettext(said[0])
        assert one == told[0]


def test_french_marks_are_held_to_their_words() -> None:
    """A narrow no-break space before `;`, `?`, `!` (Imprimerie nationale, Lexique des règles typographiques).

    Here it stands before `:` and inside guillemets too (common practice, no source).
    """
    french = locale_of("fr")
    for said, _ in entries("fr"):
        told = french.pattern(say(said[0]))
        assert not re.search(
            r"[^\s\d{}]\s?(?<!\u202f)[;?!»](?!\w)|(?<=\w):(?!\d)|«(?!\u202f)| [:;?!»]", told
        ), told


def test_german_quotes_are_german() -> None:
    for told in forms("de"):
        assert "”" not in told
        assert told.count("„") == told.count("“"), told


def test_an_unknown_language_is_refused() -> None:
    with pytest.raises(ValueError, match="en, de, fr"):
        locale_of("la")


def test_english_reads_no_catalogue_and_no_data() -> None:
    program = (
        "import sys; from intent.language.languages import locale_of; locale_of('en'); "
        "sys.exit('babel' in sys.modules or 'intent.language.catalogued' in sys.modules)"
    )
    subprocess.run([sys.executable, "-c", program], check=True)


@pytest.mark.parametrize(
    ("digits", "told"),
    [
        ("43279.16829", "43\u202f279.168\u202f29"),
        ("3279.1683", "3279.1683"),
        ("-123000", "−123\u202f000"),
        ("385200.5", "385\u202f200.5"),
        ("0.12345", "0.123\u202f45"),
        ("1424", "1424"),
    ],
)
def test_digits_stand_in_groups_of_three_and_four_together(digits: str, told: str) -> None:
    """SI Brochure, 9th edition, 5.4.4: the first two are its own examples (from memory), the others follow its rule."""
    assert ENGLISH.number(digits) == told
    for language in ("de", "fr"):
        assert locale_of(language).number(digits) == told.replace(".", ",")


@given(st.lists(st.text(min_size=1), max_size=5), st.sampled_from(list(Joint)))
def test_english_lists_are_those_of_cldr(items: list[str], joint: Joint) -> None:
    """Unicode CLDR, en-GB, through Babel."""
    told = format_list(items, "standard" if joint is Joint.AND else "or", locale=BRITISH)
    assert ENGLISH.listing(items, joint) == told


@pytest.mark.parametrize("language", LANGUAGES)
def test_months_are_those_of_cldr(language: str) -> None:
    """Unicode CLDR, through Babel."""
    wide = babel.Locale.parse(language).months["format"]["wide"]
    told = [locale_of(language).say(say("{month}", month=Month(number))) for number in range(1, 13)]
    assert told == [wide[number] for number in range(1, 13)]


@pytest.mark.parametrize(
    ("language", "first", "other"),
    [
        ("en", "1 March 2027", "14 May 1999"),
        ("de", "1. März 2027", "14. Mai 1999"),
        ("fr", "1er mars 2027", "14 mai 1999"),
    ],
)
def test_days_are_said_as_people_say_them(language: str, first: str, other: str) -> None:
    locale = locale_of(language)
    assert locale.say(day_words(datetime.date(2027, 3, 1))) == first
    assert locale.say(day_words(datetime.date(1999, 5, 14))) == other


@pytest.mark.parametrize(
    ("language", "listed", "number", "one", "several"),
    [
        ("en", "a, b and c", "385\u202f200.5", "one", "many"),
        ("de", "a, b und c", "385\u202f200,5", "one", "many"),
        ("fr", "a, b et c", "385\u202f200,5", "one", "many"),
    ],
)
def test_lists_numbers_and_plurals(language: str, listed: str, number: str, one: str, several: str) -> None:
    locale = locale_of(language)
    assert locale.say(say("{all}", all=Listing(("a", "b", "c")))) == listed
    assert locale.number("385200.5") == number
    assert [locale.say(say_of(count, one, several)) for count in (1, 2)] == [one, several]


def test_none_is_told_as_each_language_does() -> None:
    """CLDR plural rules: 0 is told like one in French, like several in German and English."""
    one, several = "{number} departure", "{number} departures"
    french, german = locale_of("fr"), locale_of("de")
    assert french.pattern(say_of(0, one, several)) == french.pattern(say_of(1, one, several))
    assert german.pattern(say_of(0, one, several)) == german.pattern(say_of(2, one, several))
