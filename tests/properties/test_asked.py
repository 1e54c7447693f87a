"""Who is asked: all that is named as open is enough, and no consent is asked for in vain."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from examples_read import vocabulary
from hypothesis import given
from oracle.cases import Answer, Case
from oracle.instructing import day
from oracle.program import Rows, judged, rows_of
from oracle.writing import installation_text, work_text

from intent.language.locale import ENGLISH
from intent.variance.result import Open, OpenKind, Verdict
from properties.strategies import GOOD, crowded, fixed

Key = tuple[str, str]


def conditional(case: Case) -> Iterator[tuple[Key, tuple[Open, ...]]]:
    """Each conditional row with what is open in it, but where only another value would close something."""
    for row in judged(case, vocabulary()).rows:
        facts = {ENGLISH.say(one.text) for one in row.open if one.kind is OpenKind.ATTESTATION}
        is_asked_once = len(facts) == sum(one.kind is OpenKind.ATTESTATION for one in row.open)
        kinds = {one.kind for one in row.open}
        if (
            row.verdict is Verdict.CONDITIONAL
            and is_asked_once
            and kinds <= {OpenKind.CONSENT, OpenKind.ATTESTATION}
        ):
            yield (row.subject.written, ENGLISH.say(row.characteristic)), row.open


def answered(case: Case, opens: Iterable[Open]) -> Rows:
    """The verdicts with these consents given on the first day, in place of what was answered, and facts attested."""
    given, attested = [], dict(case.attested)
    for one in opens:
        if one.kind is OpenKind.CONSENT:
            given.append(Answer(one.person or "", one.instruction or "", True, date=day(case.first)))
        else:
            attested[ENGLISH.say(one.text)] = one.answer
    to = {one.to for one in given}
    kept = [one for one in case.answers if not ({one.to, *_lines_of(case, one.to)} & to)]
    return rows_of(judged(replace(case, answers=(*kept, *given), attested=attested), vocabulary()))


def _lines_of(case: Case, heading: str) -> Iterator[str]:
    yield from (line.name for line in case.lines if line.heading == heading)


@given(case=crowded())
@fixed(300)
def test_what_is_named_as_open_is_enough(case: Case) -> None:
    for key, opens in conditional(case):
        verdict = answered(case, opens).get(key, "none")
        assert verdict in GOOD, f"{key}: {verdict}, {opens}\n{work_text(case)}\n{installation_text(case)}"


@given(case=crowded())
@fixed(150)
def test_no_consent_is_asked_for_in_vain(case: Case) -> None:
    for key, opens in conditional(case):
        for consent in (one for one in opens if one.kind is OpenKind.CONSENT):
            same = consent.person, consent.instruction
            rest = [
                one
                for one in opens
                if (one.person, one.instruction) != same or one.kind is not OpenKind.CONSENT
            ]
            verdict = answered(case, rest).get(key, "none")
            text = f"{key}: {verdict} without {same}\n{work_text(case)}\n{installation_text(case)}"
            assert verdict not in GOOD, text
