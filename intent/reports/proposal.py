"""What is proposed, in plain words: the changes, what is said of the venue, and who has answered what."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from intent.assertions import Statements
from intent.installation import Change, Consent, Substitution
from intent.model import Part
from intent.reports.naming import (
    characteristic_label,
    part_in_words,
    person_in_words,
    statements_in_words,
    value_in_words,
)
from intent.reports.wording import date_in_words, listed, opening, quoted, runs, sentence
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
        *_statements(variance, "the whole work", variance.installation.work_statements),
        *_statements(variance, "at the venue", variance.installation.venue_statements),
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
    alike: dict[str, list[Substitution]] = {}
    for substitution in variance.installation.substitutions:
        alike.setdefault(f"{_described(variance, substitution.statements)}\n{substitution.note}", []).append(
            substitution
        )
    for same in alike.values():
        yield _substitution(variance, same)


def _substitution(variance: Variance, same: Sequence[Substitution]) -> str:
    """`Left window (M1): the device V-1 replaces E-01, with technology LCD and visible diagonal 15 in.`"""
    new = [substitution.device for substitution in same if substitution.device]
    parts = [variance.work.part(substitution.part) for substitution in same]
    old = [part.device for part in parts if part and part.device]
    many = len(same) > 1
    arriving = (
        f"the device{'s' if len(new) > 1 else ''} {runs(new)}"
        if new
        else "other devices"
        if many
        else "another device"
    )
    verb = "replace" if many else "replaces"
    leaving = runs(old) if old else "the devices documented" if many else "the device documented"
    described = _described(variance, same[0].statements)
    detail = f", {'each ' if many else ''}with {described}" if described else ""
    names = _parts(variance, [substitution.part for substitution in same])
    return _noted(f"{names}: {arriving} {verb} {leaving}{detail}.", same[0].note)


def _changes(variance: Variance) -> Iterator[str]:
    alike: dict[str, list[Change]] = {}
    for change in variance.installation.changes:
        alike.setdefault(f"{_altered(variance, change)}\n{change.note}", []).append(change)
    for same in alike.values():
        names = _parts(variance, [change.part for change in same])
        yield _noted(f"{names}: {_altered(variance, same[0])}.", same[0].note)


def _altered(variance: Variance, change: Change) -> str:
    """`rotation upright instead of turned left`, for every value that the change names."""
    vocabulary, part = variance.work.vocabulary, variance.work.part(change.part)
    before = part.statements if part else {}
    words = []
    for iri in sorted(change.statements, key=lambda iri: characteristic_label(vocabulary, iri)):
        instead = f" instead of {value_in_words(vocabulary, before[iri])}" if iri in before else ""
        value = value_in_words(vocabulary, change.statements[iri])
        words.append(f"{characteristic_label(vocabulary, iri)} {value}{instead}")
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


def _statements(variance: Variance, about: str, statements: Statements) -> Iterator[str]:
    if statements:
        yield sentence(f"{about}: {_described(variance, statements)}")


def _consent(variance: Variance, consent: Consent) -> str:
    """`Brandvold Estate (artist's estate) consents to R1.2 for M1 (2 October 2026; letters/2026-10-02.md).`"""
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
