"""The sources that a report quotes, with their text around what is quoted; what stays in the house is only named."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from intent.language.figures import figure_of
from intent.language.message import Words, say
from intent.papers.document import (
    Block,
    Mark,
    MarkedText,
    PaperSection,
    Paragraph,
    ParagraphRole,
    SectionRole,
)
from intent.papers.excerpts import Excerpt, excerpts, left_out
from intent.papers.passages_told import passage_anchor, source_anchor
from intent.reading.evidence.passages import Passages, SourceText
from intent.reading.evidence.quoting import Quoted

MOST = 3000
"""How many passages of one source are marked."""


def source_sections(passages: Passages) -> tuple[PaperSection, ...]:
    """Each source that is quoted, with its text; one that stays in the house is only named."""
    return tuple(
        PaperSection(
            title=f"{source.identifier} {source.title}",
            anchor=source_anchor(source.identifier),
            role=SectionRole.SOURCE,
            blocks=(_remark(source.file), *_content(source, passages.within(source.identifier))),
        )
        for source in passages.sources
    )


def _content(source: SourceText, quoted: Sequence[Quoted]) -> Iterator[Block]:
    if source.is_internal:
        yield _remark(say("Kept in the house; its text is not part of this report."))
    elif not source.text:
        yield _remark(say("Not a text; see the file."))
    elif not quoted:
        yield _remark(say("Nothing that is quoted here was found in it."))
    else:
        yield from _excerpted(source, quoted[:MOST])


def _remark(text: Words) -> Paragraph:
    return Paragraph(text, ParagraphRole.QUIET)


def _excerpted(source: SourceText, quoted: Sequence[Quoted]) -> Iterator[Block]:
    text = source.text
    marks = [
        Mark(one.place.stretch.start, one.place.stretch.end, passage_anchor(one))
        for one in quoted
        if one.place
    ]
    shown = excerpts(text, [(mark.start, mark.end) for mark in marks])
    missing = left_out(text, shown)
    if missing:
        told = say(
            "Cut to the surroundings of what is quoted: {number} of {whole} characters are left out.",
            number=figure_of(missing),
            whole=figure_of(len(text)),
        )
        yield _remark(told)
    end = 0
    for excerpt in shown:
        if excerpt.start > end:
            yield _cut(excerpt.start - end)
        within = tuple(_within(excerpt, mark) for mark in marks if _holds(excerpt, mark))
        yield MarkedText(text[excerpt.start : excerpt.end], within, source.is_markdown)
        end = excerpt.end
    if end < len(text):
        yield _cut(len(text) - end)


def _holds(excerpt: Excerpt, mark: Mark) -> bool:
    return excerpt.start <= mark.start and mark.end <= excerpt.end


def _within(excerpt: Excerpt, mark: Mark) -> Mark:
    return Mark(mark.start - excerpt.start, mark.end - excerpt.start, mark.anchor)


def _cut(length: int) -> Paragraph:
    told = say("[{number} characters are left out here]", number=figure_of(length))
    return Paragraph(told, ParagraphRole.CUT)
