"""A case in which what is open is supposed to be answered, to be judged again."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from intent.model.installation import Attestation, Consent
from intent.values.dates import DaySpan
from intent.variance.case import Case
from intent.variance.people import chain
from intent.variance.result import Open, OpenKind
from intent.vocabulary.phrases import normal


def answered(case: Case, opens: Iterable[Open]) -> Case:
    """The case with these consents given and these facts attested on the first day; other things stay open.

    What has been answered until then gives way to it; what is answered later still counts from its own day. A fact
    that is asked for both ways stays open.
    """
    consents, attested = dict(case.consents), dict(case.attested)
    first = case.installation.dates.first
    for item in dict.fromkeys(opens):
        if item.kind is OpenKind.CONSENT and item.person and item.instruction:
            given = _consent(case, item.person, item.instruction)
            earlier = consents.get(item.instruction, ())
            kept = tuple(one for one in earlier if not _gives_way(case, one, item.person))
            consents[item.instruction] = (*kept, given)
        elif item.kind is OpenKind.ATTESTATION:
            fact = normal(str(item.text))
            said = Attestation(iri="", fact=fact, holds=item.answer, date=DaySpan(first, first))
            later = tuple(one for one in attested.get(fact, ()) if one.date and one.date.last >= first)
            attested[fact] = (*later, said)
    return replace(case, consents=consents, attested=attested)


def _consent(case: Case, person: str, instruction: str) -> Consent:
    """A yes on the first day, or on the first of the person's time, where that begins later."""
    someone = case.work.person(person)
    begins = case.installation.dates.first
    if someone is not None and someone.since is not None:
        begins = max(begins, someone.since.first)
    return Consent(iri="", person=person, to=(instruction,), answer=True, date=DaySpan(begins, begins))


def _gives_way(case: Case, consent: Consent, person: str) -> bool:
    """Whether an answer was given until the first day, by the person or by somebody whom they have succeeded."""
    if consent.date is not None and consent.date.last > case.installation.dates.first:
        return False
    return any(one.identifier == person for one in chain(case.work, consent.person))
