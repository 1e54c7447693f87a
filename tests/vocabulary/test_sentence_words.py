"""The words of the instruction sentence in each language: all there, each with one meaning, none hidden by a name."""

from __future__ import annotations

from collections import Counter

import pytest

from intent.dossier.words import is_word, tokens
from intent.vocabulary.grammar import OUTSIDE, Grammar, Word
from intent.vocabulary.loader import read_vocabulary

VOCABULARY = read_vocabulary()
ELSEWHERE = {
    Word.TOTAL_AFTER: Word.TOTAL,
    Word.IN_ALL: Word.TOTAL,
    Word.IF_SO: Word.IF,
}
"""Words for which a language may have another in another place of the sentence."""
LEFT_OUT = {Word.ONE_OF}
"""Words that a language may leave out when it tells a sentence."""


def grammars() -> list[object]:
    return [pytest.param(one, id=one.language) for one in VOCABULARY.grammars]


def told(grammar: Grammar) -> set[Word]:
    """The words that a language can tell, by themselves or run together with others."""
    return {word for words in grammar.terms if grammar.label(*words) for word in words}


def test_english_is_the_first_language() -> None:
    assert [one.language for one in VOCABULARY.grammars] == ["en", "de", "fr"]


@pytest.mark.parametrize("grammar", grammars())
def test_a_language_can_say_everything(grammar: Grammar) -> None:
    missing = set(Word) - told(grammar) - ELSEWHERE.keys() - LEFT_OUT
    if Word.IN_ALL in told(grammar):
        missing -= {Word.TOTAL}
    assert missing == set()
    assert grammar.labels(Word.ONE_OF)


@pytest.mark.parametrize("grammar", grammars())
def test_a_label_stands_for_one_thing_in_its_language(grammar: Grammar) -> None:
    counted = Counter(name for words in grammar.terms for name in grammar.labels(*words))
    assert [name for name, number in counted.items() if number > 1] == []


def test_a_label_stands_for_the_same_thing_in_every_language() -> None:
    """Which language a sentence is in is never left to what a word means."""
    meant: dict[str, set[tuple[Word, ...]]] = {}
    for grammar in VOCABULARY.grammars:
        for words in grammar.terms:
            for name in grammar.labels(*words):
                meant.setdefault(name, set()).add(words)
    assert {name: found for name, found in meant.items() if len(found) > 1} == ALIKE


ALIKE = {"total": {(Word.TOTAL,), (Word.TOTAL_AFTER,)}}
"""The same word at another place of the sentence: `total power`, `poids total`."""


@pytest.mark.parametrize("grammar", grammars())
def test_no_name_of_the_vocabulary_hides_a_word(grammar: Grammar) -> None:
    """Known names are matched before the words of the sentence."""
    hidden = {}
    for words in grammar.terms:
        for name in grammar.labels(*words) if not OUTSIDE & set(words) else ():
            found = [token.type for token in tokens(name, (VOCABULARY.phrases,), grammar)]
            if found != [word.token for word in words]:
                hidden[name] = found
    assert hidden == {}


def test_the_other_languages_never_change_how_an_english_word_is_read() -> None:
    """Each English label is a word of the sentence in English, whatever it would be elsewhere."""
    english = VOCABULARY.grammars[0]
    for words in english.terms:
        for name in english.labels(*words) if not OUTSIDE & set(words) else ():
            assert all(map(is_word, tokens(name, (), english))), name


@pytest.mark.parametrize(
    "form", [*VOCABULARY.fields.values(), *VOCABULARY.sections.values()], ids=lambda form: form.iri
)
def test_fields_and_sections_have_a_label_in_each_language(form: object) -> None:
    labels = getattr(form, "labels", {})
    assert not labels or labels.keys() >= {"en", "de", "fr"}
