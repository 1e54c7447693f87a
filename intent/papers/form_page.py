"""One page that stands by itself, to print and to write on: no script, no network, no fonts."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from importlib.resources import files

from intent.papers.elements import Element, element
from intent.papers.standing_page import head, page_text

STYLE = """
.checklist { table-layout: fixed; }
.checklist .tick { width: 4rem; padding-right: 0.5rem; white-space: nowrap; }
.checklist td.tick { font-size: 1.15rem; line-height: 1; }
.checklist td { height: 2.4rem; overflow-wrap: break-word; }
.checklist tr { break-inside: avoid; }
@media (min-width: 54rem), print {
  header, section, footer { padding-left: 0; }
  section > h2 { position: static; width: auto; border-top: 0; padding-top: 0; }
  section > .body { min-height: 0; }
}
"""
BOX = "☐"


def sheet(title: str, lead: Iterable[str], sections: Iterable[Element], foot: str) -> bytes:
    """The page in UTF-8; the same bytes for the same text."""
    style = files("intent.papers").joinpath("report.css").read_text(encoding="utf-8")
    masthead = element("header", element("h1", title), [element("p", one, class_="occasion") for one in lead])
    body = element("body", masthead, element("main", sections), element("footer", element("p", foot)))
    return page_text(head(title, f"{style}{STYLE}"), body, "en").encode()


@dataclass(frozen=True, slots=True)
class Column:
    """A column of a table to be filled in: its heading, and its share of the width in per cent; 0: what is left."""

    title: str
    share: int = 0


def to_fill(
    ticks: Sequence[str], columns: Sequence[Column], rows: Iterable[Iterable[Element | str]]
) -> Element:
    """A table whose first columns are boxes to tick; cells that a row leaves out are to be written in."""
    heads = [element("th", title, scope="col", class_="tick") for title in ticks]
    for column in columns:
        width = f"width: {column.share}%" if column.share else ""
        heads.append(element("th", column.title, scope="col", style=width))
    body = element("tbody")
    for row in rows:
        cells = [element("td", cell) for cell in row]
        empty = [element("td", "") for _ in range(len(columns) - len(cells))]
        body.append(element("tr", [element("td", BOX, class_="tick") for _ in ticks], cells, empty))
    return element("table", element("thead", element("tr", heads)), body, class_="checklist")
