"""Pieces of a LIDO record: concepts, names, measurements, materials, descriptions.

Source: ICOM-CIDOC LIDO Working Group, LIDO 1.1 (2021): conceptComplexType, appellationComplexType,
objectMeasurementsSetComplexType, materialsTechSetComplexType, descriptiveNoteComplexType.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from intent.exports.catalogue import (
    TECHNOLOGY,
    Fact,
    citations,
    heading_of,
    line_words,
    speaker,
    standing,
)
from intent.exports.xml_text import XML, Element, holding, saying
from intent.model.assertions import Named
from intent.model.phrasing import decimal
from intent.model.work import Instruction, Work
from intent.names import TERM
from intent.vocabulary.terms import Vocabulary

TERMINOLOGY = "http://terminology.lido-schema.org/"
URI, LOCAL = f"{TERMINOLOGY}lido00099", f"{TERMINOLOGY}lido00100"
LANG = f"{{{XML}}}lang"
MADE_FROM = str(TERM["made-from"])
_TECHNIQUES = {TECHNOLOGY: "technique", MADE_FROM: "material"}


def present(element: Element | None) -> Element:
    """An element that is known to hold something."""
    if element is None:
        raise ValueError("an element of the record is empty")
    return element


def concept(name: str, labels: Mapping[str, str], iri: str = "", **attributes: str) -> Element:
    """A concept with its IRI, and its labels by language; a label without one has the key ''."""
    terms = [saying("term", text, **{LANG: tag}) for tag, text in sorted(labels.items())]
    found = [one for one in (saying("conceptID", iri, type=URI), *terms) if one is not None]
    return Element(name, tuple(found), attributes)


def appellation(name: str, text: str, pref: str = "") -> Element | None:
    return holding(name, saying("appellationValue", text, pref=pref))


def measured(facts: Iterable[Fact]) -> Iterator[Element]:
    """Every characteristic that is one number with a unit."""
    for fact in facts:
        measure, known = fact.measure, fact.characteristic
        if measure is None:
            continue
        qualifier = ""
        if measure.least is not None and measure.most is not None:
            qualifier = f"between {decimal(measure.least)} and {decimal(measure.most)} {measure.unit.symbol}"
        found = holding(
            "objectMeasurements",
            Element(
                "measurementsSet",
                (
                    concept("measurementType", known.labels, known.iri),
                    concept("measurementUnit", {"": measure.unit.symbol}, measure.unit.iri),
                    Element("measurementValue", decimal(measure.value)),
                ),
            ),
            saying("qualifierMeasurements", qualifier),
        )
        display = saying("displayObjectMeasurements", f"{known.label}: {fact.words}")
        yield present(holding("objectMeasurementsSet", display, found))


def materials(facts: Iterable[Fact], vocabulary: Vocabulary) -> Iterator[Element]:
    """Technologies as techniques, and what things are made from as materials."""
    for fact in facts:
        sort = _TECHNIQUES.get(fact.characteristic.iri)
        if sort is None:
            continue
        named = [item.concept for item in fact.expression.items if isinstance(item, Named)]
        known = [vocabulary.concepts[iri] for iri in named if iri in vocabulary.concepts]
        terms = [concept("termMaterialsTech", one.labels, one.iri, type=sort) for one in known]
        yield present(
            holding(
                "objectMaterialsTechSet",
                saying("displayMaterialsTech", fact.words),
                holding("materialsTech", terms),
            )
        )


def described(note: str) -> Iterator[Element]:
    """The prose of a thing."""
    if note:
        yield present(
            holding("objectDescriptionSet", saying("descriptiveNoteValue", note), type="description")
        )


def quoted_fact(facts: Iterable[Fact]) -> Iterator[Element]:
    """What is documented and is neither a measurement nor a technique or material."""
    for fact in facts:
        if fact.measure is None and fact.characteristic.iri not in _TECHNIQUES:
            value = saying("descriptiveNoteValue", fact.words, label=fact.characteristic.label)
            yield present(holding("objectDescriptionSet", value, type="characteristic"))


def told(work: Work, lines: Iterable[Instruction]) -> Iterator[Element]:
    """Each instruction, with the words and the reason given for it, who said it and where it is recorded."""
    for line in lines:
        heading = heading_of(work, line)
        by = speaker(work, line)
        yield present(
            holding(
                "objectDescriptionSet",
                saying("descriptiveNoteID", line.identifier, type=LOCAL),
                saying("descriptiveNoteValue", line_words(work, line), label=line.modality.value),
                saying("descriptiveNoteValue", heading.words if heading else "", label="words quoted"),
                saying("descriptiveNoteValue", heading.reason if heading else "", label="reason"),
                [
                    one
                    for name, text in standing(line)
                    if (one := saying("descriptiveNoteValue", text, label=name))
                ],
                saying("sourceDescriptiveNote", by, label="said by"),
                [
                    one
                    for text in citations(work, line)
                    if (one := saying("sourceDescriptiveNote", text, label="source"))
                ],
                type="instruction",
            )
        )
