"""What is said of a part, a device or a place, told beside the name of what it is said of."""

from __future__ import annotations

from collections.abc import Mapping

from intent.language.message import Words, joined, listed, named, say, term_of
from intent.model.assertions import Statements
from intent.model.phrasing import expression_words
from intent.vocabulary.terms import Concept, Vocabulary


def characterised(characteristic: Words, value: Words) -> Words:
    """`rotation upright`; the value alone where it says by itself what it is, as `present` does of `presence`."""
    term = term_of(value)
    if isinstance(term, Concept) and term.stands_alone:
        return value
    return joined([characteristic, value])


def in_order(vocabulary: Vocabulary, statements: Statements) -> list[str]:
    """The characteristics of which something is said, in the order of the vocabulary."""
    order = {iri: place for place, iri in enumerate(vocabulary.characteristics)}
    return sorted(statements, key=lambda iri: (order.get(iri, len(order)), iri))


def statements_words(vocabulary: Vocabulary, statements: Statements) -> Words:
    """`technology LCD and visible diagonal 15 in`, in the order of the vocabulary."""
    return listed(
        characterised(named(vocabulary.named(iri)), expression_words(statements[iri], vocabulary))
        for iri in in_order(vocabulary, statements)
    )


def altered_words(vocabulary: Vocabulary, before: Statements, after: Statements) -> Words:
    """`rotation upright instead of turned left`, for every value that is changed; nothing where none is."""
    told: list[Words] = []
    for iri in in_order(vocabulary, after):
        changed = characterised(named(vocabulary.named(iri)), expression_words(after[iri], vocabulary))
        if iri in before:
            documented = expression_words(before[iri], vocabulary)
            changed = say("{value} instead of {documented}", value=changed, documented=documented)
        told.append(changed)
    return listed(told)


def labelled_fields(vocabulary: Vocabulary, fields: Mapping[str, str], section: str) -> dict[str, str]:
    """Fields as written, by their label in a section of the form instead of the property's IRI."""
    labels = {form.property: form.label for form in vocabulary.fields.values() if section in form.sections}
    return {labels[iri]: value for iri, value in fields.items() if iri in labels}
