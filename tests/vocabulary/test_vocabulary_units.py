"""The units' factors against two independent tables, and against the definitions that they follow from."""

from __future__ import annotations

import os
import re
from collections import defaultdict
from fractions import Fraction
from pathlib import Path

import pint
import pytest
from rdflib import Graph, Namespace
from rdflib.term import URIRef

import intent
from intent.vocabulary.loader import read_vocabulary
from intent.vocabulary.phrases import normal
from intent.vocabulary.unit_of_measure import Unit

QUDT = Namespace("http://qudt.org/schema/qudt/")
UNIT = "http://qudt.org/vocab/unit/"
STANDARDS = Path(os.environ.get("INTENT_STANDARDS") or Path(__file__).parents[3] / "shared" / "standards")

UNITS = {iri.removeprefix(UNIT): unit for iri, unit in read_vocabulary().units.items()}

# Source: pint 0.25, with exact fractions: the unit as it is written there, and our reference unit.
PINT = {
    "M": ("meter", "meter"), "MilliM": ("millimeter", "meter"), "CentiM": ("centimeter", "meter"),
    "KiloM": ("kilometer", "meter"), "IN": ("inch", "meter"), "FT": ("foot", "meter"),
    "YD": ("yard", "meter"),
    "M2": ("meter**2", "meter**2"), "CentiM2": ("centimeter**2", "meter**2"), "FT2": ("foot**2", "meter**2"),
    "M-PER-SEC": ("meter/second", "meter/second"), "CentiM-PER-SEC": ("centimeter/second", "meter/second"),
    "IN-PER-SEC": ("inch/second", "meter/second"),
    "KiloGM": ("kilogram", "kilogram"), "GM": ("gram", "kilogram"), "TONNE": ("metric_ton", "kilogram"),
    "LB": ("pound", "kilogram"), "OZ": ("ounce", "kilogram"),
    "SEC": ("second", "second"), "MilliSEC": ("millisecond", "second"), "MIN": ("minute", "second"),
    "HR": ("hour", "second"), "DAY": ("day", "second"), "WK": ("week", "second"),
    "HZ": ("hertz", "hertz"), "KiloHZ": ("kilohertz", "hertz"), "MegaHZ": ("megahertz", "hertz"),
    "FRAME-PER-SEC": ("1/second", "hertz"), "REV-PER-MIN": ("1/minute", "hertz"),
    "A": ("ampere", "ampere"), "MilliA": ("milliampere", "ampere"), "OHM": ("ohm", "ohm"),
    "V": ("volt", "volt"), "MilliV": ("millivolt", "volt"), "KiloV": ("kilovolt", "volt"),
    "W": ("watt", "watt"), "MilliW": ("milliwatt", "watt"), "KiloW": ("kilowatt", "watt"),
    "BTU_IT-PER-HR": ("Btu_it/hour", "watt"), "V-A": ("volt*ampere", "watt"),
    "KiloV-A": ("kilovolt*ampere", "watt"),
    "J": ("joule", "joule"), "W-HR": ("watt*hour", "joule"), "KiloW-HR": ("kilowatt*hour", "joule"),
    "CD": ("candela", "candela"), "CD-PER-M2": ("nit", "candela/meter**2"), "LUX": ("lux", "lux"),
    "FC": ("lumen/foot**2", "lux"), "LM": ("lumen", "lumen"), "LUX-HR": ("lux*hour", "lux*hour"),
    "MicroW-PER-LM": ("microwatt/lumen", "microwatt/lumen"),
    "K": ("kelvin", "kelvin"), "DEG_C": ("delta_degC", "kelvin"), "DEG_F": ("delta_degF", "kelvin"),
    "DEG": ("degree", "degree"), "ARCMIN": ("arcminute", "degree"),
    "PA": ("pascal", "pascal"), "KiloPA": ("kilopascal", "pascal"),
    "KiloN-PER-M2": ("kilonewton/meter**2", "pascal"),
    "KiloGM_F-PER-M2": ("kilogram_force/meter**2", "pascal"),
    "LB_F-PER-FT2": ("force_pound/foot**2", "pascal"),
    "N": ("newton", "newton"), "KiloN": ("kilonewton", "newton"),
    "KiloGM_F": ("kilogram_force", "newton"), "LB_F": ("force_pound", "newton"),
    "BIT": ("bit", "bit"), "BYTE": ("byte", "bit"), "KiloBYTE": ("kilobyte", "bit"),
    "MegaBYTE": ("megabyte", "bit"),
    "GigaBYTE": ("gigabyte", "bit"), "TeraBYTE": ("terabyte", "bit"), "KibiBYTE": ("kibibyte", "bit"),
    "MebiBYTE": ("mebibyte", "bit"), "GibiBYTE": ("gibibyte", "bit"), "TebiBYTE": ("tebibyte", "bit"),
    "BIT-PER-SEC": ("bit/second", "bit/second"), "KiloBIT-PER-SEC": ("kilobit/second", "bit/second"),
    "MegaBIT-PER-SEC": ("megabit/second", "bit/second"),
    "UNITLESS": ("dimensionless", "dimensionless"), "PERCENT": ("percent", "dimensionless"),
    "PPM": ("ppm", "dimensionless"),
}  # fmt: skip
LOGARITHMIC = {"DeciB"}
"""A level is compared in its own unit; neither table has a factor for it."""


@pytest.fixture(scope="module")
def registry() -> pint.UnitRegistry[Fraction]:
    return pint.UnitRegistry(non_int_type=Fraction)


@pytest.fixture(scope="module")
def published() -> Graph:
    table = STANDARDS / "qudt" / "units.ttl"
    if not table.is_file():
        pytest.skip(f"no QUDT units at {table}: set INTENT_STANDARDS")
    return Graph().parse(table)


def test_every_unit_is_in_the_reference_table() -> None:
    assert set(PINT) == set(UNITS) - LOGARITHMIC


@pytest.mark.parametrize("name", sorted(PINT))
def test_factor_is_exactly_pints(name: str, registry: pint.UnitRegistry[Fraction]) -> None:
    written, reference = PINT[name]
    assert UNITS[name].factor == registry.Quantity(Fraction(1), written).to(reference).magnitude


@pytest.mark.parametrize(
    ("name", "value", "kelvin"),
    [
        # Source: SI Brochure, 9th edition, 2.3.1: T = t + 273.15 kelvin, from memory; pint agrees.
        ("DEG_C", "0", "273.15"), ("DEG_C", "20", "293.15"), ("DEG_F", "32", "273.15"),
        ("DEG_F", "68", "293.15"),
        ("DEG_F", "212", "373.15"), ("DEG_C", "-40", "233.15"), ("DEG_F", "-40", "233.15"),
    ],
)  # fmt: skip
def test_temperatures(name: str, value: str, kelvin: str, registry: pint.UnitRegistry[Fraction]) -> None:
    unit = UNITS[name]
    found = (Fraction(value) + unit.offset) * unit.factor
    assert found == Fraction(kelvin)
    scale = {"DEG_C": "degC", "DEG_F": "degF"}[name]
    assert found == registry.Quantity(Fraction(value), scale).to("kelvin").magnitude


@pytest.mark.parametrize("name", sorted(UNITS))
def test_multiplier_is_qudts(name: str, published: Graph) -> None:
    """Of one quantity kind the factors stand to each other as QUDT's multipliers do (which are rounded)."""
    unit = UNITS[name]
    multiplier = multiplier_of(published, name)
    reference = next(
        (other for other in UNITS if is_reference(other, unit) and multiplier_of(published, other)), None
    )
    if not multiplier or reference is None:
        pytest.skip(f"QUDT's extract has no multiplier for {name} or for its reference unit")
    found = multiplier / (multiplier_of(published, reference) or 1)
    rounded_to = Fraction(1, 10**4 if name == "FC" else 10**8)  # QUDT rounds the foot-candle to five figures
    assert abs(found / unit.factor - 1) <= rounded_to
    offset = published.value(URIRef(UNIT + name), QUDT.conversionOffset)
    assert unit.offset == Fraction(str(offset or 0))


def multiplier_of(published: Graph, name: str) -> Fraction | None:
    multiplier = published.value(URIRef(UNIT + name), QUDT.conversionMultiplier)
    return None if multiplier is None else Fraction(str(multiplier))


def is_reference(name: str, unit: Unit) -> bool:
    other = UNITS[name]
    return other.factor == 1 and not other.offset and bool(other.quantity_kinds & unit.quantity_kinds)


def test_definitions() -> None:
    """Sources, from memory: the yard and pound agreement of 1959; CGPM 3 (1901); ISO 31-4 for the BTU."""
    assert UNITS["YD"].factor == Fraction("0.9144") == 36 * UNITS["IN"].factor
    assert UNITS["LB"].factor == Fraction("0.45359237") == 16 * UNITS["OZ"].factor
    assert UNITS["KiloGM_F-PER-M2"].factor == Fraction("9.80665")
    assert UNITS["BTU_IT-PER-HR"].factor * 3600 == Fraction("1055.05585262")
    assert UNITS["FC"].factor * UNITS["FT2"].factor == 1


def test_one_watt_in_btu_an_hour() -> None:
    """Source: check against pint as reference: 1 W is 3.41214 BTU(IT)/h."""
    assert round(1 / UNITS["BTU_IT-PER-HR"].factor, 5) == Fraction("3.41214")


def test_each_quantity_kind_has_a_reference_unit() -> None:
    for unit in UNITS.values():
        for kind in unit.quantity_kinds - {"http://qudt.org/vocab/quantitykind/RelativeHumidity"}:
            assert any(kind in other.quantity_kinds and other.factor == 1 for other in UNITS.values()), kind


def test_no_label_means_two_units_of_one_kind() -> None:
    meant: dict[tuple[str, str], set[str]] = defaultdict(set)
    for unit in UNITS.values():
        for kind in unit.quantity_kinds:
            for name in (unit.symbol, *unit.names):
                meant[kind, normal(name)].add(unit.iri)
    assert {label: iris for label, iris in meant.items() if len(iris) > 1} == {}


@pytest.mark.parametrize(
    ("kind", "written", "name"),
    [
        ("Length", '"', "IN"), ("Length", "″", "IN"), ("Length", "inches", "IN"), ("Length", "Zoll", "IN"),
        ("Length", "pouces", "IN"), ("Length", "'", "FT"), ("Mass", "lbs", "LB"), ("Mass", "kilo", "KiloGM"),
        ("Angle", "deg", "DEG"), ("Angle", "°", "DEG"), ("Angle", "Grad", "DEG"), ("Angle", "degrés", "DEG"),
        ("Luminance", "nits", "CD-PER-M2"), ("Luminance", "cd/m2", "CD-PER-M2"), ("Time", "Std.", "HR"),
        ("Frequency", "Bilder/s", "FRAME-PER-SEC"), ("ForcePerArea", "kg/m²", "KiloGM_F-PER-M2"),
        ("Force", "kN", "KiloN"), ("Force", "kg", "KiloGM_F"), ("Mass", "kg", "KiloGM"),
        ("ForcePerArea", "psf", "LB_F-PER-FT2"), ("SoundPressureLevel", "dB(A)", "DeciB"),
        ("RelativeHumidity", "% rF", "PERCENT"), ("ApparentPower", "VA", "V-A"),
        ("Illuminance", "foot-candles", "FC"),
    ],
)  # fmt: skip
def test_what_people_write(kind: str, written: str, name: str) -> None:
    found = read_vocabulary().find_unit(written, f"http://qudt.org/vocab/quantitykind/{kind}")
    assert found is not None
    assert found.iri == UNIT + name


def test_a_number_is_turned_by_the_zero_and_the_size_of_its_unit_a_length_by_the_size_alone() -> None:
    """Source: SI Brochure, 9th edition, 2.3.1: t/°C = T/K − 273.15, and a difference is the same in both."""
    celsius = UNITS["DEG_C"]
    assert celsius.in_reference(Fraction(20)) == Fraction("293.15")
    assert celsius.of_reference(Fraction("293.15")) == 20
    assert celsius.length_in_reference(Fraction(5)) == celsius.length_of_reference(Fraction(5)) == 5
    assert UNITS["IN"].length_in_reference(Fraction(2)) == Fraction("0.0508")


def test_the_rule_of_conversion_stands_in_one_place() -> None:
    program = Path(intent.__file__).parent
    by_hand = re.compile(r"[*/] *\w*\.factor\b|[-+] *\w*(?:unit|last)\.offset\b")
    found = [path for path in program.rglob("*.py") if by_hand.search(path.read_text(encoding="utf-8"))]
    assert [path.relative_to(program).as_posix() for path in found] == ["vocabulary/unit_of_measure.py"]
