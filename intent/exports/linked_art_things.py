"""Pieces of Linked Art documents: references, types, names, statements, dimensions, spans of time.

Source: Linked Art 1.0 (linked.art/api/1.0), shared structures: Name, Identifier, Statement, Dimension, TimeSpan,
Creation, references. Types that Linked Art's own profile wants are those of the Art & Architecture Thesaurus.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction

from intent.exports.catalogue import TECHNOLOGY, Fact, property_words
from intent.exports.published_matches import Published
from intent.model.assertions import Named
from intent.model.work import Person
from intent.names import A_PERSON, INTENT
from intent.values.dates import FIRST_DAY, LAST_DAY, DaySpan
from intent.vocabulary.terms import Concept, Vocabulary
from intent.vocabulary.unit_of_measure import Unit

CONTEXT = "https://linked.art/ns/v1/linked-art.json"
"""The context as published; the schemas admit an IRI and nothing written out."""
_AAT = "http://vocab.getty.edu/aat/"
ARTWORK, PRIMARY_NAME, ACCESSION_NUMBER, DESCRIPTION, MATERIALS, CREDIT_LINE = (
    f"{_AAT}{number}" for number in (300133025, 300404670, 300312355, 300435416, 300435429, 300026687)
)
NOTE, BRIEF_TEXT, PART_TYPE = (f"{_AAT}{number}" for number in (300027200, 300418049, 300241583))
"""Published under these names by linked.art/model/vocab, the last by linked.art/model/object/physical."""
Json = str | int | float | list["Json"] | dict[str, "Json"]
Object = dict[str, Json]


def made(**members: Json | None) -> Object:
    """An object without its empty members; `id_`, `context_` and `label_` stand for what is no Python name."""
    names = {"id_": "id", "context_": "@context", "label_": "_label"}
    return {
        names.get(name, name): value for name, value in members.items() if value not in (None, "", [], {})
    }


def document(iri: str, kind: str, label: str, **members: Json | None) -> Object:
    """A document of its own."""
    return made(context_=CONTEXT, id_=iri, type=kind, label_=label or iri, **members)


def reference(iri: str, kind: str, label: str = "") -> Object:
    return made(id_=iri, type=kind, label_=label)


def person_reference(person: Person) -> Object:
    return reference(person.iri, kind_of_person(person), person.name or person.role.label)


def not_told(person: Person | None) -> list[Json]:
    """That nobody says whether somebody is a person or a body, where nobody does."""
    if person is not None and person.actor is not None:
        return []
    return statement("The record does not say whether this is one person or several.", NOTE, "Note")


def kind_of_person(person: Person) -> str:
    """A person where the record says so; else a group, which may consist of one: linked.art/model/actor, Types."""
    return "Person" if person.actor is not None and person.actor.iri == A_PERSON else "Group"


def typed(iri: str, label: str = "") -> list[Json]:
    """A classification by one type."""
    return [reference(iri, "Type", label)]


def concept_type(concept: Concept | None, published: Published) -> list[Json]:
    """A classification by a term of ours, after the published one that says the same."""
    return types_of(concept.iri, concept.label, published) if concept else []


def types_of(iri: str, label: str, published: Published) -> list[Json]:
    """The published type, where there is one, and our own."""
    theirs = typed(*published[iri]) if iri in published else []
    return [*theirs, *typed(iri, label)]


def part_type(concept: Concept, published: Published) -> list[Json]:
    """What a component is for, marked as the type of a part."""
    found = types_of(concept.iri, concept.label, published)
    return [made(**one, classified_as=typed(PART_TYPE, "Part Type")) for one in _objects(found)]


def _objects(found: Iterable[Json]) -> Iterator[Object]:
    return (one for one in found if isinstance(one, dict))


def name(content: str) -> list[Json]:
    """The primary name, if there is one."""
    if not content:
        return []
    return [made(type="Name", content=content, classified_as=typed(PRIMARY_NAME, "Primary Name"))]


def identifier(content: str, type_iri: str = "", label: str = "") -> list[Json]:
    if not content:
        return []
    return [
        made(type="Identifier", content=content, classified_as=typed(type_iri, label) if type_iri else [])
    ]


def statement(content: str, type_iri: str, label: str) -> list[Json]:
    """A text about a thing, of a type; nothing where there is no text."""
    return _statement(content, typed(type_iri, label), label)


def _statement(content: str, types: Iterable[Json], label: str) -> list[Json]:
    """Each type is marked as that of a brief text, so that a reader who does not know it knows what it is for."""
    if not content:
        return []
    brief: list[Json] = [
        made(**one, classified_as=typed(BRIEF_TEXT, "Brief Text")) for one in _objects(types)
    ]
    return [made(type="LinguisticObject", label_=label, classified_as=brief, content=content)]


def own_statement(content: str, term: str) -> list[Json]:
    """A text of a sort that the record has a property for."""
    return statement(content, str(INTENT[term]), property_words(term))


def fact_statements(facts: Iterable[Fact], published: Published) -> list[Json]:
    """What is documented and is neither a dimension, nor a type, nor a material."""
    return [
        one
        for fact in facts
        if fact.measure is None and not _is_named(fact)
        for one in _statement(
            f"{fact.characteristic.label}: {fact.text}",
            types_of(fact.characteristic.iri, fact.characteristic.label, published),
            fact.characteristic.label,
        )
    ]


def _is_named(fact: Fact) -> bool:
    """Whether a technology is told by its term alone."""
    items = fact.expression.items
    is_plain = bool(items) and not fact.expression.negated and all(isinstance(item, Named) for item in items)
    return fact.characteristic.iri == TECHNOLOGY and is_plain and len(items) == 1


def named(facts: Iterable[Fact], characteristic: str, kind: str, vocabulary: Vocabulary) -> Iterator[Json]:
    """References to the term of a characteristic, as types or materials."""
    for fact in facts:
        item = fact.expression.items[0] if _is_named(fact) else None
        if fact.characteristic.iri == characteristic and isinstance(item, Named):
            concept = vocabulary.concepts.get(item.concept)
            yield reference(item.concept, kind, concept.label if concept else "")


def dimensions(facts: Iterable[Fact], published: Published) -> list[Json]:
    """Every characteristic that is one number with a unit, as written."""
    found: list[Json] = []
    for fact in facts:
        if fact.measure is not None:
            measure, known = fact.measure, fact.characteristic
            found.append(
                made(
                    type="Dimension",
                    label_=f"{known.label}: {fact.text}",
                    classified_as=types_of(known.iri, known.label, published),
                    identified_by=name(f"{known.label}: {fact.text}"),
                    value=_number(measure.value),
                    lower_value_limit=None if measure.least is None else _number(measure.least),
                    upper_value_limit=None if measure.most is None else _number(measure.most),
                    unit=_unit(measure.unit, published),
                )
            )
    return found


def _unit(unit: Unit, published: Published) -> Json:
    """The unit of the thesaurus where it has one, else that of QUDT."""
    iri, label = published.get(unit.iri, (unit.iri, unit.symbol))
    return reference(iri, "MeasurementUnit", label)


def _number(value: Fraction) -> int | float:
    """A number of JSON: whole where it is whole, else the nearest that a reader's binary number can hold."""
    return value.numerator if value.denominator == 1 else float(value)


def timespan(span: DaySpan | None) -> Object:
    """From the beginning of the first to the end of the last day, with what was written; an open end is left out."""
    if span is None:
        return {}
    first = "" if span.first == FIRST_DAY else f"{span.first.isoformat()}T00:00:00Z"
    last = "" if span.last == LAST_DAY else f"{span.last.isoformat()}T23:59:59Z"
    return made(type="TimeSpan", identified_by=name(str(span)), begin_of_the_begin=first, end_of_the_end=last)


def activity(
    kind: str, people: Iterable[Person], on: DaySpan | None, influenced_by: list[Json] | None = None
) -> Object:
    """A production or creation, if anything is known of it."""
    by: list[Json] = [person_reference(person) for person in people]
    found = made(carried_out_by=by, timespan=timespan(on), influenced_by=influenced_by)
    return {"type": kind, **found} if found else {}
