"""The sections of a text by the terms that they are, and each section's own place and prose."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from rdflib import RDF, Literal, URIRef

from intent.diagnostics import nearest, offered
from intent.dossier.blocks import Field, TextSection
from intent.dossier.draft import Draft
from intent.dossier.fields import Desk
from intent.dossier.rows import SectionForm, form_of, inscribe_cells, read_fields
from intent.dossier.tables import Table
from intent.dossier.words import Known
from intent.language.message import Words, say
from intent.names import INTENT, TERM
from intent.vocabulary.form_terms import FormField, FormSection
from intent.vocabulary.named_term import local_name
from intent.vocabulary.phrases import normal
from intent.vocabulary.terms import Vocabulary

_ENTRIES = {"groups": say("a group"), "entries": say("a source"), "instructions": say("an instruction")}
"""What stands under headings of its own in a section, by what the section holds."""


@dataclass(frozen=True, slots=True)
class PlacedSection:
    """A section of the text with the term that it is."""

    form: SectionForm
    section: TextSection

    @property
    def key(self) -> str:
        return local_name(self.form.section.iri)

    @property
    def tables(self) -> tuple[Table, ...]:
        """The tables that are read; in a section of prose they are prose."""
        return () if self.form.section.holds == "prose" else self.section.tables


def head_form(vocabulary: Vocabulary, key: str) -> SectionForm:
    return form_of(vocabulary.sections[str(TERM[key])], vocabulary)


def place_sections(draft: Draft, root: TextSection, document: str) -> list[PlacedSection]:
    """The sections of a document by their terms; unknown and repeated ones are found."""
    known = [form for form in draft.vocabulary.sections.values() if document in form.documents and form.names]
    placed: list[PlacedSection] = []
    for section in root.sections:
        form = next((form for form in known if normal(section.title) in form.names), None)
        if form is None:
            draft.wrong("unknown-section", _unknown(draft, known, section), section.span)
        elif any(form == earlier.form.section for earlier in placed):
            message = say("there is a second section `{title}`", title=section.title)
            draft.wrong("repeated-section", message, section.span)
        else:
            placed.append(PlacedSection(form_of(form, draft.vocabulary), section))
    return placed


def _unknown(draft: Draft, known: Sequence[FormSection], section: TextSection) -> Words:
    """Says of a heading that is no section what it is instead, if that can be seen from what stands under it."""
    under = next((form for form in known if _reads_like(form_of(form, draft.vocabulary), section)), None)
    if under is not None:
        return say(
            "{what} has three #, under `## {section}`: `### {title}`",
            what=_ENTRIES[under.holds],
            section=under,
            title=section.title,
        )
    names = draft.vocabulary.spelled(form.iri for form in known)
    message = say("`{title}` is not a section of this text", title=section.title)
    return offered(message, nearest(section.title, names, [form.label for form in known]))


def _reads_like(form: SectionForm, section: TextSection) -> bool:
    """Whether a heading has the fields and columns of a group, a source or an instruction."""
    if form.section.holds not in _ENTRIES:
        return False
    names = {normal(field.name) for field in section.fields}
    if form.section.holds == "instructions":
        return any(map(form.begins_line, names))
    names |= {normal(cell.text) for table in section.tables for cell in table.header}
    own = {name for name in names if name in form.fields}
    return len(own) >= 2 or (bool(own) and len(own) == len(names))


def inscribe_section(draft: Draft, one: PlacedSection) -> None:
    """The section itself: its place in the writer's order, and its prose."""
    node = draft.node(one.key, span=one.section.span)
    draft.add(URIRef(draft.base), INTENT.section, node)
    draft.add(node, RDF.type, INTENT.Section)
    draft.add(node, INTENT.sectionTerm, URIRef(one.form.section.iri))
    draft.add(node, INTENT.order, Literal(draft.next_order("section")))
    if one.form.section.holds in {"table", "groups"}:
        draft.say(node, INTENT.note, one.section.note)
        draft.say(node, INTENT.afterword, one.section.afterword)
    elif one.form.section.holds == "prose":
        draft.say(node, INTENT.note, one.section.verbatim)
    elif one.form.section.holds != "list":
        draft.say(node, INTENT.note, one.section.everything)
    if one.section.sections and one.form.section.holds in {"fields", "table", "list", "prose"}:
        for inner in one.section.sections:
            known = [form for form in draft.vocabulary.sections.values() if "work" in form.documents]
            message = say("`{title}` has no sections of its own", title=one.section.title)
            if any(_reads_like(form_of(form, draft.vocabulary), inner) for form in known):
                message = say("{fault}; {hint}", fault=message, hint=_unknown(draft, known, inner))
            draft.wrong("unknown-section", message, inner.span)


def inscribe_fields(desk: Desk, known: Known, one: PlacedSection) -> None:
    """The fields of a section that are about the section itself, such as whether it is kept in the house."""
    fields = one.section.fields
    if one.form.section.holds in {"entries", "instructions"}:
        fields = tuple(field for field in fields if _is_of_section(desk, one, field))
    cells = read_fields(desk, one.form, fields)
    inscribe_cells(desk, known, desk.draft.node(one.key), (one.key,), cells)


def _is_of_section(desk: Desk, one: PlacedSection, field: Field) -> bool:
    """Whether a field above the first heading is the section's own; what belongs under a heading is found."""
    term = one.form.find(field.name)
    is_entrys = isinstance(term, FormField) and term.property != str(INTENT.keep)
    if is_entrys:
        message = say(
            "`{name}` belongs under a heading of its own, `### …`; here it is said of none", name=field.name
        )
        desk.draft.wrong("no-heading", message, field.span)
    return not is_entrys
