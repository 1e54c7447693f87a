"""The usual cautions for the devices at hand, from the vocabulary's kinds and technologies."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from intent.language.message import say
from intent.papers.calling import called_for
from intent.papers.naming import WHOLES
from intent.papers.wording import opening, runs, sentence
from intent.variance.result import Variance
from intent.vocabulary.terms import Vocabulary

DEFERENCE = say(
    "These are the usual cautions, not all that could apply. Local codes, the maker's instructions and "
    "the judgement of licensed practitioners come first."
)


@dataclass(frozen=True, slots=True)
class Caution:
    """One caution, and the parts whose devices call for it."""

    label: str
    text: str
    concerns: str

    @property
    def title(self) -> str:
        return say("{name} ({role})", name=opening(self.label), role=self.concerns)


def cautions(variance: Variance) -> tuple[Caution, ...]:
    """In the order of the parts that call for them, those of the work and the venue last."""
    vocabulary = variance.work.vocabulary
    return tuple(_caution(vocabulary, iri, subjects) for iri, subjects in called_for(variance).items())


def _caution(vocabulary: Vocabulary, iri: str, subjects: Sequence[str]) -> Caution:
    concept = vocabulary.concepts.get(iri)
    concerns = runs([WHOLES.get(subject, subject) for subject in subjects])
    if concept is None:
        return Caution(iri.rsplit("/", 1)[-1], "", concerns)
    return Caution(concept.label, sentence(concept.text), concerns)
