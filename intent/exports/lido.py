"""A work and its components as LIDO records, one for the work and one for each component.

Source: ICOM-CIDOC LIDO Working Group, LIDO 1.1 (2021), with the constraints that its schema states; identifiers of
kinds of identifier, title, event and record are those of the LIDO Terminology.
"""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Iterator, Sequence

from rdflib import DCTERMS

from intent.exports.catalogue import Catalogue, Component, catalogue_of
from intent.exports.lido_events import exhibition, manufacture, production
from intent.exports.lido_things import (
    LANG,
    LOCAL,
    TERMINOLOGY,
    URI,
    appellation,
    concept,
    described,
    is_address,
    materials,
    measured,
    quoted_fact,
    rights_type,
    told,
)
from intent.exports.xml_text import XSI, Content, XmlElement, branch, leaf, present, xml_bytes
from intent.model.installation import Installation
from intent.model.work import Work
from intent.names import CRM, INTENT, TERM

NAMESPACE = "http://www.lido-schema.org"
SCHEMA = "http://lido-schema.org/schema/v1.1/lido-v1.1.xsd"
_PREFIXES = {"lido": NAMESPACE, "xsi": XSI}
_UNKNOWN = "not given"
WORK_OF_ART = "http://vocab.getty.edu/aat/300133025"
"""Works of art (Getty Art & Architecture Thesaurus), which Linked Art 1.0 asks for too."""
INSCRIPTIONS, EDITION = str(TERM.inscriptions), str(TERM.edition)


def export_lido(
    work: Work,
    day: datetime.date,
    installation: Installation | None = None,
    shown: Sequence[Installation] = (),
) -> bytes:
    """The records as one document, dated the ``day`` on which it is written.

    What was ``shown``, and the installation where it was carried out, are exhibitions of the work; where it is agreed,
    one that is planned. What is only proposed did not happen, and is no event. The work is one that may leave the
    house. Raises nothing.
    """
    catalogue = catalogue_of(work)
    known = {one.iri: one for one in (*shown, *([installation] if installation else []))}
    records = [_work_record(catalogue, day, tuple(known.values()))]
    records += [_component_record(catalogue, day, component) for component in catalogue.components]
    root = branch("lidoWrap", records, **{f"{{{XSI}}}schemaLocation": f"{NAMESPACE} {SCHEMA}"})
    return xml_bytes(present(root), _PREFIXES, NAMESPACE)


def _work_record(catalogue: Catalogue, day: datetime.date, showings: Sequence[Installation]) -> XmlElement:
    work = catalogue.work
    return _record(
        catalogue,
        day,
        work.iri,
        ("Human-Made Thing", str(CRM["E71_Human-Made_Thing"])),
        (
            branch(
                "objectClassificationWrap",
                branch("objectWorkTypeWrap", concept("objectWorkType", {"en": "work of art"}, WORK_OF_ART)),
            ),
            _identification(
                catalogue,
                work.title,
                catalogue.number,
                (*described(work.note), *quoted_fact(catalogue.facts), *told(work, work.instructions)),
                (
                    branch("objectMeasurementsWrap", measured(catalogue.facts)),
                    branch("objectMaterialsTechWrap", _work_materials(catalogue)),
                ),
            ),
            branch("eventWrap", production(catalogue), (exhibition(one) for one in showings)),
            _related(catalogue.components),
        ),
    )


def _component_record(catalogue: Catalogue, day: datetime.date, component: Component) -> XmlElement:
    part, work = component.part, catalogue.work
    group = concept("classification", {"": part.group}, type="group") if part.group else None
    return _record(
        catalogue,
        day,
        part.iri,
        ("Physical Thing", str(CRM["E18_Physical_Thing"])),
        (
            branch(
                "objectClassificationWrap",
                branch("objectWorkTypeWrap", concept("objectWorkType", part.kind.labels, part.kind.iri)),
                branch("classificationWrap", group),
            ),
            _identification(
                catalogue,
                title=component.title,
                number=part.identifier,
                descriptions=(
                    *described(part.note),
                    *quoted_fact(component.facts),
                    *told(work, component.lines),
                ),
                measures_and_materials=(
                    branch("objectMeasurementsWrap", measured(component.facts)),
                    branch("objectMaterialsTechWrap", materials(component.facts, work.vocabulary)),
                ),
                component=component,
            ),
            branch("eventWrap", manufacture(component)),
            _part_of(work),
        ),
    )


def _record(
    catalogue: Catalogue,
    day: datetime.date,
    iri: str,
    category: tuple[str, str],
    description: Iterable[Content],
) -> XmlElement:
    label, crm_class = category
    language = catalogue.language or "en"
    content = (
        leaf("lidoRecID", iri, type=URI),
        leaf("objectPublishedID", iri, type=URI),
        concept("category", {"en": label}, crm_class),
        branch("descriptiveMetadata", description, **{LANG: language}),
        branch("administrativeMetadata", _administration(catalogue, iri, day), **{LANG: language}),
    )
    return present(branch("lido", content))


def _identification(
    catalogue: Catalogue,
    title: str,
    number: str,
    descriptions: Iterable[XmlElement],
    measures_and_materials: Iterable[Content],
    component: Component | None = None,
) -> Content:
    facts = {fact.characteristic.iri: fact for fact in (component.facts if component else catalogue.facts)}
    owner = appellation("legalBodyName", catalogue.owner)
    inscriptions, edition = facts.get(INSCRIPTIONS), facts.get(EDITION)
    content = (
        branch("titleWrap", appellation("titleSet", title, pref=f"{TERMINOLOGY}lido00169")),
        branch(
            "inscriptionsWrap",
            branch(
                "inscriptions", leaf("inscriptionTranscription", inscriptions.text if inscriptions else "")
            ),
        ),
        branch(
            "repositoryWrap",
            branch(
                "repositorySet",
                None if component else branch("repositoryName", owner),
                leaf("workID", number, type="part" if component else "inventory number"),
                type="current",
            ),
        ),
        branch("displayStateEditionWrap", leaf("displayEdition", edition.text if edition else "")),
        branch("objectDescriptionWrap", descriptions),
        measures_and_materials,
    )
    return branch("objectIdentificationWrap", content)


def _work_materials(catalogue: Catalogue) -> Iterator[XmlElement]:
    medium = catalogue.work.fields.get(str(DCTERMS.medium), "")
    if medium:
        yield present(branch("objectMaterialsTechSet", leaf("displayMaterialsTech", medium)))
    found = (
        one
        for component in catalogue.components
        for one in materials(component.facts, catalogue.work.vocabulary)
    )
    seen: list[XmlElement] = []
    for one in found:
        if one not in seen:
            seen.append(one)
            yield one


def _related(components: Iterable[Component]) -> Content:
    parts = [_relation(one.title, one.part.iri, "has part") for one in components]
    return branch("objectRelationWrap", branch("relatedWorksWrap", parts))


def _part_of(work: Work) -> Content:
    return branch(
        "objectRelationWrap", branch("relatedWorksWrap", _relation(work.title, work.iri, "is part of"))
    )


def _relation(title: str, iri: str, relation: str) -> XmlElement:
    thing = branch("object", leaf("objectID", iri, type=URI), appellation("objectName", title))
    return present(
        branch(
            "relatedWorkSet",
            branch("relatedWork", leaf("displayObject", title), thing),
            concept("relatedWorkRelType", {"en": relation}),
        )
    )


def _administration(catalogue: Catalogue, iri: str, day: datetime.date) -> Iterator[Content]:
    work = catalogue.work
    is_work = iri == work.iri
    yield branch("rightsWorkWrap", _rights_in_work(work)) if is_work else None
    label = {"en": "Item-level record" if is_work else "Component record"}
    record = (
        leaf("recordID", iri.removeprefix(work.iri).lstrip("#/.") or iri, type=LOCAL),
        concept("recordType", label, f"{TERMINOLOGY}lido00141" if is_work else ""),
        branch("recordSource", appellation("legalBodyName", catalogue.owner or _UNKNOWN)),
        branch("recordRights", rights_type(work.fields.get(str(INTENT.recordLicence), ""))),
        branch("recordInfoSet", leaf("recordMetadataDate", day.isoformat(), type="created")),
    )
    yield branch("recordWrap", record)
    yield branch("resourceWrap", _resources(work)) if is_work else None


def _rights_in_work(work: Work) -> Content:
    """What is known of the rights in the work, who holds them, who need not be the owner, and the credit line."""
    holder = appellation("legalBodyName", work.fields.get(str(DCTERMS.rightsHolder), ""))
    return branch(
        "rightsWorkSet",
        rights_type(work.fields.get(str(DCTERMS.rights), "")),
        branch("rightsHolder", holder),
        leaf("creditLine", work.fields.get(str(DCTERMS.bibliographicCitation), "")),
    )


def _resources(work: Work) -> Iterator[XmlElement]:
    """The files of material and of sources that anybody can reach.

    A link that leads nowhere is no resource: what lies in the house, or travels beside this record, is left out.
    """
    for one in work.material:
        yield from _resource(one.identifier, one.file, one.name or one.identifier, "material of the work")
    for source in work.sources:
        yield from _resource(source.identifier, source.file, source.title, "documentation")


def _resource(identifier: str, file: str | None, title: str, relation: str) -> Iterator[XmlElement]:
    if file and is_address(file):
        yield present(
            branch(
                "resourceSet",
                leaf("resourceID", identifier, type=LOCAL),
                branch("resourceRepresentation", leaf("linkResource", file)),
                concept("resourceRelType", {"en": relation}),
                leaf("resourceDescription", title),
            )
        )
