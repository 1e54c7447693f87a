"""One page that stands by itself, to print and to write on: no script, no network, no fonts."""

from __future__ import annotations

from collections.abc import Iterable
from importlib.resources import files

from lxml import html

from intent.reports.elements import Element, element
from intent.reports.html import POLICY

STYLE = """
.tick { width: 2.2rem; text-align: center; }
.sign { min-width: 12rem; }
td.sign, td.tick { height: 2.4rem; }
tr { break-inside: avoid; }
"""
BOX = "☐"


def sheet(title: str, lead: Iterable[str], sections: Iterable[Element], foot: str) -> bytes:
    """The page in UTF-8; the same bytes for the same text."""
    style = files("intent.reports").joinpath("report.css").read_text(encoding="utf-8")
    head = element(
        "head",
        element("meta", charset="utf-8"),
        element("meta", http_equiv="Content-Security-Policy", content=POLICY),
        element("meta", name="viewport", content="width=device-width, initial-scale=1"),
        element("meta", name="color-scheme", content="light dark"),
        element("title", title),
        element("style", f"\n{style}{STYLE}"),
    )
    masthead = element("header", element("h1", title), [element("p", one, class_="occasion") for one in lead])
    body = element("body", masthead, element("main", sections), element("footer", element("p", foot)))
    page = element("html", head, body, lang="en")
    text: str = html.tostring(page, encoding="unicode", doctype="<!DOCTYPE html>", pretty_print=True)
    return text.encode()


def section(name: str, title: str, content: Iterable[Element]) -> Element:
    """A section with its heading; the name is its anchor."""
    heading = element("h2", title, id=f"{name}-title")
    body = element("div", content, class_="body")
    return element("section", heading, body, id=name, aria_labelledby=f"{name}-title")


def to_fill(header: Iterable[str], rows: Iterable[Iterable[Element | str]], boxes: int = 1) -> Element:
    """A table whose first columns are boxes to tick, and whose last two are to be signed and dated."""
    head = element("thead", element("tr", [element("th", title, scope="col") for title in header]))
    body = element("tbody")
    for row in rows:
        ticks = [element("td", BOX, class_="tick") for _ in range(boxes)]
        cells = [element("td", cell) for cell in row]
        signs = [element("td", "", class_="sign"), element("td", "", class_="sign")]
        body.append(element("tr", ticks, cells, signs))
    return element("table", head, body, class_="checklist")
