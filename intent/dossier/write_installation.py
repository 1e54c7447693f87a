"""An installation as text."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping

from intent.dossier.own_labels import OwnLabels, own_labels
from intent.dossier.write_tables import connections_table, log_table
from intent.dossier.write_work import box_cells, devices_table, framed, part_cells
from intent.dossier.writing import (
    fields_block,
    property_cells,
    section_label,
    statement_cells,
    table_block,
    text_of,
    yes_no,
)
from intent.model.installation import Installation
from intent.model.work import Device, Section, Work
from intent.names import TERM
from intent.vocabulary.named_term import local_name
from intent.vocabulary.terms import Vocabulary

_Body = Callable[[Installation, OwnLabels], str]


def write_installation(installation: Installation, work: Work) -> str:
    """An installation in Markdown; reading it beside its work gives the same graph."""
    labels = own_labels(work)
    head = property_cells(installation.fields, "installation-head", work.vocabulary)
    status = labels.of(installation.status)
    blocks = [
        f"# {installation.title}",
        fields_block([*head.items(), ("status", status), ("by", installation.by)]),
        installation.note,
    ]
    for section in _sections(installation, labels):
        body = _SECTIONS[local_name(section.term)](installation, labels)
        blocks += [
            f"## {section_label(section.term, work.vocabulary)}",
            *framed(section, body),
        ]
    return text_of(blocks)


def write_pool(title: str, devices: Iterable[Device], vocabulary: Vocabulary) -> str:
    """A pool of devices in Markdown; its title is part of the names that its devices have in a graph."""
    heading = f"## {section_label(str(TERM['devices-section']), vocabulary)}"
    return text_of([f"# {title}", heading, devices_table(devices, OwnLabels(vocabulary))])


def _sections(installation: Installation, labels: OwnLabels) -> Iterator[Section]:
    yield from (section for section in installation.sections if local_name(section.term) in _SECTIONS)
    written = {local_name(section.term) for section in installation.sections}
    for key, body in _SECTIONS.items():
        if key not in written and body(installation, labels):
            yield Section(iri="", term=str(TERM[key]))


def _venue(installation: Installation, labels: OwnLabels) -> str:
    return fields_block(statement_cells(installation.venue_statements, labels).items())


def _whole(installation: Installation, labels: OwnLabels) -> str:
    return fields_block(statement_cells(installation.work_statements, labels).items())


def _substitutions(installation: Installation, labels: OwnLabels) -> str:
    return table_block(
        [
            {
                "part": found.part,
                "device": found.device or "",
                **statement_cells(found.statements, labels),
                "remark": found.note,
            }
            for found in installation.substitutions
        ]
    )


def _changes(installation: Installation, labels: OwnLabels) -> str:
    return table_block(
        [
            {"part": found.part, **statement_cells(found.statements, labels), "remark": found.note}
            for found in installation.changes
        ]
    )


def _omissions(installation: Installation, labels: OwnLabels) -> str:
    return "\n".join(f"- {found.part}: {found.reason}".rstrip() for found in installation.omissions)


def _additions(installation: Installation, labels: OwnLabels) -> str:
    return table_block(
        [{**part_cells(part, labels, None), "group": part.group or ""} for part in installation.additions]
    )


def _consents(installation: Installation, labels: OwnLabels) -> str:
    return table_block(
        [
            {
                "person": consent.person,
                "to": ", ".join(consent.to),
                "answer": yes_no(consent.answer),
                "for": ", ".join(consent.parts),
                "value": labels.cell(consent.value) if consent.value else "",
                "terms": ", ".join(f'"{terms}"' for terms in consent.terms),
                "date": str(consent.date or ""),
                "until": str(consent.until or ""),
                "source": consent.source,
                "remark": consent.note,
            }
            for consent in installation.consents
        ]
    )


def _attestations(installation: Installation, labels: OwnLabels) -> str:
    return table_block(
        [
            {
                "fact": found.fact,
                "holds": yes_no(found.holds),
                "by": found.by or "",
                "date": str(found.date or ""),
                "source": found.source,
                "remark": found.note,
            }
            for found in installation.attestations
        ]
    )


_SECTIONS: Mapping[str, _Body] = {
    "venue-section": _venue,
    "whole-section": _whole,
    "substitutions-section": _substitutions,
    "changes-section": _changes,
    "omissions-section": _omissions,
    "additions-section": _additions,
    "consents-section": _consents,
    "attestations-section": _attestations,
    "connections-section": lambda installation, labels: connections_table(installation.connections, labels),
    "boxes-section": lambda installation, labels: table_block(
        [box_cells(box, labels) for box in installation.boxes]
    ),
    "log-section": lambda installation, labels: log_table(installation.log, labels),
    "notes-section": lambda installation, labels: "",
}
