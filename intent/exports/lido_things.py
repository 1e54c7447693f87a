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
    line_text,
    property_words,
    speaker,
    standing,
)
from intent.exports.xml_text import XML, XmlElement, branch, leaf, present
from intent.language.figures import decimal
from intent.model.assertions import Named
from intent.model.work import Instruction, Work
from intent.names import TERM
from intent.vocabulary.terms import Vocabulary

TERMINOLOGY = "http://terminology.lido-schema.org/"
URI, LOCAL = f"{TERMINOLOGY}lido00099", f"{TERMINOLOGY}lido00100"
LANG = f"{{{XML}}}lang"
MATERIAL = str(TERM["constituent-material"])
_TECHNIQUES = {TECHNOLOGY: "technique", MATERIAL: "material"}


def concept(name: str, labels: Mapping[str, str], iri: str = "", **attributes: str) -> XmlElement:
    """A concept with its IRI, and its labels by language; a label without one has the key ''."""
    terms = [leaf("term", text, **{LANG: tag}) for tag, text in sorted(labels.items())]
    found = [one for one in (leaf("conceptID", iri, type=URI), *terms) if one is not None]
    return XmlElement(name, tuple(found), attributes)


def appellation(name: str, text: str, pref: str = "") -> XmlElement | None:
    return branch(name, leaf("appellationValue", text, pref=pref))


def is_address(text: str) -> bool:
    """Whether a text is the address of something on the web, which anybody can reach."""
    return text.startswith(("https://", "http://"))


def rights_type(text: str) -> XmlElement | None:
    """What is said of rights, in words or as the address of a licence."""
    if not text:
        return None
    return concept("rightsType", {}, text) if is_address(text) else concept("rightsType", {"": text})


def measured(facts: Iterable[Fact]) -> Iterator[XmlElement]:
    """Every characteristic that is one number with a unit."""
    for fact in facts:
        measure, known = fact.measure, fact.characteristic
        if measure is None:
            continue
        qualifier = ""
        if measure.least is not None and measure.most is not None:
            qualifier = f"between {decimal(measure.least)} and {decimal(measure.most)} {measure.unit.symbol}"
        found = branch(
            "objectMeasurements",
            XmlElement(
                "measurementsSet",
                (
                    concept("measurementType", known.labels, known.iri),
                    concept("measurementUnit", {"": measure.unit.symbol}, measure.unit.iri),
                    XmlElement("measurementValue", decimal(measure.value)),
                ),
            ),
            leaf("qualifierMeasurements", qualifier),
        )
        display = leaf("displayObjectMeasurements", f"{known.label}: {fact.text}")
        yield present(branch("objectMeasurementsSet", display, found))


def materials(facts: Iterable[Fact], vocabulary: Vocabulary) -> Iterator[XmlElement]:
    """Technologies as techniques, and what things are made from as materials."""
    for fact in facts:
        sort = _TECHNIQUES.get(fact.characteristic.iri)
        if sort is None:
            continue
        named = [item.concept for item in fact.expression.items if isinstance(item, Named)]
        known = [vocabulary.concepts[iri] for iri in named if iri in vocabulary.concepts]
        terms = [concept("termMaterialsTech", one.labels, one.iri, type=sort) for one in known]
        yield present(
            branch(
                "objectMaterialsTechSet",
                leaf("displayMaterialsTech", fact.text),
                branch("materialsTech", terms),
            )
        )


def described(note: str) -> Iterator[XmlElement]:
    """The prose of a thing."""
    if note:
        yield present(branch("objectDescriptionSet", leaf("descriptiveNoteValue", note), type="description"))


def quoted_fact(facts: Iterable[Fact]) -> Iterator[XmlElement]:
    """What is documented and is neither a measurement nor a technique or material."""
    for fact in facts:
        if fact.measure is None and fact.characteristic.iri not in _TECHNIQUES:
            value = leaf("descriptiveNoteValue", fact.text, label=fact.characteristic.label)
            yield present(branch("objectDescriptionSet", value, type="characteristic"))


def told(work: Work, lines: Iterable[Instruction]) -> Iterator[XmlElement]:
    """Each instruction, with the words and the reason given for it, who said it and where it is recorded."""
    for line in lines:
        heading = heading_of(work, line)
        by = speaker(work, line)
        content = (
            leaf("descriptiveNoteID", line.identifier, type=LOCAL),
            leaf("descriptiveNoteValue", line_text(work, line), label=line.modality.value),
            leaf("descriptiveNoteValue", heading.reason if heading else "", label="reason"),
            (leaf("descriptiveNoteValue", text, label=property_words(name)) for name, text in standing(line)),
            leaf("sourceDescriptiveNote", heading.words if heading else "", label="words quoted"),
            leaf("sourceDescriptiveNote", line.words, label="words quoted"),
            leaf("sourceDescriptiveNote", by, label="said by"),
            (leaf("sourceDescriptiveNote", text, label="source") for text in citations(work, line)),
        )
        yield present(branch("objectDescriptionSet", content, type="instruction"))
