"""Linked Art documents: valid against the published schemas, and each says what the record says.

Source: Linked Art 1.0, JSON schemas (draft 2020-12) and JSON-LD context (linked.art/api/1.0/schema, /ns/v1).
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

import pyoxigraph as ox
import pytest
from examples_read import WORKS, documentation
from jsonschema import Draft202012Validator
from jsonschema.protocols import Validator
from referencing import Registry, Resource

from exports.published_schemas import standard
from exports.published_terms import AAT, published_aat
from exports.test_lido import TEXT, work_of
from intent.diagnostics import Unusable
from intent.exports.linked_art import export_linked_art
from intent.model.work import Work
from intent.names import CRM, INTENT, is_iri
from intent.record.parse import parse_rdf

SCHEMAS = {
    "HumanMadeObject": "object",
    "Person": "person",
    "Group": "group",
    "LinguisticObject": "text",
    "DigitalObject": "digital",
    "PropositionalObject": "abstract",
}
LINKED_ART = "https://linked.art/ns/terms/"


@cache
def validator(kind: str) -> Validator:
    registry: Registry[Any] = Registry()
    for path in sorted(standard("linked-art").glob("*.json")):
        if path.name != "context.json":
            registry = registry.with_resource(
                f"https://linked.art/api/1.0/schema/{path.name}",
                Resource.from_contents(json.loads(path.read_text())),
            )
    schema = json.loads(standard("linked-art", f"{SCHEMAS[kind]}.json").read_text())
    return Draft202012Validator(schema, registry=registry, format_checker=Draft202012Validator.FORMAT_CHECKER)


def documents(work: Work) -> dict[str, Any]:
    return {name: json.loads(content) for name, content in export_linked_art(work).items()}


@cache
def documents_of(file: Path) -> Mapping[str, Any]:
    return documents(documentation(file).work)


@cache
def expanded_of(file: Path) -> ox.Dataset:
    """The documents of an example as RDF; to put the context in their place takes seconds."""
    return expanded(documents_of(file))


@cache
def clocks() -> Mapping[str, Any]:
    return documents(work_of(TEXT))


def expanded(found: Mapping[str, Any]) -> ox.Dataset:
    """The documents as RDF, with the published context put in their place."""
    context = json.loads(standard("linked-art", "context.json").read_text())["@context"]
    graph = [{name: value for name, value in one.items() if name != "@context"} for one in found.values()]
    text = json.dumps({"@context": context, "@graph": graph})
    return ox.Dataset(ox.parse(text.encode(), format=ox.RdfFormat.JSON_LD))


def ids(found: Any) -> Iterator[str]:
    if isinstance(found, dict):
        yield from [found["id"]] if "id" in found else []
        for value in found.values():
            yield from ids(value)
    elif isinstance(found, list):
        for one in found:
            yield from ids(one)


def content(found: Any, kind: str) -> list[str]:
    """The statements of a type."""
    return [
        one["content"]
        for one in found.get("referred_to_by", [])
        if any(known["id"].rpartition("#")[2].rpartition("/")[2] == kind for known in one["classified_as"])
    ]


@pytest.mark.parametrize("file", WORKS, ids=lambda file: file.parent.name)
def test_the_examples_are_valid(file: Path) -> None:
    for name, found in documents_of(file).items():
        errors = [error.message for error in validator(found["type"]).iter_errors(found)]
        assert not errors, name


@pytest.mark.parametrize("file", WORKS, ids=lambda file: file.parent.name)
def test_every_member_is_in_the_context_and_every_term_of_the_model_exists(file: Path) -> None:
    """A member that the context does not know would be dropped in silence: JSON-LD 1.1, section 4.1."""
    found = documents_of(file)
    context = json.loads(standard("linked-art", "context.json").read_text())["@context"]
    known = {*context, "@context"}
    assert {name for one in found.values() for name in members(one)} - known <= scoped(context)
    model = standard("cidoc-crm", "CIDOC_CRM_v7.1.2.rdf").read_text()
    used = {quad.predicate.value for quad in expanded_of(file) if quad.predicate.value.startswith(str(CRM))}
    assert used
    assert not [iri for iri in used if f'"{iri.removeprefix(str(CRM))}"' not in model]


def members(found: Any) -> Iterator[str]:
    if isinstance(found, dict):
        yield from found
        for value in found.values():
            yield from members(value)
    elif isinstance(found, list):
        for one in found:
            yield from members(one)


def scoped(context: Any) -> set[str]:
    """The members that are only known within a class."""
    inner = [
        value["@context"] for value in context.values() if isinstance(value, dict) and "@context" in value
    ]
    return {name for one in inner if isinstance(one, dict) for name in one}


def test_a_document_that_is_wrong_is_found() -> None:
    found = dict(clocks()["part-M1.json"])
    found["part"] = []
    assert list(validator("HumanMadeObject").iter_errors(found))


def test_what_is_pointed_to_has_a_document() -> None:
    """Each of the work's own things that a document names is itself a document."""
    work = work_of(TEXT)
    own = {iri for one in clocks().values() for iri in ids(one) if iri.startswith(work.iri)}
    assert own == {one["id"] for one in clocks().values()}


def test_the_work_is_named_made_and_owned() -> None:
    work = clocks()["work.json"]
    assert [one["content"] for one in work["identified_by"]] == ["Two Clocks", "7.1"]
    assert work["current_owner"][0]["_label"] == "Thornacre Museum"
    assert work["produced_by"]["carried_out_by"][0]["_label"] == "Ottiline Quarrow"
    assert work["produced_by"]["timespan"]["begin_of_the_begin"] == "1992-01-01T00:00:00Z"
    assert work["produced_by"]["timespan"]["end_of_the_end"] == "1994-12-31T23:59:59Z"


def test_a_component_is_part_of_its_work_and_has_dimensions() -> None:
    part = clocks()["part-M1.json"]
    assert part["part_of"]["id"] == work_of(TEXT).iri
    assert "cathode-ray tube" in [one["_label"] for one in part["classified_as"]]
    found = {one["classified_as"][0]["_label"]: one for one in part["dimension"]}
    diagonal = found["visible diagonal"]
    assert (diagonal["value"], diagonal["lower_value_limit"], diagonal["upper_value_limit"]) == (13, 12, 14)
    assert diagonal["unit"]["_label"] == "inches"
    assert content(part, "position") == ["position: 0.0, 1.4, 0.0 m"]


def test_an_instruction_is_a_text_about_what_it_speaks_of() -> None:
    line = clocks()["instruction-R1.1.json"]
    assert line["type"] == "LinguisticObject"
    assert line["content"] == "required: technology of M1 is cathode-ray tube"
    assert [one["id"].rpartition("#")[2] for one in line["about"]] == ["M1"]
    assert line["classified_as"][0]["id"] == str(INTENT.required)
    assert line["created_by"]["carried_out_by"][0]["_label"] == "Ottiline Quarrow"
    assert line["created_by"]["timespan"]["begin_of_the_begin"] == "1999-05-14T00:00:00Z"
    assert line["created_by"]["influenced_by"][0]["id"].endswith("#S1")
    assert content(line, "cites") == ["S1 Conversation in the tower, at 0:14:05"]
    heading = clocks()["instructions-R1.json"]
    assert line["part_of"][0]["id"] == heading["id"]
    assert heading["content"] == "without the tube it is only a clock"
    assert content(heading, "reason") == ["the glow"]


def test_the_context_is_named_and_the_program_does_not_fetch_it() -> None:
    """The documents stand for themselves as JSON; as JSON-LD they are refused, as any with a remote context is."""
    found = export_linked_art(work_of(TEXT))["work.json"]
    assert json.loads(found)["@context"] == "https://linked.art/ns/v1/linked-art.json"
    with pytest.raises(Unusable) as refused:
        parse_rdf(found, "work.json", "json-ld")
    assert refused.value.diagnostics[0].slug == "remote-context"


def test_identifiers_that_differ_by_case_alone_have_files_of_their_own() -> None:
    """A text cannot have them; a graph from elsewhere can."""
    work = work_of(TEXT)
    first, second = work.parts
    found = export_linked_art(replace(work, parts=(first, replace(second, identifier="m1"))))
    assert {"part-M1.json", "part-m1-1.json"} <= set(found)


def test_the_same_work_gives_the_same_bytes() -> None:
    assert export_linked_art(work_of(TEXT)) == export_linked_art(work_of(TEXT))


PEOPLE = """# Ferry

- artist: Ilka Ferrand
- number: 1
- owner: Hollins Street Museum
- medium: three monitors on a bench
- credit line: given by the harbour

## People

| person | name         | role            | person or body |
| ------ | ------------ | --------------- | -------------- |
| ilka   | Ilka Ferrand | artist          | person         |
| firm   | Tolm & Tolm  | fabricator      | body           |
| estate | Ferrand Fund | artist's estate |                |
| heir   | Ada Ferrand  | artist's estate | person         |

## Parts

### Monitors

- kind: display

| part | technology       | weight | outer width | power | condition   | made from     |
| ---- | ---------------- | ------ | ----------- | ----- | ----------- | ------------- |
| M1   | cathode-ray tube | 11 kg  | 40 cm       | 62 W  | dusty vents | oak and glass |

## Sources

### S1 The bench

- kind: photograph
- by: ilka
- date: 1999
"""


@cache
def ferry() -> Mapping[str, Any]:
    return documents(work_of(PEOPLE))


def labels(types: list[Any]) -> dict[str, str]:
    return {one["id"]: one["_label"] for one in types}


def test_a_person_is_a_person_and_a_body_a_group_and_who_is_not_told_apart_is_said_to_be_so() -> None:
    """Where it is not known which, Group is the safer: linked.art/model/actor, Types."""
    told = {
        name: (found["type"], bool(content(found, "300027200")))
        for name in ("ilka", "firm", "estate", "heir")
        for found in [ferry()[f"person-{name}.json"]]
    }
    assert told == {
        "ilka": ("Person", False),
        "firm": ("Group", False),
        "estate": ("Group", True),
        "heir": ("Person", False),
    }
    assert ferry()["work.json"]["produced_by"]["carried_out_by"][0]["type"] == "Person"
    assert content(ferry()["owner.json"], "300027200")
    for found in ferry().values():
        assert not list(validator(found["type"]).iter_errors(found))


def test_dimensions_and_units_have_the_published_types_before_our_own() -> None:
    found = {one["_label"]: one for one in ferry()["part-M1.json"]["dimension"]}
    weight, width, power = (found[label] for label in ("weight: 11 kg", "outer width: 40 cm", "power: 62 W"))
    assert next(iter(labels(weight["classified_as"]).items())) == (f"{AAT}300056240", "weight")
    assert list(labels(width["classified_as"]).values()) == ["width", "outer width"]
    assert (weight["unit"]["id"], weight["unit"]["_label"]) == (f"{AAT}300379226", "kilograms")
    assert (width["unit"]["id"], width["unit"]["_label"]) == (f"{AAT}300379098", "centimeters")
    assert power["unit"] == {"id": "http://qudt.org/vocab/unit/W", "type": "MeasurementUnit", "_label": "W"}


def test_roles_kinds_and_statements_have_the_published_types() -> None:
    assert f"{AAT}300025103" in labels(ferry()["person-ilka.json"]["classified_as"])
    assert f"{AAT}300046300" in labels(ferry()["source-S1.json"]["classified_as"])
    part = ferry()["part-M1.json"]
    assert part["classified_as"][0]["classified_as"][0]["id"] == f"{AAT}300241583"
    assert content(part, "300435425") == ["condition: dusty vents"]
    assert content(part, "300435429") == ["made from: oak and glass"]
    assert content(ferry()["work.json"], "300026687") == ["given by the harbour"]
    for statement in part["referred_to_by"]:
        for known in statement["classified_as"]:
            assert [one["id"] for one in known["classified_as"]] == [f"{AAT}300418049"]


@pytest.mark.parametrize("found", [clocks, ferry], ids=["clocks", "ferry"])
def test_every_type_of_the_thesaurus_is_a_published_one_and_every_label_can_be_read(found: object) -> None:
    assert callable(found)
    for one in found().values():
        assert {iri for iri in ids(one) if iri.startswith(AAT)} <= set(published_aat())
        for label in labelled(one):
            assert label
            assert "://" not in label
            assert not re.search("[a-z][A-Z]", label), label


def labelled(found: Any) -> Iterator[str]:
    """The label of everything that has an id, empty where it has none."""
    if isinstance(found, dict):
        yield from [found.get("_label", "")] if "id" in found else []
        for value in found.values():
            yield from labelled(value)
    elif isinstance(found, list):
        for one in found:
            yield from labelled(one)


@pytest.mark.parametrize("file", WORKS, ids=lambda file: file.parent.name)
def test_every_id_is_an_iri(file: Path) -> None:
    """RFC 3987: no IRI holds a space, as one that is made of the words of a field might."""
    found = re.findall(
        r'"id": "([^"]*)"', json.dumps(documents(documentation(file).work), ensure_ascii=False)
    )
    assert found
    assert [one for one in found if not is_iri(one)] == []
    assert [
        one for one in found if one.startswith(str(INTENT)) and not re.fullmatch(f"{INTENT}\\w+", one)
    ] == []


def test_who_may_lift_a_line_is_a_statement_of_the_record_s_own_property() -> None:
    work = work_of(f"{TEXT}- lifted by: otti\n")
    line = next(one for name, one in documents(work).items() if "R1.1" in name)
    (said,) = [one for one in line["referred_to_by"] if one["_label"] == "lifted by"]
    assert said["content"] == "otti"
    assert said["classified_as"][0]["id"] == str(INTENT.liftedBy)
