"""Lines that look as if they were to be read, and are only prose: fields, instructions, rows, headings.

Prose is kept, but it instructs nobody; what was meant to be read must never become prose without a word.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator

from intent.diagnostics import Span
from intent.dossier.blocks import Block, Field, Prose, Quote, TextSection
from intent.dossier.comments import without_comments
from intent.dossier.draft import Draft
from intent.dossier.rows import SectionForm
from intent.dossier.sections import PlacedSection
from intent.dossier.tables import Table
from intent.language.message import Words, say
from intent.names import INTENT
from intent.vocabulary.form_terms import FormField
from intent.vocabulary.phrases import normal

_BULLET = r"(?:[-*+•‣▪◦●○·–—−]|\d{1,3}[.)]|[a-z][.)]\s)"
_NAMED = re.compile(rf"\s*(?:{_BULLET}\s*)?(?P<name>[^\s:|][^:|]{{0,60}}?)\s*[:：]")
_ITEM = re.compile(rf"\s*{_BULLET}\s*(?P<name>[^:]+?)\s*(?::.*)?$")
_WITHOUT_COLON = re.compile(rf"\s*{_BULLET}\s*[*_]*(?P<name>\w+)\b")
_HEADING = re.compile(r"\s*(?P<marks>#{2,6})\s*\w")
_BAR = re.compile(r"(?<!\\)\||\S\t+\s*\S")
_CELLS = re.compile(r"\s*[;,\t]\s*|\s{3,}")
_FENCE = ("```", "~~~")

_NESTED = {
    "groups": say("a group's heading has three #"),
    "entries": say("a source's heading has three #"),
    "instructions": say("an instruction's heading has three #"),
}
_ROWS = say(
    "these lines look like rows of a table and are not read as such; put `|` between cells, "
    "a line of dashes under the header, and no empty line inside"
)

Names = Callable[[str], bool]
"""Whether a name may begin a line of a list, as parts do under Omissions."""


def find_lost_lines(
    draft: Draft, root: TextSection, head: SectionForm, placed: Iterable[PlacedSection], listed: Names
) -> None:
    """Find what is lost under the title and in each section; ``listed`` are the names of a list's lines."""
    _find_in(draft, head, root.blocks, listed)
    for one in placed:
        _find_in(draft, one.form, one.section.blocks, listed)
        nested = _NESTED.get(one.form.section.holds)
        for inner in one.section.sections if nested else ():
            _find_in(draft, one.form, inner.blocks, listed)
            for deeper in inner.sections:
                message = say("{nested}: `### {title}`", nested=nested, title=deeper.title) if nested else ""
                draft.wrong("nested-section", message, deeper.span)


def _find_in(draft: Draft, form: SectionForm, blocks: Iterable[Block], listed: Names) -> None:
    for block in blocks:
        if isinstance(block, Table):
            _find_in_table(draft, form, block)
            continue
        for span, line in _unread(block):
            fault = _fault(form, line, listed)
            if fault is None:
                continue
            draft.wrong(*fault, span)
            if fault[0] == "not-a-table":
                break


def _unread(block: Field | Prose | Quote) -> Iterator[tuple[Span, str]]:
    """The lines of a block that nobody reads, each with its place, and without its comments."""
    written = block.text if isinstance(block, Prose) else block.raw
    if isinstance(block, Prose) and written.lstrip().startswith(_FENCE):
        return
    originals = written.split("\n")
    for index, line in enumerate(without_comments(written).split("\n")):
        is_read = (isinstance(block, Field) and index == 0) or (
            isinstance(block, (Field, Quote)) and line.lstrip().startswith(">")
        )
        if line.strip() and not is_read:
            indent = len(line) - len(line.lstrip())
            yield (
                Span(
                    file=block.span.file,
                    line=block.span.line + index,
                    column=indent + 1,
                    text=originals[index],
                    length=len(line.strip()),
                ),
                line,
            )


def _fault(form: SectionForm, line: str, listed: Names) -> tuple[str, Words] | None:
    """What is wrong with a line of prose, as slug and message."""
    holds = form.section.holds
    heading = _HEADING.match(line)
    if heading:
        marks = heading["marks"]
        message = say(
            "this looks like a heading and is not read as one; begin the line with `{marks} `,"
            " with nothing before it",
            marks=marks,
        )
        return "not-read", message
    if holds == "instructions":
        name = _beginning(form, line)
        if name:
            message = say(
                "this looks like an instruction and is not read as one; begin the line with `- {name}: `",
                name=name,
            )
            return "not-read", message
    if holds == "list":
        item = _ITEM.match(line) or _NAMED.match(line)
        if item and listed(item["name"]):
            message = say(
                "this looks like a line of the list and is not read as one; begin the line with `- {name}: `",
                name=item["name"],
            )
            return "not-read", message
    if holds in {"table", "groups"} and _is_row(form, line):
        return "not-a-table", _ROWS
    named = _NAMED.match(line)
    name = named["name"].strip("*_` ") if named else ""
    if name and _is_field(form, name):
        message = say(
            "this looks like a field and is not read as one; begin the line with `- {name}: `", name=name
        )
        return "not-read", message
    return None


def _beginning(form: SectionForm, line: str) -> str:
    named, bare = _NAMED.match(line), _WITHOUT_COLON.match(line)
    for match in (named, bare):
        name = normal(match["name"].strip("*_` ")) if match else ""
        if form.begins_line(name):
            return name
    return ""


def _is_row(form: SectionForm, line: str) -> bool:
    if _BAR.search(line):
        return True
    cells = [cell for cell in _CELLS.split(line.strip()) if cell]
    known = [cell for cell in cells if form.find(cell)]
    return len(known) >= 2 and 2 * len(known) >= len(cells)


def _is_field(form: SectionForm, name: str) -> bool:
    """Where there are tables, names and remarks are columns, and a line of prose may begin with such a word."""
    term = form.find(name)
    if isinstance(term, FormField):
        if form.section.holds in {"table", "prose"}:
            return term.property == str(INTENT.keep)
        return (
            form.section.holds != "groups" or term.reads == "concept" or term.property == str(INTENT.origin)
        )
    return term is not None and form.section.holds not in {"table", "prose"}


def _find_in_table(draft: Draft, form: SectionForm, table: Table) -> None:
    """A table where fields or a list are read is prose."""
    if form.section.holds in {"table", "groups", "prose"}:
        return
    cells = (*table.header, *(row[0] for row in table.rows if row))
    known = next((cell for cell in cells if cell.text and _is_said_here(form, cell.text)), None)
    if known is not None:
        message = say("no table is read here; write a line `- {name}: …` for each", name=known.text)
        draft.wrong("not-read", message, table.span)


def _is_said_here(form: SectionForm, name: str) -> bool:
    return form.find(name) is not None
