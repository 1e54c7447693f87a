"""The reason for a verdict, in one plain sentence."""

from __future__ import annotations

from collections.abc import Iterable

from intent.installation import Consent
from intent.model import Instruction
from intent.phrasing import NOT_GIVEN, listed
from intent.variance.case import Case
from intent.variance.people import LOWEST
from intent.variance.result import Because, Open, OpenKind, Row, Verdict

_BECAUSE = {
    Because.SUPERSEDES: "it supersedes {other}",
    Because.AUTHORITY: "it has the higher authority",
    Because.SCOPE: "it speaks of fewer parts",
    Because.DATE: "it is later",
    Because.EXCEPTION: "it is an exception to {other}",
    Because.DISPENSATION: "a dispensation was given from {other}",
}


def reason_for(case: Case, row: Row) -> str:
    """One sentence, naming the instructions and what is open."""
    names = _names(row.governing)
    match row.verdict:
        case Verdict.FORBIDDEN:
            return f"{names} {_verb(row.governing, 'forbids', 'forbid')} it, and nothing that prevails allows it."
        case Verdict.BREACH:
            if {case.ranks[line.identifier] for line in row.governing} == {LOWEST}:
                verb = _verb(row.governing, "rests", "rest")
                return f"{names} {verb} on observed practice, which nobody said had to be; so it is to be referred."
            verb = _verb(row.governing, "requires", "require")
            return f"{names} {verb} otherwise, and nothing that prevails allows it."
        case Verdict.CONTRADICTION:
            return _contradiction(case, row, names)
        case Verdict.UNKNOWN:
            return _unknown(case, row, names)
        case Verdict.UNCOVERED:
            return "It differs from what is documented, and no instruction says that it may."
        case Verdict.CONDITIONAL:
            return f"{_permission(case, row, names)}, once {opens_words(case, row.open)}."
        case Verdict.ALLOWED:
            return f"{_permission(case, row, names)}."
        case Verdict.AS_REQUIRED:
            return f"{names} {_verb(row.governing, 'is', 'are')} met."
    return "It is as documented."


def _names(lines: Iterable[Instruction]) -> str:
    return listed(line.identifier for line in lines)


def _verb(lines: tuple[Instruction, ...], one: str, many: str) -> str:
    return one if len(lines) == 1 else many


def _contradiction(case: Case, row: Row, names: str) -> str:
    if row.term is None or row.characteristic != case.vocabulary.characteristics[row.term].label:
        broken = _names(line for line in row.governing if line.modality != "allowed")
        permitting = _names(line for line in row.governing if line.modality == "allowed")
        if permitting:
            return (
                f"{broken} is broken only by what {permitting} allows, and nobody has said which gives way."
            )
    return f"{names} contradict each other here, and no rule says which prevails."


def _permission(case: Case, row: Row, names: str) -> str:
    aside = row.set_aside[0] if row.set_aside else None
    if aside is None:
        return f"{names} {_verb(row.governing, 'allows', 'allow')} it"
    because = _BECAUSE[aside.because].format(other=aside.instruction)
    if aside.because is Because.DISPENSATION:
        return f"{_name(case, aside.by)} has dispensed from {aside.instruction} for this installation"
    allows = f"{names} {_verb(row.governing, 'allows', 'allow')} it"
    return f"{allows} and prevails over {aside.instruction}, since {because}"


def _unknown(case: Case, row: Row, names: str) -> str:
    if row.open:
        what = f"what {names} {_verb(row.governing, 'says', 'say')} of it" if names else "what holds"
        return f"It cannot be told {what} until {opens_words(case, row.open)}."
    if row.proposed == NOT_GIVEN:
        return "The proposal does not give it, so nobody can tell whether it differs."
    if row.documented == NOT_GIVEN:
        return "It is not documented, so nobody can tell whether this differs."
    return "It is not given precisely enough to tell whether it differs."


def refusal_words(case: Case, line: Instruction, consent: Consent) -> str:
    """`R2.1 would allow it, but the estate refused on 2025-05-30.`"""
    when = f" on {consent.date}" if consent.date else ""
    return f"{line.identifier} would allow it, but {_name(case, consent.person)} refused{when}."


def opens_words(case: Case, opens: Iterable[Open]) -> str:
    """What would have to happen: `the estate consents to R1.2, and it is attested that …`."""
    every = list(dict.fromkeys(opens))
    consents: dict[str | None, list[str]] = {}
    for item in every:
        if item.kind is OpenKind.CONSENT:
            consents.setdefault(item.person, []).append(item.instruction or "")
    told = [f"{_name(case, person)} consents to {listed(lines)}" for person, lines in consents.items()]
    facts = [item for item in every if item.kind is OpenKind.ATTESTATION]
    if facts:
        told.append("it is attested " + listed(dict.fromkeys(_fact(item) for item in facts)))
    told += dict.fromkeys(_value(item) for item in every if item.kind is OpenKind.VALUE)
    return listed(told)


def _name(case: Case, identifier: str | None) -> str:
    person = case.work.person(identifier)
    return person.name or person.identifier if person else identifier or "somebody"


def _fact(item: Open) -> str:
    return f"that {'' if item.answer else 'it is not so that '}“{item.text}”"


def _value(item: Open) -> str:
    return f"it is known whether {item.text}" if " is " in item.text else f"the {item.text} is known"
