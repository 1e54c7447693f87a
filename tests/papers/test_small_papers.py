"""What holds of every paper that is not the variance report, whatever it tells and in whichever language."""

from __future__ import annotations

import datetime
import itertools
import re
import shutil
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest
from lxml import html

from intent import verbs
from intent.language.languages import locale_of
from intent.papers import Evidence
from intent.papers.annex import annex_paper
from intent.papers.document import Document
from intent.papers.packing_list import ListedFile, packing_paper
from intent.papers.telling import tell
from intent.redaction.withholding import WithheldKind
from intent.variance.result import Variance

WORK = Path(__file__).parents[2] / "examples" / "kestrel-held" / "work.md"
DAY = datetime.date(2027, 3, 1)
LANGUAGES = ("en", "de", "fr")
NAMES = ("agenda", "history", "explanation", "comparison", "words", "one word", "annex", "packing list")


@pytest.fixture(scope="module")
def told_of_example(tmp_path_factory: pytest.TempPathFactory) -> Mapping[str, Document]:
    """The papers about a work, and a later state of it in which the first instruction says something else."""
    later = tmp_path_factory.mktemp("later") / WORK.parent.name
    shutil.copytree(WORK.parent, later)
    before = WORK.read_text(encoding="utf-8")
    (later / WORK.name).write_text(before.replace("at most 1.7 m", "at most 1.6 m"), encoding="utf-8")
    return {
        "agenda": verbs.questions(WORK, DAY).paper,
        "history": verbs.history(WORK).paper,
        "explanation": verbs.explain(WORK, on=DAY).paper,
        "comparison": verbs.compare(WORK, later / WORK.name).paper,
        "words": verbs.terms().paper,
        "one word": verbs.terms("video").paper,
    }


@pytest.fixture
def paper(
    request: pytest.FixtureRequest,
    told_of_example: Mapping[str, Document],
    variance: Variance,
    evidence: Evidence,
) -> Document:
    files = (ListedFile(identifier="S1", name="sources/talk.md", size=9),)
    here = {
        "annex": annex_paper(variance, evidence, tuple(WithheldKind)),
        "packing list": packing_paper(variance.work, files, (), version="0", day=DAY),
    }
    return {**told_of_example, **here}[request.param]


def page_of(paper: Document, language: str) -> Any:
    """The page as a tree; what an XPath finds in it has no type that says more."""
    return html.document_fromstring(tell(paper, "html", locale_of(language)))


every_paper = pytest.mark.parametrize("paper", NAMES, indirect=True)
every_language = pytest.mark.parametrize("language", LANGUAGES)


@every_paper
@every_language
def test_a_page_stands_by_itself(paper: Document, language: str) -> None:
    page = page_of(paper, language)
    names = page.xpath("//@id")
    assert len(names) == len(set(names))
    assert {target.removeprefix("#") for target in page.xpath("//@href")} <= set(names)
    assert not page.xpath("//script | //link | //img | //iframe | //object | //*[@src] | //*[@style]")
    assert page.get("lang") == language


@every_paper
@every_language
def test_a_page_has_headings_in_order_and_nothing_empty(paper: Document, language: str) -> None:
    """W3C WAI, Page Structure Tutorial: one first heading, no level skipped."""
    page = page_of(paper, language)
    levels = [int(heading.tag[1]) for heading in page.xpath("//h1 | //h2 | //h3 | //h4")]
    assert [place for place, level in enumerate(levels) if level == 1] == [0]
    assert all(later <= earlier + 1 for earlier, later in itertools.pairwise(levels))
    assert page.xpath("//body//text()[normalize-space()]")
    for told in page.xpath("//h1 | //h2 | //h3 | //p | //li | //dt | //dd | //th[@scope='col']"):
        assert told.text_content().strip()
        assert told.xpath("node()")[0] is not told.find("br")


@every_paper
@every_language
def test_markdown_has_no_empty_item(paper: Document, language: str) -> None:
    text = tell(paper, "markdown", locale_of(language))
    assert text.startswith("# ")
    assert not re.search(r"^\s*-\s*\\?$", text, re.MULTILINE)


@every_paper
def test_each_language_tells_it_in_words_of_its_own(paper: Document) -> None:
    assert len({tell(paper, "text", locale_of(language)) for language in LANGUAGES}) == len(LANGUAGES)


@every_paper
def test_no_line_is_wider_than_asked(paper: Document) -> None:
    for line in tell(paper, "text", width=60).splitlines():
        assert len(line) <= 60 or " " not in line.strip()
