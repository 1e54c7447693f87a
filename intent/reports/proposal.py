"""What is proposed, in plain words: the changes, what is said of the venue, and who has answered what."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from intent.assertions import Statements
from intent.installation import Change, Consent, Substitution
from intent.model import Material, Part
from intent.reports.naming import (
    characteristic_label,
    in_order,
    part_in_words,
    person_in_words,
    statements_in_words,
    value_in_words,
)
from intent.reports.wording import characterised, date_in_words, listed, opening, quoted, runs, sentence
from intent.variance.result import Variance

MANY = 4
"""From so many parts on, those changed alike are named by their identifiers alone."""


def changes_in_words(variance: Variance) -> tuple[str, ...]:
    """Every change that the installation proposes, one sentence each; parts changed alike share one."""
    return (
        *_substitutions(variance),
        *_changes(variance),
        *_omissions(variance),
        *(_addition(variance, part) for part in variance.installation.additions),
        *_whole(variance),
    )


def answers_in_words(variance: Variance) -> tuple[str, ...]:
    """The consents and attestations on record, one sentence each."""
    consents = [_consent(variance, consent) for consent in variance.installation.consents]
    attested = []
    for fact in variance.installation.attestations:
        who = person_in_words(variance.work, fact.by) or "Somebody not named"
        holds = "attests that" if fact.holds else "attests that this is not so:"
        date = f" ({date_in_words(fact.date)})" if fact.date else ""
        attested.append(f"{opening(who)} {holds} {quoted(fact.fact)}{date}.")
    return (*consents, *attested)


def _parts(variance: Variance, identifiers: Sequence[str]) -> str:
    if len(identifiers) >= MANY:
        return runs(identifiers)
    return opening(listed([part_in_words(variance, name) for name in identifiers]))


def _described(variance: Variance, statements: Statements) -> str:
    return listed(statements_in_words(variance.work.vocabulary, statements))


def _substitutions(variance: Variance) -> Iterator[str]:
    alike: dict[tuple[str, str, str], list[Substitution]] = {}
    for one in variance.installation.substitutions:
        part = variance.work.part(one.part)
        likeness = (_described(variance, one.statements), one.note, part.kind.iri if part else "")
        alike.setdefault(likeness, []).append(one)
    for same in alike.values():
        yield _substitution(variance, same)


def _substitution(variance: Variance, same: Sequence[Substitution]) -> str:
    """`Left window (M1): the device V-1 replaces E-01, with technology LCD and visible diagonal 15 in.`"""
    parts = [variance.work.part(substitution.part) for substitution in same]
    many = len(same) > 1
    arriving = _devices(
        [substitution.device for substitution in same], "other devices" if many else "another device"
    )
    leaving = _devices([part.device for part in parts if part], f"the device{'s' if many else ''} documented")
    described = _described(variance, same[0].statements)
    detail = f", {'each ' if many else ''}with {described}" if described else ""
    names = _parts(variance, [substitution.part for substitution in same])
    return _noted(f"{names}: {arriving} {'replace' if many else 'replaces'} {leaving}{detail}.", same[0].note)


def _devices(identifiers: Sequence[str | None], otherwise: str) -> str:
    """Devices by their identifiers; in other words where none has any."""
    known = [identifier for identifier in identifiers if identifier]
    return f"the device{'s' if len(known) > 1 else ''} {runs(known)}" if known else otherwise


def _changes(variance: Variance) -> Iterator[str]:
    alike: dict[tuple[str, str], list[Change]] = {}
    for change in variance.installation.changes:
        altered = _altered(variance, _documented(variance, change.part), change.statements)
        alike.setdefault((altered, change.note), []).append(change)
    for (altered, note), same in alike.items():
        names = _parts(variance, [change.part for change in same])
        yield _noted(f"{names}: {altered}.", note)


def _documented(variance: Variance, identifier: str) -> Statements:
    """What is documented of a part or a piece of material."""
    known: tuple[Part | Material, ...] = (*variance.work.parts, *variance.work.material)
    return next((one.statements for one in known if one.identifier == identifier), {})


def _altered(variance: Variance, before: Statements, after: Statements) -> str:
    """`rotation upright instead of turned left`, for every value that is changed."""
    vocabulary = variance.work.vocabulary
    words = []
    for iri in in_order(vocabulary, after):
        instead = f" instead of {value_in_words(vocabulary, before[iri])}" if iri in before else ""
        value = value_in_words(vocabulary, after[iri])
        words.append(characterised(characteristic_label(vocabulary, iri), value) + instead)
    return listed(words) or "changed, without a value given"


def _omissions(variance: Variance) -> Iterator[str]:
    alike: dict[str, list[str]] = {}
    for omission in variance.installation.omissions:
        alike.setdefault(omission.reason, []).append(omission.part)
    for reason, parts in alike.items():
        verb = "are" if len(parts) > 1 else "is"
        because = f": {reason}" if reason else ", and no reason is given"
        yield sentence(f"{_parts(variance, parts)} {verb} left out{because}")


def _addition(variance: Variance, part: Part) -> str:
    group = f" to {part.group}" if part.group else ""
    described = _described(variance, part.statements)
    detail = f", with {described}" if described else ""
    name = opening(part_in_words(variance, part.identifier))
    return _noted(f"{name} is added{group}: {part.kind.label}{detail}.", part.note)


def _whole(variance: Variance) -> Iterator[str]:
    """What is said of the work as a whole, and of the venue."""
    installation = variance.installation
    if installation.work_statements:
        altered = _altered(variance, variance.work.statements, installation.work_statements)
        yield f"The whole work: {altered}."
    if installation.venue_statements:
        yield f"At the venue: {_described(variance, installation.venue_statements)}."


def _consent(variance: Variance, consent: Consent) -> str:
    """`Brandvold Estate (artist's estate) consents to R1.2 for M1 (2 October 2026; letters/10.md).`"""
    who = opening(person_in_words(variance.work, consent.person)) or "Somebody not named"
    verb = {True: "consents to", False: "refuses", None: "has been asked about"}[consent.answer]
    parts = (
        f" for {listed([part_in_words(variance, name) for name in consent.parts])}" if consent.parts else ""
    )
    value = f", {value_in_words(variance.work.vocabulary, consent.value)}" if consent.value else ""
    terms = f", on the terms {listed([quoted(term) for term in consent.terms])}" if consent.terms else ""
    until = f"until {date_in_words(consent.until)}" if consent.until else ""
    record = "; ".join(filter(None, [date_in_words(consent.date), until, consent.source]))
    answer = "" if consent.answer is not None else "; no answer is recorded"
    return f"{who} {verb} {runs(consent.to)}{parts}{value}{terms}{f' ({record})' if record else ''}{answer}."


def _noted(text: str, note: str) -> str:
    return f"{text} {sentence(note)}" if note.strip() else text
