"""A page that stands by itself: no script, no network, no fonts; its head, its sections, and its text."""

from __future__ import annotations

from collections.abc import Iterable

from lxml import html

from intent.papers.elements import Element, element

POLICY = "default-src 'none'; style-src 'unsafe-inline'"
"""W3C Content Security Policy: the page can fetch nothing and run nothing, whatever is in it."""


def head(title: str, style: str, *, is_dark_too: bool = True, created: str = "") -> Element:
    """The head of a page in a style of its own; ``created`` is the day on which what it tells was written."""
    return element(
        "head",
        element("meta", charset="utf-8"),
        element("meta", http_equiv="Content-Security-Policy", content=POLICY),
        element("meta", name="viewport", content="width=device-width, initial-scale=1"),
        [element("meta", name="color-scheme", content="light dark")] if is_dark_too else [],
        [element("meta", name="dcterms.created", content=created)] if created else [],
        element("title", title),
        element("style", f"\n{style}"),
    )


def section(name: str, title: str, *content: Element | Iterable[Element]) -> Element:
    """A section with its heading; the name is its anchor."""
    body = element("div", *content, class_="body")
    return element(
        "section", element("h2", title, id=f"{name}-title"), body, id=name, aria_labelledby=f"{name}-title"
    )


def page_text(head: Element, body: Element, language: str, *, is_indented: bool = True) -> str:
    """The whole page as text."""
    page = element("html", head, body, lang=language)
    text: str = html.tostring(page, encoding="unicode", doctype="<!DOCTYPE html>", pretty_print=is_indented)
    return text
