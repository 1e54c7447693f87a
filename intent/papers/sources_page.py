"""The sources on the page: each text with the passages quoted from it marked, so that a quotation can lead there."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from intent.language.message import Tongue
from intent.papers.elements import Element, element, prose
from intent.papers.excerpts import Excerpt, excerpts, left_out
from intent.reading.evidence.passages import Passages, SourceText
from intent.reading.evidence.quoting import Quoted

_FIRST_MARK = 0xE000
_MARKS = re.compile("([\ue000-\uf8ff])")
"""Signs for private use stand in a text for where passages begin and end while it becomes a page."""
_MOST = 3000
"""How many passages of one source are marked."""


@dataclass(slots=True)
class _Marking:
    """The passages that are open at a place, as a text is gone through."""

    names: Sequence[str]
    open: list[str] = field(default_factory=list)
    unnamed: list[str] = field(default_factory=list)

    def pieces(self, text: str | None) -> Iterator[Element | str]:
        for piece in _MARKS.split(text or ""):
            if _MARKS.fullmatch(piece):
                self._turn(ord(piece) - _FIRST_MARK)
            elif piece and self.open:
                yield self._marked(piece)
            elif piece:
                yield piece

    def _turn(self, sign: int) -> None:
        name = self.names[sign // 2]
        if sign % 2:
            self.open.remove(name)
        else:
            self.open.append(name)
            self.unnamed.append(name)

    def _marked(self, text: str) -> Element:
        """A mark, which has the name of the passage that begins here; where several do, one in another."""
        names, self.unnamed = self.unnamed or [""], []
        made = element("mark", text, id=names[-1])
        for name in reversed(names[:-1]):
            made = element("mark", made, id=name)
        return made


def sources_section(passages: Passages, tongue: Tongue) -> Iterator[Element]:
    """Each source that is quoted, with its text; one that stays in the house is only named."""
    for source in passages.sources:
        quoted = passages.within(source.identifier)
        yield element(
            "article",
            element("h3", f"{source.identifier} {source.title}", id=f"source-{source.identifier}-title"),
            element("p", source.file, class_="quiet"),
            list(_content(source, quoted, tongue)),
            id=f"source-{source.identifier}",
            class_="source",
            aria_labelledby=f"source-{source.identifier}-title",
        )


def is_shown(passages: Passages, quoted: Quoted) -> bool:
    """Whether a passage is marked in the text of its source on the page."""
    place = quoted.place
    return (
        quoted.is_there
        and place is not None
        and any(one.identifier == place.source and one.text for one in passages.sources)
    )


def passage_name(quoted: Quoted) -> str:
    return f"passage-{quoted.name}"


def _content(source: SourceText, quoted: Sequence[Quoted], tongue: Tongue) -> Iterator[Element]:
    if source.is_internal:
        yield _remark(tongue.say("Kept in the house; its text is not part of this report."))
    elif not source.text:
        yield _remark(tongue.say("Not a text; see the file."))
    elif not quoted:
        yield _remark(tongue.say("Nothing that is quoted here was found in it."))
    else:
        yield from _excerpted(source, quoted[:_MOST], tongue)


def _remark(text: str) -> Element:
    return element("p", text, class_="quiet")


def _excerpted(source: SourceText, quoted: Sequence[Quoted], tongue: Tongue) -> Iterator[Element]:
    spans = [(one.place.stretch.start, one.place.stretch.end) for one in quoted if one.place]
    shown = excerpts(source.text, spans)
    missing = left_out(source.text, shown)
    if missing:
        yield _remark(
            tongue.say(
                "Cut to the surroundings of what is quoted: {number} of {whole} characters are left out.",
                number=_counted(missing),
                whole=_counted(len(source.text)),
            )
        )
    marking = _Marking([passage_name(one) for one in quoted])
    end = 0
    for excerpt in shown:
        if excerpt.start > end:
            yield _cut(excerpt.start - end, tongue)
        yield _body(source, _signed(source.text, excerpt, spans), marking)
        end = excerpt.end
    if end < len(source.text):
        yield _cut(len(source.text) - end, tongue)


def _signed(text: str, excerpt: Excerpt, spans: Sequence[tuple[int, int]]) -> str:
    """The excerpt with a sign where each passage in it begins and ends; such signs of the text itself are replaced."""
    turns = [
        (place, 1 - is_end, 2 * number + is_end)
        for number, span in enumerate(spans)
        for is_end, place in enumerate(span)
        if excerpt.start <= span[0] and span[1] <= excerpt.end
    ]
    pieces, start = [], excerpt.start
    for place, _, sign in sorted(turns):
        pieces += [_without_signs(text[start:place]), chr(_FIRST_MARK + sign)]
        start = place
    return "".join([*pieces, _without_signs(text[start : excerpt.end])])


def _without_signs(text: str) -> str:
    return _MARKS.sub("\N{REPLACEMENT CHARACTER}", text)


def _body(source: SourceText, signed: str, marking: _Marking) -> Element:
    if not source.is_markdown:
        return element("pre", marking.pieces(signed))
    return element("div", [_marked(part, marking) for part in prose(signed)], class_="prose")


def _marked(node: Element, marking: _Marking) -> Element:
    made = element(str(node.tag), _inner(node, marking))
    made.attrib.update(node.attrib)
    return made


def _inner(node: Element, marking: _Marking) -> Iterator[Element | str]:
    yield from marking.pieces(node.text)
    for child in node:
        yield _marked(child, marking)
        yield from marking.pieces(child.tail)


def _cut(length: int, tongue: Tongue) -> Element:
    told = tongue.say("[{number} characters are left out here]", number=_counted(length))
    return element("p", told, class_="cut")


def _counted(number: int) -> str:
    return f"{number:,}".replace(",", "\N{NARROW NO-BREAK SPACE}")
