"""A passage is found however it is set, and one with another word is not."""

from __future__ import annotations

import re

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from intent.dossier.media_time import read_clip
from intent.reading.evidence.nearest import nearest_passage
from intent.reading.evidence.search import find, pieces_of, transcript_of
from intent.reading.evidence.time_codes import stretches_at, time_codes

LETTERS = "abcdefghijklmnopqrstuvwxyzäéßñøABCDEÉжшλ"
SIGNS = st.sampled_from(
    ["", "", "", "", ",", ".", "?", "!", ";", ":", "”", "’", "*", "…", ".”", "),", "_", "»"]
)
WORDS = st.builds(
    lambda before, word, after: f"{before}{word}{after}",
    st.sampled_from(["", "", "", "", "“", "'", "*", "(", "«", "[0:01:02] ", "„", "-"]),
    st.one_of(
        st.text(LETTERS, min_size=1, max_size=9),
        st.sampled_from(
            ["it's", "twenty-four", "3.5", "1991-92", "C-14", "dogs'", "e\u0301te\u0301", "4:30"]
        ),
    ),
    SIGNS,
)
SPACES = st.sampled_from([" ", " ", "  ", "\n", "\n\n", "\t", " \n> ", "\u00a0"])


@st.composite
def texts(draw: st.DrawFn) -> list[str]:
    """A text as its words, each with the white space after it."""
    words = draw(st.lists(WORDS, min_size=4, max_size=40))
    return [word + draw(SPACES) for word in words]


def reflowed(draw: st.DrawFn, passage: str) -> str:
    """The passage with other white space, other quotation marks, and words broken where lines end."""
    space, double, single = draw(SPACES), draw(st.sampled_from('"“„»')), draw(st.sampled_from("'’ʼ"))
    text = re.sub(r"[“”„«»\"]", double, passage)
    text = re.sub(r"(?<=\w)['’](?=\w)", single, text)
    text = space.join(text.replace("\n> ", "\n").split())
    breaks = [match.start() for match in re.finditer(r"(?<=[^\W\d_ʼ])(?=[^\W\d_ʼ])", text)]
    for place in sorted(draw(st.lists(st.sampled_from(breaks), max_size=3, unique=True)) if breaks else [])[
        ::-1
    ]:
        text = (
            text[:place]
            + draw(st.sampled_from(["-\n", "\u00ad", "\u00ad\n", "-\n   "])).replace("\u00ad\n", "\u00ad")
            + text[place:]
        )
    return text


@given(st.data())
def test_a_passage_is_found_however_it_is_set(data: st.DataObject) -> None:
    words = data.draw(texts())
    start = data.draw(st.integers(0, len(words) - 2))
    end = data.draw(st.integers(start + 1, len(words)))
    passage = "".join(words[start:end])
    pieces = pieces_of(data.draw(st.composite(reflowed)(passage)))
    assume(pieces)
    assert find(pieces, transcript_of("".join(words))) is not None


@given(st.data())
def test_a_passage_with_another_word_is_not_found(data: st.DataObject) -> None:
    words = data.draw(texts())
    start = data.draw(st.integers(0, len(words) - 2))
    end = data.draw(st.integers(start + 1, len(words)))
    changed = data.draw(st.integers(start, end - 1))
    passage = [*words[start:changed], "qqq ", *words[changed + 1 : end]]
    pieces = pieces_of("".join(passage))
    assert find(pieces, transcript_of("".join(words))) is None


@given(st.data())
def test_what_is_found_has_the_same_words(data: st.DataObject) -> None:
    """Places are counted in the text as it was, so that what stands there is the passage again."""
    words = data.draw(texts())
    start = data.draw(st.integers(0, len(words) - 2))
    end = data.draw(st.integers(start + 1, len(words)))
    text = "".join(words)
    pieces = pieces_of("".join(words[start:end]))
    assume(pieces)
    found = find(pieces, transcript_of(text))
    assert found is not None
    assert pieces_of(text[found.start : found.end]) == pieces


SAME = (
    ("He'd have taken any machine", "He’d have taken any machine"),
    ('she said "no" twice', "she said “no” twice"),
    ("dit « oui », et", "dit “oui”, et"),
    ("sagte »ja« und", 'sagte "ja" und'),
    ("the water-\nfall runs", "the waterfall runs"),
    ("twenty-\nfour schedules", "twenty-four schedules"),
    ("pre-\nand post-war", "pre- and post-war"),
    ("re\u00adser\u00advoir act", "reservoir act"),
    ("it *is* __not__ damaged", "it is not damaged"),
    ("> and you look\n> at it", "and you look at it"),
    ("You wait. [0:04:20] You look", "You wait. You look"),
    (
        "1\n00:00:01.000 --> 00:00:04.000\nYou wait\n\n2\n00:00:04.000 --> 00:00:06.000\nand look",
        "You wait and look",
    ),
    ("cafe\u0301 noir", "caf\u00e9 noir"),
    ("I do not say never. I say ask. Or wait.", "I do not say never … Or wait."),
    ("I do not say never. I say ask. Or wait.", "I do not say never […] wait."),
    ("a \\*starred\\* word", "a *starred* word"),
)
OTHER = (
    ("You wait on the slip", "you wait on the slip"),
    ("the parties", "the part"),
    ("the parties", "art"),
    ("we'll see", "well see"),
    ("It may be so", "It maybe so"),
    ("It was one. It was two.", "It was two … It was one."),
    ("it weighs 15 kg", "it weighs 1.5 kg"),
    ("caf\u00e9", "cafe"),
)


@pytest.mark.parametrize(("source", "quoted"), SAME)
def test_only_the_wording_counts(source: str, quoted: str) -> None:
    assert find(pieces_of(quoted), transcript_of(f"Before it. {source} After it.")) is not None
    assert find(pieces_of(quoted), transcript_of(source)) is not None


@pytest.mark.parametrize(("source", "quoted"), OTHER)
def test_the_wording_does_count(source: str, quoted: str) -> None:
    assert find(pieces_of(quoted), transcript_of(source)) is None


def test_the_passage_of_the_standard_is_found_once() -> None:
    """W3C, Web Annotation Data Model (23 February 2017), section 4.2.4: exact, prefix and suffix as there."""
    prefix, exact, suffix = "this is an ", "anotation", " that has some"
    text = f"Among annotations, {prefix}{exact}{suffix} text after it."
    source = transcript_of(text)
    found = find(pieces_of(exact), source)
    assert found is not None
    assert text[found.start - len(prefix) : found.end + len(suffix)] == prefix + exact + suffix
    rest = transcript_of(text[: found.start] + text[found.end :])
    assert find(pieces_of(exact), rest) is None
    assert find(pieces_of(prefix + exact + suffix), source) is not None


TALK = "Head.\n\n[0:02:10] A: one. (0:02:40) two.\n\n[00:04:05] B: three.\n\n[0:01:00] Side B. four.\n"
AT = {
    "0:02:10": ["one", "Side", "four"],
    "0:02:39": ["one", "Side", "four"],
    "0:02:40": ["two", "Side", "four"],
    "0:04:05": ["three", "Side", "four"],
    "9:00": ["three", "Side", "four"],
    "0:01:30": ["Head", "Side", "four"],
    "0:00:10": ["Head"],
}


@pytest.mark.parametrize("at", AT)
def test_a_time_holds_as_far_as_the_next_time_code(at: str) -> None:
    source = transcript_of(TALK)
    stretches = stretches_at(source.codes, read_clip(at), len(TALK))
    words = ("Head", "one", "two", "three", "Side", "four")
    there = [word for word in words if any(find((word,), source, stretch) for stretch in stretches)]
    assert there == AT[at]


def test_a_clip_holds_to_its_end() -> None:
    source = transcript_of(TALK)
    (first, *_) = stretches_at(source.codes, read_clip("0:02:10,0:04:05"), len(TALK))
    assert find(("two",), source, first) is not None
    assert find(("three",), source, first) is None


def test_time_codes_are_told_from_other_numbers() -> None:
    text = "[0:14:05] at (4:30) a ratio 4:3, [1:03] and (1:02:03).\n0:20:00 bare\n(21:00) no hours"
    assert [code.written for code in time_codes(text)] == ["0:14:05", "1:03", "1:02:03", "0:20:00"]


def test_the_nearest_passage_is_offered() -> None:
    text = "Nobody came. You wait on the slip, because there is nowhere else. Then it leaves."
    near = nearest_passage(
        pieces_of("You wait on the quay, because there is nowhere else."), transcript_of(text)
    )
    assert near is not None
    assert text[near.start : near.end] == "You wait on the slip, because there is nowhere else."
    assert (
        nearest_passage(pieces_of("Paint the rail green again in the spring."), transcript_of(text)) is None
    )
