"""A paper as one page that stands by itself: no script, no network, no fonts; to read and to print."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from importlib.resources import files

from intent.language.locale import ENGLISH, Locale
from intent.language.message import Joint, Words, opened, say
from intent.papers.document import (
    Block,
    Document,
    DrawnFigure,
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
    Reference,
    Ruled,
    SectionRole,
)
from intent.papers.elements import Element, digest, element, prose, unbroken
from intent.papers.inline import Beside, Break, Content, Phrase, PhraseRole, Several, Stamp, Told, inlines
from intent.papers.page_marks import marked
from intent.papers.prose import shown
from intent.papers.standing_page import head, page_text, section
from intent.variance.result import Outcome

CONTENTS = say("Contents")
BOX = "☐"
EVERY_PAPER = "report.css"
FIRST_PAGE = "@page :first { @top-left { content: none; } }"
_FACTS = {FactsRole.PLAIN: "facts", FactsRole.VALUES: "facts values", FactsRole.REQUESTS: "requests"}
_PLACES = re.compile("([\ue000-\uf8ff])")
"""Signs for private use stand in a list for its phrases, until the language has put commas between them."""
_FIRST_PLACE = 0xE000


@dataclass(frozen=True, slots=True)
class Page:
    """What a paper becomes elements in: its language."""

    locale: Locale

    def say(self, words: Words) -> str:
        return self.locale.say(words)

    def told(self, content: Content) -> list[Element | str]:
        """A content as elements and text."""
        return [told for piece in inlines(content, self.locale.tag) for told in _inline(piece, self)]


def tell_page(document: Document, locale: Locale = ENGLISH) -> str:
    """The whole page as text."""
    page = Page(locale)
    sections = [_section(one, page) for one in document.sections]
    contents = [_contents(document, page)] if document.has_contents else []
    body = element(
        "body",
        element("header", element("h1", page.say(document.title)), _lead(document, page)),
        element("main", sections[:1], contents, sections[1:]),
        [element("footer", element("p", page.say(document.foot)))] if document.foot else [],
    )
    name = page.say(document.name or document.title)
    created = document.created.isoformat() if document.created else ""
    return page_text(head(name, _style(document, page), created=created), body, locale.tag)


def _style(document: Document, page: Page) -> str:
    folder = files("intent.papers")
    sheets = [folder.joinpath(name).read_text("utf-8") for name in (EVERY_PAPER, *document.styles)]
    shares = sorted({column.share for one in _tables(document.sections) for column in one.columns} - {0})
    sheets.extend(f".share-{share} {{ width: {share}%; }}\n" for share in shares)
    if document.running:
        running = _css_string(page.say(document.running))
        sheets.append(f"@page {{ @top-left {{ content: {running}; }} }}\n{FIRST_PAGE}\n")
    return "".join(sheets)


def _tables(blocks: Iterable[Block]) -> Iterator[PaperTable]:
    for block in blocks:
        if isinstance(block, PaperTable):
            yield block
        elif isinstance(block, PaperSection):
            yield from _tables(block.blocks)


def _css_string(text: str) -> str:
    """A string of CSS in which nothing but letters, digits and spaces is left as it is."""
    safe = (sign if sign.isalnum() or sign == " " else f"\\{ord(sign):x} " for sign in shown(text))
    return f'"{"".join(safe)}"'


def _lead(document: Document, page: Page) -> Iterator[Element]:
    for block in document.lead:
        if not isinstance(block, Markdown):
            yield from _block(block, page, 1)
        elif block.text.strip():
            yield element("div", prose(block.text), class_="prose")


def _contents(document: Document, page: Page) -> Element:
    """A list of the sections after the first, with what each comes to."""
    entries = [element("li", _entry(one, page)) for one in document.sections[1:]]
    heading = element("h2", page.say(CONTENTS), id="contents")
    return element("nav", heading, element("ul", entries), aria_labelledby="contents")


def _entry(one: PaperSection, page: Page) -> Iterator[Element | str]:
    yield element("a", page.say(one.title), href=f"#{one.anchor}")
    if one.gist:
        yield page.say(say("{subject}: {text}", subject="", text=one.gist))


def _section(one: PaperSection, page: Page) -> Element:
    return section(one.anchor, page.say(one.title), list(_blocks(one.blocks, page, 2)))


def _blocks(blocks: Iterable[Block], page: Page, level: int) -> Iterator[Element]:
    for block in blocks:
        yield from _block(block, page, level)


def _block(block: Block, page: Page, level: int) -> Iterator[Element]:
    """A block within a heading of some level."""
    match block:
        case Paragraph():
            role = "outcome-word" if block.role is ParagraphRole.OUTCOME else block.role
            yield element("p", page.told(block.content), class_=role)
        case Items():
            items = [element("li", page.told(item)) for item in block.items]
            yield element("ol" if block.is_numbered else "ul", items)
        case Facts():
            yield _facts(block, page)
        case PaperTable():
            yield _table(block, page)
        case Quotation():
            yield _quotation(block, page)
        case Markdown():
            yield from prose(block.text)
        case MarkedText():
            yield marked(block)
        case Pictures():
            yield from _pictures(block, page)
        case Ruled():
            yield from (element("div", class_="line") for _ in range(block.lines))
        case PaperSection():
            yield from _inner_section(block, page, level + 1)


def _inline(inline: Told, page: Page) -> Iterator[Element | str]:
    match inline:
        case Stamp():
            kind = "outcome" if isinstance(inline.grade, Outcome) else "verdict"
            yield element("strong", page.say(opened(inline.words)), class_=f"{kind} {inline.grade}")
        case Phrase():
            yield from _phrase(inline, page)
        case Several():
            marks = [chr(_FIRST_PLACE + place) for place in range(len(inline.phrases))]
            for piece in _PLACES.split(page.locale.listing(marks, Joint.AND)):
                if _PLACES.fullmatch(piece):
                    yield from _phrase(inline.phrases[ord(piece) - _FIRST_PLACE], page)
                else:
                    yield piece
        case Break():
            yield element("br")
        case _:
            yield from unbroken(page.say(inline))


def _phrase(phrase: Phrase, page: Page) -> Iterator[Element | str]:
    told: list[Element | str] = unbroken(page.say(phrase.words))
    match phrase.role:
        case PhraseRole.STRONG:
            told = [element("strong", told)]
        case PhraseRole.QUIET:
            told = [element("span", told, class_="quiet")]
        case PhraseRole.CODE:
            told = [element("code", page.say(phrase.words))]
        case PhraseRole.DIGEST:
            told = [digest(page.say(phrase.words))]
    address = phrase.link.address if isinstance(phrase.link, Beside) else f"#{phrase.link}"
    yield from [element("a", told, href=address)] if phrase.link else told


def _inner_section(one: PaperSection, page: Page, level: int) -> Iterator[Element]:
    """A smaller heading with what is below it; as an article, where it is one by its role."""
    number = f"{one.number}. " if one.number else ""
    title = f"{number}{page.say(one.title)}"
    blocks = list(_blocks(one.blocks, page, level))
    if one.role is SectionRole.PLAIN:
        yield element(f"h{level}", title, id=one.anchor)
        yield from blocks
        return
    name = f"{one.anchor}-title"
    beside = [_margin(one, page), element("div", blocks, class_="telling")] if one.margin else blocks
    heading = element(f"h{level}", title, id=name)
    yield element("article", heading, beside, id=one.anchor, class_=one.role, aria_labelledby=name)


def _margin(one: PaperSection, page: Page) -> Element:
    """Its first text, which is a verdict as a rule, with a line below it; the others under that."""
    first, *more = one.margin.texts if one.margin else ()
    return element(
        "p", page.told(first), [element("span", page.told(text)) for text in more], class_="margin"
    )


def _facts(facts: Facts, page: Page) -> Element:
    parts = []
    for line in facts.lines:
        parts.append(element("dt", page.say(opened(line.label))))
        parts.extend(element("dd", page.told(text)) for text in line.texts)
    return element("dl", parts, class_=_FACTS[facts.role])


def _table(table: PaperTable, page: Page) -> Element:
    """The first cell of a row heads it; a cell that it leaves out is empty, to be written in."""
    ticks = [element("th", page.say(opened(tick)), scope="col", class_="tick") for tick in table.ticks]
    titles = [element("th", page.say(opened(column.title)), scope="col") for column in table.columns]
    body = element("tbody")
    for row in table.rows:
        cells = [page.told(cell) for cell in row] + [[""]] * (len(table.columns) - len(row))
        boxes = [element("td", BOX, class_="tick") for _ in table.ticks]
        others = [element("td", cell) for cell in cells[1:]]
        body.append(element("tr", boxes, element("th", cells[0], scope="row"), others))
    above = element("thead", element("tr", ticks, titles))
    return element("table", _widths(table), above, body, class_=table.role)


def _widths(table: PaperTable) -> list[Element]:
    """The widths of the columns, where any has a share of its own."""
    if not any(column.share for column in table.columns):
        return []
    ticks = [element("col") for _ in table.ticks]
    columns = [
        element("col", class_=f"share-{column.share}" if column.share else "") for column in table.columns
    ]
    return [element("colgroup", ticks, columns)]


def _quotation(quotation: Quotation, page: Page) -> Element:
    """The words with who said them and where; the mark that opens them hangs in the margin."""
    paragraphs = [element("p", text) for text in page.say(quotation.words).split("\n\n")]
    captions = [element("span", page.told(caption)) for caption in quotation.captions]
    captions += [_reference(one, page) for one in quotation.references]
    captions += [element("span", page.told(remark)) for remark in quotation.remarks]
    below = [element("figcaption", captions)] if captions else []
    return element("figure", element("blockquote", paragraphs), below)


def _reference(one: Reference, page: Page) -> Element:
    told = page.say(one.words)
    return element("span", element("a", told, href=f"#{one.link}") if one.link else told, ".")


def _pictures(pictures: Pictures, page: Page) -> Iterator[Element]:
    """The whole at two widths, of which the screen shows one; then details; then what is said of them all."""
    figures, notes = pictures.draw(page.locale)
    for figure in figures:
        if figure.wide:
            pairs = [
                element("div", figure.wide, class_="pair wide"),
                element("div", figure.narrow, class_="pair narrow"),
            ]
            class_ = "drawn broad" if figure.is_broad else "drawn"
            yield element("figure", pairs, class_=class_)
    details = [figure for figure in figures if not figure.wide]
    if details:
        yield element("div", (_detail(figure) for figure in details), class_="details")
    if notes:
        yield element("ul", [element("li", page.told(note)) for note in notes])


def _detail(figure: DrawnFigure) -> Element:
    """One drawing of both states, or one of each beside the other."""
    class_ = "drawn both" if len(figure.narrow) > 1 else "drawn"
    return element("figure", element("div", figure.narrow, class_="pair"), class_=class_)
