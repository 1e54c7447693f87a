"""Which classes of the record a person has, and which a body; the vocabulary says so."""

from __future__ import annotations

from collections.abc import Mapping

from intent.names import TERM
from intent.vocabulary.properties import INTENT, values_of
from intent.vocabulary.terms import Concept, Vocabulary


def actor_classes(vocabulary: Vocabulary) -> Mapping[str, tuple[str, ...]]:
    """The IRIs of the classes, by the term that says person or body."""
    concepts = vocabulary.in_scheme(str(TERM.actors))
    return {one.iri: values_of(vocabulary.described[one.iri], INTENT + "actorClass") for one in concepts}


def actor_of(classes: frozenset[str], vocabulary: Vocabulary) -> Concept | None:
    """The term of which somebody of these classes has one at least; none where nobody said which."""
    known = actor_classes(vocabulary)
    return next((vocabulary.concepts[iri] for iri, own in known.items() if classes & frozenset(own)), None)
