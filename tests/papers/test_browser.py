"""The report and the cards in a real browser: silent, self-contained, accessible, and within the page.

Needs Chromium; skips, saying so, where there is none.
"""

from __future__ import annotations

import datetime
import io
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

import pypdf
import pytest
from axe_playwright_python.sync_playwright import Axe
from examples_read import EXAMPLES, checked
from playwright.sync_api import Browser, Page, sync_playwright

from intent import verbs

CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser") or shutil.which("google-chrome")
QUIET = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
)
PROPOSALS = {
    "farms": "low-farms/installations/2027-halmsee-loan.md",
    "kestrel": "kestrel-held/installations/2027-hall-of-birds.md",
    "delivery": "second-delivery/installations/2027-maarholm-loan.md",
}
DAY = datetime.date(2026, 11, 25)
PHONE, DESK = 360, 1440
pytestmark = [
    pytest.mark.browser,
    pytest.mark.skipif(CHROMIUM is None, reason="there is no Chromium here"),
]


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    with sync_playwright() as player:
        started = player.chromium.launch(executable_path=CHROMIUM, args=list(QUIET))
        yield started
        started.close()


@pytest.fixture(scope="module", params=PROPOSALS.values(), ids=list(PROPOSALS))
def report_file(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("page") / "report.html"
    path.write_text(verbs.report(checked(EXAMPLES / request.param), "html", date=DAY), encoding="utf-8")
    return path


@pytest.fixture(scope="module", params=PROPOSALS.values(), ids=list(PROPOSALS))
def cards_file(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("cards") / "cards.html"
    path.write_text(verbs.cards(EXAMPLES / request.param)[0], encoding="utf-8")
    return path


@dataclass(frozen=True)
class Shown:
    """A page in the browser, opened once for all that is asked of it."""

    page: Page
    said: list[str]
    """What the console said."""
    asked: list[str]
    """What was asked for beside the page itself."""

    def on(self, width: int, scheme: Literal["light", "dark"] = "light") -> Page:
        self.page.set_viewport_size({"width": width, "height": 900})
        self.page.emulate_media(color_scheme=scheme)
        return self.page


@contextmanager
def opened(browser: Browser, path: Path) -> Iterator[Shown]:
    page = browser.new_context(bypass_csp=True).new_page()
    shown = Shown(page, [], [])
    page.on("console", lambda message: shown.said.append(message.text))
    page.on("pageerror", lambda error: shown.said.append(str(error)))
    page.on("request", lambda request: shown.asked.append(request.url))
    page.goto(path.as_uri())
    shown.asked.remove(path.as_uri())
    yield shown
    page.context.close()


@pytest.fixture(scope="module")
def report(browser: Browser, report_file: Path) -> Iterator[Shown]:
    with opened(browser, report_file) as shown:
        yield shown


@pytest.fixture(scope="module")
def cards(browser: Browser, cards_file: Path) -> Iterator[Shown]:
    with opened(browser, cards_file) as shown:
        yield shown


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [PHONE, DESK])
def test_the_report_is_silent_within_the_page_and_accessible(
    report: Shown, width: int, scheme: Literal["light", "dark"]
) -> None:
    """Rules of axe-core for WCAG 2.2, A and AA, contrast among them."""
    page = report.on(width, scheme)
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    found = Axe().run(page, options={"runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]})
    assert found.violations_count == 0, found.generate_report()
    assert (report.said, report.asked) == ([], [])


@pytest.mark.parametrize("width", [PHONE, 900, DESK])
def test_drawings_lie_within_the_page_documented_first(report: Shown, width: int) -> None:
    """Beside each other on a desk, one under the other on a phone; what decides comes before, all else after."""
    page = report.on(width)
    boxes = page.evaluate(
        "[...document.querySelectorAll('#drawings svg')].filter(one => one.getClientRects().length)"
        ".map(one => { const box = one.getBoundingClientRect(); return [box.left, box.right, box.top, box.bottom] })"
    )
    assert len(boxes) >= 4
    assert all(left >= 0 and right <= width for left, right, _, _ in boxes)
    first, second = boxes[:2]
    assert (first[1] <= second[0]) if width == DESK else (first[3] <= second[2])
    order = page.evaluate("[...document.querySelectorAll('main > section')].map(one => one.id)")
    assert order[:2] == ["outcome", "drawings"]
    assert order.index("proposal") < order.index("departures") < order.index("evidence")


def test_in_print_the_two_states_stand_beside_each_other_at_their_size(report: Shown) -> None:
    """Each whole drawing once, as wide as it says, between the margins of A4: 174 mm, or 269 mm laid on its side."""
    millimetre = 96 / 25.4
    page = report.on(DESK)
    is_broad = bool(page.evaluate("document.querySelectorAll('#drawings .broad').length"))
    between, wide = (269, 120) if is_broad else (174, 82)
    page = report.on(round(between * millimetre))
    page.emulate_media(media="print")
    boxes = page.evaluate(
        "[...document.querySelectorAll('#drawings figure > .pair:not(.details *) svg')]"
        ".filter(one => one.getClientRects().length)"
        ".map(one => { const box = one.getBoundingClientRect(); return [box.left, box.right, box.top] })"
    )
    page.emulate_media(media="null")
    assert len(boxes) == 5, "plan and elevation of both states, and one legend"
    for documented, proposed in (boxes[:2], boxes[3:]):
        assert documented[2] == pytest.approx(proposed[2], abs=0.5)
        assert documented[1] <= proposed[0]
    for left, right, _ in boxes:
        assert right - left == pytest.approx(wide * millimetre, abs=0.5)
        assert right <= between * millimetre + 1


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_the_report_prints_on_numbered_pages(report: Shown, paper: str) -> None:
    page = report.on(DESK)
    printed = pypdf.PdfReader(io.BytesIO(page.pdf(format=paper))).pages
    assert 6 <= len(printed) <= 24
    title = str(page.evaluate("document.querySelector('h1').textContent"))
    for number, sheet in enumerate(printed, start=1):
        text = sheet.extract_text()
        assert f"{number} of {len(printed)}" in text
        assert title in " ".join(text.split())


def test_cards_are_silent_and_accessible(cards: Shown) -> None:
    page = cards.on(DESK)
    found = Axe().run(page, options={"runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa"]})
    assert found.violations_count == 0, found.generate_report()
    assert (cards.said, cards.asked) == ([], [])


def test_everything_on_a_card_is_within_it(cards: Shown) -> None:
    """What a card tells ends above its foot, and its heading ends before the code, or else its edge."""
    page = cards.on(DESK)
    over = page.evaluate(
        "[...document.querySelectorAll('.card')].filter(card =>"
        " card.querySelector('.told').lastElementChild.getBoundingClientRect().bottom >"
        " card.querySelector('footer').getBoundingClientRect().top"
        " || card.querySelector('footer').lastElementChild.getBoundingClientRect().bottom >"
        " card.getBoundingClientRect().bottom"
        " || card.querySelector('.name').getBoundingClientRect().right >"
        " (card.querySelector('.code') || card).getBoundingClientRect()[card.querySelector('.code') ? 'left' : 'right']"
        ").map(card => card.querySelector('h2').textContent)"
    )
    assert over == []


def test_cards_fit_a_phone_and_print_four_to_a_sheet(cards: Shown) -> None:
    page = cards.on(PHONE)
    number = len(page.query_selector_all(".card"))
    assert page.evaluate("document.documentElement.scrollWidth") <= PHONE
    printed = pypdf.PdfReader(io.BytesIO(page.pdf(prefer_css_page_size=True))).pages
    assert len(printed) == -(-number // 4)


def test_the_first_screen_has_all_that_decides(report: Shown) -> None:
    """On the smallest common screen of a desk, 1366 by 768: outcome, who is asked, obstacles, a line a departure."""
    page = report.on(1366)
    assert page.evaluate("document.querySelector('#outcome').getBoundingClientRect().bottom") <= 768


@pytest.mark.parametrize(
    "file",
    ["low-farms/installations/2025-port-imbrie.md", "second-delivery/installations/2025-light-festival.md"],
)
def test_all_that_many_people_are_asked_is_on_the_first_screen(
    browser: Browser, file: str, tmp_path: Path
) -> None:
    """Two proposals with so much wrong that not all points fit: whoever is asked, and for what, does."""
    page = tmp_path / "report.html"
    page.write_text(verbs.report(checked(EXAMPLES / file), "html", date=DAY), encoding="utf-8")
    with opened(browser, page) as shown:
        bottoms = shown.on(1366).evaluate(
            "[...document.querySelectorAll('#asked dt, #asked dd')].map(e => e.getBoundingClientRect().bottom)"
        )
    assert len(bottoms) > 10
    assert max(bottoms) <= 768
