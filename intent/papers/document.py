"""A paper as data: what it says and in what order, before a form or a language has been chosen for it.

Everything in it is a message, or a text as its writer put it. The writers (`told_text`, `told_markdown`, `told_page`)
know how their form shows each of these, and they alone say the messages, in the reader's language.
"""

from __future__ import annotations

import datetime
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import TYPE_CHECKING, TypeAlias

from intent.language.message import Words
from intent.papers.inline import Content, in_one

if TYPE_CHECKING:
    from intent.language.locale import Locale
    from intent.papers.elements import Element


class ParagraphRole(StrEnum):
    """What a paragraph is to those around it."""

    PLAIN = ""
    BYLINE = "byline"
    """Who made the work, and where it is kept."""
    OCCASION = "occasion"
    """What the paper is about; such paragraphs stand close together."""
    LEADIN = "leadin"
    """It leads over to what stands close below."""
    OUTCOME = "outcome"
    """The outcome alone, in large type; its sentence stands close below."""
    VERDICT = "outcome-sentence"
    """The sentence below the outcome, which is never torn apart."""
    QUIET = "quiet"
    """A remark beside the matter."""
    CUT = "cut"
    """That something of a text is left out here."""


@dataclass(frozen=True, slots=True)
class Paragraph:
    """Words that run on."""

    content: Content
    role: ParagraphRole = ParagraphRole.PLAIN


@dataclass(frozen=True, slots=True)
class Items:
    """A list, with dashes or with numbers."""

    items: tuple[Content, ...]
    is_numbered: bool = False


@dataclass(frozen=True, slots=True)
class FactLine:
    """A label, and what is said under it."""

    label: Words
    """With a small letter, unless it is a name; a form that wants a capital makes it."""
    texts: tuple[Content, ...]


class FactsRole(StrEnum):
    """What labelled texts are."""

    PLAIN = ""
    VALUES = "values"
    """Short values, which stand beside their labels at any width."""
    REQUESTS = "requests"
    """What people are asked, under their names."""


@dataclass(frozen=True, slots=True)
class Facts:
    """Labels on the left, and what is said under each beside it or below it."""

    lines: tuple[FactLine, ...]
    role: FactsRole = FactsRole.PLAIN


@dataclass(frozen=True, slots=True)
class Column:
    """A column of a table."""

    title: Words
    """With a small letter, unless it is a name."""
    share: int = 0
    """Of the width, in per cent; 0: of what is left."""


class TableRole(StrEnum):
    """What a table is for."""

    PLAIN = ""
    FILES = "files"
    """Files beside their digests, which need much room."""
    SIGNATURES = "signatures"
    """To be signed: rows as high as a signature."""
    BRIEF = "brief"
    """A line a row, in small type, for a first page."""
    CHECKLIST = "checklist"
    """To be ticked and filled in."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PaperTable:
    """Rows under titles, the first cell of each row its head; cells that a row leaves out are to be filled in."""

    columns: tuple[Column, ...]
    rows: tuple[tuple[Content, ...], ...]
    role: TableRole = TableRole.PLAIN
    ticks: tuple[Words, ...] = ()
    """Columns of boxes to tick, which stand before the others: their titles."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Reference:
    """Where something told stands in a file: a note of a page, a footnote of a text."""

    name: str
    """`R1-2`."""
    words: Words
    """`Found in talk.md, line 3, at 0:02:10`."""
    brief: Words
    """`found at line 3`."""
    link: str = ""
    """The anchor of the place in the same paper, where it is in it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Quotation:
    """Words that somebody said, with who said them below, and where that is found."""

    words: Words
    captions: tuple[Content, ...] = ()
    """Who said them, and when."""
    references: tuple[Reference, ...] = ()
    remarks: tuple[Content, ...] = ()
    """What is to be said of them besides, last of all."""


@dataclass(frozen=True, slots=True)
class Markdown:
    """A writer's own prose."""

    text: str


@dataclass(frozen=True, slots=True)
class Mark:
    """A stretch of a text that something in the paper leads to, in code points."""

    start: int
    end: int
    anchor: str


@dataclass(frozen=True, slots=True)
class MarkedText:
    """A stretch of a file's text as it is, with what is quoted from it marked."""

    text: str
    marks: tuple[Mark, ...]
    is_markdown: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnFigure:
    """Drawings beside each other."""

    narrow: tuple[Element, ...]
    """As `svg` elements, for a hand's width of screen and for paper; of a detail for a desk too."""
    wide: tuple[Element, ...] = ()
    """The same, for a desk."""
    is_broad: bool = False
    """Whether on paper it is the wide ones that are printed, on sheets laid on their side."""


@dataclass(frozen=True, slots=True)
class Pictures:
    """Figures, which hold words and so are drawn once the language is known; only a page shows them."""

    draw: Callable[[Locale], tuple[Sequence[DrawnFigure], Sequence[Words]]]
    """The figures, and what is to be said of them all below."""


@dataclass(frozen=True, slots=True)
class Ruled:
    """Lines to write on."""

    lines: int


class SectionRole(StrEnum):
    """What a section is, where it is more than a heading with something below it."""

    PLAIN = ""
    BRIEF = "brief"
    """A part of the first page, which stands beside others where there is room."""
    DEPARTURE = "departure"
    SOURCE = "source"
    QUESTION = "question"


@dataclass(frozen=True, slots=True, kw_only=True)
class PaperSection:
    """A heading, and what stands below it; a section within a section has a smaller heading."""

    title: Words
    blocks: tuple[Block, ...]
    anchor: str = ""
    """Its name in links; every section of a paper has one, those within it only where something leads to them."""
    number: int = 0
    """Its number among its like; 0: it has none."""
    role: SectionRole = SectionRole.PLAIN
    gist: Words = ""
    """What it comes to in a word, for the contents."""
    margin: FactLine | None = None
    """What stands in the margin beside it."""

    @property
    def without_margin(self) -> tuple[Block, ...]:
        """The blocks, with what stands in the margin as the first of its facts: for a form that has no margin."""
        if self.margin is None:
            return self.blocks
        beside = FactLine(self.margin.label, (in_one(self.margin.texts),))
        first = self.blocks[0] if self.blocks else None
        if isinstance(first, Facts):
            return replace(first, lines=(beside, *first.lines)), *self.blocks[1:]
        return Facts((beside,)), *self.blocks


Block: TypeAlias = (
    Paragraph
    | Items
    | Facts
    | PaperTable
    | Quotation
    | Markdown
    | MarkedText
    | Pictures
    | Ruled
    | PaperSection
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Document:
    """A whole paper."""

    title: Words
    """Its first heading."""
    lead: tuple[Block, ...] = ()
    """What stands below the title, before the first section."""
    sections: tuple[PaperSection, ...] = ()
    foot: Words = ""
    """The last line: who wrote it, and when."""
    name: Words = ""
    """What it is called in a list of papers; its title, where it has no other name."""
    created: datetime.date | None = None
    """The day on which what it tells was written."""
    running: Words = ""
    """What stands at the top of each printed page but the first."""
    has_contents: bool = False
    """Whether the contents are listed, after the first section, which is then all that one has to see at once."""
    styles: tuple[str, ...] = ()
    """Sheets of style that a page of it needs beside that of every paper, by their names in this folder."""
