"""The reason for a verdict, in one plain sentence."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from intent.language.message import Words, listed, say, say_of
from intent.model.installation import Consent
from intent.model.naming import person_name
from intent.model.phrasing import NOT_GIVEN
from intent.model.work import Instruction
from intent.variance.case import Case
from intent.variance.change import is_broad
from intent.variance.result import Because, Open, OpenKind, Row, SetAside, Verdict
from intent.variance.says import Said
from intent.variance.speaking import OverBecause
from intent.vocabulary.terms import Characteristic


def reason_for(case: Case, row: Row) -> Words:
    """One sentence, naming the instructions and what is open."""
    names, number = _names(row.governing), len(row.governing)
    match row.verdict:
        case Verdict.FORBIDDEN | Verdict.BREACH if row.rests_on_practice:
            return say_of(
                number,
                "{lines} rests on observed practice, which nobody said had to be; so it is to be referred.",
                "{lines} rest on observed practice, which nobody said had to be; so it is to be referred.",
                lines=names,
            )
        case Verdict.FORBIDDEN:
            return say_of(
                number,
                "{lines} forbids it, and nothing that prevails allows it.",
                "{lines} forbid it, and nothing that prevails allows it.",
                lines=names,
            )
        case Verdict.BREACH:
            return say_of(
                number,
                "{lines} requires otherwise, and nothing that prevails allows it.",
                "{lines} require otherwise, and nothing that prevails allows it.",
                lines=names,
            )
        case Verdict.CONTRADICTION:
            return _contradiction(case, row, names)
        case Verdict.UNKNOWN:
            return _unknown(case, row, names)
        case Verdict.UNCOVERED:
            return say("It differs from what is documented, and no instruction says that it may.")
        case Verdict.CONDITIONAL:
            permission, needed = _permission(case, row, names), opens_words(case, row.open)
            return say("{permission}, once {needed}.", permission=permission, needed=needed)
        case Verdict.ALLOWED:
            return say("{permission}.", permission=_permission(case, row, names))
        case Verdict.AS_REQUIRED:
            return say_of(number, "{lines} is met.", "{lines} are met.", lines=names)
    return say("It is as documented.")


def _names(lines: Iterable[Instruction]) -> Words:
    return listed(line.identifier for line in lines)


def _contradiction(case: Case, row: Row, names: Words) -> Words:
    if row.is_whole:
        broken = _names(line for line in row.governing if line.modality != "allowed")
        permitting = _names(line for line in row.governing if line.modality == "allowed")
        if permitting:
            return say(
                "{broken} is broken only by what {permitting} allows, and nobody has said which gives way.",
                broken=broken,
                permitting=permitting,
            )
    return say("{lines} contradict each other here, and no rule says which prevails.", lines=names)


def _permission(case: Case, row: Row, names: Words) -> Words:
    aside = row.set_aside[0] if row.set_aside else None
    number = len(row.governing)
    if aside is None:
        return say_of(number, "{lines} allows it", "{lines} allow it", lines=names)
    if aside.because is Because.DISPENSATION:
        return say(
            "{person} has dispensed from {line} for this installation",
            person=person_name(case.work, aside.by),
            line=aside.instruction,
        )
    return say_of(
        number,
        "{lines} allows it and prevails over {other}, since {because}",
        "{lines} allow it and prevails over {other}, since {because}",
        lines=names,
        other=aside.instruction,
        because=_because(aside),
    )


def _because(aside: SetAside) -> Words:
    match aside.because:
        case Because.AUTHORITY:
            return say("it has the higher authority")
        case Because.SCOPE:
            return say("it speaks of fewer parts")
        case Because.DATE:
            return say("it is later")
    return say("it is an exception to {other}", other=aside.instruction)


def _unknown(case: Case, row: Row, names: Words) -> Words:
    if row.open:
        needed = opens_words(case, row.open)
        if not names:
            return say("It cannot be told what holds until {needed}.", needed=needed)
        if all(line.modality != "allowed" for line in row.governing) and _are_facts(row.open):
            return say_of(
                len(row.governing),
                "{lines} stands against it, unless {needed}.",
                "{lines} stand against it, unless {needed}.",
                lines=names,
                needed=needed,
            )
        return say_of(
            len(row.governing),
            "It cannot be told what {lines} says of it until {needed}.",
            "It cannot be told what {lines} say of it until {needed}.",
            lines=names,
            needed=needed,
        )
    if row.proposed == NOT_GIVEN:
        return say("The proposal does not give it, so nobody can tell whether it differs.")
    if row.documented == NOT_GIVEN:
        return say("It is not documented, so nobody can tell whether this differs.")
    return say("It is not given precisely enough to tell whether it differs.")


def _are_facts(opens: Iterable[Open]) -> bool:
    return all(item.kind is OpenKind.ATTESTATION for item in opens)


def remarks(case: Case, subject: str, characteristic: Characteristic) -> Iterator[Words]:
    """What a reader has to know of the two values to see how they were compared."""
    documented, proposed = case.documented, case.proposed
    if is_broad(case, subject, characteristic):
        yield say(
            "“{term}” only gathers others: nobody has said which of them it was, and another device comes.",
            term=documented.words(subject, characteristic),
        )
    if documented.is_granted(subject, characteristic) and not proposed.is_granted(subject, characteristic):
        yield say(
            "Nothing is documented of it, and so the ordinary value is taken: {value}.",
            value=documented.words(subject, characteristic),
        )


def over_words(case: Case, said: Said) -> Words:
    """Why a permission that would cover a value no longer does: `R2.1 would allow it, but …`."""
    over, line = said.over, said.line
    assert over is not None
    match over.because:
        case OverBecause.REFUSED:
            return _refusal_words(case, line, over.consent)
        case OverBecause.CONDITION:
            return say("{line} would allow it, but its condition does not hold.", line=line.identifier)
        case OverBecause.UNTIL:
            return say(
                "{line} would allow it, but only until {date}.", line=line.identifier, date=line.until or ""
            )
        case OverBecause.WITHDRAWN:
            return say(
                "{line} would allow it, but was withdrawn ({date}).",
                line=line.identifier,
                date=line.withdrawn or "",
            )
        case OverBecause.SUPERSEDED:
            return say(
                "{line} would allow it, but {other} has superseded it.", line=line.identifier, other=over.by
            )
        case OverBecause.NOBODY_LEFT:
            return say(
                "{line} would allow it, but nobody is left to consent for {person}.",
                line=line.identifier,
                person=person_name(case.work, over.by),
            )
    return say("{line} would allow it, but {other} can be had.", line=line.identifier, other=over.by)


def _refusal_words(case: Case, line: Instruction, refusal: Consent | None) -> Words:
    """`R2.1 would allow it, but the estate refused on 2025-05-30.`"""
    who = person_name(case.work, refusal.person if refusal else None)
    if refusal is None or not refusal.date:
        return say("{line} would allow it, but {person} refused.", line=line.identifier, person=who)
    return say(
        "{line} would allow it, but {person} refused on {date}.",
        line=line.identifier,
        person=who,
        date=refusal.date,
    )


def opens_words(case: Case, opens: Iterable[Open]) -> Words:
    """What would have to happen: `the estate consents to R1.2, and it is attested that …`."""
    every = list(dict.fromkeys(opens))
    consents: dict[str | None, list[str]] = {}
    for item in every:
        if item.kind is OpenKind.CONSENT:
            consents.setdefault(item.person, []).append(item.instruction or "")
    told: list[Words] = [
        say(
            "{giver} consents to {lines}",
            giver=person_name(case.work, person),
            lines=tuple(dict.fromkeys(lines)),
        )
        for person, lines in consents.items()
    ]
    facts = [item for item in every if item.kind is OpenKind.ATTESTATION]
    if facts:
        told.append(
            say("it is attested {facts}", facts=tuple(dict.fromkeys(fact_words(item) for item in facts)))
        )
    told += dict.fromkeys(_known(item) for item in every if item.kind in {OpenKind.VALUE, OpenKind.STATEMENT})
    return listed(told)


def fact_words(item: Open) -> Words:
    """`that “no working tube can be found”`, or that it is not so."""
    if item.answer:
        return say("that “{fact}”", fact=item.text)
    return say("that this is not so: “{fact}”", fact=item.text)


def _known(item: Open) -> Words:
    if item.kind is OpenKind.STATEMENT:
        return say("it is known whether {statement}", statement=item.text)
    return say("the {value} is known", value=item.text)
