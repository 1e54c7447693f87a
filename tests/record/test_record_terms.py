"""A record from elsewhere is refused where its terms are not known, or its values do not fit them."""

from __future__ import annotations

import pytest

from intent.language.locale import ENGLISH
from intent.record.known_terms import term_findings
from intent.record.parse import parse_rdf
from intent.vocabulary.loader import read_vocabulary

PREFIXES = """
@prefix intent: <https://w3id.org/intent-record/ns#> .
@prefix qudt: <http://qudt.org/schema/qudt/> .
@prefix term: <https://w3id.org/intent-record/term/> .
@prefix unit: <http://qudt.org/vocab/unit/> .
@prefix work: <urn:work#> .
@prefix xsd: <http://www.w3.org/2001/XMLSchema#> .
"""
METRE = 'work:v intent:written "1.4 m" ; qudt:numericValue 1.4 ; qudt:hasUnit unit:M .'
POINT = (
    'work:p intent:written "0, 1, 0 m" ; intent:x 0.0 ; intent:y 1.0 ; intent:z 0.0 ; qudt:hasUnit unit:M .'
)


def findings(text: str) -> list[tuple[str, str]]:
    graph = parse_rdf((PREFIXES + text).encode(), "x", "turtle")
    return [
        (one.slug, ENGLISH.say(one.message)) for one in term_findings(graph, {}, read_vocabulary(), "work")
    ]


@pytest.mark.parametrize(
    "text",
    [
        "work:M1.mending intent:characteristic work:mending .",
        "work:v qudt:hasUnit unit:PARSEC .",
        "work:M1 intent:kind work:automaton .",
        "work:M1.technology intent:value work:magic-lantern .",
        "work:ilka intent:role work:muse .",
    ],
)
def test_a_term_that_the_vocabulary_lacks_is_named(text: str) -> None:
    ((slug, message),) = findings(text)
    assert slug == "unknown-term"
    assert "is no term of the vocabulary; ask the sender" in message


@pytest.mark.parametrize(
    ("characteristic", "value", "message"),
    [
        ("term:weight", "work:v", "`M1.x`: `1.4 m` is no weight; give one as the vocabulary says"),
        ("term:weight", "work:p", "`M1.x`: `0, 1, 0 m` is no weight; give one as the vocabulary says"),
        ("term:position", "work:v", "`M1.x`: `1.4 m` is no position; give one as the vocabulary says"),
        (
            "term:technology",
            '"a lantern"',
            "`M1.x`: `a lantern` is no technology; give one as the vocabulary says",
        ),
        (
            "term:model",
            "term:flat-panel",
            "`M1.x`: `flat panel` is no model; give one as the vocabulary says",
        ),
    ],
)
def test_a_value_that_does_not_fit_is_named(characteristic: str, value: str, message: str) -> None:
    said = f"work:M1.x intent:characteristic {characteristic} ; intent:form intent:one-of ; intent:value {value} ."
    assert findings(f"{said}\n{METRE}\n{POINT}") == [("unfitting-value", message)]


@pytest.mark.parametrize(
    ("characteristic", "value"),
    [
        ("term:length", "work:v"),
        ("term:position", "work:p"),
        ("term:technology", "term:flat-panel"),
        ("term:rotation", "work:angle"),
        ("term:model", '"TV-13"'),
        ("term:weight", "work:half"),
    ],
)
def test_a_value_that_fits_is_accepted(characteristic: str, value: str) -> None:
    said = f"work:M1.x intent:characteristic {characteristic} ; intent:form intent:one-of ; intent:value {value} ."
    share = "work:half intent:percentOfDocumented 50.0 ."
    angle = 'work:angle intent:written "upside down" ; qudt:numericValue 180.0 .'
    assert findings("\n".join([said, METRE, POINT, share, angle])) == []


def test_a_bound_on_what_has_no_more_and_less_is_named() -> None:
    said = (
        "work:M1.x intent:characteristic term:position ; intent:form intent:at-least ; intent:value work:p ."
    )
    assert findings(f"{said}\n{POINT}") == [
        ("no-order", "`M1.x`: position has no more and less; give one value, or several")
    ]
