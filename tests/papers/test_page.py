"""The page stands by itself, is in order for those who listen, and carries no verdict by colour alone."""

from __future__ import annotations

import itertools
import re
from importlib.resources import files

import pytest
from lxml import html

from intent.papers import Evidence, write_report
from intent.variance.result import Variance


@pytest.fixture
def page(variance: Variance, evidence: Evidence) -> html.HtmlElement:
    return html.document_fromstring(write_report(variance, "html", evidence))


@pytest.fixture
def style() -> str:
    return files("intent.papers").joinpath("report.css").read_text(encoding="utf-8")


def test_nothing_is_fetched_or_run(page: html.HtmlElement) -> None:
    assert not page.xpath("//script | //link | //img | //iframe | //object | //*[@src] | //*[@style]")
    assert not page.xpath("//@*[starts-with(name(), 'on')]")
    assert all(target.startswith("#") for target in page.xpath("//@href"))
    assert not re.search(r"url\(|@import", page.xpath("string(//style)"))


def test_links_lead_somewhere_and_names_are_unique(page: html.HtmlElement) -> None:
    names = page.xpath("//@id")
    assert len(names) == len(set(names))
    targets = [target.removeprefix("#") for target in page.xpath("//@href")] + page.xpath(
        "//@aria-labelledby"
    )
    assert set(targets) <= set(names)


def test_headings_and_landmarks_are_in_order(page: html.HtmlElement) -> None:
    """W3C WAI, Page Structure Tutorial: one first heading, no level skipped, a landmark for everything."""
    levels = [int(heading.tag[1]) for heading in page.xpath("//h1 | //h2 | //h3 | //h4")]
    assert [place for place, level in enumerate(levels) if level == 1] == [0]
    assert all(later <= earlier + 1 for earlier, later in itertools.pairwise(levels))
    assert [child.tag for child in page.find("body")] == ["header", "main", "footer"]
    assert [child.tag for child in page.find("body/main")][:3] == ["section", "nav", "section"]
    assert page.get("lang") == "en"
    assert page.xpath("string(//title)") == "Timetable for a Closed Line: Loan to Halmsee – variance report"


def test_every_table_has_headers(page: html.HtmlElement) -> None:
    for table in page.xpath("//table"):
        assert table.xpath("thead/tr/th[@scope='col']")
        assert len(table.xpath("tbody/tr")) == len(table.xpath("tbody/tr/th[@scope='row']"))


def test_the_artist_is_quoted_with_the_source(page: html.HtmlElement) -> None:
    article = page.get_element_by_id("departure-4")
    assert "it is only a timetable" in article.xpath("string(.//blockquote)")
    assert "“Conversation with the artist” (S1, interview), at 00:14:05" in article.xpath(
        "string(.//figcaption)"
    )


def test_every_verdict_is_a_word_and_a_rule_of_its_own(page: html.HtmlElement, style: str) -> None:
    words = [word.text for word in page.xpath("//article//p//*[contains(@class, 'verdict ')]")]
    assert [word.text for word in page.xpath("//table[@class='brief']//strong")] == words
    assert words == ["Breach", "Breach", "Uncovered", "Conditional", "Conditional"]
    rules = re.findall(r"\.verdict\.[\w-]+ \{ border-bottom: (\d+px \w+)", style)
    assert len(rules) == len(set(rules)) == 7


def test_a_short_report_has_no_contents(unchanged: Variance, evidence: Evidence) -> None:
    page = html.document_fromstring(write_report(unchanged, "html", evidence))
    assert not page.xpath("//nav")


def _luminance(colour: str) -> float:
    channels = [int(colour[place : place + 2], 16) / 255 for place in (1, 3, 5)]
    red, green, blue = (c / 12.92 if c <= 0.03928 else ((c + 0.055) / 1.055) ** 2.4 for c in channels)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def test_contrast_is_enough_in_every_scheme(style: str) -> None:
    """WCAG 2.1, success criterion 1.4.3 (AA): 4.5 to 1; relative luminance and ratio as defined there."""
    schemes = [
        dict(re.findall(r"--(\w+): (#\w{6});", block)) for block in re.findall(r":root \{([^}]*)\}", style)
    ]
    found = [scheme for scheme in schemes if "paper" in scheme]
    assert len(found) >= 2
    for scheme in found:
        paper = _luminance(scheme["paper"])
        for name in ("ink", "quiet", "rubric"):
            lighter, darker = sorted((paper, _luminance(scheme[name])), reverse=True)
            assert (lighter + 0.05) / (darker + 0.05) >= 4.5, (name, scheme)
