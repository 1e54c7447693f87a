"""A work and its components as LIDO records, one for the work and one for each component.

Source: ICOM-CIDOC LIDO Working Group, LIDO 1.1 (2021), with the constraints that its schema states; identifiers of
kinds of identifier, title, event and record are those of the LIDO Terminology.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

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
    materials,
    measured,
    present,
    quoted_fact,
    told,
)
from intent.exports.xml_text import XSI, Content, Element, holding, saying, written
from intent.model.installation import Installation
from intent.model.work import Work
from intent.names import CRM, TERM

NAMESPACE = "http://www.lido-schema.org"
SCHEMA = "http://lido-schema.org/schema/v1.1/lido-v1.1.xsd"
_PREFIXES = {"lido": NAMESPACE, "xsi": XSI}
_UNKNOWN = "not given"
INSCRIPTIONS, EDITION = str(TERM.inscriptions), str(TERM.edition)


def export_lido(work: Work, installation: Installation | None = None) -> bytes:
    """The records as one document; an installation is told of as an exhibition of the work.

    The work is one that may leave the house. Raises nothing.
    """
    catalogue = catalogue_of(work)
    records = [_work_record(catalogue, installation)]
    records += [_component_record(catalogue, component) for component in catalogue.components]
    root = holding("lidoWrap", records, **{f"{{{XSI}}}schemaLocation": f"{NAMESPACE} {SCHEMA}"})
    assert root is not None
    return written(root, _PREFIXES, NAMESPACE)


def _work_record(catalogue: Catalogue, installation: Installation | None) -> Element:
    work = catalogue.work
    return _record(
        catalogue,
        work.iri,
        ("Human-Made Thing", str(CRM["E71_Human-Made_Thing"])),
        (
            holding(
                "objectClassificationWrap",
                holding("objectWorkTypeWrap", concept("objectWorkType", {"en": "work of art"})),
            ),
            _identification(
                catalogue,
                work.title,
                catalogue.number,
                (*described(work.note), *quoted_fact(catalogue.facts), *told(work, work.instructions)),
                (
                    holding("objectMeasurementsWrap", measured(catalogue.facts)),
                    holding("objectMaterialsTechWrap", _work_materials(catalogue)),
                ),
            ),
            holding("eventWrap", production(catalogue), exhibition(installation)),
            _related(catalogue.components),
        ),
    )


def _component_record(catalogue: Catalogue, component: Component) -> Element:
    part, work = component.part, catalogue.work
    group = concept("classification", {"": part.group}, type="group") if part.group else None
    return _record(
        catalogue,
        part.iri,
        ("Physical Thing", str(CRM["E18_Physical_Thing"])),
        (
            holding(
                "objectClassificationWrap",
                holding("objectWorkTypeWrap", concept("objectWorkType", part.kind.labels, part.kind.iri)),
                holding("classificationWrap", group),
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
                    holding("objectMeasurementsWrap", measured(component.facts)),
                    holding("objectMaterialsTechWrap", materials(component.facts, work.vocabulary)),
                ),
                component=component,
            ),
            holding("eventWrap", manufacture(component)),
            _part_of(work),
        ),
    )


def _record(
    catalogue: Catalogue, iri: str, category: tuple[str, str], description: Iterable[Content]
) -> Element:
    label, crm_class = category
    language = catalogue.language or "en"
    return present(
        holding(
            "lido",
            saying("lidoRecID", iri, type=URI),
            saying("objectPublishedID", iri, type=URI),
            concept("category", {"en": label}, crm_class),
            holding("descriptiveMetadata", *description, **{LANG: language}),
            holding("administrativeMetadata", *_administration(catalogue, iri), **{LANG: language}),
        )
    )


def _identification(
    catalogue: Catalogue,
    title: str,
    number: str,
    descriptions: Iterable[Element],
    measures_and_materials: Iterable[Content],
    component: Component | None = None,
) -> Content:
    facts = {fact.characteristic.iri: fact for fact in (component.facts if component else catalogue.facts)}
    owner = appellation("legalBodyName", catalogue.owner)
    inscriptions, edition = facts.get(INSCRIPTIONS), facts.get(EDITION)
    return holding(
        "objectIdentificationWrap",
        holding("titleWrap", appellation("titleSet", title, pref=f"{TERMINOLOGY}lido00169")),
        holding(
            "inscriptionsWrap",
            holding(
                "inscriptions", saying("inscriptionTranscription", inscriptions.words if inscriptions else "")
            ),
        ),
        holding(
            "repositoryWrap",
            holding(
                "repositorySet",
                None if component else holding("repositoryName", owner),
                saying("workID", number, type="part" if component else "inventory number"),
                type="current",
            ),
        ),
        holding("displayStateEditionWrap", saying("displayEdition", edition.words if edition else "")),
        holding("objectDescriptionWrap", descriptions),
        *measures_and_materials,
    )


def _work_materials(catalogue: Catalogue) -> Iterator[Element]:
    medium = catalogue.work.fields.get(str(DCTERMS.medium), "")
    if medium:
        yield present(holding("objectMaterialsTechSet", saying("displayMaterialsTech", medium)))
    found = (
        one
        for component in catalogue.components
        for one in materials(component.facts, catalogue.work.vocabulary)
    )
    seen: list[Element] = []
    for one in found:
        if one not in seen:
            seen.append(one)
            yield one


def _related(components: Iterable[Component]) -> Content:
    parts = [_relation(one.title, one.part.iri, "has part") for one in components]
    return holding("objectRelationWrap", holding("relatedWorksWrap", parts))


def _part_of(work: Work) -> Content:
    return holding(
        "objectRelationWrap", holding("relatedWorksWrap", _relation(work.title, work.iri, "is part of"))
    )


def _relation(title: str, iri: str, relation: str) -> Element:
    thing = holding("object", saying("objectID", iri, type=URI), appellation("objectName", title))
    return present(
        holding(
            "relatedWorkSet",
            holding("relatedWork", saying("displayObject", title), thing),
            concept("relatedWorkRelType", {"en": relation}),
        )
    )


def _administration(catalogue: Catalogue, iri: str) -> Iterator[Content]:
    work = catalogue.work
    is_work = iri == work.iri
    credit = saying("creditLine", work.fields.get(str(DCTERMS.bibliographicCitation), ""))
    yield holding("rightsWorkWrap", holding("rightsWorkSet", credit)) if is_work else None
    label = {"en": "Item-level record" if is_work else "Component record"}
    yield holding(
        "recordWrap",
        saying("recordID", iri.removeprefix(work.iri).lstrip("#/.") or iri, type=LOCAL),
        concept("recordType", label, f"{TERMINOLOGY}lido00141" if is_work else ""),
        holding("recordSource", appellation("legalBodyName", catalogue.owner or _UNKNOWN)),
    )
    yield holding("resourceWrap", _resources(work)) if is_work else None


def _resources(work: Work) -> Iterator[Element]:
    """The files of material and of sources, as the record names them."""
    for one in work.material:
        yield from _resource(one.identifier, one.file, one.name or one.identifier, "material of the work")
    for source in work.sources:
        yield from _resource(source.identifier, source.file, source.title, "documentation")


def _resource(identifier: str, file: str | None, title: str, relation: str) -> Iterator[Element]:
    if file:
        yield present(
            holding(
                "resourceSet",
                saying("resourceID", identifier, type=LOCAL),
                holding("resourceRepresentation", saying("linkResource", file)),
                concept("resourceRelType", {"en": relation}),
                saying("resourceDescription", title),
            )
        )
