"""Values, characteristics, kinds and roles under the names of a dossier's own language."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Protocol

from rdflib import DCTERMS

from intent.dossier.words import spoken_in
from intent.language.figures import decimal
from intent.model.assertions import Dated, Expression, Form, Item, Named, Relative, Text
from intent.model.phrasing import tolerance_of
from intent.model.work import Work
from intent.vocabulary.grammar import Grammar, Word
from intent.vocabulary.phrases import normal
from intent.vocabulary.terms import Vocabulary

_FORMS = {
    Form.AT_LEAST: Word.AT_LEAST,
    Form.AT_MOST: Word.AT_MOST,
    Form.AS_DOCUMENTED: Word.AS_DOCUMENTED,
    Form.ANY: Word.ANY,
}


class _Labelled(Protocol):
    """What has a name in each language: a concept, a characteristic, the word of a verdict."""

    def label_in(self, language: str) -> str:
        """The name in a language."""
        ...


@dataclass(frozen=True, slots=True)
class OwnLabels:
    """The vocabulary in one language."""

    vocabulary: Vocabulary
    language: str = "en"

    @property
    def grammar(self) -> Grammar:
        """The words of the language, else of English."""
        return self.vocabulary.grammar_in(self.language)

    def of(self, term: _Labelled | None) -> str:
        """What a term is called; nothing where there is none."""
        return "" if term is None else term.label_in(self.language)

    def cell(self, expression: Expression) -> str:
        """A value as a cell has it; a number stays as it was written, one that was written as a name too."""
        several = len(expression.items) > 1
        items = [self._item(item, several) for item in expression.items]
        match expression.form:
            case Form.ONE_OF if not several:
                return items[0] if items else ""
            case Form.ONE_OF:
                *first, last = items
                return self.grammar.told([Word.ONE_OF, ", ".join(first), Word.OR, last])
            case Form.BETWEEN:
                return self.grammar.told([Word.BETWEEN, items[0], Word.AND, items[1]])
        return self.grammar.told([_FORMS[expression.form], *items])

    def _item(self, item: Item, several: bool) -> str:
        match item:
            case Named():
                return self.vocabulary.named(item.concept).label_in(self.language)
            case Text():
                return item.text
            case Dated():
                return str(item.span)
            case Relative():
                return (
                    f"{decimal(item.percent)} % {self.grammar.label(Word.OF_DOCUMENTED)}{tolerance_of(item)}"
                )
        is_position = "," in item.written and not item.written.startswith("(")
        return f"({item.written})" if several and is_position else item.written


def own_labels(work: Work) -> OwnLabels:
    """The language that the dossier's head names, else the one in which all its sentences are, else English."""
    vocabulary = work.vocabulary
    written = normal(work.fields.get(str(DCTERMS.language), ""))
    named = next((one.language for one in vocabulary.grammars if written.split("-")[0] == one.language), None)
    return OwnLabels(vocabulary, named or ("en" if written else _spoken(work)))


def _spoken(work: Work) -> str:
    """The language of the instructions, where all are in one; a sentence that is told as written is English."""
    if not work.instructions or not all(line.written for line in work.instructions):
        return "en"
    known = (work.vocabulary.phrases,)
    languages = {
        spoken_in(line.written, known, work.vocabulary.grammars).language for line in work.instructions
    }
    return languages.pop() if len(languages) == 1 else "en"
