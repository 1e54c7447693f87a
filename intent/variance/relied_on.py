"""What a permission that prevails rests on: the consents on record that it calls for."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Iterator, Sequence

from intent.language.message import Words, closed, say
from intent.model.installation import Consent
from intent.model.naming import person_name
from intent.variance.answers import AskedValue, latest_answer
from intent.variance.case import Case
from intent.variance.says import Said


def resting_words(
    case: Case, governing: Iterable[Said], subjects: Sequence[str], day: datetime.date
) -> tuple[Words, ...]:
    """`It rests on the consent of Brandvold Estate of 2 October 2026 (letters/10.md).`, for each that counts."""
    found = dict.fromkeys(
        consent.iri for said in governing for consent in _consents(case, said, subjects, day)
    )
    by_iri = {consent.iri: consent for consent in case.installation.consents}
    return tuple(_words(case, by_iri[iri]) for iri in found)


def _consents(case: Case, said: Said, subjects: Sequence[str], day: datetime.date) -> Iterator[Consent]:
    for person in said.line.consents:
        yield from latest_answer(case, said.line, person, AskedValue(said.value, subjects, day)).given


def _words(case: Case, consent: Consent) -> Words:
    who = person_name(case.work, consent.person)
    told = say("It rests on the consent of {person}", person=who)
    if consent.date is not None:
        told = say("It rests on the consent of {person} of {date}", person=who, date=consent.date)
    return closed(say("{name} ({role})", name=told, role=consent.source) if consent.source else told)
