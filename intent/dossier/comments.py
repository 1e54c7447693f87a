"""Comments, `<!-- … -->`: prose that no report shows. Where one may stand, and whether it is closed."""

from __future__ import annotations

import re
from collections.abc import Iterator

from intent.diagnostics import Span
from intent.dossier.blocks import Field, Prose, TextSection
from intent.dossier.draft import Draft
from intent.dossier.tables import Table
from intent.language.message import say

OPENS = "<!--"
_COMMENT = re.compile(r"<!--.*?-->", re.DOTALL)
_COMMENT_OR_OPEN = re.compile(r"<!--.*?(?:-->|\Z)", re.DOTALL)
_VISIBLE = re.compile(r"[^\n]")


def without_comments(text: str) -> str:
    """The text with blanks in place of its comments; what is left stands where it stood."""
    if OPENS not in text:
        return text
    return _blanked(_COMMENT_OR_OPEN, text)


def _blanked(pattern: re.Pattern[str], text: str) -> str:
    return pattern.sub(lambda comment: _VISIBLE.sub(" ", comment.group()), text)


def find_comments(draft: Draft, root: TextSection) -> None:
    """Find comments that are never closed, and those within a heading, a field or a cell."""
    for span, text in _read_texts(root):
        if OPENS in text:
            message = say("a comment stands on lines of its own, outside headings, fields and tables")
            draft.wrong("misplaced-comment", message, span)
    for prose in _prose(root):
        rest = _blanked(_COMMENT, prose.text)
        if OPENS in rest:
            before, lines = rest[: rest.index(OPENS)].count("\n"), prose.text.split("\n")
            column = lines[before].rindex(OPENS) + 1
            span = Span(
                file=prose.span.file,
                line=prose.span.line + before,
                column=column,
                text=lines[before],
                length=len(OPENS),
            )
            draft.wrong("open-comment", say("this comment is never closed; write `-->`"), span)


def _read_texts(section: TextSection) -> Iterator[tuple[Span, str]]:
    """Everything but prose, with its place."""
    yield section.span, section.title
    for block in section.blocks:
        if isinstance(block, Field):
            yield block.span, block.raw
        elif isinstance(block, Table):
            for cell in (*block.header, *(cell for row in block.rows for cell in row)):
                yield cell.span, cell.text
    for inner in section.sections:
        yield from _read_texts(inner)


def _prose(section: TextSection) -> Iterator[Prose]:
    yield from (block for block in section.blocks if isinstance(block, Prose))
    for inner in section.sections:
        yield from _prose(inner)
