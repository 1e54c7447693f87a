"""A stretch of a source's text on a page, with what is quoted from it marked."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from intent.papers.document import Mark, MarkedText
from intent.papers.elements import Element, element, prose

_FIRST_SIGN = 0xE000
_SIGNS = re.compile("([\ue000-\uf8ff])")
"""Signs for private use stand in a text for where passages begin and end, while it becomes a page."""
MOST = 3000
"""So many marks of one text have signs of their own."""


@dataclass(slots=True)
class _Marking:
    """The passages that are open at a place, as a text is gone through."""

    marks: Sequence[Mark]
    open: list[str] = field(default_factory=list)
    unnamed: list[str] = field(default_factory=list)

    def pieces(self, text: str | None) -> Iterator[Element | str]:
        for piece in _SIGNS.split(text or ""):
            if _SIGNS.fullmatch(piece):
                self._turn(ord(piece) - _FIRST_SIGN)
            elif piece and self.open:
                yield self._marked(piece)
            elif piece:
                yield piece

    def _turn(self, sign: int) -> None:
        anchor = self.marks[sign // 2].anchor
        if sign % 2:
            self.open.remove(anchor)
        else:
            self.open.append(anchor)
            self.unnamed.append(anchor)

    def _marked(self, text: str) -> Element:
        """A mark, which has the name of the passage that begins here; where several do, one in another."""
        names, self.unnamed = self.unnamed or [""], []
        made = element("mark", text, id=names[-1])
        for name in reversed(names[:-1]):
            made = element("mark", made, id=name)
        return made


def marked(stretch: MarkedText) -> Element:
    """The text as it is, or as the page that its Markdown makes."""
    marks = stretch.marks[:MOST]
    marking = _Marking(marks)
    signed = _signed(stretch.text, marks)
    if not stretch.is_markdown:
        return element("pre", marking.pieces(signed))
    return element("div", [_copied(part, marking) for part in prose(signed)], class_="prose")


def _signed(text: str, marks: Sequence[Mark]) -> str:
    """The text with a sign where each passage in it begins and ends; such signs of the text itself are replaced."""
    turns = [
        (place, 1 - is_end, 2 * number + is_end)
        for number, mark in enumerate(marks)
        for is_end, place in enumerate((mark.start, mark.end))
    ]
    pieces, start = [], 0
    for place, _, sign in sorted(turns):
        pieces += [_without_signs(text[start:place]), chr(_FIRST_SIGN + sign)]
        start = place
    return "".join([*pieces, _without_signs(text[start:])])


def _without_signs(text: str) -> str:
    return _SIGNS.sub("\N{REPLACEMENT CHARACTER}", text)


def _copied(node: Element, marking: _Marking) -> Element:
    made = element(str(node.tag), _inner(node, marking))
    made.attrib.update(node.attrib)
    return made


def _inner(node: Element, marking: _Marking) -> Iterator[Element | str]:
    yield from marking.pieces(node.text)
    for child in node:
        yield _copied(child, marking)
        yield from marking.pieces(child.tail)
