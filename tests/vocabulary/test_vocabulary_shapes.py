"""The vocabulary meets its shapes, and each shape is shown to fail on a term that breaks it.

Source: W3C, Shapes Constraint Language (SHACL), Recommendation of 20 July 2017; its shapes for shapes graphs
(appendix C) come with pySHACL. The namespace to lint against comes with rdflib.
"""

from __future__ import annotations

from collections.abc import Iterable
from importlib.resources import files

import pytest
from pyshacl import validate
from rdflib import Graph, URIRef
from rdflib.namespace import SH

TERM_FILES = ("cautions", "characteristics", "computed", "kinds", "roles", "technologies", "units", "values")
SHAPE = "https://w3id.org/intent-record/shapes/vocabulary#"

PREFIXES = """
@prefix intent: <https://w3id.org/intent-record/ns#> .
@prefix qudt: <http://qudt.org/schema/qudt/> .
@prefix quantitykind: <http://qudt.org/vocab/quantitykind/> .
@prefix skos: <http://www.w3.org/2004/02/skos/core#> .
@prefix term: <https://w3id.org/intent-record/term/> .
@prefix unit: <http://qudt.org/vocab/unit/> .
@prefix xsd: <http://www.w3.org/2001/XMLSchema#> .
"""
SOUND = """
term:kinds a skos:ConceptScheme ; skos:prefLabel "kinds"@en, "Arten"@de, "types"@fr ;
    skos:definition "Kinds."@en .
term:cautions a skos:ConceptScheme ; skos:prefLabel "cautions"@en, "Warnungen"@de, "alertes"@fr ;
    skos:definition "Cautions."@en .
term:roles a skos:ConceptScheme ; skos:prefLabel "roles"@en, "Rollen"@de, "rôles"@fr ;
    skos:definition "Roles."@en .
term:technologies a skos:ConceptScheme ; skos:prefLabel "technologies"@en, "Techniken"@de, "techniques"@fr ;
    skos:definition "Technologies."@en .
term:sail a skos:Concept ; skos:inScheme term:kinds ; skos:prefLabel "sail"@en, "Segel"@de, "voile"@fr ;
    skos:altLabel "sails"@en ; skos:definition "A cloth."@en, "Ein Tuch."@de, "Une toile."@fr ;
    intent:caution term:wind .
term:wind a skos:Concept ; skos:inScheme term:cautions ; skos:prefLabel "wind"@en, "Wind"@de, "vent"@fr ;
    skos:definition
    "A strong wind can tear a sail loose; the rigger who is licensed for such work decides."@en,
    "Starker Wind kann ein Segel aus der Halterung reißen; die zugelassene Fachkraft dafür entscheidet."@de,
    "Un vent fort peut arracher une voile de ses fixations ; le gréeur habilité en décide seul."@fr .
term:cloth a skos:Concept ; skos:inScheme term:technologies ;
    skos:prefLabel "cloth"@en, "Stoff"@de, "toile"@fr ;
    skos:definition "Woven."@en ; intent:appliesTo term:sail .
term:canvas a skos:Concept ; skos:inScheme term:technologies ; skos:broader term:cloth ;
    skos:prefLabel "canvas"@en, "Leinen"@de, "lin"@fr ; skos:definition "Heavy."@en .
term:rigger a intent:Role, skos:Concept ; skos:inScheme term:roles ; intent:authority 5 ;
    skos:prefLabel "rigger"@en, "Taklerin"@de, "gréeur"@fr .
unit:IN a qudt:Unit ; qudt:symbol "in" ; skos:prefLabel "inch"@en, "Zoll"@de, "pouce"@fr ;
    qudt:hasQuantityKind quantitykind:Length ; intent:offset "0" ; intent:factor "0.0254" .
term:half a skos:Concept ; skos:inScheme term:technologies ; skos:prefLabel "half"@en, "halb"@de, "demi"@fr ;
    skos:definition "Half."@en ; skos:broader term:cloth ; qudt:numericValue 180 ; qudt:hasUnit unit:IN .
term:breadth a intent:Characteristic, skos:Concept ; skos:inScheme term:kinds ;
    skos:prefLabel "breadth"@en, "Weite"@de, "ampleur"@fr ;
    skos:definition "Side to side."@en, "x"@de, "x"@fr ;
    intent:bearer "device" ; intent:space "quantity" ; qudt:hasQuantityKind quantitykind:Length ;
    intent:assumedUnit unit:IN ; intent:tolerance "5"^^xsd:decimal ; intent:toleranceUnit unit:IN ;
    intent:ordinaryNumber "2"^^xsd:decimal ; intent:restates term:weave ; intent:restatesAxis "y" ;
    intent:neverAbove term:weave ;
    intent:minimum 0 ; intent:countsUnasked true ; intent:noticing 1 ; intent:undoing 2 .
term:weave a intent:Characteristic, skos:Concept ; skos:inScheme term:kinds ;
    skos:prefLabel "weave"@en, "Bindung"@de, "armure"@fr ; skos:definition "How woven."@en, "x"@de, "x"@fr ;
    intent:bearer "device" ; intent:space "concept" ; intent:valuesFrom term:technologies ;
    intent:countsUnaskedOf "device" ; intent:ordinaryValue term:cloth ; intent:noticing 1 ; intent:undoing 2 .
term:ease a intent:Characteristic, skos:Concept ; skos:inScheme term:kinds ;
    skos:prefLabel "ease"@en, "Lose"@de, "mou"@fr ; skos:definition "Slack."@en, "x"@de, "x"@fr ;
    intent:bearer "device" ; intent:space "ratio" ; intent:tolerancePercent "10"^^xsd:decimal ;
    intent:noticing 1 ; intent:undoing 2 .
"""
BROKEN = [
    # the constraint that must fail, what is written in the sound terms, what is written in its stead
    ("one-label-a-language", '"sail"@en, "Segel"@de', '"sail"@en, "topsail"@en, "Segel"@de'),
    ("english-label", '"sail"@en, "Segel"@de', '"Segel"@de'),
    ("german-label", '"sail"@en, "Segel"@de', '"sail"@en'),
    ("french-label", ', "voile"@fr', ""),
    ("other-labels-have-a-language", '"sails"@en', '"sails"'),
    ("readable-label", '"sail"@en', '"sail, large"@en'),
    ("readable-label", '"sail"@en', '"sail "@en'),
    ("readable-further-label", '"sails"@en', '"sails “of canvas”"@en'),
    ("one-scheme", "term:sail a skos:Concept ; skos:inScheme term:kinds ;", "term:sail a skos:Concept ;"),
    (
        "one-scheme",
        "term:rigger a intent:Role, skos:Concept ;",
        "term:rigger a skos:Concept ; skos:inScheme term:kinds ;",
    ),
    (
        "one-scheme",
        'term:roles a skos:ConceptScheme ; skos:prefLabel "roles"@en, "Rollen"@de, "rôles"@fr ;',
        "term:roles",
    ),
    ("broader-exists", "skos:broader term:cloth ;", "skos:broader term:clth ;"),
    ("broader-in-its-scheme", "skos:broader term:cloth ;", "skos:broader term:sail ;"),
    ("applies-to-kinds", "intent:appliesTo term:sail", "intent:appliesTo term:rigger"),
    ("magnitude-has-a-unit", "qudt:hasUnit unit:IN", "qudt:hasUnit unit:INCH"),
    ("unit-has-a-magnitude", "qudt:numericValue 180 ; qudt:hasUnit unit:IN", "qudt:numericValue 180"),
    ("unit-has-a-magnitude", "qudt:numericValue 180 ; qudt:hasUnit unit:IN", "qudt:hasUnit unit:IN"),
    (
        "four-chromaticities",
        "intent:appliesTo term:sail .",
        'intent:appliesTo term:sail ; intent:chromaticities "0.64 0.33" .',
    ),
    ("caution-is-one", "intent:caution term:wind", "intent:caution term:cloth"),
    ("scheme-definition", 'skos:definition "Kinds."@en', 'skos:definition "Arten."@de'),
    ("kind-is-defined", ', "Une toile."@fr', ""),
    ("technology-is-defined", 'skos:definition "Heavy."@en', 'skos:note "Heavy."@en'),
    ("technology-has-kinds", "; intent:appliesTo term:sail", ""),
    (
        "english-caution",
        '"A strong wind can tear a sail loose; the rigger who is licensed for such work decides."',
        '"Wind."',
    ),
    ("german-caution", "der Halterung reißen; die zugelassene Fachkraft dafür entscheidet", "x"),
    ("french-caution", "de ses fixations ; le gréeur habilité en décide seul", "x"),
    (
        "role-scheme",
        "skos:inScheme term:roles ; intent:authority 5",
        "skos:inScheme term:kinds ; intent:authority 5",
    ),
    ("role-authority", "intent:authority 5", "intent:authority 0"),
    ("role-authority", "intent:authority 5 ;", ""),
    ("unit-symbol", 'qudt:symbol "in" ;', ""),
    ("unit-factor", '"0.0254"', '"0.0"'),
    ("unit-factor", '"0.0254"', "0.0254"),
    ("unit-factor", '"0.0254"', '"254/0"'),
    ("unit-offset", 'intent:offset "0"', 'intent:offset "none"'),
    ("unit-kind", "qudt:hasQuantityKind quantitykind:Length ; intent:offset", "intent:offset"),
    ("english-definition", '"Side to side."@en', '"Side to side."@nl'),
    ("bearer", 'intent:bearer "device" ; intent:space "quantity"', 'intent:space "quantity"'),
    (
        "bearer",
        'intent:bearer "device" ; intent:space "quantity"',
        'intent:bearer "boat" ; intent:space "quantity"',
    ),
    ("space", 'intent:space "quantity"', 'intent:space "colour"'),
    ("space", 'intent:space "quantity" ;', ""),
    ("values-from", "intent:valuesFrom term:technologies", "intent:valuesFrom term:cloth"),
    (
        "quantity-kind",
        "hasQuantityKind quantitykind:Length ;\n",
        "hasQuantityKind quantitykind:Length, quantitykind:Mass ;\n",
    ),
    ("assumed-unit", "intent:assumedUnit unit:IN", "intent:assumedUnit unit:INCH"),
    ("tolerance", 'intent:tolerance "5"^^xsd:decimal', 'intent:tolerance "-5"^^xsd:decimal'),
    ("tolerance", 'intent:tolerance "5"^^xsd:decimal', 'intent:tolerance "5"'),
    ("tolerance-percent", '"10"^^xsd:decimal', '"100"^^xsd:decimal'),
    ("tolerance-unit", "intent:toleranceUnit unit:IN", "intent:toleranceUnit unit:INCH"),
    ("minimum", "intent:minimum 0", 'intent:minimum "none"'),
    ("computed", "intent:countsUnasked true", 'intent:computed "perhaps"'),
    ("ordinary-value", "intent:ordinaryValue term:cloth", 'intent:ordinaryValue "cloth"'),
    ("ordinary-number", 'intent:ordinaryNumber "2"^^xsd:decimal', 'intent:ordinaryNumber "two"'),
    ("restates", "intent:restates term:weave", "intent:restates term:cloth"),
    ("never-above", "intent:neverAbove term:weave", "intent:neverAbove term:cloth"),
    ("restates-axis", 'intent:restatesAxis "y"', 'intent:restatesAxis "up"'),
    ("counts-unasked-of", 'intent:countsUnaskedOf "device"', 'intent:countsUnaskedOf "boat"'),
    ("counts-unasked", "intent:countsUnasked true", 'intent:countsUnasked "perhaps"'),
    (
        "noticing",
        "intent:countsUnasked true ; intent:noticing 1",
        "intent:countsUnasked true ; intent:noticing 4",
    ),
    ("undoing", "intent:countsUnasked true ; intent:noticing 1 ; intent:undoing 2", "intent:noticing 1"),
    ("concept-has-values", "intent:valuesFrom term:technologies ;", ""),
    (
        "quantity-has-a-kind",
        'intent:space "quantity" ; qudt:hasQuantityKind quantitykind:Length ;',
        'intent:space "quantity" ;',
    ),
    ("measured-has-a-tolerance", 'intent:tolerancePercent "10"^^xsd:decimal ;', ""),
    (
        "measured-has-a-tolerance",
        'Percent "10"^^xsd:decimal ;',
        'Percent "10"^^xsd:decimal ; intent:tolerance "1"^^xsd:decimal ;',
    ),
    ("only-measured-has-a-tolerance", 'intent:space "quantity"', 'intent:space "text"'),
    ("tolerance-has-a-unit", " ; intent:toleranceUnit unit:IN", ""),
]


def parsed(names: Iterable[str]) -> Graph:
    graph = Graph()
    for name in names:
        graph.parse(files("intent.vocabulary").joinpath(f"{name}.ttl").read_bytes(), format="turtle")
    return graph


@pytest.fixture(scope="module")
def shapes() -> Graph:
    return parsed(["shapes"])


def broken_constraints(data: Graph, shapes: Graph) -> set[str]:
    _, report, _ = validate(data, shacl_graph=shapes)
    assert isinstance(report, Graph)
    return {str(source).removeprefix(SHAPE) for source in report.objects(None, SH.sourceShape)}


def test_the_vocabulary_conforms_and_the_shapes_are_shapes(shapes: Graph) -> None:
    conforms, _, text = validate(parsed(TERM_FILES), shacl_graph=shapes, meta_shacl=True)
    assert conforms, text


def test_sound_terms_conform(shapes: Graph) -> None:
    assert broken_constraints(Graph().parse(data=PREFIXES + SOUND, format="turtle"), shapes) == set()


@pytest.mark.parametrize(
    ("constraint", "sound", "broken"), BROKEN, ids=[f"{row[0]}: {row[2][:40]}" for row in BROKEN]
)
def test_each_constraint_can_fail(constraint: str, sound: str, broken: str, shapes: Graph) -> None:
    assert sound in SOUND
    data = Graph().parse(data=PREFIXES + SOUND.replace(sound, broken, 1), format="turtle")
    assert constraint in broken_constraints(data, shapes)


def test_no_constraint_goes_unbroken(shapes: Graph) -> None:
    named = {str(subject).removeprefix(SHAPE) for subject in shapes.subjects(SH.message, None)}
    assert named == {constraint for constraint, _, _ in BROKEN}


def test_every_shacl_term_is_one(shapes: Graph) -> None:
    """A misspelt term passes silently in every engine."""
    used = {
        node for triple in shapes for node in triple if isinstance(node, URIRef) and node.startswith(str(SH))
    }
    assert [term for term in used if term not in SH] == []
