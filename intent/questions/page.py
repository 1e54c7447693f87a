"""The agenda as one page that stands by itself, to print and to write on: no script, no network, no fonts."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from importlib.resources import files

from lxml import html

from intent.questions.question import Agenda, Question, Sheet
from intent.questions.telling import (
    LINES,
    MEASURE,
    NOTHING,
    near_words,
    occasion_words,
    sheet_title,
    weight_words,
    why_words,
)
from intent.reports.elements import Element, element, unbroken
from intent.reports.html import POLICY

STYLE = """
.sheets { padding-left: 0; list-style: none; counter-reset: question; }
.question { margin-bottom: 2.5rem; break-inside: avoid; }
.line { height: 2.2rem; margin: 0; border-bottom: 1px solid var(--rule); }
@media print { section + section { break-before: page; } }
"""


def write_page(agenda: Agenda) -> str:
    """The whole page as text."""
    title = f"{agenda.work.title}: what to ask"
    head = element(
        "head",
        element("meta", charset="utf-8"),
        element("meta", http_equiv="Content-Security-Policy", content=POLICY),
        element("meta", name="viewport", content="width=device-width, initial-scale=1"),
        element("meta", name="color-scheme", content="light dark"),
        element("title", title),
        element("style", f"\n{files('intent.reports').joinpath('report.css').read_text('utf-8')}{STYLE}"),
    )
    header = element("header", element("h1", title), element("p", occasion_words(agenda), class_="occasion"))
    sheets = [_sheet(agenda, number, sheet) for number, sheet in enumerate(agenda.sheets, 1)]
    footer = element("footer", element("p", MEASURE if agenda.count else NOTHING))
    page = element("html", head, element("body", header, element("main", sheets), footer), lang="en")
    text: str = html.tostring(page, encoding="unicode", doctype="<!DOCTYPE html>", pretty_print=True)
    return text


def _sheet(agenda: Agenda, number: int, sheet: Sheet) -> Element:
    name = f"sheet-{number}"
    near = near_words(agenda, sheet)
    articles = [
        _question(place, question, near[place - 1]) for place, question in enumerate(sheet.questions, 1)
    ]
    return element(
        "section",
        element("h2", sheet_title(agenda, sheet), id=name),
        element("div", articles, class_="body"),
        aria_labelledby=name,
    )


def _question(number: int, question: Question, near: Iterable[tuple[str, str]]) -> Element:
    lines = [element("div", class_="line") for _ in range(LINES)]
    return element(
        "article",
        element("h3", f"{number}. {question.text}"),
        _beneath(question, near),
        lines,
        class_="question",
    )


def _beneath(question: Question, near: Iterable[tuple[str, str]]) -> Iterator[Element]:
    why = element(
        "p", unbroken(why_words(question)), element("span", f" {weight_words(question)}", class_="quiet")
    )
    yield why
    known = [element("li", unbroken(text)) for text in question.known]
    for instruction, words in near:
        quotation = [element("br"), element("span", words, class_="quiet")] if words else []
        known.append(element("li", unbroken(instruction), quotation))
    if known:
        yield element("p", "Known so far:", class_="leadin")
        yield element("ul", known)
