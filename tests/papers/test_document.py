"""One paper told in three forms: what each makes of the same blocks, and that no words become markup in any."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any

import pytest
from lxml import html

from intent.language.locale import ENGLISH, Locale
from intent.language.message import say
from intent.papers.document import (
    Column,
    Document,
    FactLine,
    Facts,
    FactsRole,
    Items,
    Mark,
    MarkedText,
    PaperSection,
    PaperTable,
    Paragraph,
    Quotation,
    Reference,
    Ruled,
    SectionRole,
)
from intent.papers.inline import AsWritten, Break, Phrase, PhraseRole, Several, Stamp, quiet, strong
from intent.papers.layout import columns_of
from intent.papers.telling import FORMS, tell
from intent.variance.result import Outcome, Verdict

HOSTILE = "<b>*bold*</b> | [x](http://example.org) \x1b[31m"


class Elsewhere(Locale):
    """English words under the tag of another language."""

    tag = "de"


@dataclass(frozen=True, slots=True)
class WrittenInEnglish:
    """A line that only English tells as it was written."""

    def differs_in(self, language: str) -> bool:
        return language != "en"


FIRST = PaperSection(
    title="Left window: rotation",
    anchor="departure-1",
    number=1,
    role=SectionRole.DEPARTURE,
    gist=say("breach"),
    margin=FactLine(say("verdict"), (Stamp(Verdict.BREACH), say("for safety"))),
    blocks=(
        Facts((FactLine(say("documented"), ("upright",)),), FactsRole.VALUES),
        Quotation(
            words="“leave it be”",
            captions=("Ilka Brandvold",),
            references=(
                Reference(
                    name="R2-1",
                    words=say("Found in {place}", place="talk.md, line 3"),
                    brief=say("found at line {line}", line=3),
                    link="passage-R2-1",
                ),
            ),
        ),
        Items((("R2.1 requires it.", AsWritten(WrittenInEnglish(), "As written: rotation of M1")),)),
    ),
)
PAPER = Document(
    title="Timetable for a Closed Line",
    has_contents=True,
    sections=(
        PaperSection(
            title=say("Outcome"),
            anchor="outcome",
            gist=say("to be referred"),
            blocks=(
                Paragraph(
                    (strong("To be asked"), ": departures ", Several((Phrase("1", link="departure-1"),)))
                ),
            ),
        ),
        PaperSection(title=say("Departures, worst first"), anchor="departures", blocks=(FIRST,)),
    ),
)
NEEDS_ROOM = "a sentence that needs more room than a narrow terminal has for it"
QUANTITIES = PaperTable(
    columns=(Column(say("quantity"), 24), Column(say("documented"), 19), Column(say("what it means"))),
    rows=(
        (
            "picture height",
            "unknown, and perhaps immeasurable",
            "a sentence that needs more room than a narrow terminal has for it",
        ),
    ),
)


def of(*blocks: Paragraph | Items | Facts | PaperTable | Ruled | MarkedText) -> Document:
    return Document(title="T", sections=(PaperSection(title="S", anchor="s", blocks=blocks),))


def parsed(paper: Document) -> Any:
    """The root of the page; the stubs of lxml do not tell its methods for HTML."""
    return html.document_fromstring(tell(paper, "html"))


def test_contents_links_and_verdicts_of_a_page() -> None:
    page = parsed(PAPER)
    assert [entry.text_content() for entry in page.xpath("//nav//li/a")] == ["Departures, worst first"]
    first, second, *_ = page.find("body/main")
    assert first.get("id") == "outcome"
    assert second.tag == "nav", "what decides stands before the contents"
    assert page.xpath("//main/section//a/@href") == ["#departure-1", "#passage-R2-1"]
    article = page.get_element_by_id("departure-1")
    assert article.get("class") == "departure"
    assert article.xpath("string(p[@class='margin'])") == "Breachfor safety"
    assert article.xpath(".//strong/@class") == ["verdict breach"]
    assert article.xpath("string(.//figcaption)") == "Ilka BrandvoldFound in talk.md, line 3."


def test_markdown_links_to_headings_and_has_footnotes() -> None:
    told = tell(PAPER, "markdown")
    assert "[1](#1-left-window-rotation)" in told
    assert "- *Verdict:* **Breach**, for safety\n- *Documented:* upright" in told
    assert "> “leave it be”[^R2-1]\n>\n> Ilka Brandvold" in told
    assert told.endswith("## Where the words quoted are found\n\n[^R2-1]: Found in talk.md, line 3.\n")


def test_text_says_the_verdict_first_and_the_place_in_short() -> None:
    told = tell(PAPER, "text")
    assert "1. Left window: rotation\n   verdict       BREACH, for safety\n   documented    upright" in told
    assert "      Ilka Brandvold\n      Found at line 3." in told


@pytest.mark.parametrize("form", FORMS)
def test_a_writer_s_own_line_stands_below_where_it_is_told_otherwise(form: str) -> None:
    assert "As written" not in tell(PAPER, form, ENGLISH)
    assert "As written: rotation of M1" in tell(PAPER, form, Elsewhere())


@pytest.mark.parametrize("form", FORMS)
def test_no_words_become_markup(form: str) -> None:
    code = Phrase(HOSTILE, PhraseRole.CODE)
    cells = (HOSTILE, Break.LINE, quiet(HOSTILE), strong(HOSTILE), code)
    table = PaperTable(columns=(Column(HOSTILE), Column("b")), rows=((cells, HOSTILE),), ticks=(HOSTILE,))
    facts = Facts((FactLine(HOSTILE, (HOSTILE, HOSTILE)),))
    paper = of(Paragraph(cells), Items((cells,)), facts, table, MarkedText(HOSTILE, (), False))
    hostile = replace(paper, title=HOSTILE, foot=HOSTILE, running=HOSTILE)
    told = tell(hostile, form)
    assert "\x1b" not in told
    if form == "html":
        page = parsed(hostile)
        assert not page.xpath("//b | //em | //a")
        assert page.xpath("string(//h1)").startswith("<b>*bold*</b> | [x](http://example.org)")
    elif form == "markdown":
        assert "\\<b\\>\\*bold\\*\\</b\\> \\| \\[x\\](http://example.org)" in told
        rows = [line for line in told.splitlines() if line.startswith("|")]
        assert all(line.replace("\\|", "").replace("` |", "").count("|") == 4 for line in rows[:2])


def test_a_table_stands_in_columns_where_there_is_room() -> None:
    told = tell(of(QUANTITIES), "text", width=100)
    assert "quantity        documented            what it means\n" in told
    assert "picture height  unknown, and perhaps  a sentence that needs more room" in told


def test_a_table_without_room_tells_each_row_by_itself() -> None:
    told = tell(of(QUANTITIES), "text", width=40)
    assert (
        "picture height\n  documented    unknown, and perhaps\n                immeasurable\n  what it means a sentence"
        in told
    )
    assert all(columns_of(line) <= 40 for line in told.splitlines())


@pytest.mark.parametrize("width", [40, 60, 80, 120])
def test_what_is_to_be_filled_in_keeps_to_the_width(width: int) -> None:
    signed = PaperTable(
        columns=(Column("name", 42), Column("signature"), Column("date", 22)), rows=(("Ilka",), ())
    )
    told = tell(of(signed, Ruled(2)), "text", width=width)
    assert told.count("_" * 8) >= 5
    assert all(columns_of(line) <= width for line in told.splitlines())


def test_a_checklist_has_boxes_before_its_rows() -> None:
    table = PaperTable(
        columns=(Column("part", 20), Column("remark")), rows=(("M1",),), ticks=("left", "came")
    )
    row = parsed(of(table)).xpath("//tbody/tr")[0]
    assert [(cell.tag, cell.text_content()) for cell in row] == [
        ("td", "☐"),
        ("td", "☐"),
        ("th", "M1"),
        ("td", ""),
    ]
    assert "| ☐ | ☐ | M1 |   |" in tell(of(table), "markdown")
    assert "☐     ☐     M1    ____" in tell(of(table), "text")


def test_shares_of_the_width_are_rules_of_style_and_not_of_the_cell() -> None:
    page = parsed(of(QUANTITIES))
    assert page.xpath("//col/@class") == ["share-24", "share-19"]
    assert ".share-24 { width: 24%; }" in page.xpath("string(//style)")
    assert not page.xpath("//*[@style]")


def test_marks_that_meet_and_lie_in_each_other_keep_their_names() -> None:
    marks = (Mark(0, 9, "whole"), Mark(4, 9, "end"), Mark(10, 15, "other"))
    page = parsed(of(MarkedText("when it is full", marks, False)))
    assert {one.get("id"): one.text_content() for one in page.iter("mark") if one.get("id")} == {
        "whole": "when",
        "end": " it i",
        "other": " full",
    }
    assert page.xpath("string(//pre)") == "when it is full"


def test_an_outcome_is_told_by_capitals_by_weight_and_by_its_own_style() -> None:
    paper = of(Paragraph(Stamp(Outcome.NOT_ACCEPTABLE)))
    assert "\nNOT ACCEPTABLE\n" in tell(paper, "text")
    assert "\x1b[1m\x1b[31mNOT\x1b[0m" in tell(paper, "text", colour=True)
    assert "**Not acceptable**" in tell(paper, "markdown")
    assert '<strong class="outcome not-acceptable">Not acceptable</strong>' in tell(paper, "html")


def test_an_unknown_form_is_refused() -> None:
    with pytest.raises(ValueError, match="text, markdown, html"):
        tell(PAPER, "pdf")
