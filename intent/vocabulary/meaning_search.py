"""Terms by what they are called and what they mean, in one language and in English, the best first."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from intent.vocabulary.phrases import normal
from intent.vocabulary.properties import SKOS
from intent.vocabulary.terms import Characteristic, Concept, Vocabulary

MOST_FOUND = 12
"""So many terms can be taken in at a glance."""
_SHORTEST = 3
"""The letters of a word by which another may begin: `flicker` finds `flickers`."""
_WITHIN = 5
"""The letters of a word that is found within a compound, as German has them."""
_ENDING = 2
_LABELS = (SKOS + "prefLabel", SKOS + "altLabel")
_PREFERRED, _LABEL, _DEFINITION = 4, 3, 1


def terms_about(vocabulary: Vocabulary, query: str, language: str) -> tuple[Concept | Characteristic, ...]:
    """The terms in whose labels or definition the words of a query stand, those first that hold most of them.

    Labels and definitions count in the language and in English, and in no other. A term that holds half of the words
    or less is about something else.
    """
    wanted = _words(query)
    weighed: list[tuple[int, int, int, Concept | Characteristic]] = []
    for place, term in enumerate(_terms(vocabulary)):
        weight = sum(_weight(word, term, vocabulary, language) for word in wanted)
        held = sum(bool(_weight(word, term, vocabulary, language)) for word in wanted)
        if held == len(wanted) or (held and held * 2 > len(wanted)):
            weighed.append((-held, -weight, place, term))
    return tuple(term for *_, term in sorted(weighed, key=lambda one: one[:3])[:MOST_FOUND])


def stands_in(query: str, labels: Iterable[str]) -> bool:
    """Whether every word of a query stands in one of some labels."""
    return any(all(_stands(word, [label]) for word in _words(query)) for label in labels)


def labels_in(vocabulary: Vocabulary, language: str) -> tuple[str, ...]:
    """What the terms are called in a language, for people to be offered."""
    return tuple(one.labels[language] for one in _terms(vocabulary) if language in one.labels)


def _terms(vocabulary: Vocabulary) -> tuple[Concept | Characteristic, ...]:
    return (*vocabulary.characteristics.values(), *vocabulary.concepts.values())


def is_called(term: Concept | Characteristic, wanted: str, vocabulary: Vocabulary, language: str) -> bool:
    """Whether a term bears a name in a language or in English."""
    return bool(vocabulary.languages_of(term.iri, wanted) & {language, "en"})


def _weight(word: str, term: Concept | Characteristic, vocabulary: Vocabulary, language: str) -> int:
    if _stands(word, (term.label_in(tag) for tag in (language, "en"))):
        return _PREFERRED
    if _stands(word, _labels(term, vocabulary, language)):
        return _LABEL
    return _DEFINITION if _stands(word, _meanings(term, language)) else 0


def _meanings(term: Concept | Characteristic, language: str) -> tuple[str, ...]:
    """What a term means, in a language and in English; of a characteristic the vocabulary says it in English."""
    return (term.definition, term.text_in(language)) if isinstance(term, Concept) else (term.definition,)


def _stands(word: str, texts: Iterable[str]) -> bool:
    return any(_alike(word, other) for text in texts for other in _words(text))


def _alike(word: str, other: str) -> bool:
    """Whether another word is the same, begins with this or holds it, or is this without an ending."""
    ending = word.removeprefix(other)
    return (
        other.startswith(word)
        or (len(word) >= _WITHIN and word in other)
        or (len(other) > _SHORTEST and ending != word and len(ending) <= _ENDING)
    )


def _labels(term: Concept | Characteristic, vocabulary: Vocabulary, language: str) -> Iterator[str]:
    about = vocabulary.described.get(term.iri, {})
    for key in _LABELS:
        yield from (
            label.value for label in about.get(key, ()) if (label.language or "en") in {language, "en"}
        )


def _words(text: str) -> tuple[str, ...]:
    """The words of a text, without those too short to say anything."""
    found = [normal(word) for word in re.findall(r"[^\W_]+", text)]
    return tuple(dict.fromkeys(word for word in found if len(word) >= _SHORTEST)) or tuple(found)
