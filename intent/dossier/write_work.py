"""A work as text: what was read comes back, in the writer's order of sections."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping

from intent.dossier.expectations_table import expectations_table
from intent.dossier.own_labels import OwnLabels, own_labels
from intent.dossier.own_words import OwnWords, own_words_of
from intent.dossier.write_tables import connections_table, log_table, tasks_table
from intent.dossier.writing import (
    Cells,
    field_line,
    fields_block,
    kept,
    property_cells,
    quote_block,
    section_label,
    statement_cells,
    table_block,
    text_of,
    yes_no,
)
from intent.model.citation import Citation
from intent.model.duty import Duty
from intent.model.work import Crate, Device, Heading, Instruction, Part, Section, Source, Work
from intent.names import TERM
from intent.vocabulary.grammar import Word
from intent.vocabulary.named_term import local_name

_ORDER = (
    "people-section",
    "parts-section",
    "devices-section",
    "whole-section",
    "material-section",
    "connections-section",
    "boxes-section",
    "log-section",
    "tasks-section",
    "sources-section",
    "instructions-section",
    "expectations-section",
)
"""The order where a graph says nothing of it."""


def write_work(work: Work) -> str:
    """The dossier of a work in Markdown; reading it gives the same graph."""
    labels = own_labels(work)
    head = property_cells(work.fields, "work-head", work.vocabulary)
    blocks = [f"# {work.title}", fields_block(head.items()), work.note]
    for section in _sections(work, labels):
        blocks += [
            f"## {section_label(section.term, work.vocabulary)}",
            *_SECTIONS[local_name(section.term)](work, labels, section),
        ]
    return text_of(blocks)


def _sections(work: Work, labels: OwnLabels) -> Iterator[Section]:
    yield from (section for section in work.sections if local_name(section.term) in _SECTIONS)
    written = {local_name(section.term) for section in work.sections}
    for key in _ORDER:
        empty = Section(iri="", term=str(TERM[key]))
        if key not in written and any(_SECTIONS[key](work, labels, empty)):
            yield empty


def framed(section: Section, body: str) -> list[str]:
    """What a section holds, between its prose."""
    return [
        fields_block([("keep", "internal" if section.internal else "")]),
        section.note,
        body,
        section.afterword,
    ]


def _people(work: Work, labels: OwnLabels, section: Section) -> list[str]:
    rows = [
        {
            "person": person.identifier,
            "name": person.name,
            "role": labels.of(person.role),
            "person or body": labels.of(person.actor),
            "called": person.called,
            "authority": str(person.authority) if person.authority != person.role.authority else "",
            "since": str(person.since or ""),
            "until": str(person.until or ""),
            "successor": person.successor or "",
            "contact": person.contact,
            "contact leaves": yes_no(person.contact_leaves),
            "remark": person.note,
            "keep": kept(person.internal),
        }
        for person in work.people
    ]
    return framed(section, table_block(rows))


def _parts(work: Work, labels: OwnLabels, section: Section) -> list[str]:
    origin = property_cells(section.fields, "parts-section", work.vocabulary).get("origin", "")
    loose = [part_cells(part, labels, None) for part in work.parts if part.group is None]
    blocks = [fields_block([("origin", origin), ("keep", kept(section.internal))]), section.note]
    blocks += [table_block(loose), section.afterword]
    for group in work.groups:
        kind = group.kind.iri if group.kind else None
        rows = [part_cells(part, labels, kind) for part in work.parts if part.group == group.name]
        kind_field = fields_block([("kind", labels.of(group.kind))])
        blocks += [f"### {group.name}", kind_field, group.note, table_block(rows), group.afterword]
    return blocks


def part_cells(part: Part, labels: OwnLabels, group_kind: str | None) -> Cells:
    """A part's row; its kind only where its group's is another."""
    return {
        "part": part.identifier,
        "name": part.name,
        "kind": labels.of(part.kind) if part.kind.iri != group_kind else "",
        "device": part.device or "",
        **statement_cells(part.statements, labels),
        "remark": part.note,
        "keep": kept(part.internal),
    }


def _devices(work: Work, labels: OwnLabels, section: Section) -> list[str]:
    return framed(section, devices_table(work.devices, labels))


def devices_table(devices: Iterable[Device], labels: OwnLabels) -> str:
    """The devices that have a row of their own, of a work or of a pool."""
    return table_block([device_cells(device, labels) for device in devices if device.listed])


def device_cells(device: Device, labels: OwnLabels) -> Cells:
    return {
        "device": device.identifier,
        "like": device.like or "",
        "status": labels.of(device.status),
        **statement_cells(device.statements, labels),
        **property_cells(device.fields, "devices-section", labels.vocabulary),
        "keep": kept(device.internal),
    }


def _whole(work: Work, labels: OwnLabels, section: Section) -> list[str]:
    cells = statement_cells(work.statements, labels)
    return [fields_block([*cells.items(), ("keep", kept(section.internal))]), section.note]


def _sources(work: Work, labels: OwnLabels, section: Section) -> list[str]:
    blocks = [fields_block([("keep", kept(section.internal))]), section.note]
    for source in work.sources:
        blocks += [f"### {source.identifier} {source.title}".rstrip(), _source_fields(work, labels, source)]
        blocks += [quote_block(source.words), source.note]
    return blocks


def _source_fields(work: Work, labels: OwnLabels, source: Source) -> str:
    fields: Mapping[str, str] = {
        "kind": labels.of(source.kind),
        "with": ", ".join(source.spoken_with),
        "by": ", ".join(source.by),
        "reported by": source.reported_by or "",
        **property_cells(source.fields, "sources-section", work.vocabulary),
        "keep": kept(source.internal),
    }
    return fields_block(fields.items())


def _instructions(work: Work, labels: OwnLabels, section: Section) -> list[str]:
    own_words = own_words_of(work)
    blocks = [fields_block([("keep", kept(section.internal))]), section.note]
    for heading in work.headings:
        blocks += [
            f"### {heading.identifier} {heading.title}".rstrip(),
            quote_block(heading.words),
            heading.note,
        ]
        blocks.append(_heading_fields(work, heading, own_words))
    return blocks


def _heading_fields(work: Work, heading: Heading, own_words: OwnWords) -> str:
    own = sorted(
        (line for line in work.lines if line.heading == heading.identifier),
        key=lambda line: int(line.identifier.rpartition(".")[2]),
    )
    said = ["\n".join(filter(None, [_line(line, own_words), _beneath(line.words)])) for line in own]
    shared = fields_block(
        [
            ("by", heading.by),
            ("on", heading.on),
            ("source", ", ".join(map(_citation, heading.sources))),
            ("reason", heading.reason),
            ("ground", "" if heading.ground == "intent" else heading.ground),
            ("withdrawn", heading.withdrawn),
            ("supersedes", ", ".join(heading.supersedes)),
            ("lifted by", _lifted_by(work, heading)),
        ]
    )
    return "\n".join(filter(None, [*said, shared]))


def _line(line: Instruction | Duty, own_words: OwnWords) -> str:
    if isinstance(line, Duty):
        return field_line("duty", own_words.duty(line))
    return field_line(str(line.modality), own_words.sentence(line))


def _beneath(words: str) -> str:
    """A quotation of a line, indented to its text."""
    return "\n".join(f"  {line}" for line in quote_block(words).split("\n")) if words else ""


def _lifted_by(work: Work, heading: Heading) -> str:
    if heading.lifted_by is None:
        return ""
    first, *_ = work.vocabulary.grammars
    return ", ".join(heading.lifted_by) or first.label(Word.NOBODY)


def _citation(citation: Citation) -> str:
    return f"{citation.source} at {citation.at}" if citation.at else citation.source


def _material(work: Work, labels: OwnLabels, section: Section) -> list[str]:
    rows = [
        {
            "material": found.identifier,
            "name": found.name,
            **statement_cells(found.statements, labels),
            "file": found.file or "",
            "remark": found.note,
            "keep": kept(found.internal),
        }
        for found in work.material
    ]
    return framed(section, table_block(rows))


def _connections(work: Work, labels: OwnLabels, section: Section) -> list[str]:
    return framed(section, connections_table(work.connections, labels))


def _boxes(work: Work, labels: OwnLabels, section: Section) -> list[str]:
    return framed(section, table_block([box_cells(box, labels) for box in work.boxes]))


def box_cells(box: Crate, labels: OwnLabels) -> Cells:
    return {
        "box": box.identifier,
        "holds": ", ".join([*box.holds, *(f'"{accessory}"' for accessory in box.accessories)]),
        **statement_cells(box.statements, labels),
        **property_cells(box.fields, "boxes-section", labels.vocabulary),
        "keep": kept(box.internal),
    }


def _log(work: Work, labels: OwnLabels, section: Section) -> list[str]:
    return framed(section, log_table(work.log, labels))


_SECTIONS: Mapping[str, Callable[[Work, OwnLabels, Section], list[str]]] = {
    "people-section": _people,
    "parts-section": _parts,
    "devices-section": _devices,
    "whole-section": _whole,
    "sources-section": _sources,
    "instructions-section": _instructions,
    "material-section": _material,
    "connections-section": _connections,
    "boxes-section": _boxes,
    "log-section": _log,
    "tasks-section": lambda work, labels, section: framed(section, tasks_table(work.tasks)),
    "expectations-section": lambda work, labels, section: framed(
        section, expectations_table(work.expectations, labels)
    ),
    "notes-section": lambda work, labels, section: [section.note],
}
