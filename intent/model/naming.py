"""How people, parts and subjects are named to a reader: by their names, with the identifiers beside."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from intent.language.message import Message, Words, joined, listed, say
from intent.model.installation import Installation
from intent.model.subject import Subject, SubjectKind
from intent.model.work import Part, Person, Work
from intent.vocabulary.terms import Concept

FEW = 3
"""Up to so many subjects are named; more are told by their identifiers."""


@dataclass(frozen=True, slots=True)
class Calling:
    """What somebody is called in the place of their role's name."""

    called: str
    role: Concept
    languages: frozenset[str]
    """The languages in which it is a name of the role; none where it is somebody's own word."""

    def label_in(self, language: str) -> str:
        """The word itself; where it is another language's name of the role, this language's own."""
        is_foreign = bool(self.languages) and language not in self.languages
        return self.role.label_in(language) if is_foreign else self.called


def role_of(work: Work, person: Person) -> Calling | Concept:
    """What a person is to the work, to be told in the reader's language; as they are called where they say so."""
    if not person.called:
        return person.role
    languages = work.vocabulary.languages_of(person.role.iri, person.called)
    return Calling(person.called, person.role, languages)


def person_words(work: Work, identifier: str | None) -> Words:
    """`Odile Varga-Finn (conservator)`; the identifier where the work knows nobody of that name."""
    person = work.person(identifier)
    if person is None:
        return identifier or ""
    return say("{name} ({role})", name=person.name or person.identifier, role=role_of(work, person))


def person_name(work: Work, identifier: str | None) -> Words:
    """`Odile Varga-Finn`, without the role; `somebody` where nobody is named."""
    person = work.person(identifier)
    return (person.name or person.identifier) if person else identifier or say("somebody")


def find_part(work: Work, installation: Installation | None, identifier: str) -> Part | None:
    """A part of the work, or one that the installation adds."""
    added = installation.additions if installation else ()
    return work.part(identifier) or next((part for part in added if part.identifier == identifier), None)


def part_words(work: Work, installation: Installation | None, identifier: str) -> str:
    """`left window (M1)`; the identifier alone where the part has no name."""
    part = find_part(work, installation, identifier)
    return f"{part.name} ({identifier})" if part and part.name else identifier


def subject_name(subject: Subject) -> Words:
    """A subject as a sentence names it: a group by its name alone, parts by their identifiers."""
    match subject.kind:
        case SubjectKind.WORK:
            return say("the work")
        case SubjectKind.VENUE:
            return say("the venue")
        case SubjectKind.ADDITIONS:
            return say("additions")
        case SubjectKind.GROUP:
            return subject.group
    return joined(subject.members, ", ")


def subject_words(work: Work, installation: Installation | None, subject: Subject) -> Words:
    """A subject by its name: parts by theirs, a group with its parts, the work and the venue as they are."""
    if subject.kind is SubjectKind.GROUP and subject.members:
        return say("{name} ({parts})", name=subject.group, parts=runs(subject.members))
    if not subject.is_named_by_members:
        return subject_name(subject)
    if len(subject.members) > FEW:
        return runs(subject.members)
    return listed(part_words(work, installation, member) for member in subject.members)


def subjects_by_name(work: Work, installation: Installation | None, subjects: Sequence[Subject]) -> Words:
    """Several subjects in a heading or a sentence: by their names where they are few, else how many there are."""
    if len(subjects) > FEW:
        return say("{number} parts", number=len(subjects))
    return listed(subject_words(work, installation, subject) for subject in subjects)


def subject_in_short(subject: Subject) -> Words:
    """A subject by the identifiers in it, in one list: `L1 to L6`; a group by its name alone."""
    return runs(subject.members) if subject.is_named_by_members else subject_name(subject)


def runs(names: Sequence[Words]) -> Words:
    """Identifiers, and what else is named with them, in one list; three or more in an unbroken row as `M1 to M24`."""
    found: list[list[Words]] = []
    for name in names:
        if found and _follows(found[-1][-1], name):
            found[-1].append(name)
        else:
            found.append([name])
    told: list[Words] = []
    for run in found:
        told.extend([say("{one} to {other}", one=run[0], other=run[-1])] if len(run) > 2 else run)
    return listed(told)


def _follows(one: Words, two: Words) -> bool:
    if isinstance(one, Message) or isinstance(two, Message):
        return False
    first, second = (re.fullmatch(r"(.*?)(\d+)", name) for name in (one, two))
    if not first or not second or first[1] != second[1]:
        return False
    return int(second[2]) == int(first[2]) + 1
