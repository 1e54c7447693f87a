"""Each passage quoted under a heading or a line, looked for in the sources that the heading cites."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum

from intent.dossier.citations import passages_quoted
from intent.dossier.media_time import read_clip
from intent.language.message import Message, say
from intent.model.citation import Citation
from intent.model.work import Heading, Work
from intent.reading.evidence.nearest import nearest_passage
from intent.reading.evidence.search import Transcript, find, pieces_of
from intent.reading.evidence.source_files import SourceFile
from intent.reading.evidence.time_codes import TimedStretch, code_before, stretches_at


class SearchResult(StrEnum):
    """What became of the search for a passage."""

    FOUND = "found"
    ELSEWHERE = "elsewhere"
    NOT_FOUND = "not-found"
    UNSEARCHED = "unsearched"
    """A source is cited that cannot be searched: it has no text, or it is not there."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SourcePlace:
    """A place in a source's file."""

    source: str
    file: str
    stretch: TimedStretch
    """In code points of the text, a byte-order mark aside."""
    line: int
    """Counted from 1."""
    time: str
    """The time code before it, as written there; nothing where there is none."""
    words: str
    """The text there, its white space made single spaces."""

    @property
    def where(self) -> Message:
        """`talk.md, line 24, at 0:14:05`."""
        found = say("{file}, line {line}", file=self.file, line=self.line)
        return say("{source}, at {times}", source=found, times=self.time) if self.time else found


@dataclass(frozen=True, slots=True, kw_only=True)
class Quoted:
    """A passage quoted under a heading or one of its lines, with what the search for it found."""

    heading: str
    under: str
    """What it is quoted under: the heading, or one of its lines."""
    number: int
    """Which of the paragraphs there, counted from 1."""
    words: str
    standing: SearchResult
    citation: int
    """The heading's citation that it was found by or, where it was not, that is to be looked at; counted from 1."""
    place: SourcePlace | None = None
    """Where it stands; where it is not found, the nearest passage, if one is near."""
    is_untimed: bool = False
    """Whether a time is cited of a text that has no time codes."""

    @property
    def is_there(self) -> bool:
        """Whether it stands in the source, at its time or at another."""
        return self.standing in (SearchResult.FOUND, SearchResult.ELSEWHERE)

    @property
    def name(self) -> str:
        """A name within a report: `R1-1`, `R1.2-1`."""
        return f"{self.under}-{self.number}"


def look_up(work: Work, headings: Iterable[Heading], files: Mapping[str, SourceFile]) -> tuple[Quoted, ...]:
    """Every passage quoted under headings of a work and their lines; a heading that cites no source says nothing."""
    return tuple(
        _sought(heading, under, number, words, files)
        for heading in headings
        if heading.sources
        for under, said in _said_under(work, heading)
        for number, words in enumerate(passages_quoted(said), start=1)
    )


def _said_under(work: Work, heading: Heading) -> Iterator[tuple[str, str]]:
    """The words of a heading, and of each of its lines, by what they are quoted under."""
    yield heading.identifier, heading.words
    for line in work.lines:
        if line.heading == heading.identifier:
            yield line.identifier, line.words


Text = tuple[int, Citation, SourceFile, Transcript]
"""A cited source that can be searched: the number of the citation, the citation, the file and its text."""


def _sought(heading: Heading, under: str, number: int, words: str, files: Mapping[str, SourceFile]) -> Quoted:
    pieces = pieces_of(words)
    texts = list(_texts(heading.sources, files))
    sought = Quoted(
        heading=heading.identifier,
        under=under,
        number=number,
        words=words,
        standing=SearchResult.UNSEARCHED,
        citation=1,
    )
    if not pieces:
        return sought
    for at, citation, file, text in texts:
        stretch = _find_at(pieces, text, citation.at)
        if stretch is not None:
            return replace(
                sought,
                standing=SearchResult.FOUND,
                citation=at,
                place=_place(file, text, stretch),
                is_untimed=citation.at is not None and not text.codes,
            )
    for at, _, file, text in texts:
        stretch = find(pieces, text)
        if stretch is not None:
            place = _place(file, text, stretch)
            return replace(sought, standing=SearchResult.ELSEWHERE, citation=at, place=place)
    is_searched = len(texts) == len(heading.sources)
    return _missed(sought, pieces, texts) if is_searched else sought


def _texts(citations: Sequence[Citation], files: Mapping[str, SourceFile]) -> Iterator[Text]:
    for number, citation in enumerate(citations, start=1):
        file = files.get(citation.source)
        if file is not None and file.transcript is not None:
            yield number, citation, file, file.transcript


def _find_at(pieces: Sequence[str], text: Transcript, at: str | None) -> TimedStretch | None:
    if at is None or not text.codes:
        return find(pieces, text)
    try:
        clip = read_clip(at)
    except ValueError:
        return find(pieces, text)
    found = (find(pieces, text, stretch) for stretch in stretches_at(text.codes, clip, len(text.text)))
    return next((stretch for stretch in found if stretch is not None), None)


def _missed(sought: Quoted, pieces: Sequence[str], texts: Sequence[Text]) -> Quoted:
    """A passage that is in none of the sources, with the nearest in any of them, if one is near."""
    missed = replace(sought, standing=SearchResult.NOT_FOUND, citation=texts[0][0])
    for at, _, file, text in texts:
        near = nearest_passage(pieces, text)
        if near is not None:
            return replace(missed, citation=at, place=_place(file, text, near))
    return missed


def _place(file: SourceFile, text: Transcript, stretch: TimedStretch) -> SourcePlace:
    code = code_before(text.codes, stretch.start)
    return SourcePlace(
        source=file.source,
        file=file.name,
        stretch=stretch,
        line=text.text.count("\n", 0, stretch.start) + 1,
        time=code.written if code else "",
        words=" ".join(text.text[stretch.start : stretch.end].split()),
    )
