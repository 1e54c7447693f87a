"""A paper as Markdown (CommonMark with tables), for a letter, a file beside the work's own, or a wiki.

Nothing that writers put in it becomes markup, except their own prose.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from intent.language.locale import ENGLISH, Locale
from intent.language.message import Joint, Words, closed, opened, say
from intent.papers.document import (
    Block,
    Document,
    Facts,
    Items,
    Markdown,
    MarkedText,
    PaperSection,
    PaperTable,
    Paragraph,
    ParagraphRole,
    Pictures,
    Quotation,
    Reference,
    Ruled,
)
from intent.papers.inline import Beside, Break, Content, Phrase, PhraseRole, Several, Stamp, Told, inlines
from intent.papers.prose import as_markdown, escaped, shown

CONTENTS = say("Contents")
WHERE_FOUND = say("Where the words quoted are found")
BOX = "☐"
RULE = "___"
"""A rule across the page."""
LINE_BREAK = "\\\n"
_TITLE_LEVEL, _SECTION_LEVEL = 1, 2


@dataclass(frozen=True, slots=True)
class MarkdownSheet:
    """What a paper is written on: its language, and where its links lead."""

    locale: Locale
    anchors: Mapping[str, str]
    """By the anchor of a section, the name that most renderers give its heading."""

    def escaped(self, words: Words) -> str:
        return escaped(self.locale.say(words))

    def told(self, content: Content, line_break: str = ", ") -> str:
        """A content on one line; its own breaks are told as something else."""
        return "".join(_inline(piece, self, line_break) for piece in inlines(content, self.locale.tag))

    def linked(self, told: str, anchor: str | Beside) -> str:
        if isinstance(anchor, Beside):
            return f"[{told}](<{anchor.address}>)"
        return f"[{told}](#{self.anchors[anchor]})" if anchor in self.anchors else told


def tell_markdown(document: Document, locale: Locale = ENGLISH) -> str:
    """The paper as Markdown."""
    sheet = MarkdownSheet(locale, {})
    sheet = MarkdownSheet(locale, dict(_anchors(document.sections, sheet)))
    blocks = [f"# {sheet.escaped(document.title)}", *_blocks(document.lead, sheet, _TITLE_LEVEL)]
    for place, section in enumerate(document.sections):
        blocks.extend(_section(section, sheet, _SECTION_LEVEL))
        if document.has_contents and not place:
            blocks.extend([f"**{sheet.escaped(CONTENTS)}**", "\n".join(_contents(document, sheet))])
    blocks.extend(_footnotes(document, sheet))
    blocks.append(sheet.escaped(document.foot))
    return "\n\n".join(filter(None, blocks)) + "\n"


def _inline(inline: Told, sheet: MarkdownSheet, line_break: str) -> str:
    match inline:
        case Stamp():
            return f"**{sheet.escaped(opened(inline.words))}**"
        case Phrase():
            return sheet.linked(_phrase(inline, sheet), inline.link)
        case Several():
            phrases = [sheet.linked(_phrase(one, sheet), one.link) for one in inline.phrases]
            return sheet.locale.listing(phrases, Joint.AND)
        case Break():
            return line_break
    return _spaced(sheet.locale.say(inline))


def _phrase(phrase: Phrase, sheet: MarkdownSheet) -> str:
    match phrase.role:
        case PhraseRole.STRONG:
            return f"**{sheet.escaped(phrase.words)}**"
        case PhraseRole.CODE | PhraseRole.DIGEST:
            return f"`{shown(sheet.locale.say(phrase.words)).replace('`', '')}`"
    return _spaced(sheet.locale.say(phrase.words))


def _spaced(text: str) -> str:
    """The text escaped, with the space at its ends that sets it apart from the pieces beside it."""
    before = " " if text[:1].isspace() else ""
    after = " " if text[-1:].isspace() and text.strip() else ""
    return f"{before}{escaped(text)}{after}"


def _anchors(sections: Iterable[Block], sheet: MarkdownSheet) -> Iterator[tuple[str, str]]:
    for section in sections:
        if isinstance(section, PaperSection):
            if section.anchor:
                yield section.anchor, _slug(_heading(section, sheet))
            yield from _anchors(section.blocks, sheet)


def _heading(section: PaperSection, sheet: MarkdownSheet) -> str:
    title = sheet.locale.say(section.title)
    return f"{section.number}. {title}" if section.number else title


def _slug(heading: str) -> str:
    """The anchor that most renderers give a heading: lower case, hyphens, no punctuation."""
    return re.sub(r"[^\w\- ]", "", heading.casefold()).replace(" ", "-")


def _contents(document: Document, sheet: MarkdownSheet) -> Iterator[str]:
    for section in document.sections[1:]:
        yield f"- {_entry(section, sheet)}"
    if any(_references(document.sections)):
        title = sheet.locale.say(WHERE_FOUND)
        yield f"- [{escaped(title)}](#{_slug(title)})"


def _entry(section: PaperSection, sheet: MarkdownSheet) -> str:
    link = sheet.linked(escaped(_heading(section, sheet)), section.anchor)
    if not section.gist:
        return link
    return sheet.locale.say(say("{subject}: {text}", subject=link, text=sheet.escaped(section.gist)))


def _section(section: PaperSection, sheet: MarkdownSheet, level: int) -> Iterator[str]:
    number = f"{section.number}. " if section.number else ""
    yield f"{'#' * level} {number}{sheet.escaped(section.title)}"
    yield from _blocks(section.without_margin, sheet, level)


def _blocks(blocks: Iterable[Block], sheet: MarkdownSheet, level: int) -> Iterator[str]:
    for block in blocks:
        if isinstance(block, PaperSection):
            yield from _section(block, sheet, level + 1)
        else:
            yield _block(block, sheet)


def _block(block: Block, sheet: MarkdownSheet) -> str:
    match block:
        case Paragraph(role=ParagraphRole.LEADIN):
            return f"*{sheet.told(block.content, LINE_BREAK)}*"
        case Paragraph():
            return sheet.told(block.content, LINE_BREAK)
        case Items():
            return _items(block, sheet)
        case Facts():
            return "\n".join(_facts(block, sheet))
        case PaperTable():
            return _table(block, sheet)
        case Quotation():
            return _quotation(block, sheet)
        case Markdown():
            return as_markdown(block.text)
        case MarkedText():
            return as_markdown(block.text) if block.is_markdown else sheet.escaped(block.text)
        case Pictures():
            return ""
        case Ruled():
            return "\n\n".join([RULE] * block.lines)
        case PaperSection():
            return "\n\n".join(_section(block, sheet, _SECTION_LEVEL))


def _items(items: Items, sheet: MarkdownSheet, indent: str = "") -> str:
    lines = []
    for number, item in enumerate(items.items, start=1):
        begin = f"{indent}{number}. " if items.is_numbered else f"{indent}- "
        lines.append(begin + sheet.told(item, LINE_BREAK + " " * len(begin)))
    return "\n".join(lines)


def _facts(facts: Facts, sheet: MarkdownSheet) -> Iterator[str]:
    for line in facts.lines:
        label = f"- *{sheet.escaped(opened(say('{heading}:', heading=line.label)))}*"
        if len(line.texts) == 1:
            yield f"{label} {sheet.told(line.texts[0], LINE_BREAK + '  ')}"
        else:
            yield label
            yield _items(Items(line.texts), sheet, "  ")


def _table(table: PaperTable, sheet: MarkdownSheet) -> str:
    header = [*table.ticks, *(column.title for column in table.columns)]
    ticks = [BOX] * len(table.ticks)
    lines = [[sheet.escaped(title) for title in header], ["---"] * len(header)]
    for row in table.rows:
        cells = [sheet.told(cell) or " " for cell in row]
        lines.append([*ticks, *cells, *([" "] * (len(table.columns) - len(cells)))])
    return "\n".join(f"| {' | '.join(line)} |" for line in lines)


def _quotation(quotation: Quotation, sheet: MarkdownSheet) -> str:
    notes = "".join(f"[^{one.name}]" for one in quotation.references)
    captions = (sheet.told(caption) for caption in (*quotation.captions, *quotation.remarks))
    return "\n>\n".join(f"> {text}" for text in (sheet.escaped(quotation.words) + notes, *captions))


def _footnotes(document: Document, sheet: MarkdownSheet) -> Iterator[str]:
    references = dict.fromkeys(_references(document.sections))
    if references:
        yield f"{'#' * _SECTION_LEVEL} {sheet.escaped(WHERE_FOUND)}"
    for one in references:
        yield f"[^{one.name}]: {sheet.escaped(closed(one.words))}"


def _references(blocks: Iterable[Block]) -> Iterator[Reference]:
    for block in blocks:
        if isinstance(block, Quotation):
            yield from block.references
        elif isinstance(block, PaperSection):
            yield from _references(block.blocks)
