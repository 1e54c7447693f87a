"""The report in a real browser: it is shown without a word on the console, and printed on numbered pages.

Needs Chromium; skips, saying so, where there is none.
"""

from __future__ import annotations

import re
import shutil
import subprocess
from pathlib import Path

import pytest

from intent import verbs

CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser")
QUIET = (
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--hide-scrollbars",
)
EXAMPLES = Path(__file__).parents[2] / "examples"
pytestmark = [
    pytest.mark.browser,
    pytest.mark.skipif(CHROMIUM is None, reason="there is no Chromium here"),
]


@pytest.fixture(scope="module")
def page(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("page") / "report.html"
    _, text = verbs.check_and_report(
        EXAMPLES / "kestrel-held/installations/2027-hall-of-birds.md", None, "html"
    )
    path.write_text(text, encoding="utf-8")
    return path


def opened(page: Path, *options: str) -> subprocess.CompletedProcess[str]:
    profile = page.parent / f"profile{len(list(page.parent.iterdir()))}"
    command = [str(CHROMIUM), *QUIET, f"--user-data-dir={profile}", "--enable-logging=stderr", *options]
    return subprocess.run([*command, page.as_uri()], capture_output=True, text=True, timeout=120, check=True)


def test_the_page_is_shown_without_a_word_on_the_console(page: Path) -> None:
    shown = opened(page, "--dump-dom")
    assert "To be referred" in shown.stdout
    assert ":CONSOLE" not in shown.stderr


@pytest.mark.parametrize("width", [360, 1440])
def test_nothing_is_wider_than_the_window(page: Path, width: int) -> None:
    """Measured by a script in a copy, since the page itself allows none, in a frame as wide as the window."""
    text = re.sub(r'<meta http-equiv="Content-Security-Policy"[^>]*>', "", page.read_text(encoding="utf-8"))
    script = "<script>document.title = document.documentElement.scrollWidth</script></body>"
    measured, frame = page.with_name(f"measured-{width}.html"), page.with_name(f"frame-{width}.html")
    measured.write_text(text.replace("</body>", script), encoding="utf-8")
    told = "document.title = `width ${this.contentDocument.title}`"
    style = f"width: {width}px; height: 900px; border: 0"
    frame.write_text(
        f'<iframe src="{measured.name}" style="{style}" onload="{told}"></iframe>', encoding="utf-8"
    )
    shown = opened(frame, "--dump-dom", "--allow-file-access-from-files", "--virtual-time-budget=3000")
    found = re.search(r"<title>width (\d+)</title>", shown.stdout)
    assert found, shown.stdout[:300]
    assert int(found[1]) <= width


def test_the_page_prints_on_several_pages(page: Path) -> None:
    printed = page.with_name("report.pdf")
    opened(page, f"--print-to-pdf={printed}")
    content = printed.read_bytes()
    assert content.startswith(b"%PDF-")
    assert 3 <= len(re.findall(rb"/Type\s*/Page\b", content)) <= 30
