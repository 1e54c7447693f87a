"""One unit, named value or characteristic of the vocabulary, from what the Turtle says of it."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

import pyoxigraph as ox

from intent.vocabulary.properties import (
    INTENT,
    QUDT,
    SKOS,
    Properties,
    fraction_of,
    is_true,
    labels_of,
    pairs_of,
    texts_of,
    value_of,
    values_of,
)
from intent.vocabulary.reach import reach_of
from intent.vocabulary.terms import Characteristic, Concept
from intent.vocabulary.unit_of_measure import Unit

_MARKS = ("carriesFurther", "delaysNothing", "knownToWork", "knownNotToWork")


def unit_of(iri: str, about: Properties) -> Unit:
    """A unit, whose factor and offset are exact."""
    symbol = value_of(about, QUDT + "symbol") or ""
    _, names = labels_of(about)
    exact = (symbol, *values_of(about, SKOS + "altLabel"))
    return Unit(
        iri=iri,
        symbol=symbol,
        names=tuple(dict.fromkeys([*exact, *names])),
        quantity_kinds=frozenset(values_of(about, QUDT + "hasQuantityKind")),
        factor=Fraction(value_of(about, INTENT + "factor") or "1"),
        offset=Fraction(value_of(about, INTENT + "offset") or "0"),
    )


def _magnitude(about: Properties, units: Mapping[str, Unit]) -> Fraction | None:
    number = fraction_of(about, QUDT + "numericValue")
    unit = units.get(value_of(about, QUDT + "hasUnit") or "")
    return number if number is None or unit is None else unit.in_reference(number)


def _tolerance(about: Properties, units: Mapping[str, Unit]) -> Fraction | None:
    number = fraction_of(about, INTENT + "tolerance")
    unit = units.get(value_of(about, INTENT + "toleranceUnit") or "")
    return number if number is None or unit is None else unit.length_in_reference(number)


def concept_of(
    iri: str,
    subjects: Mapping[str, Properties],
    units: Mapping[str, Unit],
    broader: Mapping[str, tuple[str, ...]],
) -> Concept:
    """A named value; some of what is said of it is what is said of the nearest that is broader."""
    about = subjects[iri]
    labels, names = labels_of(about)
    line = ancestry(iri, broader)
    applies = next(
        (found for step in line if (found := values_of(subjects.get(step, {}), INTENT + "appliesTo"))), ()
    )
    cautions = dict.fromkeys(
        caution for step in line for caution in values_of(subjects.get(step, {}), INTENT + "caution")
    )
    shows = (value_of(subjects.get(step, {}), INTENT + "showsPictures") for step in line)
    starts = filter(None, (value_of(subjects.get(step, {}), INTENT + "startPlace") for step in line))
    texts = texts_of(about, SKOS + "definition")
    rank = value_of(about, INTENT + "authority")
    return Concept(
        iri=iri,
        labels=labels,
        names=names,
        schemes=frozenset(values_of(about, SKOS + "inScheme")),
        broader=broader.get(iri, ()),
        definition=texts.get("en", ""),
        applies_to=frozenset(applies),
        magnitude=_magnitude(about, units),
        authority=None if rank is None else int(rank),
        stands_alone=is_true(about, INTENT + "standsAlone"),
        only_under_power=is_true(about, INTENT + "onlyUnderPower"),
        only_gathers=is_true(about, INTENT + "onlyGathers"),
        shows_as_well=frozenset(values_of(about, INTENT + "showsAsWell")),
        goes_into=frozenset(values_of(about, INTENT + "goesInto")),
        gives_no_earth=is_true(about, INTENT + "givesNoEarth"),
        shows_pictures=next(filter(None, shows), ""),
        chromaticities=pairs_of(about, INTENT + "chromaticities"),
        meant_for=values_of(about, INTENT + "meantFor"),
        reach=reach_of(about),
        marks=frozenset(
            mark for mark in _MARKS if any(is_true(subjects.get(step, {}), INTENT + mark) for step in line)
        ),
        cautions=tuple(cautions),
        gravity=int(value_of(about, INTENT + "gravity") or 0),
        start_place=next(map(int, starts), None),
        gives_status=value_of(about, INTENT + "givesStatus"),
        ends=values_of(about, INTENT + "ends"),
        tells=value_of(about, INTENT + "tells"),
        texts=texts,
    )


def ancestry(iri: str, broader: Mapping[str, tuple[str, ...]]) -> tuple[str, ...]:
    """The concept and all above it, the nearest first."""
    line = [iri]
    for step in line:
        line.extend(wider for wider in broader.get(step, ()) if wider not in line)
    return tuple(line)


def characteristic_of(iri: str, about: Properties, units: Mapping[str, Unit]) -> Characteristic:
    """A characteristic, with its tolerance in reference units and as a person would say it."""
    labels, names = labels_of(about)
    return Characteristic(
        iri=iri,
        labels=labels,
        names=names,
        definition=next(
            (node.value for node in about.get(SKOS + "definition", ()) if isinstance(node, ox.Literal)), ""
        ),
        bearers=frozenset(values_of(about, INTENT + "bearer")),
        space=value_of(about, INTENT + "space") or "text",
        schemes=frozenset(values_of(about, INTENT + "valuesFrom")),
        quantity_kind=value_of(about, QUDT + "hasQuantityKind"),
        assumed_unit=value_of(about, INTENT + "assumedUnit"),
        tolerance=_tolerance(about, units),
        tolerance_percent=fraction_of(about, INTENT + "tolerancePercent"),
        minimum=fraction_of(about, INTENT + "minimum"),
        unasked_of=_unasked_of(about),
        ordinary_value=value_of(about, INTENT + "ordinaryValue"),
        ordinary_number=fraction_of(about, INTENT + "ordinaryNumber"),
        restates=value_of(about, INTENT + "restates"),
        restates_axis=value_of(about, INTENT + "restatesAxis") or "",
        never_above=value_of(about, INTENT + "neverAbove"),
        applies_to=frozenset(values_of(about, INTENT + "appliesTo")),
        seen=int(value_of(about, INTENT + "noticing") or 2),
        undone=int(value_of(about, INTENT + "undoing") or 2),
        tolerance_written=_tolerance_written(about, units),
        sample=value_of(about, INTENT + "sample") or "",
        of_one_device=is_true(about, INTENT + "ofOneDevice"),
        is_computed=is_true(about, INTENT + "computed"),
        concerns=value_of(about, INTENT + "concerns") or "",
        cautions=values_of(about, INTENT + "caution"),
    )


def _unasked_of(about: Properties) -> frozenset[str]:
    """All the bearers that there are, or those that are named."""
    counts = is_true(about, INTENT + "countsUnasked")
    return frozenset(values_of(about, INTENT + ("bearer" if counts else "countsUnaskedOf")))


def _tolerance_written(about: Properties, units: Mapping[str, Unit]) -> str:
    percent, number = value_of(about, INTENT + "tolerancePercent"), value_of(about, INTENT + "tolerance")
    if percent is not None:
        return f"{percent} %"
    unit = units.get(value_of(about, INTENT + "toleranceUnit") or "")
    return f"{number or ''} {unit.symbol if unit else ''}".strip()
