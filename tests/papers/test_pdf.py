"""Pages as PDF: of the paper asked for, tagged, the same every time, and without a look outside."""

from __future__ import annotations

import datetime
import io
import os
import subprocess
import sys
from collections.abc import Callable
from functools import cache
from pathlib import Path

import click
import pypdf
import pytest
from examples_read import EXAMPLES, checked

from intent import verbs
from intent.commands.options import Target
from intent.commands.printing import refuse_terminal
from intent.diagnostics import Unusable

HALL = EXAMPLES / "kestrel-held/installations/2027-hall-of-birds.md"
DAY = datetime.date(2026, 11, 25)
HEAD = "<!DOCTYPE html><html lang='en'><head><title>A page</title>"
PAGE = HEAD + "{head}</head><body><h1>A page</h1>{body}</body></html>"


def can_print() -> bool:
    try:
        import weasyprint  # noqa: F401
    except (ImportError, OSError):
        return False
    return True


needs_pango = pytest.mark.skipif(not can_print(), reason="WeasyPrint or Pango is not here")


@pytest.fixture(scope="module")
def report() -> str:
    return verbs.report(checked(HALL), "html", date=DAY)


@cache
def printed(page: str, paper: str = "A4") -> bytes:
    return verbs.pdf(page, paper)


def opened(content: bytes) -> pypdf.PdfReader:
    return pypdf.PdfReader(io.BytesIO(content))


@needs_pango
@pytest.mark.parametrize(("paper", "size"), [("A4", (210, 297)), ("letter", (215.9, 279.4))])
def test_every_page_has_the_paper_the_number_and_the_work(
    report: str, paper: str, size: tuple[float, float]
) -> None:
    """A4: ISO 216; letter: ANSI/ASME Y14.1, 8.5 by 11 inches; a point is 1/72 inch (ISO 32000-1, 8.3.2.3)."""
    pages = opened(printed(report, paper)).pages
    assert 4 <= len(pages) <= 20
    for number, page in enumerate(pages, start=1):
        box = page.mediabox
        assert (float(box.width) / 72 * 25.4, float(box.height) / 72 * 25.4) == pytest.approx(size, abs=0.2)
        text = page.extract_text()
        assert f"{number} of {len(pages)}" in text
        assert "Kestrel, Held" in text


@needs_pango
def test_the_pages_are_tagged_for_who_does_not_see_them(report: str) -> None:
    """ISO 14289-1, 7.1: marked content, a language and a title."""
    found = opened(printed(report))
    root = found.root_object
    assert "/MarkInfo" in root
    assert str(root["/Lang"]) == "en"
    assert found.metadata is not None
    assert found.metadata.title == "Kestrel, Held: The hall of birds, 2027 – variance report"


@needs_pango
def test_the_same_page_gives_the_same_bytes_in_another_process(tmp_path: Path, report: str) -> None:
    source = tmp_path / "page.html"
    source.write_text(report, encoding="utf-8")
    program = (
        "import sys; from intent import verbs; sys.stdout.buffer.write(verbs.pdf(open(sys.argv[1]).read()))"
    )
    again = subprocess.run(
        [sys.executable, "-c", program, str(source)],
        capture_output=True,
        check=True,
        env={**os.environ, "PYTHONHASHSEED": "11", "TZ": "Pacific/Auckland"},
    )
    assert again.stdout == printed(report)


@needs_pango
@pytest.mark.parametrize("address", ["file:///etc/hostname", "http://127.0.0.1:9/x.png"])
def test_nothing_is_fetched(monkeypatch: pytest.MonkeyPatch, address: str) -> None:
    asked = PAGE.format(
        head=f"<style>@import url('{address}'); body {{ background: url('{address}') }}</style>",
        body=f"<img src='{address}' alt='x'><object data='{address}'></object>",
    )
    opened_files: list[str] = []
    with monkeypatch.context() as patched:
        patched.setattr(
            "urllib.request.OpenerDirector.open", lambda *asked, **_: opened_files.append(str(asked))
        )
        content = verbs.pdf(asked)
    assert not opened_files
    assert not opened(content).pages[0].images
    assert not opened(content).attachments


@needs_pango
def test_what_the_page_carries_in_itself_is_shown() -> None:
    pixel = (
        "data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJ"
        "AAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg=="
    )
    assert opened(verbs.pdf(PAGE.format(head="", body=f"<img src='{pixel}' alt='x'>"))).pages[0].images


@pytest.mark.parametrize(
    ("error", "told"),
    [
        (ImportError("none"), "pip install 'intent-record"),
        (OSError("cannot load library"), "apt-get install libpango"),
    ],
)
def test_what_is_missing_is_said_with_how_to_get_it(
    monkeypatch: pytest.MonkeyPatch, error: Exception, told: str
) -> None:
    real: Callable[..., object] = __import__

    def refuse(name: str, *rest: object) -> object:
        if name == "weasyprint":
            raise error
        return real(name, *rest)

    monkeypatch.setattr("builtins.__import__", refuse)
    with pytest.raises(Unusable) as caught:
        verbs.pdf("<p>x")
    assert told in str(caught.value.diagnostics[0])
    assert caught.value.diagnostics[0].slug == "no-pdf"


def test_a_pdf_is_not_printed_on_a_terminal(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setattr("sys.stdout.isatty", lambda: True)
    with pytest.raises(click.UsageError, match="--output"):
        refuse_terminal(None)
    refuse_terminal(Target(tmp_path / "report.pdf"))
