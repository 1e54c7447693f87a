"""What a report says: who is asked what, which rule prevailed, which cautions are called for."""

from __future__ import annotations

import datetime
from dataclasses import replace

import pytest

from intent.language.locale import ENGLISH
from intent.model.installation import Consent, Omission
from intent.papers import Evidence, write_report
from intent.papers.cautions import cautions
from intent.papers.departures import departures, merged, open_words
from intent.papers.instructions_told import because_words
from intent.papers.proposed import answers_words
from intent.papers.requests import requests
from intent.variance.result import Because, Open, OpenKind, SetAside, Variance, Verdict


def test_everybody_to_be_asked_is_asked_something(variance: Variance) -> None:
    asked = requests(variance, departures(variance))
    assert [request.person for request in asked] == ["estate", "artist", "cons"]
    assert all(request.questions for request in asked)


def test_open_things_for_nobody_in_particular_come_last(variance: Variance) -> None:
    row = replace(variance.rows[4], ask=())
    alone = replace(variance, rows=(row,))
    asked = requests(alone, departures(alone))[-1]
    assert asked.person == ""
    assert (
        ENGLISH.say(asked.questions[0].text) == "To attest whether this holds: “the cabinet stays in place”."
    )


def test_a_rule_of_safety_is_not_offered_for_dispensation(variance: Variance) -> None:
    row = replace(variance.rows[0], ground="safety")
    alone = replace(variance, rows=(row,))
    found = departures(alone)
    asked = requests(alone, found)
    texts = [ENGLISH.say(question.text) for request in asked for question in request.questions]
    assert any("cannot be waived" in text for text in texts)
    assert not any("set aside for this installation" in text for text in texts)
    assert ENGLISH.say(found[0].ground) == "for safety"


@pytest.mark.parametrize(
    ("fallen", "by", "because", "words"),
    [
        ("R3.1", "R2.1", Because.AUTHORITY, "whose word ranks above that of Odile Varga-Finn (conservator)"),
        (
            "R3.1",
            "R2.1",
            Because.SCOPE,
            "R2.1 speaks of M2 in particular, and this one of Monitors as a whole",
        ),
        ("R2.1", "R3.1", Because.DATE, "R3.1, of February 2009, is later than this one, of 1993"),
        ("R1.1", "R1.2", Because.EXCEPTION, "R1.2 makes an exception to what this one requires"),
        ("R1.1", "estate", Because.DISPENSATION, "Brandvold Estate (artist's estate) has dispensed with it"),
        ("R1.1", "R9.9", Because.DATE, "R9.9 prevails over it (date)"),
    ],
)
def test_rules_in_plain_words(variance: Variance, fallen: str, by: str, because: Because, words: str) -> None:
    assert words in ENGLISH.say(because_words(variance.work, SetAside(fallen, by, because)))


def test_an_omitted_part_calls_for_no_caution(variance: Variance) -> None:
    assert {ENGLISH.say(caution.concerns) for caution in cautions(variance)} == {"M1 and M2"}
    everything = replace(
        variance.installation, omissions=tuple(Omission("", name) for name in ("M1", "M2", "M3"))
    )
    assert cautions(replace(variance, installation=everything)) == ()


def test_a_refused_and_an_unanswered_consent(variance: Variance) -> None:
    consents = (
        Consent(iri="", person="estate", to=("R1.2",), answer=False),
        Consent(iri="", person="estate", to=("R1.2",)),
    )
    asked = replace(variance, installation=replace(variance.installation, consents=consents, attestations=()))
    assert tuple(map(ENGLISH.say, answers_words(asked, datetime.date(2026, 11, 2)))) == (
        "Brandvold Estate (artist's estate) refuses R1.2.",
        "Brandvold Estate (artist's estate) has been asked about R1.2; no answer is recorded.",
    )


def test_a_value_not_given_says_so(variance: Variance) -> None:
    row = replace(variance.rows[2], proposed="", verdict=Verdict.UNKNOWN)
    assert ENGLISH.say(departures(replace(variance, rows=(row,)))[0].proposed) == "not given"


def test_what_is_open_is_said_once_for_all_its_instructions(variance: Variance) -> None:
    laser = Open(
        kind=OpenKind.ATTESTATION, text="the lamp is a laser", person="cons", instruction="R1.1", answer=False
    )
    width = Open(kind=OpenKind.VALUE, text="visible diagonal of M1", person=None, instruction="R1.1")
    items = merged((width, laser, replace(width, instruction="R1.2")))
    known, attested = (ENGLISH.say(open_words(variance, item)) for item in items)
    assert known == "Not known well enough: visible diagonal of M1 (R1.1 and R1.2)."
    assert attested.startswith("It is not attested that this is not so: “the lamp is a laser” (R1.1).")
    assert attested.endswith("Odile Varga-Finn (conservator) could say.")
    below = Open(kind=OpenKind.STATEMENT, text="M3 is below M1")
    assert ENGLISH.say(open_words(variance, (below, ()))) == "It is not known whether M3 is below M1."


def test_a_contradiction_has_no_instruction_that_prevails(variance: Variance) -> None:
    row = replace(variance.rows[0], verdict=Verdict.CONTRADICTION)
    assert ENGLISH.say(departures(replace(variance, rows=(row,)))[0].speaking_label) == "in conflict"


def test_what_is_kept_in_the_house_is_told_of_when_it_is_quoted(
    variance: Variance, evidence: Evidence
) -> None:
    assert "kept in the house" not in write_report(variance, "markdown", evidence)
    sources = tuple(replace(source, internal=True) for source in variance.work.sources)
    inward = replace(variance, work=replace(variance.work, sources=sources))
    told = write_report(inward, "markdown", evidence)
    assert "Ignored or assumed:*\n\n- This report quotes what is kept in the house" in told
