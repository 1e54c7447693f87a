"""PREMIS documents: valid against the published schema, and each object, agent and right says what the record says.

Source: PREMIS Editorial Committee, PREMIS Data Dictionary for Preservation Metadata, version 3.0 (2015), and the XML
schema of the Library of Congress, version 3.0.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest
from examples_read import WORKS, documentation
from lxml import etree

from exports.published_schemas import standard
from exports.test_lido import work_of
from intent.exports.odrl import export_odrl
from intent.exports.premis import export_premis

NAMES = {"p": "http://www.loc.gov/premis/v3"}
XSI_TYPE = "{http://www.w3.org/2001/XMLSchema-instance}type"
TEXT = """# Two Clocks

- artist: Ottiline Quarrow
- year: 1993
- number: 7.1

## People

| person | name             | role            | until | successor | person or body |
| ------ | ---------------- | --------------- | ----- | --------- | -------------- |
| otti   | Ottiline Quarrow | artist          | 2016  | heir      | person         |
| heir   | Quarrow Estate   | artist's estate |       |           | body           |
| cons   | Odile Varga-Finn | conservator     |       |           |                |

## Parts

### Pictures

- kind: display

| part | name         | device | technology       | channel | rotation |
| ---- | ------------ | ------ | ---------------- | ------- | -------- |
| M1   | the slow one | E-01   | cathode-ray tube | A       | upright  |
| M2   | the fast one | E-02   | cathode-ray tube | B       | upright  |
| M3   | the old one  | E-03   | cathode-ray tube |         | upright  |
| M4   |              |        | cathode-ray tube |         | upright  |

## Devices

| device | maker   | model | status | firmware |
| ------ | ------- | ----- | ------ | -------- |
| E-01   | Corvane | TV-13 | in use | 2.1      |
| E-02   | Corvane | TV-13 | in use |          |
| E-03   | Corvane | TV-9  | spare  |          |

## Material

| material | channel | container | codec | file size   | checksum                             | file         |
| -------- | ------- | --------- | ----- | ----------- | ------------------------------------ | ------------ |
| V1       | A       | Matroska  | FFV1  | 1.5 kB      | MD5 9e107d9d372bb6826bd81d3542a419d6 | media/v1.mkv |
| V2       | B       |           |       |             |                                      |              |

## Sources

### S1 Conversation in the tower

- kind: interview
- with: otti
- date: 1999-05-14
- file: sources/s1.md
- sha256: d7a8fbb307d7809469ca9abcb0082e4f8d5651e46d3cdb762d02d0bf37c9e592

## Instructions

### R1 Tubes

- required: technology of M1 is cathode-ray tube
- allowed: technology of M1 is flat panel, if "no tube can be had", with consent of heir, until 2030
- required: sound of the work is silent
- source: S1 at 0:14:05

### R2 Withdrawn

- required: rotation of M2 is upright
- by: otti
- on: 1998
- withdrawn: 1999

### R3 New

- forbidden: rotation of M2 is upside down
- by: otti
- on: 2001

### R4 Choices

- allowed: casing of M1 is altered, first choice
- allowed: casing of M1 is none, second choice
- by: otti
- on: 2003~

### R5 Practice of the house

- allowed: tilt of M2 is any
- by: cons
- on: 2004

### R6 After his death

- allowed: facing of M2 is any
- by: otti
- on: 2018

### R7 Air

- allowed: rotation of M2 is turned left
- ground: safety
- by: otti
- on: 2001

## Log

| date    | device | event   | value  | by   | remark           |
| ------- | ------ | ------- | ------ | ---- | ---------------- |
| 2019-11 | E-02   | failed  |        | cons | the tube is dark |
|         | E-01   | reading | 1200 h |      |                  |
"""


@cache
def document() -> etree._Element:
    return etree.fromstring(export_premis(work_of(TEXT)))


@cache
def schema() -> etree.XMLSchema:
    return etree.XMLSchema(etree.parse(standard("premis", "premis.xsd")))


def texts(element: etree._Element, path: str) -> list[str]:
    return [one.text or "" for one in element.iterfind(path, NAMES)]


def thing(identifier: str) -> etree._Element:
    for one in document().iterfind("p:object", NAMES):
        if identifier in texts(one, "p:objectIdentifier/p:objectIdentifierValue"):
            return one
    raise AssertionError(identifier)


def significant(identifier: str) -> dict[str, str]:
    names = texts(thing(identifier), "p:significantProperties/p:significantPropertiesType")
    values = texts(thing(identifier), "p:significantProperties/p:significantPropertiesValue")
    return dict(zip(names, values, strict=True))


def related(identifier: str) -> list[tuple[str, str, list[str]]]:
    return [
        (
            texts(one, "p:relationshipType")[0],
            texts(one, "p:relationshipSubType")[0],
            [iri.rpartition("#")[2] for iri in texts(one, ".//p:relatedObjectIdentifierValue")],
        )
        for one in thing(identifier).iterfind("p:relationship", NAMES)
    ]


@pytest.mark.parametrize("file", WORKS, ids=lambda file: file.parent.name)
def test_the_examples_are_valid(file: Path) -> None:
    found = etree.fromstring(export_premis(documentation(file).work))
    assert schema().validate(found), schema().error_log


def test_the_case_is_valid_and_every_identifier_that_is_named_is_there() -> None:
    assert schema().validate(document()), schema().error_log
    known = set(texts(document(), ".//p:objectIdentifierValue")) | set(
        texts(document(), ".//p:agentIdentifierValue")
    )
    for name in (
        "relatedObjectIdentifierValue",
        "linkingObjectIdentifierValue",
        "linkingAgentIdentifierValue",
    ):
        assert set(texts(document(), f".//p:{name}")) <= known


def test_a_component_has_its_significant_properties() -> None:
    """Data dictionary, 1.4: what is documented, and what is required or forbidden and in force."""
    assert significant("M1")["technology"] == "cathode-ray tube"
    assert significant("M1")["instruction R1.1"] == "required: technology of M1 is cathode-ray tube"
    assert "instruction R1.2" not in significant("M1")
    assert significant("M2")["instruction R3.1"] == "forbidden: rotation of M2 is upside down"
    assert "instruction R2.1" not in significant("M2")
    assert significant("7.1") == {"instruction R1.3": "required: sound of the work is silent"}


@pytest.mark.parametrize(("ground", "stays"), [("safety", True), ("intent", False)])
def test_only_what_is_superseded_with_effect_is_left_out(ground: str, stays: bool) -> None:
    """design.md, section 4, step 1: superseding something of another ground has no effect."""
    earlier = f"- required: tilt of M2 is vertical\n- by: otti\n- on: 1998\n- ground: {ground}\n"
    later = "- forbidden: tilt of M2 is face up\n- by: otti\n- on: 2002\n- supersedes: R8\n"
    both = f"### R8 Old\n\n{earlier}\n### R9 Later\n\n{later}\n## Log"
    text = TEXT.replace("## Log", both)
    for written in (export_premis(work_of(text)).decode(), export_odrl(work_of(text))):
        assert ("R8.1" in written) is stays
        assert "R9.1" in written


def test_a_device_is_an_environment_that_its_component_requires() -> None:
    """Data dictionary, 1.9 to 1.12 (environment) and 1.13 (relationship)."""
    device = thing("E-01")
    assert device.get(XSI_TYPE) == "premis:intellectualEntity"
    assert texts(device, "p:environmentFunction/p:environmentFunctionType") == ["hardware"]
    assert texts(device, "p:environmentDesignation/p:environmentName") == ["Corvane TV-13"]
    assert texts(device, "p:environmentDesignation/p:environmentVersion") == ["2.1"]
    assert texts(device, "p:environmentDesignation/p:environmentDesignationNote") == ["status: in use"]
    assert ("dependency", "requires", ["E-01"]) in related("M1")
    assert ("dependency", "requires", ["V1"]) in related("M1")
    assert ("structural", "has part", ["M1", "M2", "M3", "M4"]) in related("7.1")


def test_material_is_a_file_with_size_digest_and_format() -> None:
    """Data dictionary, 1.5: messageDigestAlgorithm, messageDigest, size in bytes (1.5.3), formatDesignation."""
    file = thing("V1")
    assert file.get(XSI_TYPE) == "premis:file"
    assert texts(file, ".//p:messageDigestAlgorithm") == ["MD5"]
    assert texts(file, ".//p:messageDigest") == ["9e107d9d372bb6826bd81d3542a419d6"]
    assert texts(file, ".//p:size") == ["1500"]
    assert texts(file, ".//p:formatName") == ["Matroska, FFV1"]
    assert texts(file, "p:originalName") == ["media/v1.mkv"]
    assert thing("V2").get(XSI_TYPE) == "premis:representation"


def test_a_source_is_a_file_with_the_digest_that_the_record_has() -> None:
    assert texts(thing("S1"), ".//p:messageDigestAlgorithm") == ["SHA-256"]
    assert len(texts(thing("S1"), ".//p:messageDigest")[0]) == 64
    assert not texts(thing("S1"), ".//p:size")


def statement(line: str) -> etree._Element:
    for one in document().iterfind(".//p:rightsStatement", NAMES):
        if texts(one, ".//p:rightsStatementIdentifierValue")[0].endswith(f"#{line}"):
            return one
    raise AssertionError(line)


def test_a_permission_grants_a_right() -> None:
    """Data dictionary, 4.1: rightsBasis other, act, restriction, termOfGrant."""
    right = statement("R1.2")
    assert texts(right, "p:rightsBasis") == ["other"]
    assert texts(right, ".//p:act") == ["install"]
    assert texts(right, ".//p:restriction") == [
        'if "no tube can be had"',
        "with consent of Quarrow Estate (artist's estate)",
    ]
    assert texts(right, ".//p:startDate") == ["1999-05-14"]
    assert texts(right, ".//p:endDate") == ["2030"]
    assert texts(right, "p:linkingAgentIdentifier/p:linkingAgentRole") == ["artist"]
    assert texts(right, ".//p:linkingObjectIdentifierValue")[0].endswith("#M1")


def test_a_later_choice_waits_for_the_earlier_and_has_no_end_that_nobody_named() -> None:
    first, second = statement("R4.1"), statement("R4.2")
    assert texts(first, ".//p:restriction") == []
    assert texts(second, ".//p:restriction") == ["only once it is attested that R4.1 cannot be had"]
    assert texts(second, ".//p:startDate") == ["2003~"]
    assert texts(second, ".//p:endDate") == []


@pytest.mark.parametrize(
    "line", ["R5.1", "R6.1", "R7.1"], ids=["by the conservator", "after his death", "for safety"]
)
def test_what_somebody_allows_who_cannot_grant_it_is_no_right(line: str) -> None:
    found = {
        texts(one, ".//p:rightsStatementIdentifierValue")[0].rpartition("#")[2]
        for one in document().iterfind(".//p:rightsStatement", NAMES)
    }
    assert found == {"R1.2", "R4.1", "R4.2"}
    assert any(name.startswith(f"instruction {line}") for name in significant("M2"))


@pytest.mark.parametrize(
    ("part", "known"), [("M1", "known to work"), ("M2", "known not to work"), ("M3", "unspecified")]
)
def test_whether_a_device_works_is_told_from_its_log_and_its_status(part: str, known: str) -> None:
    """Data dictionary, 1.13: relatedEnvironmentCharacteristic; the row of E-02 says in use, its log that it failed."""
    assert texts(thing(part), ".//p:relatedEnvironmentCharacteristic") == [known]
    assert not texts(thing("M4"), ".//p:relatedEnvironmentCharacteristic")


def test_what_the_log_tells_is_an_event() -> None:
    """Data dictionary, section 2: eventType, eventDateTime, eventDetail, eventOutcome, linked agent and object."""
    (failed, read) = list(document().iterfind("p:event", NAMES))[1:]
    assert texts(failed, "p:eventType") == ["failed"]
    assert texts(failed, "p:eventDateTime") == ["2019-11"]
    assert texts(failed, ".//p:eventDetail") == ["the tube is dark"]
    assert texts(failed, ".//p:linkingAgentRole") == ["conservator"]
    assert texts(failed, ".//p:linkingObjectIdentifierValue")[0].endswith("#E-02")
    assert texts(read, "p:eventType") == ["reading"]
    assert texts(read, ".//p:eventOutcome") == ["hours: 1200 h"]


def test_an_agent_is_a_person_or_a_body_where_the_record_says_so() -> None:
    """Data dictionary, 3.3 agentType, with the values of its controlled vocabulary."""
    assert texts(document(), "p:agent/p:agentType") == ["person", "organization"]


def test_people_are_agents_and_the_making_an_event() -> None:
    assert texts(document(), "p:agent/p:agentName") == [
        "Ottiline Quarrow",
        "Quarrow Estate",
        "Odile Varga-Finn",
    ]
    assert texts(document(), "p:event/p:eventDateTime")[0] == "1993"


def test_a_thing_of_which_little_is_known_is_valid() -> None:
    bare = work_of("# A Thing\n\n## Parts\n\n### Odd\n\n- kind: object\n\n| part |\n| ---- |\n| A    |\n")
    found = etree.fromstring(export_premis(bare))
    assert schema().validate(found), schema().error_log


def test_the_same_work_gives_the_same_bytes() -> None:
    assert export_premis(work_of(TEXT)) == export_premis(work_of(TEXT))
