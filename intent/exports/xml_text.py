"""XML for exports: a tree of plain data, written as text that is the same each time.

A tree says what an element holds; what is empty is left away. Source of what a text may hold: W3C, Extensible
Markup Language (XML) 1.0, fifth edition, section 2.2.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from lxml import etree

_NOT_OF_XML = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
XML = "http://www.w3.org/XML/1998/namespace"
XSI = "http://www.w3.org/2001/XMLSchema-instance"


@dataclass(frozen=True, slots=True)
class Element:
    """An element with its attributes, and with a text or elements in it. Names are `{namespace}local`, or local."""

    name: str
    content: str | tuple[Element, ...]
    attributes: Mapping[str, str] = field(default_factory=dict)


Content = Element | Iterable[Element] | None


def holding(name: str, *content: Content, **attributes: str) -> Element | None:
    """An element that holds others, or nothing where there are none."""
    found: list[Element] = []
    for one in content:
        if isinstance(one, Element):
            found.append(one)
        elif one is not None:
            found.extend(one)
    return Element(name, tuple(found), attributes) if found else None


def saying(name: str, text: str, **attributes: str) -> Element | None:
    """An element that holds a text, or nothing where the text is empty."""
    return Element(name, text, {key: value for key, value in attributes.items() if value}) if text else None


def written(root: Element, namespaces: Mapping[str, str], attribute_namespace: str | None = None) -> bytes:
    """The document in UTF-8, indented by two; names without a namespace are in that of the first prefix.

    Attributes without a namespace of their own are in ``attribute_namespace``.
    """
    own = next(iter(namespaces.values()))
    made = _made(root, own, attribute_namespace, namespaces)
    etree.indent(made, "  ")
    text: bytes = etree.tostring(made, encoding="UTF-8", xml_declaration=True)
    return text + b"\n"


def _made(
    element: Element, own: str, of_attributes: str | None, namespaces: Mapping[str, str]
) -> etree._Element:
    made = etree.Element(_qualified(element.name, own), nsmap=dict(namespaces))
    for name, value in sorted(element.attributes.items()):
        made.set(_qualified(name, of_attributes), _clean(value))
    if isinstance(element.content, str):
        made.text = _clean(element.content)
    else:
        made.extend([_made(one, own, of_attributes, namespaces) for one in element.content])
    return made


def _qualified(name: str, namespace: str | None) -> str:
    return name if name.startswith("{") or namespace is None else f"{{{namespace}}}{name}"


def _clean(text: str) -> str:
    """A text without the characters that no XML can hold; each becomes the sign for what cannot be shown."""
    return _NOT_OF_XML.sub("�", text)
