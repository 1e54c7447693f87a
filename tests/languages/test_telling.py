"""Telling loses nothing: whatever stands in the places of a message stands in what is told of it, in any language."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import cache

import pytest
from hypothesis import given
from hypothesis import strategies as st

from intent.language.figures import Figure, Month, Written
from intent.language.languages import LANGUAGES, locale_of
from intent.language.locale import ENGLISH, Locale
from intent.language.message import (
    Joined,
    Joint,
    Listing,
    Message,
    Place,
    closed,
    opened,
    quoted,
    say,
    say_of,
    sentence,
)
from intent.values.dates import read_date
from intent.values.regions import Interval
from languages.patterns import Pattern, patterns, places

PLAIN = tuple(pattern for pattern in patterns().values() if not pattern.several)
COUNTING = tuple(pattern for pattern in patterns().values() if pattern.several)
MANY = st.integers(2, 10**6)

texts = st.text("abcdefgäéß", min_size=3, max_size=8)
"""Somebody's own words, with nothing in them that would be set otherwise in a sentence."""


@dataclass(frozen=True)
class Term:
    """A term as the vocabulary gives one, with a label in each language."""

    label: str

    def label_in(self, language: str) -> str:
        return f"{self.label}-{language}"


numbers = st.fractions(0, 10**6, max_denominator=1000)
bounds = st.lists(numbers, min_size=2, max_size=2).map(lambda ends: Interval(min(ends), max(ends)))
leaves: st.SearchStrategy[Place] = st.one_of(
    texts,
    st.integers(0, 10**6),
    bounds.map(lambda held: Figure(bounds=held, unit="W")),
    st.decimals(0, 100, places=2).map(lambda number: Written(f"{number} in")),
    st.integers(1, 12).map(Month),
    st.dates().map(lambda day: read_date(day.isoformat())),
    texts.map(Term),
)


def filled(parts: st.SearchStrategy[Place]) -> st.SearchStrategy[Message]:
    """A pattern of the program, and something in each of its places."""
    return st.sampled_from(PLAIN).flatmap(
        lambda pattern: st.fixed_dictionaries(dict.fromkeys(places(pattern.one), parts)).map(
            lambda held: say(pattern.one, **held)
        )
    )


def grown(parts: st.SearchStrategy[Place]) -> st.SearchStrategy[Place]:
    """What is made of other things: lists, things one after another, messages within messages."""
    some = st.lists(parts, min_size=1, max_size=3).map(tuple)
    return st.one_of(
        some,
        st.builds(Listing, some, st.sampled_from(Joint)),
        st.lists(texts, min_size=1, max_size=3).map(lambda items: Joined(tuple(items), "; ")),
        texts.map(quoted),
        filled(parts),
    )


messages = filled(st.recursive(leaves, grown, max_leaves=6))


@cache
def reader(language: str) -> Locale:
    """A language, whose catalogue is read once."""
    return locale_of(language)


def alone(locale: Locale, value: Place) -> str:
    """A thing as it is told with nothing about it."""
    return locale.say(say("{it}", it=value))


@pytest.mark.parametrize("language", LANGUAGES)
@given(message=messages)
def test_no_place_is_lost(language: str, message: Message) -> None:
    locale = reader(language)
    told = locale.say(message)
    for name, value in message.places:
        assert alone(locale, value) in told, name


@pytest.mark.parametrize("language", LANGUAGES)
@given(message=messages)
def test_no_place_is_lost_in_a_sentence(language: str, message: Message) -> None:
    """A capital first may be that of a place, and the full stop may be its own."""
    locale = reader(language)
    for shape in (opened, closed, sentence):
        told = locale.say(shape(message)).casefold()
        for name, value in message.places:
            assert alone(locale, value).casefold() in told, name


@pytest.mark.parametrize("language", LANGUAGES)
@given(pattern=st.sampled_from(COUNTING), number=MANY, data=st.data())
def test_what_counts_loses_no_place(
    language: str, pattern: Pattern, number: int, data: st.DataObject
) -> None:
    """Of several; of one, a language may say the number as a word or not at all."""
    held = {name: data.draw(texts) for name in sorted(places(pattern.one) | places(pattern.several))}
    told = reader(language).say(say_of(number, pattern.one, pattern.several, **held))
    assert [name for name in places(pattern.several) if held[name] not in told] == []


@given(message=messages)
def test_english_is_the_pattern_filled(message: Message) -> None:
    held = {name: alone(ENGLISH, value) for name, value in message.places}
    assert ENGLISH.say(message) == message.pattern.format_map(held)


@given(st.sampled_from(COUNTING), st.integers(0, 10))
def test_english_counts_one_and_several(pattern: Pattern, number: int) -> None:
    held = {name: name.upper() for name in places(pattern.one) | places(pattern.several)}
    told = ENGLISH.say(say_of(number, pattern.one, pattern.several, **held))
    assert told == (pattern.one if number == 1 else pattern.several).format_map(held)


@pytest.mark.parametrize("language", LANGUAGES)
@given(text=st.text())
def test_a_writers_own_words_stay_as_they_are(language: str, text: str) -> None:
    locale = reader(language)
    assert locale.say(text) == text
    assert alone(locale, text) == text


def test_a_half_is_told_with_the_mark_of_the_language() -> None:
    half = Figure(bounds=Interval(Fraction(5, 2), Fraction(5, 2)), unit="W")
    assert [alone(reader(language), half) for language in LANGUAGES] == ["2.5 W", "2,5 W", "2,5 W"]
