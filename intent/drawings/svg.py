"""Elements of a drawing, with numbers rounded so that the same drawing always has the same bytes."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import cast

from lxml import etree

from intent.drawings.plane import Point

SVG = "http://www.w3.org/2000/svg"
Element = etree._Element
_NAMES = cast(dict[str, str], {None: SVG})
"""The names of SVG need no prefix; the types of lxml do not know of that."""
Number = int | float
SANS = "sans-serif"
SERIF = "serif"


def shape(tag: str, *children: Element | Iterable[Element], **attributes: str | Number) -> Element:
    """An element; `_` in an attribute's name stands for `-`, a last one for nothing (`class_`)."""
    made = etree.Element(f"{{{SVG}}}{tag}", nsmap=_NAMES)
    for name, value in attributes.items():
        if value != "":
            made.set(_attribute(name), value if isinstance(value, str) else number(value))
    for child in children:
        if isinstance(child, Element):
            made.append(child)
        else:
            made.extend(child)
    return made


def _attribute(name: str) -> str:
    return name if name in {"viewBox", "patternUnits"} else name.rstrip("_").replace("_", "-")


def printable(text: str) -> str:
    """The text without what no page can hold."""
    return "".join(sign for sign in text if sign.isprintable())


def number(value: Number) -> str:
    """At most two decimals, and no zeros that say nothing."""
    written = f"{value:.2f}".rstrip("0").rstrip(".") if isinstance(value, float) else str(value)
    return "0" if written == "-0" else written


def words(text: str, at: Point, size: float, **attributes: str | Number) -> Element:
    """A line of text in the colour of the page's own text."""
    made = shape("text", x=at[0], y=at[1], font_size=size, fill="currentColor", **attributes)
    made.text = printable(text)
    return made


def line(start: Point, end: Point, width: float, **attributes: str | Number) -> Element:
    return path(f"M{_at(start)}L{_at(end)}", width, **attributes)


def path(data: str, width: float, **attributes: str | Number) -> Element:
    """A drawn line, not filled."""
    return shape("path", d=data, fill="none", stroke="currentColor", stroke_width=width, **attributes)


def solid(data: str, **attributes: str | Number) -> Element:
    """A filled form, without an outline."""
    return shape("path", d=data, **{"fill": "currentColor", **attributes})


def closed(corners: Sequence[Point]) -> str:
    """The path through some corners and back to the first."""
    return "M" + "L".join(_at(corner) for corner in corners) + ("Z" if len(corners) > 2 else "")


def circle(centre: Point, radius: float, width: float, **attributes: str | Number) -> Element:
    look: dict[str, str | Number] = {"fill": "none", "stroke": "currentColor", "stroke_width": width}
    return shape("circle", cx=centre[0], cy=centre[1], r=radius, **{**look, **attributes})


def said_of(tag: str, text: str, name: str) -> Element:
    """A `title` or `desc`: what a reader who does not see the drawing is told."""
    made = shape(tag, id=name)
    made.text = printable(text)
    return made


def _at(point: Point) -> str:
    return f"{number(float(point[0]))} {number(float(point[1]))}"
