"""The words of the text form for people: sections, fields, lists of words for a column, words of the sentence."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from intent.language.message import Message, Words, joined, named, opened, say
from intent.names import TERM
from intent.papers.document import PaperSection, Paragraph
from intent.vocabulary.form_terms import FormField, FormSection, FormTerm
from intent.vocabulary.grammar import SentenceWord
from intent.vocabulary.meaning_search import stands_in
from intent.vocabulary.phrases import label_among, normal
from intent.vocabulary.properties import SKOS
from intent.vocabulary.terms import Vocabulary

LISTS: Mapping[str, Message] = {
    "roles": say("Roles"),
    "statuses": say("Statuses of a device"),
    "installation-statuses": say("Statuses of an installation"),
    "log-events": say("Events of a log"),
    "source-kinds": say("Kinds of source"),
    "grounds": say("Grounds of an instruction"),
}
"""Terms that are no value of a characteristic, by their scheme."""


@dataclass(frozen=True, slots=True)
class _Meaning:
    """What something means, in a place of a message; by language."""

    texts: Mapping[str, str]

    def label_in(self, language: str) -> str:
        return label_among(self.texts, language)


def form_sections(vocabulary: Vocabulary, name: str, language: str) -> Iterator[PaperSection]:
    """What of the text form bears a name, in a language or in English, and the lists of words that are about it."""
    for scheme, title in LISTS.items():
        if stands_in(name, _labels(vocabulary, str(TERM[scheme]), language)):
            words = joined(map(named, vocabulary.in_scheme(str(TERM[scheme]))), ", ")
            yield PaperSection(title=title, blocks=(Paragraph(words),))
    for section in vocabulary.sections.values():
        if normal(name) in map(normal, _labels(vocabulary, section.iri, language)):
            title = say("{section}, a section", section=section)
            yield _section(vocabulary, section.iri, title, _columns(vocabulary, section))
    for field in vocabulary.fields.values():
        if normal(name) in map(normal, _labels(vocabulary, field.iri, language)):
            title = say("{field}, a field or a column", field=field)
            yield _section(vocabulary, field.iri, title, _places(vocabulary, field))
    for word in _words(vocabulary):
        if normal(name) in map(normal, _labels(vocabulary, word.iri, language)):
            yield _section(
                vocabulary, word.iri, say("{word}, a word of the sentence", word=word), _names(word)
            )


def _labels(vocabulary: Vocabulary, iri: str, language: str) -> tuple[str, ...]:
    about = vocabulary.described.get(iri, {})
    labels = [label for key in ("prefLabel", "altLabel") for label in about.get(SKOS + key, ())]
    return tuple(label.value for label in labels if (label.language or "en") in {language, "en"})


def _words(vocabulary: Vocabulary) -> Iterator[SentenceWord]:
    found = {word.iri: word for grammar in vocabulary.grammars for word in grammar.terms.values()}
    yield from found.values()


def _section(vocabulary: Vocabulary, iri: str, title: Words, told: Words) -> PaperSection:
    meant = vocabulary.described.get(iri, {}).get(SKOS + "definition", ())
    meaning = {text.language or "en": text.value for text in meant}
    blocks = (named(_Meaning(meaning)) if meaning else "", told)
    return PaperSection(title=opened(title), blocks=tuple(Paragraph(text) for text in blocks if text))


def _columns(vocabulary: Vocabulary, section: FormSection) -> Words:
    fields = [one for one in vocabulary.fields.values() if section.iri in one.sections]
    return say("In it stand: {fields}.", fields=joined(map(named, fields), ", ")) if fields else ""


def _places(vocabulary: Vocabulary, field: FormField) -> Words:
    sections = [one for one in vocabulary.sections.values() if one.iri in field.sections and one.labels]
    return say("It stands in: {sections}.", sections=joined(map(named, sections), ", ")) if sections else ""


def _names(word: FormTerm) -> Words:
    return "; ".join(f"{language}: {label}" for language, label in sorted(word.labels.items()))
