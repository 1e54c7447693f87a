"""Who made a work, who owns it, and whether somebody is a person or a body: in the record as the standards have it.

Sources: DCMI Metadata Terms (2020-01-20), `creator`, whose value is an agent; DCMI Elements 1.1, whose `creator` may
be a text; CIDOC CRM 7.1.2, P52 has current owner, E21 Person, E74 Group; W3C, PROV-O (30 April 2013), Person and
Organization.
"""

from __future__ import annotations

from rdflib import DC, DCTERMS, PROV, RDF, RDFS, Graph, Literal, URIRef

from intent.dossier.work_text import read_work
from intent.dossier.write_work import write_work
from intent.model.work import Work
from intent.names import CRM
from intent.record.load_work import load_work
from intent.vocabulary.loader import read_vocabulary

BASE = "https://example.org/ferry"
TEXT = """# Ferry

- artist: Ferrand and Tolm
- number: 1
- owner: Hollins Street Museum
- base: https://example.org/ferry

## People

| person | name         | role            | person or body |
| ------ | ------------ | --------------- | -------------- |
| ilka   | Ilka Ferrand | artist          | person         |
| duo    | Tolm & Tolm  | artist          | body           |
| estate | Ferrand Fund | artist's estate |                |
| cons   | Odile Varga  | conservator     | Person         |

## Parts

### Monitors

- kind: display

| part | technology       |
| ---- | ---------------- |
| M1   | cathode-ray tube |
"""


def graph() -> Graph:
    return read_work(TEXT, "work.md", read_vocabulary()).graph


def work() -> Work:
    return load_work(graph(), BASE, read_vocabulary())


def one(name: str) -> URIRef:
    return URIRef(f"{BASE}#{name}")


def test_the_artists_of_the_table_made_the_work_and_the_head_keeps_its_words() -> None:
    assert set(graph().objects(URIRef(BASE), DCTERMS.creator)) == {one("ilka"), one("duo")}
    assert list(graph().objects(URIRef(BASE), DC.creator)) == [Literal("Ferrand and Tolm")]


def test_the_owner_is_somebody_who_owns_and_holds_no_rights_by_it() -> None:
    (owner,) = graph().objects(URIRef(BASE), CRM["P52_has_current_owner"])
    assert set(graph().objects(owner, RDF.type)) == {CRM["E39_Actor"], PROV.Agent}
    assert list(graph().objects(owner, RDFS.label)) == [Literal("Hollins Street Museum")]
    assert not list(graph().objects(None, DCTERMS.rightsHolder))
    assert work().fields[str(CRM["P52_has_current_owner"])] == "Hollins Street Museum"


def test_a_person_and_a_body_have_the_classes_of_the_standards() -> None:
    standard = {CRM["E21_Person"], CRM["E74_Group"], PROV.Person, PROV.Organization}
    found = {name: set(graph().objects(one(name), RDF.type)) & standard for name in ("ilka", "duo", "estate")}
    assert found == {
        "ilka": {CRM["E21_Person"], PROV.Person},
        "duo": {CRM["E74_Group"], PROV.Organization},
        "estate": set(),
    }


def test_what_is_not_given_stays_so_whatever_the_role() -> None:
    told = {person.identifier: person.actor and person.actor.label for person in work().people}
    assert told == {"ilka": "person", "duo": "body", "estate": None, "cons": "person"}


def test_the_text_comes_back_and_gives_the_same_graph() -> None:
    written = write_work(work())
    assert "- owner: Hollins Street Museum" in written
    assert "- artist: Ferrand and Tolm" in written
    again = read_work(written, "work.md", read_vocabulary()).graph
    assert set(again) == set(graph())


def test_the_words_are_read_in_german_and_french() -> None:
    german = TEXT.replace("person or body |", "Person oder Körperschaft |").replace(
        "| body  ", "| Körperschaft "
    )
    french = TEXT.replace("person or body |", "personne ou collectivité |").replace(
        "| body  ", "| collectivité "
    )
    for text in (german, french):
        assert set(read_work(text, "work.md", read_vocabulary()).graph) == set(graph())
