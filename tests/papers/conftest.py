"""A small work and two proposals for it, built by hand, so that every report can be read beside what it says.

The artist, the museum and the makers are invented.
"""

from __future__ import annotations

import datetime
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from intent.language.figures import figure
from intent.language.message import say
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
from intent.model.citation import Citation
from intent.model.installation import Attestation, Change, Consent, Installation, Omission, Substitution
from intent.model.subject import WHOLE_WORK, group_of, one
from intent.model.work import (
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
from intent.variance.obstacle import Obstacle
from intent.variance.result import (
    Because,
    Effect,
    EffectTopic,
    Open,
    OpenKind,
    Outcome,
    Row,
    SetAside,
    Variance,
    Verdict,
)
from intent.vocabulary.form_terms import FormField
from intent.vocabulary.loader import read_vocabulary
from intent.vocabulary.terms import Characteristic, Concept

TERM = "https://w3id.org/intent-record/term/"
NS = "https://w3id.org/intent-record/ns#"
BASE = "https://example.org/closed-line/"
VENUE = "https://example.org/closed-line/halmsee"


def concept(name: str, *broader: str, cautions: tuple[str, ...] = (), text: str = "") -> Concept:
    return Concept(
        iri=f"{TERM}{name}",
        labels={"en": name.replace("-", " ")},
        names=(name,),
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
    return Characteristic(
        iri=f"{TERM}{name}",
        labels={"en": label},
        names=(label,),
        definition="",
        bearers=frozenset({"device"}),
        space="text",
    )


def form_field(label: str) -> FormField:
    return FormField(
        iri=f"{NS}field-{label}",
        names=(label,),
        labels={"en": label},
        property=f"{NS}{label}",
        reads="text",
        sections=frozenset({f"{TERM}work-head"}),
    )


NAMED = ("technology", "visible-diagonal", "rotation", "ambient-light")
KNOWN: dict[str, Any] = {
    "concepts": {one.iri: one for one in CONCEPTS},
    "characteristics": {one.iri: one for one in map(characteristic, NAMED)},
    "fields": {one.iri: one for one in map(form_field, ("artist", "year", "number", "owner"))},
}
VOCABULARY = replace(read_vocabulary(), **KNOWN)
"""The words of the sentence, and of all else only what is told of here."""


def statements(**values: str) -> Statements:
    """Values by characteristic, as written; one that is the name of a concept stands for it."""
    found = {}
    for name, written in values.items():
        iri = f"{TERM}{written.replace(' ', '-')}"
        items = (Named(iri) if iri in VOCABULARY.concepts else Text(written),)
        found[f"{TERM}{name.replace('_', '-')}"] = Expression(form=Form.ONE_OF, items=items, written=written)
    return found


def person(identifier: str, name: str, role: str, authority: int) -> Person:
    labels = {"en": role}
    return Person(
        iri=f"{BASE}{identifier}",
        identifier=identifier,
        name=name,
        role=Concept(iri=f"{TERM}{role}", labels=labels, names=(role,)),
        authority=authority,
    )


def part(identifier: str, name: str, rotation: str, device: str) -> Part:
    display = VOCABULARY.concepts[f"{TERM}display"]
    values = statements(technology="cathode-ray tube", visible_diagonal="13 in", rotation=rotation)
    return Part(
        iri=f"{BASE}{identifier}",
        identifier=identifier,
        kind=display,
        name=name,
        group="Monitors",
        device=device,
        statements=values,
    )


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
    expression = Expression(form=Form.ONE_OF, items=(Text(value),))
    return Instruction(
        iri=f"{BASE}{identifier}",
        identifier=identifier,
        heading=identifier.partition(".")[0],
        modality=modality,
        assertion=Assertion(
            aggregate=aggregate,
            scope=Scope(kind=ScopeKind.NAMES, names=(scope,)),
            characteristic=f"{TERM}{about}",
            expression=expression,
        ),
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
    groups=(Group(iri=f"{BASE}monitors", name="Monitors"),),
    parts=(
        part("M1", "left window", "upright", "E-01"),
        part("M2", "right window", "turned left", "E-02"),
        part("M3", "under bench", "upside down", "E-03"),
    ),
    devices=(Device(iri=f"{BASE}E-01", identifier="E-01"),),
    sources=(
        Source(
            iri=f"{BASE}S1",
            identifier="S1",
            title="Conversation with the artist",
            kind=VOCABULARY.concepts[f"{TERM}interview"],
            spoken_with=("artist",),
            date=read_date("1999-05-14"),
            file="sources/interview-1999.md",
        ),
        Source(
            iri=f"{BASE}S2",
            identifier="S2",
            title="Note inside the back of the cabinet of M2",
            kind=VOCABULARY.concepts[f"{TERM}inscription"],
            by=("artist",),
            date=read_date("1993"),
        ),
    ),
    headings=(
        Heading(
            iri=f"{BASE}R1",
            identifier="R1",
            title="The pictures come from tubes",
            words="without the tube it is only a timetable, unless there is no tube left to be had",
            reason="the glow behind curved glass stands for a lit platform",
        ),
        Heading(
            iri=f"{BASE}R2",
            identifier="R2",
            title="How each one lies",
            words="the right one has fallen over; leave it be",
        ),
        Heading(iri=f"{BASE}R3", identifier="R3", title="Easier to read"),
        Heading(iri=f"{BASE}R4", identifier="R4", title="Numbers", reason="one for each track"),
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
        Substitution(
            iri=f"{VENUE}/1",
            part="M1",
            device="V-1",
            statements=statements(technology="LCD", visible_diagonal="15 in"),
        ),
        Substitution(
            iri=f"{VENUE}/2",
            part="M2",
            device="V-2",
            statements=statements(technology="LCD", visible_diagonal="15 in"),
        ),
    ),
    changes=(Change(iri=f"{VENUE}/3", part="M2", statements=statements(rotation="upright")),),
    omissions=(Omission(f"{VENUE}/4", "M3", "the venue's floor has no room for the bench"),),
    consents=(
        Consent(
            iri=f"{VENUE}/5",
            person="estate",
            to=("R1.2",),
            answer=True,
            parts=("M1",),
            value=None,
            terms=("the cabinet stays in place",),
            date=read_date("2026-10-02"),
            until=None,
            source="letters/2026-10-02.md",
        ),
    ),
    attestations=(
        Attestation(
            iri=f"{VENUE}/6",
            fact="no working tube can be found",
            holds=True,
            by="cons",
            date=read_date("2026-09-20"),
        ),
    ),
)

IN_PLACE = Open(kind=OpenKind.ATTESTATION, text="the cabinet stays in place", person=None, instruction="R1.2")
CONSENT = Open(kind=OpenKind.CONSENT, text="", person="estate", instruction="R1.2")


def technology(subject: str, *still_open: Open) -> Row:
    return Row(
        subject=one(subject),
        characteristic="technology",
        term=f"{TERM}technology",
        is_whole=False,
        documented="cathode-ray tube",
        proposed="LCD",
        verdict=Verdict.CONDITIONAL,
        reason="R1.2 allows it and prevails over R1.1, since it is an exception to it, once all is settled",
        governing=(R1_2,),
        set_aside=(SetAside("R1.1", "R1.2", Because.EXCEPTION),),
        open=still_open,
        ask=("estate",),
    )


ROWS = (
    Row(
        subject=one("M2"),
        characteristic="rotation",
        term=f"{TERM}rotation",
        is_whole=False,
        documented="turned left",
        proposed="upright",
        verdict=Verdict.BREACH,
        reason="R2.1 requires turned left",
        governing=(R2_1,),
        set_aside=(SetAside("R3.1", "R2.1", Because.AUTHORITY),),
        ask=("artist",),
    ),
    Row(
        subject=group_of("Monitors", ("M1", "M2", "M3")),
        characteristic="number",
        is_whole=True,
        term=None,
        documented="3",
        proposed="2",
        verdict=Verdict.BREACH,
        reason="R4.1 requires 3",
        governing=(R4_1,),
        days=read_date("2027-03-01/2027-03-31"),
        ask=("cons",),
    ),
    Row(
        subject=one("M1"),
        characteristic="visible diagonal",
        term=f"{TERM}visible-diagonal",
        is_whole=False,
        documented="13 in",
        proposed="15 in",
        verdict=Verdict.UNCOVERED,
        reason="no instruction says anything of it",
        ask=("estate",),
    ),
    Row(
        subject=one("M2"),
        characteristic="visible diagonal",
        term=f"{TERM}visible-diagonal",
        is_whole=False,
        documented="13 in",
        proposed="15 in",
        verdict=Verdict.UNCOVERED,
        reason="no instruction says anything of it",
        ask=("estate",),
    ),
    technology("M1", IN_PLACE),
    technology("M2", CONSENT),
    Row(
        subject=one("M3"),
        characteristic="rotation",
        term=f"{TERM}rotation",
        is_whole=False,
        documented="upside down",
        proposed="upside down",
        verdict=Verdict.AS_REQUIRED,
        reason="as R2.2 requires",
        governing=(R2_2,),
    ),
    Row(
        subject=one("M1"),
        characteristic="rotation",
        term=f"{TERM}rotation",
        is_whole=False,
        documented="upright",
        proposed="upright",
        verdict=Verdict.AS_DOCUMENTED,
        reason="unchanged",
    ),
)


EFFECTS = (
    Effect(
        topic=EffectTopic.PICTURE,
        subject=one("M1"),
        quantity=say("picture height"),
        unit="cm",
        documented=point(30),
        proposed=point(Fraction("24.5")),
        sentence=say("{share} less than documented", share=figure(point(Fraction("0.183")), "%")),
        source=say("arithmetic of rectangles"),
    ),
    Effect(
        topic=EffectTopic.POWER,
        subject=WHOLE_WORK,
        quantity=say("total power"),
        unit="W",
        documented=Interval(Fraction(164), None),
        proposed=Interval(Fraction(120), None),
        sentence=say("so much at least; of {count} devices no power is given", count="2"),
        source=say("arithmetic"),
        missing=("power",),
    ),
)


@pytest.fixture
def variance() -> Variance:
    """A proposal with departures of several kinds, an obstacle, and something ignored."""
    return Variance(
        work=WORK,
        installation=HALMSEE,
        outcome=Outcome.NOT_ACCEPTABLE,
        sentence="not to be installed as proposed: the rotation of M2 and the number of Monitors are wrong",
        refer_to=("estate", "artist", "cons"),
        rows=ROWS,
        obstacles=(
            Obstacle(
                slug="door-too-narrow",
                text="the crate of M1 is wider than the door",
                subject=one("B01"),
                ask=("cons",),
            ),
        ),
        effects=EFFECTS,
        notes=("the consent of cons to R2.1 is ignored: a conservator cannot lift what the artist requires",),
    )


@pytest.fixture
def unchanged() -> Variance:
    """The documented state, proposed as it is."""
    plain = Installation(
        iri=f"{VENUE}/as-is", title="As it is", dates=read_date("2027-03-01/2027-06-30"), work=WORK.iri
    )
    return Variance(
        work=WORK,
        installation=plain,
        outcome=Outcome.ACCEPTABLE,
        sentence="acceptable as proposed",
        refer_to=(),
        rows=ROWS[6:],
    )


@pytest.fixture
def many() -> Variance:
    """The same departure on twenty-four screens, each of them without a name."""
    names = [f"T{number:02}" for number in range(1, 25)]
    display = VOCABULARY.concepts[f"{TERM}display"]
    parts = tuple(
        Part(iri=f"{BASE}{name}", identifier=name, kind=display, name="", group="Wall") for name in names
    )
    work = Work(
        iri=f"{BASE}wall",
        title="Wall of Weather",
        vocabulary=VOCABULARY,
        parts=parts,
        instructions=(R1_2, R1_1),
    )
    substitutions = tuple(
        Substitution(iri=f"{VENUE}/{name}", part=name, device=None, statements=statements(technology="LCD"))
        for name in names
    )
    wall = Installation(
        iri=f"{VENUE}/wall",
        title="All replaced",
        dates=read_date("2027-03-01"),
        work=work.iri,
        substitutions=substitutions,
    )
    return Variance(
        work=work,
        installation=wall,
        outcome=Outcome.ON_CONDITIONS,
        sentence="",
        refer_to=("estate",),
        rows=tuple(technology(name, CONSENT) for name in names),
    )


@pytest.fixture
def evidence() -> Evidence:
    files = (
        EvidenceFile.of(FileRole.DOSSIER, "work.md", b"# Timetable for a Closed Line\n"),
        EvidenceFile.of(FileRole.INSTALLATION, "installations/halmsee.md", b"# Loan to Halmsee\n"),
        EvidenceFile.of(FileRole.SOURCE, "sources/interview-1999.md", b"without the tube\n"),
    )
    return Evidence(files, "0.1.0", datetime.date(2026, 11, 2))
