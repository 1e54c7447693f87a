"""A variance as Turtle: a SHACL validation report, the variance that it sums up, and where both come from.

The report follows W3C SHACL (2017), section 3.6; a departure that an instruction simply allows is a row of
the variance, but no validation result, since a report with results does not conform. Every node has an IRI.
"""

from __future__ import annotations

import base64
from collections.abc import Sequence
from typing import TYPE_CHECKING

from rdflib import DCTERMS, PROV, RDF, RDFS, XSD, Graph, Literal, URIRef
from rdflib.namespace import SH

from intent.language.locale import ENGLISH
from intent.language.message import Words, joined, opened, say, sentence
from intent.model.naming import find_part
from intent.model.phrasing import NOT_GIVEN
from intent.model.subject import SubjectKind
from intent.names import INTENT, TERM, local_iri
from intent.papers.masthead import outcome_sentence
from intent.papers.obstacles_told import obstacle_sentence
from intent.papers.report_evidence import Evidence, EvidenceFile
from intent.papers.report_json import member_names
from intent.papers.turtle_duties import add_duties
from intent.record.canonical import canonical_turtle
from intent.variance.obstacle import Obstacle
from intent.variance.result import (
    VERDICT_WORDS,
    Open,
    Outcome,
    Row,
    SetAside,
    Variance,
    Verdict,
)

if TYPE_CHECKING:
    from intent.analysis.history.precedents import Forerunners

SEVERITIES = {
    Verdict.FORBIDDEN: SH.Violation,
    Verdict.BREACH: SH.Violation,
    Verdict.CONTRADICTION: SH.Warning,
    Verdict.UNKNOWN: SH.Warning,
    Verdict.UNCOVERED: SH.Warning,
    Verdict.CONDITIONAL: SH.Warning,
}
"""The severity of each verdict that makes a validation result."""


def write_turtle(variance: Variance, evidence: Evidence, standings: Sequence[Forerunners] = ()) -> str:
    """The validation report and the variance as one Turtle document."""
    shown_before = {one.key: one for one in standings}
    graph = Graph(bind_namespaces="none")
    base = variance.installation.iri
    report, whole = local_iri(base, "validation-report"), local_iri(base, "variance")
    _add_report(graph, report, whole, variance)
    _add_variance(graph, whole, variance)
    for place, row in enumerate(variance.rows, start=1):
        node = local_iri(base, "variance", f"row-{place}")
        graph.add((whole, INTENT.row, node))
        _add_row(graph, node, row, variance)
        if standing := shown_before.get(row.key):
            _add_standing(graph, node, standing, variance)
        if row.verdict in SEVERITIES:
            result = local_iri(base, "validation-report", f"result-{place}")
            graph.add((report, SH.result, result))
            _add_result(graph, result, node, row, variance)
    for place, obstacle in enumerate(variance.obstacles, start=1):
        result = local_iri(base, "validation-report", f"obstacle-{place}")
        graph.add((report, SH.result, result))
        _add_obstacle(graph, result, obstacle, variance)
    add_duties(graph, whole, variance)
    for node in (report, whole):
        _add_provenance(graph, node, evidence)
    return canonical_turtle(graph)


def _add_report(graph: Graph, report: URIRef, whole: URIRef, variance: Variance) -> None:
    conforms = variance.outcome is Outcome.ACCEPTABLE
    graph.add((report, RDF.type, SH.ValidationReport))
    graph.add((report, SH.conforms, Literal(conforms)))
    graph.add((report, PROV.wasDerivedFrom, whole))


def _add_variance(graph: Graph, whole: URIRef, variance: Variance) -> None:
    graph.add((whole, RDF.type, INTENT.Variance))
    graph.add((whole, RDFS.label, Literal(f"{variance.work.title}: {variance.installation.title}")))
    graph.add((whole, INTENT.ofWork, URIRef(variance.work.iri)))
    graph.add((whole, INTENT.installation, URIRef(variance.installation.iri)))
    graph.add((whole, INTENT.outcome, Literal(variance.outcome.value)))
    graph.add((whole, DCTERMS.description, _text(outcome_sentence(variance))))
    for person in variance.refer_to:
        graph.add((whole, INTENT.referTo, _person(variance, person)))
    for note in variance.notes:
        graph.add((whole, INTENT.note, _text(sentence(note))))


def _add_result(graph: Graph, result: URIRef, node: URIRef, row: Row, variance: Variance) -> None:
    """One departure as a validation result; its focus is the part, group, work or installation."""
    graph.add((result, RDF.type, SH.ValidationResult))
    graph.add((result, SH.focusNode, _subject(variance, row)))
    graph.add((result, SH.resultSeverity, SEVERITIES[row.verdict]))
    graph.add((result, SH.resultMessage, _text(_message(row))))
    graph.add((result, SH.value, _value(row.proposed)))
    graph.add((result, SH.sourceConstraintComponent, _component(row)))
    if row.governing:
        graph.add((result, SH.sourceShape, URIRef(row.governing[0].iri)))
    graph.add((result, PROV.wasDerivedFrom, node))


def _text(words: Words) -> Literal:
    """What is said, in English, as a text of that language."""
    return Literal(ENGLISH.say(words), lang="en")


def _value(words: Words) -> Literal:
    """A value or a name in English, which is data."""
    return Literal(ENGLISH.say(words or NOT_GIVEN))


def _message(row: Row) -> Words:
    told = say(
        "{subject}, {characteristic}: {proposed} (documented: {documented}). {verdict}.",
        subject=row.subject.written,
        characteristic=row.characteristic,
        proposed=row.proposed or NOT_GIVEN,
        documented=row.documented or NOT_GIVEN,
        verdict=opened(VERDICT_WORDS[row.verdict]),
    )
    return joined([told, sentence(row.reason)])


def _component(row: Row) -> URIRef:
    """What kind of constraint the result comes from: that of the instruction, or the documented state."""
    name = row.governing[0].modality.value.capitalize() if row.governing else "Documented"
    return INTENT[f"{name}ConstraintComponent"]


def _add_obstacle(graph: Graph, result: URIRef, obstacle: Obstacle, variance: Variance) -> None:
    """An obstacle as a warning; what is as documented as information, since it counts for nothing."""
    graph.add((result, RDF.type, SH.ValidationResult))
    graph.add((result, SH.focusNode, URIRef(variance.installation.iri)))
    severity = SH.Info if obstacle.is_as_documented else SH.Warning
    graph.add((result, SH.resultSeverity, severity))
    graph.add((result, SH.resultMessage, _text(obstacle_sentence(obstacle))))
    graph.add((result, SH.sourceConstraintComponent, INTENT.VenueConstraintComponent))
    graph.add((result, DCTERMS.identifier, Literal(obstacle.slug)))


def _add_row(graph: Graph, node: URIRef, row: Row, variance: Variance) -> None:
    graph.add((node, RDF.type, INTENT.Row))
    graph.add((node, INTENT.subject, _subject(variance, row)))
    graph.add((node, INTENT.characteristicName, _value(row.characteristic)))
    graph.add((node, INTENT.documented, _value(row.documented)))
    graph.add((node, INTENT.proposed, _value(row.proposed)))
    graph.add((node, INTENT.verdict, Literal(row.verdict.value)))
    graph.add((node, INTENT.ground, TERM[row.ground]))
    if row.term:
        graph.add((node, INTENT.characteristic, URIRef(row.term)))
    if row.reason:
        graph.add((node, DCTERMS.description, _text(sentence(row.reason))))
    if row.days:
        graph.add((node, INTENT.firstDay, Literal(row.days.first)))
        graph.add((node, INTENT.lastDay, Literal(row.days.last)))
    for member in member_names(row.subject):
        part = find_part(variance.work, variance.installation, member)
        graph.add((node, INTENT.member, URIRef(part.iri) if part else Literal(member)))
    for line in row.governing:
        graph.add((node, INTENT.governing, URIRef(line.iri)))
    for person in row.ask:
        graph.add((node, INTENT.ask, _person(variance, person)))
    for line in row.also_against:
        graph.add((node, INTENT.alsoAgainst, URIRef(line.iri)))
    for place, fallen in enumerate(row.set_aside, start=1):
        _add_set_aside(graph, node, URIRef(f"{node}.set-aside-{place}"), fallen, variance)
    for place, item in enumerate(row.open, start=1):
        _add_open(graph, node, URIRef(f"{node}.open-{place}"), item, variance)


def _add_standing(graph: Graph, row: URIRef, standing: Forerunners, variance: Variance) -> None:
    """What was shown before, and how many steps lead to it."""
    for place, one in enumerate(standing.precedents, start=1):
        node = URIRef(f"{row}.precedent-{place}")
        graph.add((row, INTENT.precedent, node))
        graph.add((node, RDF.type, INTENT.Precedent))
        graph.add((node, INTENT.earlierInstallation, URIRef(one.installation.iri)))
        graph.add((node, INTENT.reach, Literal(one.reach.value)))
        graph.add((node, INTENT.valueThen, _value(one.value)))
        if one.verdict:
            graph.add((node, INTENT.verdictThen, Literal(one.verdict.value)))
        for person in one.consents:
            graph.add((node, INTENT.consentedThen, _person(variance, person)))
    if len(standing.steps) > 1:
        graph.add((row, INTENT.steps, Literal(len(standing.steps))))
        if standing.distance:
            graph.add((row, INTENT.distanceInAll, _value(standing.distance)))


def _add_set_aside(graph: Graph, row: URIRef, node: URIRef, fallen: SetAside, variance: Variance) -> None:
    graph.add((row, INTENT.setAside, node))
    graph.add((node, RDF.type, INTENT.SetAside))
    graph.add((node, INTENT.instruction, _instruction(variance, fallen.instruction)))
    known = variance.work.instruction(fallen.by)
    graph.add((node, INTENT.prevailing, URIRef(known.iri) if known else _person(variance, fallen.by)))
    graph.add((node, INTENT.because, Literal(fallen.because.value)))


def _add_open(graph: Graph, row: URIRef, node: URIRef, item: Open, variance: Variance) -> None:
    graph.add((row, INTENT.open, node))
    graph.add((node, RDF.type, INTENT.Open))
    graph.add((node, INTENT.openKind, Literal(item.kind.value)))
    graph.add((node, INTENT.closedBy, Literal(item.answer)))
    if item.text:
        graph.add((node, DCTERMS.description, _value(item.text)))
    if item.person:
        graph.add((node, INTENT.person, _person(variance, item.person)))
    if item.instruction:
        graph.add((node, INTENT.instruction, _instruction(variance, item.instruction)))


def _add_provenance(graph: Graph, node: URIRef, evidence: Evidence) -> None:
    """The files, the program and the date; PROV has no bare date: the day stands for its first moment."""
    agent = local_iri(str(INTENT), "software", evidence.version)
    graph.add((node, RDF.type, PROV.Entity))
    graph.add((node, PROV.wasAttributedTo, agent))
    graph.add((node, PROV.generatedAtTime, Literal(f"{evidence.date}T00:00:00", datatype=XSD.dateTime)))
    graph.add((agent, RDF.type, PROV.SoftwareAgent))
    graph.add((agent, RDFS.label, Literal(f"intent {evidence.version}")))
    for file in evidence.files:
        graph.add((node, PROV.wasDerivedFrom, _file(graph, file)))


def _file(graph: Graph, file: EvidenceFile) -> URIRef:
    """A file, named by its digest (RFC 6920): the same bytes are the same entity wherever they lie."""
    digest = base64.urlsafe_b64encode(bytes.fromhex(file.sha256)).decode().rstrip("=")
    entity = URIRef(f"ni:///sha-256;{digest}")
    graph.add((entity, RDF.type, PROV.Entity))
    graph.add((entity, DCTERMS.title, Literal(file.name)))
    graph.add((entity, INTENT.fileRole, Literal(file.role.value)))
    graph.add((entity, INTENT.sha256, Literal(file.sha256)))
    return entity


def _subject(variance: Variance, row: Row) -> URIRef:
    """The part or group by its own IRI; the installation for its venue, the work for all else."""
    match row.subject.kind:
        case SubjectKind.VENUE:
            return URIRef(variance.installation.iri)
        case SubjectKind.PART:
            part = find_part(variance.work, variance.installation, row.subject.members[0])
            return URIRef(part.iri if part else variance.work.iri)
        case SubjectKind.GROUP:
            group = next((one for one in variance.work.groups if one.name == row.subject.group), None)
            return URIRef(group.iri if group else variance.work.iri)
    return URIRef(variance.work.iri)


def _instruction(variance: Variance, identifier: str) -> URIRef | Literal:
    known = variance.work.instruction(identifier)
    return URIRef(known.iri) if known else Literal(identifier)


def _person(variance: Variance, identifier: str) -> URIRef | Literal:
    known = variance.work.person(identifier)
    return URIRef(known.iri) if known else Literal(identifier)
