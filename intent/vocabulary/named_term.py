"""What a term is called: by its label in a language, else by the last words of its IRI."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from intent.vocabulary.phrases import label_among


def local_name(iri: str) -> str:
    """What stands last in an IRI."""
    return iri.rsplit("/", 1)[-1].rsplit("#", 1)[-1]


@dataclass(frozen=True, slots=True)
class UnknownTerm:
    """A term that the vocabulary does not have, told by the last words of its IRI."""

    iri: str

    def label_in(self, language: str) -> str:
        """The same words in every language."""
        return local_name(self.iri).replace("-", " ")


class NamedTerm:
    """A term with a label in several languages, told by that of its reader."""

    __slots__ = ()
    iri: str
    labels: Mapping[str, str]

    @property
    def label(self) -> str:
        """The label in English, for programs and for messages about a text; a paper tells the term itself."""
        return self.label_in("en")

    def label_in(self, language: str) -> str:
        """The label in a language, else in English, else in any, else the last words of the IRI."""
        return label_among(self.labels, language) or local_name(self.iri)
