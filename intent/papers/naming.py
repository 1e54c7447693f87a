"""How a report names people, parts and what is said of them: by their names, with the identifiers beside."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from intent.language.message import Saying, say, words
from intent.model.assertions import Expression, Statements
from intent.model.phrasing import expression_words
from intent.model.work import Part, Work
from intent.papers.wording import characterised, listed, runs
from intent.variance.result import Variance, VenueFinding
from intent.vocabulary.terms import Vocabulary

WHOLES: Mapping[str, Saying] = {one: one for one in words("the work", "the venue", "additions")}
"""The subjects that are no part and no group, as the rules name them."""

FEW = 3
"""Up to so many subjects are named in a heading; more are counted there and listed below it."""


def person_in_words(work: Work, identifier: str | None, language: str = "") -> str:
    """`Odile Varga-Finn (conservator)`; the identifier where the work knows nobody of that name."""
    person = work.person(identifier)
    if person is None:
        return identifier or ""
    role = person.role.label_in(language) if language else person.role.label
    return say("{name} ({role})", name=person.name or person.identifier, role=role)


def find_part(variance: Variance, identifier: str) -> Part | None:
    """A part of the work, or one that the installation adds."""
    added = (part for part in variance.installation.additions if part.identifier == identifier)
    return variance.work.part(identifier) or next(added, None)


def part_in_words(variance: Variance, identifier: str) -> str:
    """`left window (M1)`; the identifier alone where the part has no name."""
    part = find_part(variance, identifier)
    return f"{part.name} ({identifier})" if part and part.name else identifier


def subject_in_words(variance: Variance, subject: str, members: Sequence[str]) -> str:
    """The subject of one row: parts by name, a group with its parts, the work and the venue as they are."""
    if subject in WHOLES:
        return WHOLES[subject]
    identifiers = [name.strip() for name in subject.split(",")]
    if len(identifiers) > FEW:
        return runs(identifiers)
    if all(find_part(variance, name) for name in identifiers):
        return listed([part_in_words(variance, name) for name in identifiers])
    if members and subject not in members:
        return say("{name} ({role})", name=subject, role=runs(members))
    return subject


def subjects_in_words(variance: Variance, subjects: Sequence[tuple[str, Sequence[str]]]) -> tuple[str, str]:
    """Several subjects of one departure: words for a heading, and the whole list where that only counts."""
    names = [subject_in_words(variance, subject, members) for subject, members in subjects]
    if len(names) <= FEW:
        return listed(names), ""
    counted = say("{number} parts", number=len(names))
    if any(
        find_part(variance, subject) and names[place] != subject
        for place, (subject, _) in enumerate(subjects)
    ):
        return counted, listed(names)
    return counted, runs([subject for subject, _ in subjects])


def characteristic_label(vocabulary: Vocabulary, iri: str) -> str:
    characteristic = vocabulary.characteristics.get(iri)
    return characteristic.label if characteristic else iri.rsplit("/", 1)[-1].rsplit("#", 1)[-1]


def value_in_words(vocabulary: Vocabulary, expression: Expression | None) -> str:
    """The value as its writer put it, or as the vocabulary's language has it; or `not given`."""
    as_written = expression.written.strip() if expression and vocabulary.language == "en" else ""
    return as_written or expression_words(expression, vocabulary)


def in_order(vocabulary: Vocabulary, statements: Statements) -> list[str]:
    """The characteristics of which something is said, in the order of the vocabulary."""
    order = {iri: place for place, iri in enumerate(vocabulary.characteristics)}
    return sorted(statements, key=lambda iri: (order.get(iri, len(order)), iri))


def statements_in_words(vocabulary: Vocabulary, statements: Statements) -> list[str]:
    """`technology LCD`, `visible diagonal 15 in`, in the order of the vocabulary."""
    return [
        characterised(characteristic_label(vocabulary, iri), value_in_words(vocabulary, statements[iri]))
        for iri in in_order(vocabulary, statements)
    ]


def labelled_fields(vocabulary: Vocabulary, fields: Mapping[str, str], section: str) -> dict[str, str]:
    """Fields as written, by their label in a section of the form instead of the property's IRI."""
    labels = {form.property: form.label for form in vocabulary.fields.values() if section in form.sections}
    return {labels[iri]: value for iri, value in fields.items() if iri in labels}


def finding_subject(finding: VenueFinding) -> str:
    """What a finding is about, where its text does not name it: `L1 to L6`."""
    named = finding.subject in str(finding.text)
    return "" if named else runs(finding.subject.split(", "))


def finding_in_words(finding: VenueFinding) -> str:
    """A finding with its subject."""
    subject = finding_subject(finding)
    return say("{subject}: {text}", subject=subject, text=finding.text) if subject else finding.text
