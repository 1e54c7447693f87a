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
    """The case with these consents given from the first day on, and these facts attested; other things stay open.

    What the same person, or whom they succeeded, has answered gives way to it, but for a refusal that is dated later. A
    fact that is asked for both ways stays open.
    """
    consents = dict(case.consents)
    said: dict[str, tuple[Attestation, ...]] = {}
    for item in dict.fromkeys(opens):
        if item.kind is OpenKind.CONSENT and item.person and item.instruction:
            given = _consent(case, item.person, item.instruction)
            earlier = consents.get(item.instruction, ())
            kept = tuple(one for one in earlier if not _gives_way(case, one, item.person))
            consents[item.instruction] = (*kept, given)
        elif item.kind is OpenKind.ATTESTATION:
            fact = normal(str(item.text))
            word = Attestation(iri="", fact=fact, holds=item.answer)
            said[fact] = (*said.get(fact, ()), word)
    return replace(case, consents=consents, attested={**case.attested, **said})


def _consent(case: Case, person: str, instruction: str) -> Consent:
    """A yes on the first day, or on the first of the person's time, where that begins later."""
    someone = case.work.person(person)
    begins = case.installation.dates.first
    if someone is not None and someone.since is not None:
        begins = max(begins, someone.since.first)
    return Consent(iri="", person=person, to=(instruction,), answer=True, date=DaySpan(begins, begins))


def _gives_way(case: Case, consent: Consent, person: str) -> bool:
    """Whether an answer of the person, or of somebody whom they have succeeded, is no refusal that still comes."""
    date, until = consent.date, consent.until
    if consent.answer is False and date is not None and date.last > case.installation.dates.first:
        return until is not None and until.last < date.last
    return any(one.identifier == person for one in chain(case.work, consent.person))
