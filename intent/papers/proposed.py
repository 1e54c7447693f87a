"""What is proposed, in plain words: the changes, what is said of the venue, and who has answered what."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Sequence

from intent.language.calendar import span_words, until_words
from intent.language.message import Words, closed, joined, listed, opened, quoted, say, say_of, sentence
from intent.model.assertions import Statements
from intent.model.installation import Attestation, Change, Consent, Omission, Substitution
from intent.model.naming import part_words, person_words, runs
from intent.model.phrasing import expression_words
from intent.model.work import Connection, Material, Part
from intent.papers.statements_told import altered_words, statements_words
from intent.values.dates import DaySpan
from intent.variance.result import Variance

MANY = 4
"""From so many parts on, those changed alike are named by their identifiers alone."""
UNCHANGED = say("Nothing is changed: the work is to be installed as documented.")


def changes_words(variance: Variance) -> tuple[Words, ...]:
    """Every change that the installation proposes, one sentence each; parts changed alike share one."""
    told = (
        *_substitutions(variance),
        *_changes(variance),
        *_omissions(variance),
        *(_addition(variance, part) for part in variance.installation.additions),
        *_connections(variance),
        *_whole(variance),
    )
    return told or (UNCHANGED,)


def answers_words(variance: Variance, day: datetime.date) -> tuple[Words, ...]:
    """The consents and attestations on record, one sentence each; those dated after the day of the paper say so."""
    return tuple(
        joined([_answer(variance, one), say("This is dated after the report.")])
        if _is_after(one.date, day)
        else _answer(variance, one)
        for one in _answers(variance)
    )


def answers_ahead(variance: Variance, day: datetime.date) -> tuple[Consent | Attestation, ...]:
    """The answers that are dated after the day of a paper, and are counted all the same: a reader has to be told."""
    return tuple(one for one in _answers(variance) if _is_after(one.date, day))


def _answers(variance: Variance) -> tuple[Consent | Attestation, ...]:
    return (*variance.installation.consents, *variance.installation.attestations)


def _answer(variance: Variance, one: Consent | Attestation) -> Words:
    return _consent(variance, one) if isinstance(one, Consent) else _attestation(variance, one)


def _is_after(date: DaySpan | None, day: datetime.date) -> bool:
    return date is not None and date.first > day


def _parts(variance: Variance, identifiers: Sequence[str]) -> Words:
    if len(identifiers) >= MANY:
        return runs(identifiers)
    return opened(listed(_part(variance, name) for name in identifiers))


def _part(variance: Variance, identifier: str) -> str:
    return part_words(variance.work, variance.installation, identifier)


def _described(variance: Variance, statements: Statements) -> Words:
    return statements_words(variance.work.vocabulary, statements)


def _substitutions(variance: Variance) -> Iterator[Words]:
    alike: dict[tuple[Words, str, str], list[Substitution]] = {}
    for one in variance.installation.substitutions:
        part = variance.work.part(one.part)
        likeness = (_described(variance, one.statements), one.note, part.kind.iri if part else "")
        alike.setdefault(likeness, []).append(one)
    for same in alike.values():
        yield _substitution(variance, same)


def _substitution(variance: Variance, same: Sequence[Substitution]) -> Words:
    """`Left window (M1): the device V-1 replaces E-01, with technology LCD and visible diagonal 15 in.`"""
    parts = [variance.work.part(substitution.part) for substitution in same]
    number = len(same)
    arriving = _devices([substitution.device for substitution in same]) or say_of(
        number, "another device", "other devices"
    )
    leaving = _devices([part.device for part in parts if part]) or say_of(
        number, "the device documented", "the devices documented"
    )
    replaced = say_of(
        number,
        "{parts}: {arriving} replaces {leaving}",
        "{parts}: {arriving} replace {leaving}",
        parts=_parts(variance, [substitution.part for substitution in same]),
        arriving=arriving,
        leaving=leaving,
    )
    described = _described(variance, same[0].statements)
    if described:
        replaced = say_of(
            number, "{told}, with {values}", "{told}, each with {values}", told=replaced, values=described
        )
    return _noted(replaced, same[0].note)


def _devices(identifiers: Sequence[str | None]) -> Words:
    """Devices by their identifiers; nothing where none has any."""
    known = [identifier for identifier in identifiers if identifier]
    if not known:
        return ""
    return say_of(len(known), "the device {names}", "the devices {names}", names=runs(known))


def _changes(variance: Variance) -> Iterator[Words]:
    alike: dict[tuple[Words, str], list[Change]] = {}
    for change in variance.installation.changes:
        altered = _altered(variance, _documented(variance, change.part), change.statements)
        alike.setdefault((altered, change.note), []).append(change)
    for (altered, note), same in alike.items():
        names = _parts(variance, [change.part for change in same])
        yield _noted(say("{subject}: {text}", subject=names, text=altered), note)


def _documented(variance: Variance, identifier: str) -> Statements:
    """What is documented of a part or a piece of material."""
    known: tuple[Part | Material, ...] = (*variance.work.parts, *variance.work.material)
    return next((one.statements for one in known if one.identifier == identifier), {})


def _altered(variance: Variance, before: Statements, after: Statements) -> Words:
    """`rotation upright instead of turned left`, for every value that is changed."""
    return altered_words(variance.work.vocabulary, before, after) or say("changed, without a value given")


def _omissions(variance: Variance) -> Iterator[Words]:
    alike: dict[str, list[Omission]] = {}
    for omission in variance.installation.omissions:
        alike.setdefault(omission.reason, []).append(omission)
    for reason, same in alike.items():
        names, number = _parts(variance, [omission.part for omission in same]), len(same)
        if reason:
            yield closed(
                say_of(
                    number,
                    "{parts} is left out: {reason}",
                    "{parts} are left out: {reason}",
                    parts=names,
                    reason=reason,
                )
            )
        else:
            yield say_of(
                number,
                "{parts} is left out, and no reason is given.",
                "{parts} are left out, and no reason is given.",
                parts=names,
            )


def _addition(variance: Variance, part: Part) -> Words:
    name = opened(_part(variance, part.identifier))
    added = (
        say("{part} is added to {group}: {kind}", part=name, group=part.group, kind=part.kind)
        if part.group
        else say("{part} is added: {kind}", part=name, kind=part.kind)
    )
    described = _described(variance, part.statements)
    return _noted(
        say("{told}, with {values}", told=added, values=described) if described else added, part.note
    )


def _connections(variance: Variance) -> Iterator[Words]:
    """The connections that take the place of those documented, by the part into which they lead."""
    into: dict[str, list[Connection]] = {}
    for connection in variance.installation.connections:
        into.setdefault(connection.end, []).append(connection)
    for end, several in into.items():
        part = opened(_part(variance, end))
        feeding = tuple(_fed(variance, one) for one in several if one.start)
        yield (
            say("{part} is fed by {connections}.", part=part, connections=feeding)
            if feeding
            else say("Nothing feeds {part}.", part=_part(variance, end))
        )


def _fed(variance: Variance, connection: Connection) -> Words:
    """`distributor (C3), with signal composite and length 6 m`."""
    start, described = _part(variance, connection.start), _described(variance, connection.statements)
    return joined([start, say("({values})", values=described)]) if described else start


def _whole(variance: Variance) -> Iterator[Words]:
    """What is said of the work as a whole, and of the venue."""
    installation = variance.installation
    if installation.work_statements:
        altered = _altered(variance, variance.work.statements, installation.work_statements)
        yield say("The whole work: {changes}.", changes=altered)
    if installation.venue_statements:
        yield say("At the venue: {values}.", values=_described(variance, installation.venue_statements))


def _consent(variance: Variance, consent: Consent) -> Words:
    """`Brandvold Estate (artist's estate) consents to R1.2 for M1 (2 October 2026; letters/10.md).`"""
    told: Words = _answered(variance, consent)
    if consent.parts:
        parts = tuple(_part(variance, name) for name in consent.parts)
        told = say("{told} for {parts}", told=told, parts=parts)
    if consent.value:
        told = joined([told, expression_words(consent.value, variance.work.vocabulary)], ", ")
    if consent.terms:
        told = say("{told}, on the terms {terms}", told=told, terms=tuple(map(quoted, consent.terms)))
    until = until_words(consent.until) if consent.until else ""
    told = _with_record(told, joined([span_words(consent.date), until, consent.source], "; "))
    return closed(say("{told}; no answer is recorded", told=told) if consent.answer is None else told)


def _answered(variance: Variance, consent: Consent) -> Words:
    who = opened(person_words(variance.work, consent.person)) or say("Somebody not named")
    lines = runs(consent.to)
    match consent.answer:
        case True:
            return say("{person} consents to {lines}", person=who, lines=lines)
        case False:
            return say("{person} refuses {lines}", person=who, lines=lines)
    return say("{person} has been asked about {lines}", person=who, lines=lines)


def _attestation(variance: Variance, fact: Attestation) -> Words:
    who = opened(person_words(variance.work, fact.by)) or say("Somebody not named")
    told = (
        say("{person} attests that {fact}", person=who, fact=quoted(fact.fact))
        if fact.holds
        else say("{person} attests that this is not so: {fact}", person=who, fact=quoted(fact.fact))
    )
    return closed(_with_record(told, span_words(fact.date)))


def _with_record(told: Words, record: Words) -> Words:
    return say("{name} ({role})", name=told, role=record) if record else told


def _noted(text: Words, note: str) -> Words:
    """The text as a sentence, and a note of its writer after it."""
    return joined([closed(text), sentence(note)])
