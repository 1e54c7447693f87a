"""All drawings in a real browser: nothing stands outside the page, and no text outside its drawing.

Needs Chromium; skips, saying so, where there is none.
"""

from __future__ import annotations

import re
import shutil
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest
from lxml import etree

from drawings.one_drawing import WIDTH
from intent.drawings.depicted import DrawingStyle
from intent.drawings.drawing import drawings_of
from intent.drawings.set_up import stages_of
from intent.variance.result import Variance

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
)
MEASURE = """
const outside = [...document.querySelectorAll("svg")].flatMap(svg => {
  const edge = svg.getBoundingClientRect();
  return [...svg.querySelectorAll("text")].filter(text => {
    const box = text.getBoundingClientRect();
    return box.left < edge.left - 1 || box.right > edge.right + 1
      || box.top < edge.top - 1 || box.bottom > edge.bottom + 1;
  }).map(text => text.textContent);
});
document.title = `width ${document.documentElement.scrollWidth} outside ${outside.length} ${outside.join("|")}`;
"""
pytestmark = [
    pytest.mark.browser,
    pytest.mark.skipif(CHROMIUM is None, reason="there is no Chromium here"),
]


@pytest.mark.parametrize("width", [360, 1440])
def test_nothing_stands_outside_the_page(width: int, case: Callable[[str], Variance], tmp_path: Path) -> None:
    """Measured in a frame as wide as the window, since a browser's own window has a least width."""
    drawn = [
        etree.tostring(drawing.element, encoding="unicode")
        for name in ("four-ways-up", "bars-and-crops", "lying-and-behind")
        for drawing in drawings_of(stages_of(case(name)), WIDTH, DrawingStyle(name=name))
    ]
    body = "".join(drawn)
    assert len(re.findall(r' id="([^"]+)"', body)) == len(set(re.findall(r' id="([^"]+)"', body)))
    page, frame = tmp_path / "page.html", tmp_path / "frame.html"
    page.write_text(
        f"<!DOCTYPE html><meta charset=utf-8><body>{body}<script>{MEASURE}</script>", encoding="utf-8"
    )
    told = "document.title = this.contentDocument.title"
    style = f"width: {width}px; height: 900px; border: 0"
    frame.write_text(f'<iframe src="page.html" style="{style}" onload="{told}"></iframe>', encoding="utf-8")
    options = ("--dump-dom", "--allow-file-access-from-files", "--virtual-time-budget=3000")
    command = [str(CHROMIUM), *QUIET, f"--user-data-dir={tmp_path / 'profile'}", *options, frame.as_uri()]
    shown = subprocess.run(command, capture_output=True, text=True, timeout=120, check=True)
    found = re.search(r"<title>width (\d+) outside (\d+) ?(.*?)</title>", shown.stdout)
    assert found, shown.stdout[:300]
    assert int(found[1]) <= width
    assert found[2] == "0", found[3]
