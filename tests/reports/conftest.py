"""A small work and two proposals for it, built by hand, so that every report can be read beside what it says.

The artist, the museum and the makers are invented.
"""

from __future__ import annotations

import datetime
from dataclasses import fields, replace
from fractions import Fraction
from typing import Any

import pytest

from intent.language.message import figure, say
from intent.model.assertions import (
    Aggregate,
    Assertion,
    Condition,
    Expression,
    Form,
    Named,
    Scope,
    ScopeKind,
    Statements,
    Text,
)
from intent.model.installation import Attestation, Change, Consent, Installation, Omission, Substitution
from intent.model.work import (
    Citation,
    Device,
    Group,
    Heading,
    Instruction,
    Modality,
    Part,
    Person,
    Source,
    Work,
)
from intent.papers import Evidence, EvidenceFile, FileRole
from intent.values.bounds import point
from intent.values.dates import read_date
from intent.values.regions import Interval
from intent.variance.result import (
    Because,
    Effect,
    Open,
    OpenKind,
    Outcome,
    Row,
    SetAside,
    EffectTopic,
    Variance,
    VenueFinding,
    Verdict,
)
from intent.vocabulary.terms import Characteristic, Concept, FormField, Vocabulary

TERM = "https://w3id.org/intent-record/term/"
NS = "https://w3id.org/intent-record/ns#"
BASE = "https://example.org/closed-line/"
VENUE = "https://example.org/closed-line/halmsee"


def concept(name: str, *broader: str, cautions: tuple[str, ...] = (), text: str = "") -> Concept:
    return Concept(
        f"{TERM}{name}",
        {"en": name.replace("-", " ")},
        (name,),
        broader=tuple(f"{TERM}{wider}" for wider in broader),
        cautions=tuple(f"{TERM}{caution}" for caution in cautions),
        texts={"en": text} if text else {},
    )


CONCEPTS = (
    concept("display", cautions=("mains",)),
    concept("player"),
    concept("cathode-ray-tube", cautions=("tube",)),
    concept("flat-panel"),
    concept("LCD", "flat-panel"),
    concept("mains", text="Unplug the set before it is moved or opened"),
    concept("tube", text="The tube holds high voltage after it is switched off, and can implode if struck"),
    concept("artist"),
    concept("conservator"),
    concept("interview"),
    concept("inscription"),
    concept("proposed"),
)


def characteristic(name: str) -> Characteristic:
    label = name.replace("-", " ")
    return Characteristic(f"{TERM}{name}", {"en": label}, (label,), "", frozenset({"device"}), "text")


def form_field(label: str) -> FormField:
    return FormField(
        f"{NS}field-{label}", (label,), label, f"{NS}{label}", "text", frozenset({f"{TERM}work-head"})
    )


NAMED = ("technology", "visible-diagonal", "rotation", "ambient-light")
KNOWN: dict[str, Any] = {
    "concepts": {one.iri: one for one in CONCEPTS},
    "characteristics": {one.iri: one for one in map(characteristic, NAMED)},
    "fields": {one.iri: one for one in map(form_field, ("artist", "year", "number", "owner"))},
}
VOCABULARY = Vocabulary(**{one.name: KNOWN.get(one.name, {}) for one in fields(Vocabulary)[:-1]})
"""Only what reports look up: no sections, units or indexes, which serve reading; the language is the last field."""


def statements(**values: str) -> Statements:
    """Values by characteristic, as written; one that is the name of a concept stands for it."""
    found = {}
    for name, written in values.items():
        iri = f"{TERM}{written.replace(' ', '-')}"
        items = (Named(iri),) if iri in VOCABULARY.concepts else ()
        found[f"{TERM}{name.replace('_', '-')}"] = Expression(Form.ONE_OF, items, written=written)
    return found


def person(identifier: str, name: str, role: str, authority: int) -> Person:
    labels = {"en": role}
    return Person(
        f"{BASE}{identifier}", identifier, name, Concept(f"{TERM}{role}", labels, (role,)), authority
    )


def part(identifier: str, name: str, rotation: str, device: str) -> Part:
    display = VOCABULARY.concepts[f"{TERM}display"]
    values = statements(technology="cathode-ray tube", visible_diagonal="13 in", rotation=rotation)
    return Part(f"{BASE}{identifier}", identifier, display, name, "Monitors", device, values)


def line(
    identifier: str,
    modality: Modality,
    about: str,
    scope: str,
    value: str,
    by: str,
    on: str,
    *sources: Citation,
) -> Instruction:
    aggregate = Aggregate.NUMBER if about == "number" else Aggregate.EACH
    expression = Expression(Form.ONE_OF, (Text(value),))
    return Instruction(
        f"{BASE}{identifier}",
        identifier,
        identifier.partition(".")[0],
        modality,
        Assertion(aggregate, Scope(ScopeKind.NAMES, (scope,)), f"{TERM}{about}", expression),
        by=by,
        on=read_date(on),
        sources=sources,
    )


SPOKEN, WRITTEN = Citation("S1", "00:14:05"), Citation("S2")
MUST, MAY = Modality.REQUIRED, Modality.ALLOWED
R1_1 = line("R1.1", MUST, "technology", "Monitors", "cathode-ray tube", "artist", "1999-05-14", SPOKEN)
R1_2 = replace(
    line("R1.2", MAY, "technology", "Monitors", "flat panel", "artist", "1999-05-14", SPOKEN),
    conditions=(Condition(fact="no working tube can be found"),),
    consents=("estate",),
)
R2_1 = line("R2.1", MUST, "rotation", "M2", "turned left", "artist", "1993", WRITTEN)
R2_2 = line("R2.2", MUST, "rotation", "M3", "upside down", "artist", "1993", WRITTEN)
R3_1 = line("R3.1", MUST, "rotation", "Monitors", "upright", "cons", "2009-02")
R4_1 = line("R4.1", MUST, "number", "Monitors", "3", "cons", "2009-02")

WORK = Work(
    iri=f"{BASE}work",
    title="Timetable for a Closed Line",
    vocabulary=VOCABULARY,
    fields={
        f"{NS}artist": "Ilka Brandvold",
        f"{NS}year": "1993",
        f"{NS}number": "2009.31",
        f"{NS}owner": "Hollins Street Museum",
    },
    note="Three small televisions behind the *ticket windows* of a waiting room. <b>Not</b> a shop window.",
    people=(
        person("artist", "Ilka Brandvold", "artist", 1),
        person("estate", "Brandvold Estate", "artist's estate", 2),
        person("cons", "Odile Varga-Finn", "conservator", 4),
    ),
    groups=(Group(f"{BASE}monitors", "Monitors"),),
    parts=(
        part("M1", "left window", "upright", "E-01"),
        part("M2", "right window", "turned left", "E-02"),
        part("M3", "under bench", "upside down", "E-03"),
    ),
    devices=(Device(f"{BASE}E-01", "E-01"),),
    sources=(
        Source(
            f"{BASE}S1",
            "S1",
            "Conversation with the artist",
            VOCABULARY.concepts[f"{TERM}interview"],
            spoken_with=("artist",),
            date=read_date("1999-05-14"),
            file="sources/interview-1999.md",
        ),
        Source(
            f"{BASE}S2",
            "S2",
            "Note inside the back of the cabinet of M2",
            VOCABULARY.concepts[f"{TERM}inscription"],
            by=("artist",),
            date=read_date("1993"),
        ),
    ),
    headings=(
        Heading(
            f"{BASE}R1",
            "R1",
            "The pictures come from tubes",
            words="without the tube it is only a timetable, unless there is no tube left to be had",
            reason="the glow behind curved glass stands for a lit platform",
        ),
        Heading(f"{BASE}R2", "R2", "How each one lies", words="the right one has fallen over; leave it be"),
        Heading(f"{BASE}R3", "R3", "Easier to read"),
        Heading(f"{BASE}R4", "R4", "Numbers", reason="one for each track"),
    ),
    instructions=(R1_1, R1_2, R2_1, R2_2, R3_1, R4_1),
)

HALMSEE = Installation(
    iri=VENUE,
    title="Loan to Halmsee",
    dates=read_date("2027-03-01/2027-06-30"),
    work=WORK.iri,
    status=VOCABULARY.concepts[f"{TERM}proposed"],
    venue="Kunsthalle Halmsee, room 3",
    by="cons",
    note="The waiting room is built *anew*.",
    venue_statements=statements(ambient_light="120 lx"),
    substitutions=(
        Substitution(f"{VENUE}/1", "M1", "V-1", statements(technology="LCD", visible_diagonal="15 in")),
        Substitution(f"{VENUE}/2", "M2", "V-2", statements(technology="LCD", visible_diagonal="15 in")),
    ),
    changes=(Change(f"{VENUE}/3", "M2", statements(rotation="upright")),),
    omissions=(Omission(f"{VENUE}/4", "M3", "the venue's floor has no room for the bench"),),
    consents=(
        Consent(
            f"{VENUE}/5",
            "estate",
            ("R1.2",),
            True,
            ("M1",),
            None,
            ("the cabinet stays in place",),
            read_date("2026-10-02"),
            None,
            "letters/2026-10-02.md",
        ),
    ),
    attestations=(
        Attestation(f"{VENUE}/6", "no working tube can be found", True, "cons", read_date("2026-09-20")),
    ),
)

IN_PLACE = Open(OpenKind.ATTESTATION, "the cabinet stays in place", None, "R1.2")
CONSENT = Open(OpenKind.CONSENT, "", "estate", "R1.2")


def technology(subject: str, *still_open: Open) -> Row:
    return Row(
        subject,
        (subject,),
        "technology",
        f"{TERM}technology",
        "cathode-ray tube",
        "LCD",
        Verdict.CONDITIONAL,
        f"the technology of {subject} is allowed by R1.2, with something open",
        governing=(R1_2,),
        set_aside=(SetAside("R1.1", "R1.2", Because.EXCEPTION),),
        open=still_open,
        ask=("estate",),
    )


ROWS = (
    Row(
        "M2",
        ("M2",),
        "rotation",
        f"{TERM}rotation",
        "turned left",
        "upright",
        Verdict.BREACH,
        "R2.1 requires turned left",
        governing=(R2_1,),
        set_aside=(SetAside("R3.1", "R2.1", Because.AUTHORITY),),
        ask=("artist",),
    ),
    Row(
        "Monitors",
        ("M1", "M2", "M3"),
        "number",
        None,
        "3",
        "2",
        Verdict.BREACH,
        "R4.1 requires 3",
        governing=(R4_1,),
        days=read_date("2027-03-01/2027-03-31"),
        ask=("cons",),
    ),
    Row(
        "M1",
        ("M1",),
        "visible diagonal",
        f"{TERM}visible-diagonal",
        "13 in",
        "15 in",
        Verdict.UNCOVERED,
        "no instruction says anything of it",
        ask=("estate",),
    ),
    Row(
        "M2",
        ("M2",),
        "visible diagonal",
        f"{TERM}visible-diagonal",
        "13 in",
        "15 in",
        Verdict.UNCOVERED,
        "no instruction says anything of it",
        ask=("estate",),
    ),
    technology("M1", IN_PLACE),
    technology("M2", CONSENT),
    Row(
        "M3",
        ("M3",),
        "rotation",
        f"{TERM}rotation",
        "upside down",
        "upside down",
        Verdict.AS_REQUIRED,
        "as R2.2 requires",
        governing=(R2_2,),
    ),
    Row(
        "M1", ("M1",), "rotation", f"{TERM}rotation", "upright", "upright", Verdict.AS_DOCUMENTED, "unchanged"
    ),
)


EFFECTS = (
    Effect(
        EffectTopic.PICTURE,
        ("M1",),
        "picture height",
        "cm",
        point(30),
        point(Fraction("24.5")),
        say("{share} less than documented", share=figure(point(Fraction("18.3")), "%")),
        "arithmetic of rectangles",
    ),
    Effect(
        EffectTopic.POWER,
        (),
        "total power",
        "W",
        Interval(Fraction(164), None),
        Interval(Fraction(120), None),
        say("so much at least; of {count} devices no power is given", count="2"),
        "arithmetic",
        ("power",),
    ),
)


@pytest.fixture
def variance() -> Variance:
    """A proposal with departures of several kinds, a finding, and something ignored."""
    return Variance(
        WORK,
        HALMSEE,
        Outcome.NOT_ACCEPTABLE,
        "not to be installed as proposed: the rotation of M2 and the number of Monitors are wrong",
        ("estate", "artist", "cons"),
        ROWS,
        (VenueFinding("door-too-narrow", "the crate of M1 is wider than the door", "B01", ("cons",)),),
        effects=EFFECTS,
        notes=("the consent of cons to R2.1 is ignored: a conservator cannot lift what the artist requires",),
    )


@pytest.fixture
def unchanged() -> Variance:
    """The documented state, proposed as it is."""
    plain = Installation(f"{VENUE}/as-is", "As it is", read_date("2027-03-01/2027-06-30"), WORK.iri)
    return Variance(WORK, plain, Outcome.ACCEPTABLE, "acceptable as proposed", (), ROWS[6:])


@pytest.fixture
def many() -> Variance:
    """The same departure on twenty-four screens, each of them named in its reason."""
    names = [f"T{number:02}" for number in range(1, 25)]
    display = VOCABULARY.concepts[f"{TERM}display"]
    parts = tuple(Part(f"{BASE}{name}", name, display, "", "Wall") for name in names)
    work = Work(f"{BASE}wall", "Wall of Weather", VOCABULARY, parts=parts, instructions=(R1_2, R1_1))
    substitutions = tuple(
        Substitution(f"{VENUE}/{name}", name, None, statements(technology="LCD")) for name in names
    )
    wall = Installation(
        f"{VENUE}/wall", "All replaced", read_date("2027-03-01"), work.iri, substitutions=substitutions
    )
    return Variance(
        work, wall, Outcome.ON_CONDITIONS, "", ("estate",), tuple(technology(name, CONSENT) for name in names)
    )


@pytest.fixture
def evidence() -> Evidence:
    files = (
        EvidenceFile.of(FileRole.DOSSIER, "work.md", b"# Timetable for a Closed Line\n"),
        EvidenceFile.of(FileRole.INSTALLATION, "installations/halmsee.md", b"# Loan to Halmsee\n"),
        EvidenceFile.of(FileRole.SOURCE, "sources/interview-1999.md", b"without the tube\n"),
    )
    return Evidence(files, "0.1.0", datetime.date(2026, 11, 2))
