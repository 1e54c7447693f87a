"""Material and the files of sources as PREMIS objects, with size, digest and format where the record has them.

Source: PREMIS Data Dictionary, version 3.0 (2015): unit 1.5 objectCharacteristics (fixity, size, format).
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from pathlib import PurePosixPath

from intent.exports.catalogue import Fact, facts_of
from intent.exports.premis_things import IRI, identifier, properties, relationship
from intent.exports.xml_text import XSI, XmlElement, branch, leaf, present
from intent.model.assertions import Measured
from intent.model.work import Material, Source, Work
from intent.names import INTENT, TERM, UNIT
from intent.vocabulary.terms import Vocabulary

FILE_SIZE, CHECKSUM, CONTAINER, CODEC = (
    str(TERM[name]) for name in ("file-size", "checksum", "container", "codec")
)
_DIGEST = re.compile(
    r"(?P<method>MD5|SHA-?(?:1|224|256|384|512))\b[\s:=]*(?P<digest>[0-9a-f]{32,128})$", re.IGNORECASE
)
_TOLD_ELSEWHERE = {FILE_SIZE, CHECKSUM}


def files_of(work: Work) -> Iterator[XmlElement]:
    """Every material, as a file where it has one, and every source's file."""
    for material in work.material:
        yield _material(work, material)
    for source in work.sources:
        if source.file:
            yield _source(work, source, source.file)


def _material(work: Work, material: Material) -> XmlElement:
    facts = facts_of(material.statements, work.vocabulary)
    known = {fact.characteristic.iri: fact for fact in facts}
    shown = [fact for fact in facts if not material.file or fact.characteristic.iri not in _TOLD_ELSEWHERE]
    names = [known[iri].text for iri in (CONTAINER, CODEC) if iri in known]
    content = (
        identifier("object", material.iri, IRI),
        identifier("object", material.identifier, "material"),
        properties((fact.characteristic.label, fact.text) for fact in shown),
        _characteristics(
            material.file, names, _checksum(known.values()), _size(known.values(), work.vocabulary)
        ),
        leaf("originalName", material.file or material.name),
        relationship("structural", "is part of", [work.iri]),
    )
    kind = "premis:file" if material.file else "premis:representation"
    return present(branch("object", content, **{f"{{{XSI}}}type": kind}))


def _source(work: Work, source: Source, file: str) -> XmlElement:
    digest = source.fields.get(str(INTENT.sha256), "")
    content = (
        identifier("object", source.iri, IRI),
        identifier("object", source.identifier, "source"),
        properties([("title", source.title)]),
        _characteristics(file, [], ("SHA-256", digest) if digest else None, ""),
        leaf("originalName", file),
        relationship("reference", "documents", [work.iri]),
    )
    return present(branch("object", content, **{f"{{{XSI}}}type": "premis:file"}))


def _characteristics(
    file: str | None, names: Iterable[str], digest: tuple[str, str] | None, size: str
) -> XmlElement | None:
    """Only files have these; a format is wanted, and where the record names none it is what the name ends in."""
    if not file:
        return None
    method, value = digest or ("", "")
    fixity = branch("fixity", leaf("messageDigestAlgorithm", method), leaf("messageDigest", value))
    name = ", ".join(names) or PurePosixPath(file).suffix.lstrip(".").lower() or "unknown"
    note = "" if names else "told from the name of the file"
    return branch(
        "objectCharacteristics",
        fixity,
        leaf("size", size),
        branch(
            "format",
            branch("formatDesignation", leaf("formatName", name)),
            leaf("formatNote", note),
        ),
    )


def _checksum(facts: Iterable[Fact]) -> tuple[str, str] | None:
    """The method and the digest, where the text of the record is just these two."""
    for fact in facts:
        match = _DIGEST.match(fact.text.strip()) if fact.characteristic.iri == CHECKSUM else None
        if match:
            method = match["method"].upper()
            return (re.sub(r"^SHA-?", "SHA-", method), match["digest"].lower())
    return None


def _size(facts: Iterable[Fact], vocabulary: Vocabulary) -> str:
    """The size in bytes, where it is one whole number of them."""
    byte = vocabulary.units.get(str(UNIT.BYTE))
    for fact in facts:
        items = fact.expression.items
        if fact.characteristic.iri == FILE_SIZE and fact.measure and byte and isinstance(items[0], Measured):
            size = byte.of_reference(items[0].numbers[0])
            return str(size.numerator) if size.denominator == 1 else ""
    return ""
