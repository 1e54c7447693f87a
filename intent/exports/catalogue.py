"""What a catalogue says of a work and of its components: the one account that each standard is written from.

It is made of a work that may leave the house (see `leaving`); nothing is left out here. Texts are in English, which
the standards are told to be in; what the vocabulary has labels for is given in all its languages by who writes it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from rdflib import DC, DCTERMS

from intent.language.locale import ENGLISH
from intent.model.assertions import Expression, Form, Measured, Statements
from intent.model.duty import Duty
from intent.model.instruction_text import assertion_text, expression_text
from intent.model.naming import person_words
from intent.model.work import Device, Heading, Instruction, Part, Person, Source, Work
from intent.names import ARTIST, CRM, INTENT, TERM, THE_WORK
from intent.values.dates import DaySpan, read_date
from intent.variance.case import superseders_of
from intent.variance.duties_held import superseded_from
from intent.variance.scopes import Scopes, scopes_of
from intent.variance.two_states import documented_state
from intent.vocabulary.terms import Characteristic, Vocabulary
from intent.vocabulary.unit_of_measure import Unit

TECHNOLOGY = str(TERM.technology)


@dataclass(frozen=True, slots=True, kw_only=True)
class Measure:
    """One number with its unit, as written; where it has a tolerance, the least and the most that it may be."""

    value: Fraction
    unit: Unit
    least: Fraction | None = None
    most: Fraction | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Fact:
    """One characteristic of a thing as documented, in words, and as a measure where it is one."""

    characteristic: Characteristic
    expression: Expression
    text: str
    measure: Measure | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Component:
    """A part of the work, with what is documented of it and of the device in its place."""

    part: Part
    title: str
    facts: tuple[Fact, ...]
    device: Device | None
    lines: tuple[Instruction, ...]
    """The instructions that speak of it."""


@dataclass(frozen=True, slots=True)
class Maker:
    """Who made the work: a person of the record, or only a name."""

    name: str
    role: str
    person: Person | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Catalogue:
    """A work as a catalogue tells of it."""

    work: Work
    facts: tuple[Fact, ...]
    """What is documented of the work as a whole."""
    components: tuple[Component, ...]
    makers: tuple[Maker, ...]
    made: DaySpan | None
    owner: str
    number: str
    language: str
    """The language tag of the record's prose, where it is known to be one."""


def catalogue_of(work: Work) -> Catalogue:
    """The account of a work and its components, in the order of the work."""
    state, scopes = documented_state(work), scopes_of(work)
    devices = {device.identifier: device for device in work.devices}
    components = tuple(
        Component(
            part=part,
            title=part.name or part.identifier,
            facts=facts_of(state.statements[part.identifier], work.vocabulary),
            device=devices.get(part.device or ""),
            lines=tuple(line for line in work.instructions if part.identifier in _spoken_of(line, scopes)),
        )
        for part in work.parts
    )
    return Catalogue(
        work=work,
        facts=facts_of(state.statements[THE_WORK], work.vocabulary),
        components=components,
        makers=tuple(_makers(work)),
        made=_made(work),
        owner=work.fields.get(str(CRM["P52_has_current_owner"]), ""),
        number=work.fields.get(str(INTENT.accessionNumber), ""),
        language=_tag(work.fields.get(str(DCTERMS.language), "")),
    )


def facts_of(statements: Statements, vocabulary: Vocabulary) -> tuple[Fact, ...]:
    """What is stated of a thing, by the names of the characteristics; what the vocabulary does not know is left."""
    found = [
        Fact(
            characteristic=known,
            expression=expression,
            text=expression_text(expression, vocabulary),
            measure=_measure(expression, vocabulary),
        )
        for iri, expression in statements.items()
        if (known := vocabulary.characteristics.get(iri)) is not None
    ]
    return tuple(sorted(found, key=lambda fact: (fact.characteristic.label, fact.characteristic.iri)))


def _measure(expression: Expression, vocabulary: Vocabulary) -> Measure | None:
    """A single number with a unit; a range, a position or a ratio is told in words alone."""
    if expression.form is not Form.ONE_OF or expression.negated or len(expression.items) != 1:
        return None
    item = expression.items[0]
    unit = vocabulary.units.get(item.unit or "") if isinstance(item, Measured) else None
    if not isinstance(item, Measured) or unit is None or len(item.numbers) != 1:
        return None
    number, around = item.numbers[0], _tolerance(item)
    ends = (number - around, number + around) if around is not None else (None, None)
    least, most = (None if end is None else unit.of_reference(end) for end in ends)
    return Measure(value=unit.of_reference(number), unit=unit, least=least, most=most)


def _tolerance(item: Measured) -> Fraction | None:
    if item.tolerance_percent is not None:
        return abs(item.numbers[0]) * item.tolerance_percent / 100
    return item.tolerance


def _spoken_of(line: Instruction, scopes: Scopes) -> tuple[str, ...]:
    other = (line.assertion.other,) if line.assertion.other else ()
    return (*scopes.of_work(line.assertion), *other)


def _makers(work: Work) -> Iterator[Maker]:
    """The people who are its artists; where none of them has a name, whoever the head names."""
    artists = [person for person in work.people if person.role.iri == ARTIST and person.name]
    yield from (Maker(person.name, person.role.label, person) for person in artists)
    named = work.fields.get(str(DC.creator), "")
    if named and not artists:
        artist = work.vocabulary.concepts.get(ARTIST)
        yield Maker(named, artist.label if artist else "artist")


def _made(work: Work) -> DaySpan | None:
    written = work.fields.get(str(DCTERMS.created), "")
    try:
        return read_date(written) if written else None
    except ValueError:
        return None


def _tag(written: str) -> str:
    """A language tag of BCP 47 as `xs:language` has it; nothing where the field is a name in words."""
    steps = written.strip().split("-")
    fits = 2 <= len(steps[0]) <= 3 and all(1 <= len(step) <= 8 and step.isalnum() for step in steps)
    return written.strip() if fits and written.isascii() and steps[0].isalpha() else ""


def speaker(work: Work, line: Instruction) -> str:
    """Who gave an instruction and when: `Runa Quillmark (artist), 1992-06-11`."""
    name = person_text(work, line.by)
    return ", ".join(filter(None, [name, str(line.on) if line.on else ""]))


def person_text(work: Work, identifier: str | None) -> str:
    """A person with role; the identifier where the name stays in the house."""
    return ENGLISH.say(person_words(work, identifier))


def citations(work: Work, line: Instruction) -> tuple[str, ...]:
    """The sources of an instruction: `S1 Conversation in the studio, at 0:14:05`."""
    return tuple(
        f"{source_text(work.source(one.source), one.source)}{f', at {one.at}' if one.at else ''}"
        for one in line.sources
    )


def source_text(source: Source | None, identifier: str) -> str:
    return " ".join(filter(None, [identifier, source.title if source else ""]))


def line_text(work: Work, line: Instruction) -> str:
    """An instruction with its modality, as the text form writes it."""
    sentence = line.sentence or assertion_text(line.assertion, work.vocabulary)
    return f"{line.modality.value}: {sentence}"


def standing(line: Instruction) -> tuple[tuple[str, str], ...]:
    """What else is known of an instruction, by property: the ground where it is not intent, and what ended it."""
    known = (
        ("ground", line.ground if line.ground != "intent" else ""),
        ("supersedes", ", ".join(line.supersedes)),
        ("liftedBy", "" if line.lifted_by is None else ", ".join(line.lifted_by) or "nobody"),
        ("withdrawn", str(line.withdrawn) if line.withdrawn else ""),
    )
    return tuple((name, text) for name, text in known if text)


def property_words(name: str) -> str:
    """The name of a property of the record in words: `lifted by` of `liftedBy`."""
    return re.sub("[A-Z]", lambda found: f" {found[0].lower()}", name)


def in_force(work: Work) -> tuple[Instruction, ...]:
    """The instructions that are neither withdrawn nor superseded, whatever the day.

    What is superseded without effect (something of another ground, say) stays.
    """
    gone = superseders_of(work)
    return tuple(line for line in work.instructions if line.withdrawn is None and line.identifier not in gone)


def duties_in_force(work: Work) -> tuple[Duty, ...]:
    """The duties that are neither withdrawn nor superseded, whatever the day."""
    return tuple(
        duty for duty in work.duties if duty.withdrawn is None and not any(superseded_from(work, duty))
    )


def duty_text(duty: Duty) -> str:
    """A duty as the text form writes it."""
    return f"duty: {duty.sentence}"


def heading_of(work: Work, line: Instruction) -> Heading | None:
    return work.heading(line.heading)
