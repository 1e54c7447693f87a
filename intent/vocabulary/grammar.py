"""The words of the instruction sentence, language by language: how they are found in a text, and how they are told."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from enum import Enum, auto
from itertools import groupby

from intent.vocabulary.form_terms import FormTerm
from intent.vocabulary.phrases import Phrases, phrases, words_of


class Word(Enum):
    """A word of the sentence, whatever the language."""

    OF = auto()
    IS = auto()
    NOT = auto()
    """After `is`; and before a fact that an expectation takes not to hold."""
    AND = auto()
    OR = auto()
    ONE_OF = auto()
    BETWEEN = auto()
    AT_LEAST = auto()
    AT_MOST = auto()
    AS_DOCUMENTED = auto()
    ANY = auto()
    SAME = auto()
    DIFFERENT = auto()
    NUMBER_OF = auto()
    TOTAL = auto()
    TOTAL_AFTER = auto()
    """`totale`, where it stands after the characteristic."""
    IN_ALL = auto()
    """`insgesamt`, where a total is said after the verb."""
    DIFFERENCE_IN = auto()
    DISTANCE_BETWEEN = auto()
    EVERY = auto()
    ADDITIONS = auto()
    THE_WORK = auto()
    THE_VENUE = auto()
    EXCEPT = auto()
    ABOVE = auto()
    BELOW = auto()
    LEFT_OF = auto()
    RIGHT_OF = auto()
    IN_FRONT_OF = auto()
    BEHIND = auto()
    IF = auto()
    IF_SO = auto()
    """`falls gilt:`, before an assertion, where a language orders the words after `if` otherwise."""
    UNLESS = auto()
    UNTIL = auto()
    WITH_CONSENT_OF = auto()
    FIRST = auto()
    SECOND = auto()
    THIRD = auto()
    FOURTH = auto()
    FIFTH = auto()
    SIXTH = auto()
    SEVENTH = auto()
    EIGHTH = auto()
    NINTH = auto()
    TENTH = auto()
    CHOICE = auto()
    OF_DOCUMENTED = auto()
    """After a percentage; a part of a value, and no token of the grammar."""
    AT = auto()
    """Before the time of a citation; no token of the grammar either."""
    CANNOT_BE_HAD = auto()
    """After the number of an earlier choice, in an attestation."""
    QUOTATION_MARKS = auto()
    """Around a fact or a text, as `"…"`; any pair is read in every language."""
    NOBODY = auto()
    """In the place of people, that there are none."""
    BY = auto()
    """In a duty, before the person or role that has to do it."""
    BEFORE = auto()
    """`before`, `during` and `after` the showing."""
    DURING = auto()
    AFTER = auto()
    WITHIN = auto()
    EVERY_DAY = auto()
    EVERY_WEEK = auto()
    THE_START = auto()
    """`the start` and `the end` of the showing."""
    THE_END = auto()
    EVERY_DAYS = auto()
    """`every … days`, as it is told; read as `EVERY` and a number of days."""
    DAY = auto()
    """After a number of days, where it is one; no token of the grammar, and `DAYS` neither."""
    DAYS = auto()
    WEEK = auto()
    WEEKS = auto()
    CONSENT_OF = auto()
    """Before a person whose consent is taken as given."""
    REFUSAL_OF = auto()
    """The same of a refusal."""
    TO_LINE = auto()
    """After that person, before the instructions that are answered."""

    @property
    def token(self) -> str:
        """What the grammar calls it; it makes no difference between relations, and between ordinals."""
        return "RELATION" if self in RELATIONS else "ORDINAL" if self in ORDINALS else self.name


RELATIONS = (
    Word.ABOVE,
    Word.BELOW,
    Word.LEFT_OF,
    Word.RIGHT_OF,
    Word.IN_FRONT_OF,
    Word.BEHIND,
)
ORDINALS = (
    Word.FIRST,
    Word.SECOND,
    Word.THIRD,
    Word.FOURTH,
    Word.FIFTH,
    Word.SIXTH,
    Word.SEVENTH,
    Word.EIGHTH,
    Word.NINTH,
    Word.TENTH,
)
_APOSTROPHES = ("'", "’")
_VOWELS = frozenset("aeiouàâäæéèêëîïôöœùûü")
COUNTED = {Word.DAY: 1, Word.DAYS: 1, Word.WEEK: 7, Word.WEEKS: 7}
"""What a duty's times are counted in, in days."""
OUTSIDE = frozenset(
    {
        Word.OF_DOCUMENTED,
        Word.AT,
        Word.CANNOT_BE_HAD,
        Word.QUOTATION_MARKS,
        Word.NOBODY,
        Word.EVERY_DAYS,
        *COUNTED,
        Word.CONSENT_OF,
        Word.REFUSAL_OF,
        Word.TO_LINE,
    }
)
"""Words that stand within a value, a citation or a field, where the sentence's own grammar does not look."""
UNRESERVED = frozenset(
    {Word.EVERY_DAY, Word.EVERY_DAYS, Word.EVERY_WEEK, Word.THE_START, Word.THE_END, *COUNTED}
)
"""Words that are read only where no name could stand: a part may be called `end`, and a person `day`."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SentenceWord(FormTerm):
    """A word of the sentence, or several that a language runs together (`des Werks`, `n'est pas`)."""

    words: tuple[Word, ...]
    """What it stands for, in order."""
    names_in: Mapping[str, tuple[str, ...]] = field(hash=False)
    """Every label of each language, as it is looked up."""
    before_vowel: Mapping[str, str] = field(hash=False)
    """The label that a language tells it with before a vowel."""
    mistaken: Mapping[str, tuple[str, ...]] = field(hash=False)
    """What people write instead, and is not read."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Grammar:
    """The words of one language."""

    language: str
    terms: Mapping[tuple[Word, ...], SentenceWord]
    """The terms that have a label in the language, by what they stand for."""
    read: Mapping[tuple[str, ...], tuple[Word, ...]]
    """What each label stands for, by the pieces that it is found as in a sentence."""
    phrases: Phrases

    def labels(self, *words: Word) -> tuple[str, ...]:
        """Every label of words, as it is looked up; the one they are told with first."""
        term = self.terms.get(words)
        return term.names_in[self.language] if term else ()

    def label(self, *words: Word) -> str:
        """The label that words are told with; nothing where the language has none."""
        term = self.terms.get(words)
        return term.labels.get(self.language, "") if term else ""

    def mistaken(self, word: Word) -> tuple[str, ...]:
        """What people write in the place of a word."""
        term = self.terms.get((word,))
        return term.mistaken.get(self.language, ()) if term else ()

    def match(self, pieces: Sequence[str], index: int) -> tuple[int, tuple[Word, ...]]:
        """The longest label that begins at a piece of a sentence: how many pieces it has, what it stands for."""
        found = self.phrases.match(pieces, index)
        return len(found), self.read.get(found, ())

    def told(self, pieces: Sequence[Word | str]) -> str:
        """Words and names as a text: words that run together by the label of all, one before a vowel by its own."""
        text = ""
        for run in reversed(tuple(self._runs(pieces))):
            label = run if isinstance(run, str) else self._label_before(run, text)
            text = label + text if label.endswith(_APOSTROPHES) or not text else f"{label} {text}"
        return text

    def _runs(self, pieces: Sequence[Word | str]) -> Iterator[SentenceWord | str]:
        """Each name, and the term of each longest run of words; a word that the language has not is left out."""
        for are_words, run in groupby(pieces, key=lambda piece: isinstance(piece, Word)):
            if are_words:
                yield from self._terms(tuple(piece for piece in run if isinstance(piece, Word)))
            else:
                yield from (piece for piece in run if isinstance(piece, str) and piece)

    def _terms(self, words: tuple[Word, ...]) -> Iterator[SentenceWord]:
        while words:
            sizes = range(len(words), 0, -1)
            size = next((size for size in sizes if self.label(*words[:size])), None)
            if size is not None:
                yield self.terms[words[:size]]
            words = words[size or 1 :]

    def _label_before(self, term: SentenceWord, text: str) -> str:
        elided = term.before_vowel.get(self.language, "") if text[:1].casefold() in _VOWELS else ""
        return elided or term.labels[self.language]


def grammar_of(language: str, terms: Iterable[SentenceWord]) -> Grammar:
    """The words of a language, out of the terms of all."""
    spoken = {term.words: term for term in terms if term.names_in.get(language)}
    stands_for = {
        name: words
        for words, term in spoken.items()
        if not OUTSIDE & set(words)
        for name in term.names_in[language]
    }
    return Grammar(
        language=language,
        terms=spoken,
        read={words_of(name): words for name, words in stands_for.items()},
        phrases=phrases(stands_for),
    )
