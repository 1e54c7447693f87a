"""XML for exports: a tree of plain data, written as text that is the same each time.

A tree says what an element holds; what is empty is left away. Source of what a text may hold: W3C, Extensible
Markup Language (XML) 1.0, fifth edition, section 2.2.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import TypeAlias

from lxml import etree

_NOT_OF_XML = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
XML = "http://www.w3.org/XML/1998/namespace"
XSI = "http://www.w3.org/2001/XMLSchema-instance"


@dataclass(frozen=True, slots=True)
class XmlElement:
    """An element with its attributes, and with a text or elements in it. Names are `{namespace}local`, or local."""

    name: str
    content: str | tuple[XmlElement, ...]
    attributes: Mapping[str, str] = field(default_factory=dict)


Content: TypeAlias = "XmlElement | Iterable[Content] | None"
"""What an element may hold: another, nothing, or several, as they come."""


def branch(name: str, *content: Content, **attributes: str) -> XmlElement | None:
    """An element that holds others, or nothing where there are none."""
    found = tuple(_elements(content))
    return XmlElement(name, found, attributes) if found else None


def _elements(content: Content) -> Iterator[XmlElement]:
    if isinstance(content, XmlElement):
        yield content
    elif content is not None:
        for one in content:
            yield from _elements(one)


def leaf(name: str, text: str, **attributes: str) -> XmlElement | None:
    """An element that holds a text, or nothing where the text is empty."""
    return (
        XmlElement(name, text, {key: value for key, value in attributes.items() if value}) if text else None
    )


def present(element: XmlElement | None) -> XmlElement:
    """An element that is known to hold something."""
    if element is None:
        raise ValueError("an element of the record is empty")
    return element


def xml_bytes(
    root: XmlElement, namespaces: Mapping[str, str], attribute_namespace: str | None = None
) -> bytes:
    """The document in UTF-8, indented by two; names without a namespace are in that of the first prefix.

    Attributes without a namespace of their own are in ``attribute_namespace``.
    """
    own = next(iter(namespaces.values()))
    made = _made(root, own, attribute_namespace, namespaces)
    etree.indent(made, "  ")
    text: bytes = etree.tostring(made, encoding="UTF-8", xml_declaration=True)
    return text + b"\n"


def _made(
    element: XmlElement, own: str, of_attributes: str | None, namespaces: Mapping[str, str]
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
