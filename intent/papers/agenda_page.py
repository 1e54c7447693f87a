"""The agenda as one page that stands by itself, to print and to write on: no script, no network, no fonts."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from importlib.resources import files

from intent.analysis.questions.question import Agenda, PersonSheet, Question
from intent.papers.agenda import (
    LINES,
    MEASURE,
    NOTHING,
    near_words,
    occasion_words,
    sheet_title,
    weight_words,
    why_words,
)
from intent.papers.elements import Element, element, unbroken
from intent.papers.standing_page import head, page_text

STYLE = """
.sheets { padding-left: 0; list-style: none; counter-reset: question; }
.question { margin-bottom: 2.5rem; break-inside: avoid; }
.line { height: 2.2rem; margin: 0; border-bottom: 1px solid var(--rule); }
@media print { section + section { break-before: page; } }
"""


def write_page(agenda: Agenda) -> str:
    """The whole page as text."""
    title = f"{agenda.work.title}: what to ask"
    style = files("intent.papers").joinpath("report.css").read_text("utf-8")
    header = element("header", element("h1", title), element("p", occasion_words(agenda), class_="occasion"))
    sheets = [_sheet(agenda, number, sheet) for number, sheet in enumerate(agenda.sheets, 1)]
    footer = element("footer", element("p", MEASURE if agenda.count else NOTHING))
    body = element("body", header, element("main", sheets), footer)
    return page_text(head(title, f"{style}{STYLE}"), body, "en")


def _sheet(agenda: Agenda, number: int, sheet: PersonSheet) -> Element:
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
