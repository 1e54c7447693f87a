"""A collection's own terms that come as Turtle are refused where nobody could make sense of them."""

from __future__ import annotations

from importlib.resources import files

import pytest

from intent.language.locale import ENGLISH
from intent.record.parse import parse_rdf
from intent.record.sent_terms import term_faults
from intent.vocabulary.loader import TERM_FILES, read_vocabulary

GLOW = """
@prefix intent: <https://w3id.org/intent-record/ns#> .
@prefix qudt: <http://qudt.org/schema/qudt/> .
@prefix skos: <http://www.w3.org/2004/02/skos/core#> .
@prefix own: <urn:own#> .

own:glow a intent:Characteristic, skos:Concept ;
    skos:prefLabel "glow"@en ;
    intent:bearer "device" ;
    intent:space "count" ;
    intent:minimum 0 ;
    intent:tolerance 0.5 ;
    intent:noticing 1 .

own:lantern-second a qudt:Unit ;
    qudt:symbol "ls" ;
    intent:factor "5/9" .

own:warm a skos:Concept ; skos:prefLabel "warm"@en .
own:amber a skos:Concept ; skos:prefLabel "amber"@en ; skos:broader own:warm .
"""


def faults(text: str) -> list[str]:
    graph = parse_rdf(text.encode(), "x", "turtle")
    return [ENGLISH.say(one.message) for one in term_faults(graph, "x", read_vocabulary())]


def test_terms_without_a_fault_are_taken() -> None:
    assert faults(GLOW) == []


@pytest.mark.parametrize("name", TERM_FILES)
def test_the_terms_that_ship_have_no_fault(name: str) -> None:
    assert faults(files("intent.vocabulary").joinpath(f"{name}.ttl").read_text(encoding="utf-8")) == []


@pytest.mark.parametrize(
    ("written", "instead", "message"),
    [
        (
            'bearer "device"',
            'bearer "gizmo"',
            "`glow`: `gizmo` is not a bearer; known: device, place, work, venue, material, connection, box",
        ),
        ('space "count"', 'space "cuont"', "`glow`: `cuont` is not a sort of values; did you mean `count`?"),
        (
            "minimum 0",
            'minimum "few"',
            "`glow`: after `intent:minimum` stands a number; `few` is none that can be used",
        ),
        (
            "noticing 1",
            "noticing 1.5",
            "`glow`: after `intent:noticing` stands a number; `1.5` is none that can be used",
        ),
        ("broader own:warm", "broader own:warmth", "`amber`: `warmth` is not a value"),
        (
            '"5/9"',
            '"5/0"',
            "`lantern-second`: after `intent:factor` stands a number; `5/0` is none that can be used",
        ),
        (
            '"5/9"',
            '"0"',
            "`lantern-second`: after `intent:factor` stands a number; `0` is none that can be used",
        ),
        (
            "intent:bearer",
            "intent:baerer",
            "`glow`: `intent:baerer` is no name that a record uses; did you mean `intent:bearer`?",
        ),
    ],
)
def test_a_term_that_cannot_be_made_sense_of_is_refused(written: str, instead: str, message: str) -> None:
    assert written in GLOW
    assert faults(GLOW.replace(written, instead)) == [message]
