"""Elements of a page, made so that no text can become markup."""

from __future__ import annotations

import re
from collections.abc import Iterable

from lxml import etree, html

from intent.papers.prose import as_page, shown

Element = etree._Element
_IDENTIFIER = re.compile(r"\b([A-Za-z]\w{0,7}-\d+)\b")
_BREAKABLE = 16
"""Digits of a digest after which a narrow column may break it."""


def element(tag: str, *children: Element | str | Iterable[Element | str], **attributes: str) -> Element:
    """An element with its children; ``class_`` and ``for_`` stand for `class` and `for`, `_` for `-`."""
    made = etree.Element(tag)
    for name, value in attributes.items():
        if value:
            made.set(name.rstrip("_").replace("_", "-"), shown(value))
    for child in children:
        if isinstance(child, (str, Element)):
            _append(made, child)
        else:
            for one in child:
                _append(made, one)
    return made


def _append(parent: Element, child: Element | str) -> None:
    if not isinstance(child, str):
        parent.append(child)
    elif len(parent):
        parent[-1].tail = (parent[-1].tail or "") + shown(child)
    else:
        parent.text = (parent.text or "") + shown(child)


def prose(markdown: str) -> list[Element]:
    """A writer's Markdown as elements."""
    rendered = as_page(markdown).strip()
    return (
        [part for part in html.fragments_fromstring(rendered) if not isinstance(part, str)]
        if rendered
        else []
    )


def unbroken(text: str) -> list[Element | str]:
    """The text with its hyphenated identifiers (`E-01`) held together on one line."""
    pieces = _IDENTIFIER.split(text)
    return [
        element("span", piece, class_="whole") if place % 2 else piece for place, piece in enumerate(pieces)
    ]


def digest(text: str) -> Element:
    """A digest that may break after every so many digits."""
    made = element("code")
    for start in range(0, len(text), _BREAKABLE):
        if start:
            made.append(element("wbr"))
        _append(made, text[start : start + _BREAKABLE])
    return made
