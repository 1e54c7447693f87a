"""LIDO records: valid against the published schema and its embedded rules, and each says what the record says.

Source: ICOM-CIDOC LIDO Working Group, LIDO 1.1, XML Schema of 20 December 2021 with its Schematron rules.
"""

from __future__ import annotations

import datetime
import shutil
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest
from examples_read import EXAMPLES, WORKS, documentation, proposal, vocabulary
from lxml import etree

import intent
from exports.lido_rules import embedded_rules
from exports.published_schemas import standard
from intent.dossier.work_text import read_work
from intent.exports.lido import export_lido
from intent.model.work import Work
from intent.names import TERM
from intent.reading.past import read_past
from intent.record.load_work import load_work

NAMES = {"lido": "http://www.lido-schema.org"}
DAY = datetime.date(2027, 3, 1)
XML_LANG = "{http://www.w3.org/XML/1998/namespace}lang"
TEXT = """# Two Clocks

- artist: Ottiline Quarrow
- year: 1993~
- number: 7.1
- owner: Thornacre Museum
- medium: two clocks, one of them stopped
- credit line: Gift of the clockmaker, 1999
- rights holder: Quarrow Estate
- rights: in copyright until 2071
- licence of the record: https://creativecommons.org/licenses/by/4.0/

One runs.

## People

| person | name             | role        |
| ------ | ---------------- | ----------- |
| otti   | Ottiline Quarrow | artist      |
| cons   | Odile Varga-Finn | conservator |

## Parts

### Pictures

- kind: display

| part | name         | device | technology       | visible diagonal | rotation | position         |
| ---- | ------------ | ------ | ---------------- | ---------------- | -------- | ---------------- |
| M1   | the slow one | E-01   | cathode-ray tube | 13 in ± 1 in     | upright  | 0.0, 1.4, 0.0 m  |
| M2   |              |        |                  |                  |          |                  |

## Devices

| device | maker   | model | weight | inscriptions | made from       |
| ------ | ------- | ----- | ------ | ------------ | --------------- |
| E-01   | Corvane | TV-13 | 11 kg  | No. 4        | beech and glass |

## Sources

### S1 Conversation in the tower

- kind: interview
- with: otti
- date: 1999-05-14
- file: sources/s1.md

## Instructions

### R1 Tubes

> without the tube it is only a clock

- required: technology of M1 is cathode-ray tube
- source: S1 at 0:14:05
- reason: the glow
"""


def work_of(text: str) -> Work:
    reading = read_work(text, "work.md", vocabulary())
    return load_work(reading.triples, reading.iri, vocabulary())


@cache
def schema() -> etree.XMLSchema:
    return etree.XMLSchema(etree.parse(standard("lido", "lido-v1.1.xsd")))


def records(written: bytes) -> list[etree._Element]:
    return etree.fromstring(written).findall("lido:lido", NAMES)


def texts(record: etree._Element, path: str) -> list[str]:
    return [one.text or "" for one in record.iterfind(path, NAMES)]


def notes(record: etree._Element, kind: str) -> Iterator[etree._Element]:
    for one in record.iterfind(".//lido:objectDescriptionSet", NAMES):
        if one.get(f"{{{NAMES['lido']}}}type") == kind:
            yield one


@pytest.mark.parametrize("file", WORKS, ids=lambda file: file.parent.name)
def test_the_examples_are_valid(file: Path) -> None:
    document = etree.fromstring(export_lido(documentation(file).work, DAY))
    assert schema().validate(document), schema().error_log


@pytest.mark.parametrize("file", WORKS, ids=lambda file: file.parent.name)
def test_the_examples_keep_the_embedded_rules(file: Path) -> None:
    rules = embedded_rules(standard("lido", "lido-v1.1.xsd"))
    document = etree.fromstring(export_lido(documentation(file).work, DAY))
    assert rules.validate(document), rules.validation_report


def test_a_record_that_breaks_an_embedded_rule_is_found() -> None:
    """LIDO 1.1, rule `sch_MixedContent`: a text or a concept, and not both."""
    rules = embedded_rules(standard("lido", "lido-v1.1.xsd"))
    document = etree.fromstring(export_lido(work_of(TEXT), DAY))
    kind = document.find(".//lido:measurementType", NAMES)
    assert kind is not None
    kind.text = "diagonal"
    assert schema().validate(document)
    assert not rules.validate(document)


def shown(status: str) -> list[tuple[list[str], list[str]]]:
    """The types and names of all events but the making, of an installation of a status."""
    found = proposal(EXAMPLES / "low-farms/installations/2027-halmsee-loan.md")
    term = found.documentation.work.vocabulary.concepts.get(str(TERM[status]))
    installation = replace(found.installation, status=term)
    written = export_lido(found.documentation.work, DAY, installation)
    assert schema().validate(etree.fromstring(written))
    events = list(records(written)[0].iterfind(".//lido:event", NAMES))[1:]
    return [
        (texts(one, "lido:eventType/lido:conceptID"), texts(one, "lido:eventName/lido:appellationValue"))
        for one in events
    ]


def test_only_what_was_carried_out_is_an_exhibition() -> None:
    """LIDO Terminology: lido00225, exhibition. A plan is told as a plan; what is proposed did not happen."""
    name = [proposal(EXAMPLES / "low-farms/installations/2027-halmsee-loan.md").installation.title]
    assert shown("carried-out") == [(["http://terminology.lido-schema.org/lido00225"], name)]
    assert shown("agreed") == [([str(TERM.agreed)], name)]
    assert shown("proposed") == []
    assert shown("no such status") == []


def test_the_showings_that_lie_beside_a_work_are_told_once_in_their_order(tmp_path: Path) -> None:
    shutil.copytree(EXAMPLES / "low-farms", tmp_path / "low-farms")
    to = tmp_path / "lido.xml"
    intent.export(tmp_path / "low-farms/work.md", ["lido"], to, date=DAY)
    first = records(to.read_bytes())[0]
    names = texts(first, ".//lido:eventName/lido:appellationValue")
    past = read_past(documentation(tmp_path / "low-farms/work.md")).installations
    assert past
    assert names == [one.title for one in past]
    assert texts(first, ".//lido:recordMetadataDate") == ["2027-03-01"]


def test_one_record_for_the_work_and_one_for_each_component() -> None:
    work = work_of(TEXT)
    first, *components = records(export_lido(work, DAY))
    assert texts(first, "lido:lidoRecID") == [work.iri]
    assert [texts(one, "lido:lidoRecID")[0] for one in components] == [part.iri for part in work.parts]
    assert texts(first, ".//lido:relatedWorkSet//lido:objectID") == [part.iri for part in work.parts]
    for one in components:
        assert texts(one, ".//lido:relatedWorkSet//lido:objectID") == [work.iri]
        assert texts(one, ".//lido:relatedWorkRelType/lido:term") == ["is part of"]


def test_the_work_is_identified_made_and_kept_somewhere() -> None:
    first = records(export_lido(work_of(TEXT), DAY))[0]
    assert texts(first, ".//lido:titleSet/lido:appellationValue") == ["Two Clocks"]
    assert texts(first, ".//lido:repositoryName//lido:appellationValue") == ["Thornacre Museum"]
    assert texts(first, ".//lido:workID") == ["7.1"]
    assert texts(first, ".//lido:recordSource//lido:appellationValue") == ["Thornacre Museum"]
    assert texts(first, ".//lido:rightsWorkSet//lido:legalBodyName/lido:appellationValue") == [
        "Quarrow Estate"
    ]
    assert texts(first, ".//lido:rightsWorkSet/lido:rightsType/lido:term") == ["in copyright until 2071"]
    licence = "https://creativecommons.org/licenses/by/4.0/"
    assert texts(first, ".//lido:recordRights/lido:rightsType/lido:conceptID") == [licence]
    assert texts(first, ".//lido:creditLine") == ["Gift of the clockmaker, 1999"]
    assert texts(first, ".//lido:nameActorSet/lido:appellationValue") == ["Ottiline Quarrow"]
    assert texts(first, ".//lido:displayDate") == ["1993~"]
    assert texts(first, ".//lido:earliestDate") == ["1992-01-01"]
    assert texts(first, ".//lido:latestDate") == ["1994-12-31"]
    assert texts(first, ".//lido:recordMetadataDate") == ["2027-03-01"]
    assert "http://vocab.getty.edu/aat/300133025" in texts(first, ".//lido:objectWorkType/lido:conceptID")
    assert "two clocks, one of them stopped" in texts(first, ".//lido:displayMaterialsTech")


def test_a_component_has_its_measurements_with_units() -> None:
    component = records(export_lido(work_of(TEXT), DAY))[1]
    found = {
        texts(one, "lido:measurementType/lido:term")[1]: (
            texts(one, "lido:measurementValue")[0],
            texts(one, "lido:measurementUnit/lido:term")[0],
        )
        for one in component.iterfind(".//lido:measurementsSet", NAMES)
    }
    assert found == {"visible diagonal": ("13", "in"), "weight": ("11", "kg")}
    assert texts(component, ".//lido:qualifierMeasurements") == ["between 12 and 14 in"]


def test_a_component_has_its_technique_its_maker_and_what_is_written_on_it() -> None:
    component = records(export_lido(work_of(TEXT), DAY))[1]
    assert "cathode-ray tube" in texts(component, ".//lido:termMaterialsTech/lido:term")
    assert "beech and glass" in texts(component, ".//lido:displayMaterialsTech")
    assert texts(component, ".//lido:inscriptionTranscription") == ["No. 4"]
    assert texts(component, ".//lido:nameActorSet/lido:appellationValue") == ["Corvane"]
    rest = [
        text for one in notes(component, "characteristic") for text in texts(one, "lido:descriptiveNoteValue")
    ]
    assert "0.0, 1.4, 0.0 m" in rest
    assert "upright" in rest


def test_an_instruction_says_who_said_it_and_where() -> None:
    first, slow, other = records(export_lido(work_of(TEXT), DAY))
    for record in (first, slow):
        (line,) = notes(record, "instruction")
        assert texts(line, "lido:descriptiveNoteValue") == [
            "required: technology of M1 is cathode-ray tube",
            "the glow",
        ]
        assert texts(line, "lido:sourceDescriptiveNote") == [
            "without the tube it is only a clock",
            "Ottiline Quarrow (artist), 1999-05-14",
            "S1 Conversation in the tower, at 0:14:05",
        ]
    assert not list(notes(other, "instruction"))


def test_only_a_resource_that_anybody_can_reach_is_one() -> None:
    """LIDO 1.1, linkResource: a reference to a resource on the web."""
    work = work_of(TEXT)
    assert not texts(records(export_lido(work, DAY))[0], ".//lido:linkResource")
    (source,) = work.sources
    reached = replace(work, sources=(replace(source, file="https://thornacre.example/s1"),))
    written = export_lido(reached, DAY)
    assert schema().validate(etree.fromstring(written))
    assert texts(records(written)[0], ".//lido:linkResource") == ["https://thornacre.example/s1"]


def test_what_is_barely_known_is_valid_as_well() -> None:
    """Without owner, artist or year, with characters that no XML can hold, and with a language that is no tag."""
    group = "## Parts\n\n### Odd\n\n- kind: object\n\n| part |\n| ---- |\n| A    |\n"
    bare = work_of(f"# A \x0b Thing\n\n- language: Low German\n\n{group}")
    document = etree.fromstring(export_lido(bare, DAY))
    assert schema().validate(document), schema().error_log
    assert {one.get(XML_LANG) for one in document.iter(f"{{{NAMES['lido']}}}descriptiveMetadata")} == {"en"}


def test_the_same_work_gives_the_same_bytes() -> None:
    assert export_lido(work_of(TEXT), DAY) == export_lido(work_of(TEXT), DAY)
