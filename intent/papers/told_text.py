"""A paper for the terminal: aligned, wrapped to the width, and complete without colour."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from intent.language.locale import ENGLISH, Locale
from intent.language.message import Joint, Words, joined, sentence
from intent.papers.document import (
    Block,
    Document,
    Facts,
    FactsRole,
    Items,
    Markdown,
    MarkedText,
    PaperSection,
    PaperTable,
    Paragraph,
    ParagraphRole,
    Pictures,
    Quotation,
    Ruled,
    TableRole,
)
from intent.papers.inline import Break, Content, Phrase, PhraseRole, Several, Stamp, Told, in_one, inlines
from intent.papers.layout import Piece, columns_of, flowed, padded, wrapped
from intent.papers.prose import as_plain, shown
from intent.papers.text_table import TextCell, TextColumn, table_lines
from intent.variance.result import Outcome, Verdict

NARROWEST = 40
"""Narrower than this, lines run over rather than break at every word."""
STEP = "   "
"""How far what stands within something stands in."""
BOX = "☐"
BOLD, RED, YELLOW, GREEN = "\x1b[1m", "\x1b[31m", "\x1b[33m", "\x1b[32m"
COLOURS: dict[Verdict | Outcome, str] = {
    Outcome.NOT_ACCEPTABLE: RED,
    Outcome.ACCEPTABLE: GREEN,
    Verdict.FORBIDDEN: RED,
    Verdict.BREACH: RED,
    Verdict.ALLOWED: GREEN,
    Verdict.AS_REQUIRED: GREEN,
    Verdict.AS_DOCUMENTED: GREEN,
}
_LABEL, _WIDEST_LABEL = 14, 20
"""Columns of the labels on the left of facts: as a rule, and where they are long."""
_TICK_SHARE = 8
"""Per cent of the width for a column of boxes to tick, at most."""
_CLOSE = {ParagraphRole.LEADIN, ParagraphRole.OUTCOME}
"""What the next lines follow without a space."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Terminal:
    """What the lines are laid out for."""

    width: int
    colour: bool
    locale: Locale
    indent: str = ""

    @property
    def within(self) -> Terminal:
        """The same, one step further in."""
        return replace(self, indent=self.indent + STEP)

    def painted(self, paint: str) -> str:
        return paint if self.colour else ""

    def flowed(self, content: Content, first: str = "", rest: str | None = None) -> Iterator[str]:
        """The lines of a content, after what begins the first line and all others."""
        others = first if rest is None else rest
        for place, line in enumerate(_lines(content, self)):
            begin = others if place else first
            yield from flowed(line, self.width, self.indent + begin, self.indent + others)


def tell_text(document: Document, locale: Locale = ENGLISH, *, width: int = 80, colour: bool = False) -> str:
    """The paper as lines no wider than ``width`` columns; with ANSI colours only where asked for."""
    terminal = Terminal(width=max(width, NARROWEST), colour=colour, locale=locale)
    title = locale.say(document.title)
    lines = [*wrapped(title, terminal.width), "=" * min(terminal.width, columns_of(shown(title)))]
    lines.extend(_blocks(document.lead, terminal))
    for section in document.sections:
        heading = Piece(locale.say(section.title).upper(), terminal.painted(BOLD))
        lines.extend(["", *flowed([heading], terminal.width), ""])
        lines.extend(_blocks(section.without_margin, terminal))
    if document.foot:
        lines.extend(["", *terminal.flowed(document.foot)])
    return "\n".join(line.rstrip() for line in lines) + "\n"


def _lines(content: Content, terminal: Terminal) -> Iterator[list[Piece]]:
    """The pieces of each line of a content."""
    line: list[Piece] = []
    for piece in inlines(content, terminal.locale.tag):
        if isinstance(piece, Break):
            yield line
            line = []
        else:
            line.append(_piece(piece, terminal))
    yield line


def _piece(inline: Told, terminal: Terminal) -> Piece:
    say = terminal.locale.say
    match inline:
        case Stamp():
            paint = BOLD + COLOURS.get(inline.grade, YELLOW)
            return Piece(say(inline.words).upper(), terminal.painted(paint))
        case Phrase():
            is_strong = inline.role is PhraseRole.STRONG
            return Piece(say(inline.words), terminal.painted(BOLD) if is_strong else "")
        case Several():
            return Piece(terminal.locale.listing([say(one.words) for one in inline.phrases], Joint.AND))
        case Break():
            return Piece("")
    return Piece(say(inline))


def _blocks(blocks: Iterable[Block], terminal: Terminal) -> Iterator[str]:
    """The blocks with an empty line between each and the next, but where they belong close together."""
    before: Block | None = None
    for block in blocks:
        lines = list(_block(block, terminal))
        if not lines:
            continue
        if before is not None and not _is_close(before, block):
            yield ""
        yield from lines
        before = block


def _is_close(before: Block, block: Block) -> bool:
    if not isinstance(before, Paragraph):
        return False
    is_alike = isinstance(block, Paragraph) and before.role is block.role is ParagraphRole.OCCASION
    return is_alike or before.role in _CLOSE


def _block(block: Block, terminal: Terminal) -> Iterator[str]:
    match block:
        case Paragraph():
            return terminal.flowed(block.content)
        case Items():
            return _items(block, terminal)
        case Facts():
            return _facts(block, terminal)
        case PaperTable():
            return _table(block, terminal)
        case Quotation():
            return _quotation(block, terminal.within)
        case Markdown():
            return _prose(block.text, terminal)
        case MarkedText():
            return _prose(block.text, terminal) if block.is_markdown else terminal.flowed(block.text)
        case Pictures():
            return iter(())
        case Ruled():
            return iter(["", "_" * (terminal.width - len(terminal.indent))] * block.lines)
        case PaperSection():
            return _section(block, terminal)


def _section(section: PaperSection, terminal: Terminal) -> Iterator[str]:
    number = f"{section.number}. " if section.number else ""
    yield from terminal.flowed(section.title, number, STEP)
    yield from _blocks(section.without_margin, terminal.within)


def _items(items: Items, terminal: Terminal) -> Iterator[str]:
    for number, item in enumerate(items.items, start=1):
        begin = f"{number}. " if items.is_numbered else "- "
        yield from terminal.flowed(item, begin, " " * len(begin))


def _facts(facts: Facts, terminal: Terminal) -> Iterator[str]:
    """Labels in a column of their own; names, and what is too long for that, on lines of their own."""
    labels = [shown(terminal.locale.say(line.label)) for line in facts.lines]
    widest = max(map(columns_of, labels), default=0)
    if widest < _WIDEST_LABEL and facts.role is not FactsRole.REQUESTS:
        column = max(_LABEL, widest + 1)
        for label, line in zip(labels, facts.lines, strict=True):
            for place, text in enumerate(line.texts):
                yield from terminal.flowed(text, padded("" if place else label, column), " " * column)
        return
    for place, line in enumerate(facts.lines):
        yield from [""] if place else []
        yield from terminal.flowed(line.label)
        yield from _items(Items(line.texts), terminal.within)


def _table(table: PaperTable, terminal: Terminal) -> Iterator[str]:
    if table.role is TableRole.BRIEF:
        return _brief(table, terminal)
    say = terminal.locale.say
    count, length = len(table.columns), len(table.rows)
    stated = sum(column.share for column in table.columns)
    rest = max(100 - stated, count) // max(sum(not column.share for column in table.columns), 1)
    cells = [tuple(_cell(row, place, terminal) for row in table.rows) for place in range(count)]
    box: tuple[TextCell, ...] = ([[Piece(BOX)]],) * length
    columns = [
        *(TextColumn(shown(say(tick)), _TICK_SHARE, box) for tick in table.ticks),
        *(
            TextColumn(shown(say(column.title)), column.share or rest, inside)
            for column, inside in zip(table.columns, cells, strict=True)
        ),
    ]
    return table_lines(columns, len(table.ticks), terminal.width, terminal.indent)


def _brief(table: PaperTable, terminal: Terminal) -> Iterator[str]:
    """A row as one line, its cells with commas between: what a narrow terminal would make three lines of."""
    for row in table.rows:
        yield from terminal.flowed(in_one(row), "", STEP)


def _cell(row: Sequence[Content], place: int, terminal: Terminal) -> TextCell:
    return list(_lines(row[place], terminal)) if place < len(row) else None


def _quotation(quotation: Quotation, terminal: Terminal) -> Iterator[str]:
    yield from terminal.flowed(quotation.words)
    for caption in quotation.captions:
        yield from terminal.flowed(caption)
    briefs: tuple[Words, ...] = tuple(dict.fromkeys(one.brief for one in quotation.references))
    yield from terminal.flowed(sentence(joined(briefs, "; ")))
    for remark in quotation.remarks:
        yield from terminal.flowed(remark)


def _prose(markdown: str, terminal: Terminal) -> Iterator[str]:
    for place, paragraph in enumerate(filter(None, as_plain(markdown).split("\n\n"))):
        yield from [""] if place else []
        for line in paragraph.split("\n"):
            yield from terminal.flowed(line)
