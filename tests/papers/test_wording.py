"""Dates, lists and identifiers as a reader would say them."""

from __future__ import annotations

import datetime

import pytest

from intent.language.calendar import span_words
from intent.language.locale import ENGLISH
from intent.language.message import Joint, Words, listed, quoted, say, sentence
from intent.model.naming import runs
from intent.values.dates import DaySpan, read_date


@pytest.mark.parametrize(
    ("written", "words"),
    [
        # The forms are the examples of the Library of Congress EDTF specification (2019), levels 0 and 1.
        ("1985-04-12", "12 April 1985"),
        ("1985-04", "April 1985"),
        ("1985", "1985"),
        ("1964/2008", "1964 to 2008"),
        ("2004-02-01/2005-02-08", "1 February 2004 to 8 February 2005"),
        ("1984?", "perhaps 1984"),
        ("2004-06~", "about June 2004"),
        ("2004-06-11%", "perhaps about 11 June 2004"),
        ("201X", "the 2010s"),
        ("20XX", "1 January 2000 to 31 December 2099"),
        ("2004-XX", "2004"),
        ("1985-04-XX", "April 1985"),
        ("1985-04-12/..", "from 12 April 1985"),
        ("../1985-04-12", "until 12 April 1985"),
        ("2001-21", "spring 2001"),
        ("1984~/2004-06", "about 1984 to June 2004"),
    ],
)
def test_dates(written: str, words: str) -> None:
    assert ENGLISH.say(span_words(read_date(written))) == words


def test_dates_that_nobody_wrote() -> None:
    day = datetime.date(2027, 3, 1)
    assert ENGLISH.say(span_words(DaySpan(day, day))) == "1 March 2027"
    assert ENGLISH.say(span_words(DaySpan(day, datetime.date.max))) == "from 1 March 2027"
    assert ENGLISH.say(span_words(DaySpan(datetime.date.min, day))) == "until 1 March 2027"
    assert span_words(None) == ""


@pytest.mark.parametrize(
    ("identifiers", "words"),
    [
        ([], ""),
        (["M1"], "M1"),
        (["M1", "M2"], "M1 and M2"),
        (["M1", "M2", "M3", "P1"], "M1 to M3 and P1"),
        (["M08", "M09", "M10", "M12"], "M08 to M10 and M12"),
        (["Monitors", "M1"], "Monitors and M1"),
        ([say("the work"), "M1", "M2", "M3"], "the work and M1 to M3"),
    ],
)
def test_runs(identifiers: list[Words], words: str) -> None:
    assert ENGLISH.say(runs(identifiers)) == words


def test_sentences() -> None:
    assert ENGLISH.say(listed(["a", "b", "c"])) == "a, b and c"
    assert ENGLISH.say(listed(["a", "b"], Joint.OR)) == "a or b"
    assert ENGLISH.say(sentence("it rains")) == "It rains."
    assert ENGLISH.say(sentence("does it?")) == "Does it?"
    assert ENGLISH.say(sentence(" ")) == ""
    assert ENGLISH.say(quoted('"no tube"')) == ENGLISH.say(quoted("“no tube”")) == "“no tube”"
