"""The text form's own terms from Turtle: sections, fields, and the words of the instruction sentence."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from intent.vocabulary.form_terms import FormField, FormSection, VerdictWord
from intent.vocabulary.grammar import Grammar, SentenceWord, Word, grammar_of
from intent.vocabulary.phrases import normal
from intent.vocabulary.properties import (
    INTENT,
    SKOS,
    Properties,
    all_texts_of,
    labels_of,
    texts_of,
    value_of,
    values_of,
)

_FIRST = "en"
"""The language in which a sentence is tried first, and which every word of the grammar has."""


def form_sections(subjects: Mapping[str, Properties], iris: Iterable[str]) -> dict[str, FormSection]:
    """The sections of the text form, by their IRI."""
    return {iri: _section(iri, subjects[iri]) for iri in iris}


def form_fields(subjects: Mapping[str, Properties], iris: Iterable[str]) -> dict[str, FormField]:
    """The fields and columns of the text form, by their IRI."""
    return {iri: _field(iri, subjects[iri]) for iri in iris}


def verdict_words(subjects: Mapping[str, Properties], iris: Iterable[str]) -> dict[str, VerdictWord]:
    """What each verdict is called, by the word that the record has for it."""
    found = [_verdict_word(iri, subjects[iri]) for iri in iris]
    return {word.verdict: word for word in found}


def grammars(subjects: Mapping[str, Properties], iris: Iterable[str]) -> tuple[Grammar, ...]:
    """The words of the instruction sentence in each language that has any, English first."""
    words = [_word(iri, subjects[iri]) for iri in iris]
    languages = {language for word in words for language in word.names_in}
    return tuple(
        grammar_of(language, words) for language in sorted(languages, key=lambda tag: (tag != _FIRST, tag))
    )


def _section(iri: str, about: Properties) -> FormSection:
    labels, names = labels_of(about)
    return FormSection(
        iri=iri,
        labels=labels,
        names=names,
        documents=frozenset(values_of(about, INTENT + "inDocument")),
        holds=value_of(about, INTENT + "contains") or "fields",
        bearers=frozenset(values_of(about, INTENT + "bearer")),
    )


def _field(iri: str, about: Properties) -> FormField:
    labels, names = labels_of(about)
    return FormField(
        iri=iri,
        labels=labels,
        names=names,
        property=value_of(about, INTENT + "property") or "",
        reads=value_of(about, INTENT + "reads") or "text",
        sections=frozenset(values_of(about, INTENT + "inSection")),
        schemes=frozenset(values_of(about, INTENT + "valuesFrom")),
    )


def _verdict_word(iri: str, about: Properties) -> VerdictWord:
    labels, names = labels_of(about)
    return VerdictWord(iri=iri, labels=labels, names=names, verdict=value_of(about, INTENT + "verdict") or "")


def _word(iri: str, about: Properties) -> SentenceWord:
    labels, names = labels_of(about)
    before_vowel = texts_of(about, INTENT + "beforeVowel")
    further = all_texts_of(about, SKOS + "altLabel")
    mistaken = all_texts_of(about, SKOS + "hiddenLabel")
    every = {
        language: [
            *filter(None, (labels.get(language), before_vowel.get(language))),
            *further.get(language, ()),
        ]
        for language in dict.fromkeys([*labels, *further])
    }
    return SentenceWord(
        iri=iri,
        labels=labels,
        names=names,
        words=tuple(Word[token] for token in (value_of(about, INTENT + "token") or "").split()),
        names_in={language: tuple(map(normal, found)) for language, found in every.items()},
        before_vowel=before_vowel,
        mistaken={language: tuple(map(normal, found)) for language, found in mistaken.items()},
    )
