"""The terms that people exchange files with are there, in three languages, and can stand in a sentence."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable

import pytest

from intent.model.meaning import ordinary_expression
from intent.vocabulary.loader import read_vocabulary
from intent.vocabulary.phrases import normal
from intent.vocabulary.terms import Characteristic, Concept

TERM = "https://w3id.org/intent-record/term/"
VOCABULARY = read_vocabulary()
LANGUAGES = {"en", "de", "fr"}


def listed(text: str) -> list[str]:
    return [" ".join(name.split()) for name in text.split(",")]


# The labels that the text form fixes. An asterisk: counts unasked.
KINDS = listed(
    "display, player, loudspeaker, object, furniture, converter, cable, carrier, control, barrier, marking, label"
)
ROLES = {
    1: ["artist"],
    2: ["artist's estate"],
    3: ["artist's assistant", "fabricator"],
    4: ["conservator", "curator"],
    5: ["registrar", "technician", "lender", "borrower", "insurer"],
    6: ["observed practice"],
}
TECHNOLOGIES = {
    ("display", None): listed("cathode-ray tube, flat panel, projector, LED wall"),
    ("display", "flat panel"): listed("LCD, plasma panel, OLED"),
    ("display", "projector"): listed("film projector, slide projector, video projector"),
    ("player", None): listed("tape player, optical disc, film projector, slide projector, file player"),
    ("player", "file player"): listed("computer, media player"),
    ("converter", None): ["HDMI converter"],
}
CHARACTERISTICS = {
    "device": """technology*, visible diagonal*, aspect ratio*, colour*, casing*, nominal diagonal, raster,
        refresh rate, luminance, white point, weight, power, maker, model, serial, year made, hours""",
    "place": """presence*, rotation*, tilt*, facing*, position*, channel*, start offset*, synchronisation*,
        fit*, support*, height, power state*, picture turn*, mirroring*, distortion*, muted*, playback speed*,
        play mode*""",
    "work": "sound*, sound level*, running*",
    "venue": """mains, mains frequency, ambient light, ceiling height, door width, door height,
        floor load limit, circuit current, wall colour""",
    "material": "standard*, frame rate*, duration*, raster*, pixel aspect ratio*, sound*, loop gap*",
    "connection": "signal, length",
    "box": "length, width, height, weight",
}
FIXED = [(bearer, name) for bearer, names in CHARACTERISTICS.items() for name in listed(names)]
VALUES = {
    "colour": "colour, monochrome",
    "casing": "original, altered, none, hidden",
    "fit": "whole, cropped, stretched",
    "synchronisation": "synchronised, free-running",
    "sound": "silent, audible",
    "presence": "present, absent",
    "running": "continuous, opening hours, on demand",
}
SCHEMES = {
    "statuses": "in use, spare, failed, on loan, retired",
    "installation-statuses": "proposed, agreed, carried out",
    "grounds": "intent, safety, law, loan, care",
    "keepings": "internal",
    "yes-no": "yes, no",
    "source-kinds": """interview, letter, inscription, contract, plan, photograph, film or video,
        questionnaire, e-mail, published text, observation""",
    "signals": """composite, S-video, component, RF, SDI, HDMI, DVI, VGA, line audio, loudspeaker signal,
        network, trigger""",
    "light-responsivities": "none, low, medium, high",  # CIE 157:2004, as quoted
}


def in_scheme(scheme: str) -> tuple[Concept, ...]:
    return VOCABULARY.in_scheme(TERM + scheme)


def concept(scheme: str, label: str) -> Concept:
    found = VOCABULARY.find_value([TERM + scheme], label)
    assert found is not None, f"{label} is not in {scheme}"
    return found


def characteristic(label: str) -> Characteristic:
    found = VOCABULARY.find_characteristic(label)
    assert found is not None, f"no characteristic {label}"
    return found


def test_how_many() -> None:
    assert len(VOCABULARY.characteristics) >= 100
    assert len(in_scheme("technologies")) >= 45


@pytest.mark.parametrize("label", KINDS)
def test_kinds(label: str) -> None:
    assert concept("kinds", label).labels.keys() >= LANGUAGES
    assert concept("kinds", label).texts.keys() >= LANGUAGES
    assert concept("kinds", label).broader == ()


@pytest.mark.parametrize(("authority", "labels"), ROLES.items())
def test_roles_and_their_authority(authority: int, labels: list[str]) -> None:
    assert {role.label for role in in_scheme("roles") if role.authority == authority} == set(labels)
    assert all(concept("roles", label).labels.keys() >= LANGUAGES for label in labels)


@pytest.mark.parametrize(("kind", "broader"), TECHNOLOGIES)
def test_technologies_and_their_tree(kind: str, broader: str | None) -> None:
    for label in TECHNOLOGIES[kind, broader]:
        found = concept("technologies", label)
        assert found.labels.keys() >= LANGUAGES
        assert found.definition
        assert VOCABULARY.applies(found, TERM + kind)
        if broader is not None:
            assert concept("technologies", broader).iri in found.broader


@pytest.mark.parametrize(("bearer", "name"), FIXED)
def test_characteristics_and_their_bearers(bearer: str, name: str) -> None:
    found = characteristic(name.rstrip("*"))
    assert found.label == name.rstrip("*")
    assert bearer in found.bearers
    assert found.labels.keys() >= LANGUAGES
    assert found.definition


@pytest.mark.parametrize(("bearer", "name"), FIXED)
def test_those_with_an_asterisk_count_unasked(bearer: str, name: str) -> None:
    """Of a device exactly those; a height counts where no position says it, and so has no asterisk."""
    found = characteristic(name.rstrip("*"))
    assert (bearer in found.unasked_of) == name.endswith("*") or found.restates is not None


def test_of_a_device_nothing_else_counts_unasked() -> None:
    starred = {name.rstrip("*") for name in listed(CHARACTERISTICS["device"]) if name.endswith("*")}
    assert {one.label for one in VOCABULARY.characteristics.values() if "device" in one.unasked_of} == starred


NOTICED = 2
"""A loss that is seen at once (1) or on comparison (2); what only measuring or asking shows is rated 3."""


def test_whatever_visitors_can_notice_of_place_work_and_material_counts_unasked() -> None:
    """The vocabulary's own rating decides, so that a new characteristic cannot be forgotten."""
    forgotten = {
        (one.label, bearer)
        for one in VOCABULARY.characteristics.values()
        for bearer in one.bearers & {"place", "work", "material"}
        if one.seen <= NOTICED and bearer not in one.unasked_of
    }
    assert not forgotten


ORDINARY = {
    "playback speed": "100 %",
    "play mode": "looped",
    "loop gap": "0 s",
    "picture turn": "upright",
    "mirroring": "unmirrored",
    "distortion": "0 %",
    "muted": "no",
    "power state": "on",
    "area of the floor load limit": "1 m²",
}


def test_what_everybody_takes_for_granted() -> None:
    found = {
        one.label: expression.written
        for one in VOCABULARY.characteristics.values()
        if (expression := ordinary_expression(one, VOCABULARY)) is not None
    }
    assert found == ORDINARY


def test_terms_that_only_gather_others() -> None:
    """A heading names nothing of its own, so it has something narrower under it."""
    gathering = {one.label for one in VOCABULARY.concepts.values() if one.only_gathers}
    assert {"flat panel", "projector", "file player"} <= gathering
    assert not {"cathode-ray tube", "video projector", "computer"} & gathering
    assert all(
        len(VOCABULARY.narrower[one.iri]) > 1 for one in VOCABULARY.concepts.values() if one.only_gathers
    )


@pytest.mark.parametrize("name", VALUES)
def test_fixed_values(name: str) -> None:
    found = characteristic(name)
    for label in listed(VALUES[name]):
        value = VOCABULARY.find_value(found.schemes, label)
        assert value is not None
        assert value.label == label
        assert value.texts.keys() >= LANGUAGES


@pytest.mark.parametrize("scheme", SCHEMES)
def test_schemes_of_fields(scheme: str) -> None:
    assert all(concept(scheme, label).label == label for label in listed(SCHEMES[scheme]))


@pytest.mark.parametrize(
    ("name", "label", "degrees"),
    [("rotation", "upright", 0), ("rotation", "turned right", 90), ("rotation", "upside down", 180),
     ("rotation", "turned left", 270), ("tilt", "face up", 90), ("facing", "away from the viewer", 180)],
)  # fmt: skip
def test_named_angles(name: str, label: str, degrees: int) -> None:
    value = VOCABULARY.find_value(characteristic(name).schemes, label)
    assert value is not None
    assert value.magnitude == degrees


def shared(labelled: Iterable[tuple[str, str]]) -> dict[str, set[str]]:
    """The labels that mean more than one thing."""
    meant: dict[str, set[str]] = defaultdict(set)
    for label, iri in labelled:
        meant[label].add(iri)
    return {label: iris for label, iris in meant.items() if len(iris) > 1}


def test_no_label_means_two_characteristics() -> None:
    assert shared((name, one.iri) for one in VOCABULARY.characteristics.values() for name in one.names) == {}


@pytest.mark.parametrize("scheme", sorted(VOCABULARY.by_scheme.keys() - {TERM + "technologies"}))
def test_no_label_means_two_values(scheme: str) -> None:
    assert shared((name, one.iri) for one in VOCABULARY.by_scheme[scheme] for name in one.names) == {}


@pytest.mark.parametrize("kind", [one.iri for one in in_scheme("kinds")])
def test_no_label_means_two_technologies_of_a_kind(kind: str) -> None:
    suited = [one for one in in_scheme("technologies") if one.applies_to and VOCABULARY.applies(one, kind)]
    assert shared((name, one.iri) for one in suited for name in one.names) == {}


def test_labels_hold_nothing_that_ends_a_name() -> None:
    """In a sentence a name ends at `and` and `or`; sources and schemes are never named there."""
    values = [
        value for one in VOCABULARY.characteristics.values() for value in VOCABULARY.in_scheme(*one.schemes)
    ]
    names = [name for value in values for name in value.names]
    names += [name for one in VOCABULARY.characteristics.values() for name in one.names]
    assert [name for name in names if {"and", "or"} & set(name.split())] == []


def test_no_column_is_both_a_field_and_a_characteristic() -> None:
    for field in VOCABULARY.fields.values():
        for section in (VOCABULARY.sections[iri] for iri in field.sections):
            for name in field.names:
                assert VOCABULARY.find_characteristic(name, section.bearers or ["none"]) is None, (
                    field.label,
                    name,
                )


def test_units_measure_what_their_characteristic_does() -> None:
    for one in VOCABULARY.characteristics.values():
        fitting = [unit for unit in VOCABULARY.units.values() if one.quantity_kind in unit.quantity_kinds]
        assert bool(fitting) == (one.space in {"quantity", "angle", "position"}), one.label
        assert one.assumed_unit is None or one.assumed_unit in {unit.iri for unit in fitting}, one.label
        assert one.is_measured == (one.tolerance is not None or one.tolerance_percent is not None), one.label


def test_limits_that_keep_people_safe_have_no_tolerance() -> None:
    for label in listed(
        "floor load limit, floor point load limit, circuit current, hanging load limit, lift load limit, "
        "escape route width"
    ):
        assert characteristic(label).tolerance == 0


def test_signed_quantities_have_no_minimum() -> None:
    for label in listed(
        "position, tilt, height, start offset, temperature, sound level, lens shift, playback speed"
    ):
        assert characteristic(label).minimum is None


@pytest.mark.parametrize(
    ("scheme", "label", "caution"),
    [("technologies", "cathode-ray tube", "high-voltage"),
     ("technologies", "monochrome tube", "high-voltage"),
     ("technologies", "CRT projector", "high-voltage"), ("technologies", "video projector", "hot-lamps"),
     ("technologies", "laser", "laser"), ("technologies", "neon tube", "neon"),
     ("technologies", "strobe lamp", "flicker"), ("technologies", "handheld device", "lithium"),
     ("technologies", "nitrate film", "nitrate-film"), ("technologies", "film projector", "moving-parts"),
     ("technologies", "fluorescent lamp", "mercury"), ("kinds", "display", "mains"),
     ("kinds", "object", "weight"),
     ("kinds", "loudspeaker", "sound-level"), ("kinds", "cable", "escape-routes"),
     ("lamp-types", "RGB laser", "laser"), ("laser-classes", "class 1", "laser-class-1"),
     ("laser-classes", "class 2M", "laser-class-2"), ("laser-classes", "class 3R", "laser-class-3r"),
     ("laser-classes", "class 3B", "laser-class-4"), ("laser-classes", "class 4", "laser-class-4"),
     ("risk-groups", "RG2", "risk-group-2"), ("risk-groups", "RG3", "risk-group-3"),
     ("casings", "none", "high-voltage"), ("supports", "hung from the ceiling", "hanging")],
)  # fmt: skip
def test_cautions_reach_those_who_need_them(scheme: str, label: str, caution: str) -> None:
    assert f"{TERM}caution-{caution}" in concept(scheme, label).cautions


def test_every_caution_is_used_and_defers_to_those_responsible() -> None:
    used = {caution for one in VOCABULARY.concepts.values() for caution in one.cautions}
    cautions = in_scheme("cautions")
    assert used == {one.iri for one in cautions}
    responsible = ("local", "licensed", "maker", "law", "fire authority", "qualified")
    assert [
        one.label for one in cautions if not any(word in normal(one.texts["en"]) for word in responsible)
    ] == []
