"""Markdown to blocks: sections with their fields, tables, quotations and prose, each with its place.

The CommonMark parser finds the structure; the words are taken from the writer's own lines, so that prose
comes back as it was written.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from markdown_it import MarkdownIt
from markdown_it.token import Token

from intent.diagnostics import Diagnostic, Span
from intent.dossier.tables import Table, read_table
from intent.language.message import say

_FIELD = re.compile(r"(?P<name>[^:\n]{1,60}?)\s*:(?:\s+(?P<value>.*))?$", re.DOTALL)


@dataclass(frozen=True, slots=True, kw_only=True)
class Field:
    """A list item `name: value`."""

    name: str
    value: str
    span: Span
    value_span: Span
    raw: str = ""
    words: str = ""
    """What the quotation beneath it says."""
    runs_on: Span | None = None
    """The first line beneath it that is neither empty nor begun with `>`."""


@dataclass(frozen=True, slots=True)
class Prose:
    text: str
    span: Span


@dataclass(frozen=True, slots=True)
class Quote:
    """A block quotation, its lines without their marks."""

    text: str
    span: Span
    raw: str


Block = Field | Prose | Quote | Table


@dataclass(frozen=True, slots=True, kw_only=True)
class TextSection:
    """A heading with all that follows it, as far as the next of its rank."""

    level: int
    title: str
    span: Span
    blocks: tuple[Block, ...] = ()
    sections: tuple[TextSection, ...] = ()

    @property
    def fields(self) -> tuple[Field, ...]:
        return tuple(block for block in self.blocks if isinstance(block, Field))

    @property
    def tables(self) -> tuple[Table, ...]:
        return tuple(block for block in self.blocks if isinstance(block, Table))

    @property
    def words(self) -> str:
        """What the block quotations say."""
        return "\n\n".join(block.text for block in self.blocks if isinstance(block, Quote))

    @property
    def note(self) -> str:
        """The prose before the first table, or all of it where there is none; quotations are prose here."""
        return _prose(self._before_table(), Prose, Quote)

    @property
    def afterword(self) -> str:
        """The prose after the first table."""
        return _prose(self.blocks[len(self._before_table()) :], Prose, Quote)

    @property
    def remarks(self) -> str:
        """All prose where quotations are the words of somebody: tables are prose here."""
        return _prose(self.blocks, Prose, Table)

    @property
    def everything(self) -> str:
        """All that is no field, where neither quotations nor tables have a meaning of their own."""
        return _prose(self.blocks, Prose, Quote, Table)

    @property
    def verbatim(self) -> str:
        """All that stands there, lists and tables too, where nothing has a meaning of its own."""
        pieces = [block.text if isinstance(block, Prose) else block.raw for block in self.blocks]
        return "\n\n".join(pieces)

    def _before_table(self) -> tuple[Block, ...]:
        tables = [index for index, block in enumerate(self.blocks) if isinstance(block, Table)]
        return self.blocks[: tables[0]] if tables else self.blocks


def _prose(blocks: Sequence[Block], *kinds: type[Prose] | type[Quote] | type[Table]) -> str:
    kept = (block for block in blocks if isinstance(block, kinds) and not isinstance(block, Field))
    return "\n\n".join(block.text if isinstance(block, Prose) else block.raw for block in kept)


@dataclass(slots=True, kw_only=True)
class _Open:
    """A section still being read."""

    level: int
    title: str
    span: Span
    blocks: list[Block] = field(default_factory=list)
    sections: list[TextSection] = field(default_factory=list)

    def closed(self) -> TextSection:
        return TextSection(
            level=self.level,
            title=self.title,
            span=self.span,
            blocks=tuple(self.blocks),
            sections=tuple(self.sections),
        )


def read_blocks(text: str, file: str) -> tuple[TextSection | None, list[Diagnostic]]:
    """The section of the first heading, with all below it, and what is wrong with the structure."""
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    lines = text.split("\n")
    tokens = MarkdownIt("commonmark", {"html": True}).enable("table").disable("inline").parse(text)
    findings: list[Diagnostic] = []
    stack: list[_Open] = []
    root: TextSection | None = None
    before: list[Block] = []  # comments above the title
    for token, inner in _top_level(tokens):
        span = _span(lines, file, token)
        if token.type == "heading_open":
            level, title = int(token.tag[1]), inner[1].content.strip()
            root = _close(stack, level) or root
            if not stack and (level > 1 or root is not None):
                findings.append(_misplaced_heading(span, title, root is not None))
                level = max(level, 2)
                stack.append(_reopened(root, span))
                root = None
            stack.append(_Open(level=level, title=title, span=span, blocks=before if not stack else []))
        elif not stack and inner[0].content.lstrip().startswith("<!--"):
            before.extend(_blocks(token, inner, lines, file, findings))
        elif not stack:
            findings.append(
                Diagnostic(
                    slug="no-title", message=say("the file must begin with its title, `# …`"), span=span
                )
            )
            stack.append(_Open(level=1, title="", span=span))
            stack[-1].blocks.extend(_blocks(token, inner, lines, file, findings))
        else:
            stack[-1].blocks.extend(_blocks(token, inner, lines, file, findings))
    root = _close(stack, 1) or root
    if root is None:
        findings.append(
            Diagnostic(
                slug="empty-file",
                message=say("the file is empty; `intent new` writes one to start from"),
                span=Span(file=file),
            )
        )
    return root, findings


def _reopened(root: TextSection | None, span: Span) -> _Open:
    if root is None:
        return _Open(level=1, title="", span=span)
    return _Open(
        level=1, title=root.title, span=root.span, blocks=list(root.blocks), sections=list(root.sections)
    )


def _misplaced_heading(span: Span, title: str, is_second: bool) -> Diagnostic:
    if is_second:
        return Diagnostic(
            slug="second-title",
            message=say("a file has one title; make `{title}` a section, `## {title}`", title=title),
            span=span,
        )
    return Diagnostic(slug="no-title", message=say("the file must begin with its title, `# …`"), span=span)


def _close(stack: list[_Open], level: int) -> TextSection | None:
    """Close all open sections of this level or deeper; the outermost, if that was closed too."""
    while stack and stack[-1].level >= level:
        closed = stack.pop().closed()
        if not stack:
            return closed
        stack[-1].sections.append(closed)
    return None


def _top_level(tokens: Sequence[Token]) -> Iterator[tuple[Token, Sequence[Token]]]:
    start = 0
    for index, token in enumerate(tokens):
        if token.level == 0 and token.nesting >= 0:
            start = index
        if token.level == 0 and token.nesting <= 0:
            yield tokens[start], tokens[start : index + 1]


def _span(lines: Sequence[str], file: str, token: Token) -> Span:
    first = (token.map or [0, 1])[0]
    return Span(file=file, line=first + 1, column=1, text=lines[first] if first < len(lines) else "")


def _blocks(
    token: Token, inner: Sequence[Token], lines: Sequence[str], file: str, findings: list[Diagnostic]
) -> Iterator[Block]:
    first, end = token.map or [0, 0]
    raw = "\n".join(lines[first:end]).rstrip()
    span = _span(lines, file, token)
    if token.type == "table_open":
        table, wrong = read_table(lines, first, end, file, raw)
        findings.extend(wrong)
        yield table
    elif token.type == "bullet_list_open":
        fields = list(_fields(inner, lines, file))
        if any(isinstance(item, Field) for item in fields):
            yield from fields
        else:
            yield Prose(raw, span)
    elif token.type == "blockquote_open":
        yield Quote(
            "\n".join(re.sub(r"^ {0,3}> ?", "", line) for line in lines[first:end]).strip(), span, raw
        )
    else:
        yield Prose(raw, span)


def _fields(inner: Sequence[Token], lines: Sequence[str], file: str) -> Iterator[Block]:
    for token in inner:
        if token.type != "list_item_open" or token.level != 1 or not token.map:
            continue
        first, end = token.map
        line = lines[first]
        start = len(line) - len(line.lstrip(" -*+\t"))
        beneath = [(number, text.strip()) for number, text in enumerate(lines[first + 1 : end], first + 1)]
        quoted = [text for _, text in beneath if text.startswith(">")]
        further = [(number, text) for number, text in beneath if text and not text.startswith(">")]
        before = next((number for number, text in beneath if text.startswith(">")), end)
        content = "\n".join([line[start:], *(text for number, text in further if number < before)]).strip()
        span = Span(file=file, line=first + 1, column=start + 1, text=line, length=len(line) - start)
        match = _FIELD.match(content)
        if not match:
            yield Prose("\n".join(lines[first:end]).rstrip(), span)
            continue
        value = " ".join((match["value"] or "").split("\n")).strip()
        column = start + 1 + (match.start("value") if match["value"] else len(match["name"]))
        value_span = Span(file=file, line=first + 1, column=column, text=line, length=max(1, len(value)))
        raw = "\n".join(lines[first:end]).rstrip()
        yield Field(
            name=match["name"].strip("*_ "),
            value=value,
            span=span,
            value_span=value_span,
            raw=raw,
            words="\n".join(re.sub(r"^> ?", "", text) for text in quoted).strip(),
            runs_on=_line(lines, file, further[0][0]) if further else None,
        )


def _line(lines: Sequence[str], file: str, number: int) -> Span:
    text = lines[number]
    indent = len(text) - len(text.lstrip())
    return Span(file=file, line=number + 1, column=indent + 1, text=text, length=len(text.strip()))
