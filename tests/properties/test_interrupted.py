"""Property 9, second half: nothing already written is lost or half-written, whenever the program is killed."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest
from examples_read import EXAMPLES

ROOT = EXAMPLES.parent
INSTALLATION = EXAMPLES / "kestrel-held" / "installations" / "2026-river-museum.md"
AGAIN_AND_AGAIN = """
import itertools, sys
from pathlib import Path
from intent.reading.atomic_write import write_whole
texts = [letter * 3_000_000 for letter in "ab"]
for text in itertools.cycle(texts):
    write_whole(Path(sys.argv[1]), text, replace=True)
"""


def start(*arguments: str) -> subprocess.Popen[bytes]:
    environment = {**os.environ, "PYTHONPATH": str(ROOT)}
    return subprocess.Popen(
        [sys.executable, *arguments], env=environment, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL
    )


def kill(process: subprocess.Popen[bytes], after: float) -> None:
    time.sleep(after)
    process.send_signal(signal.SIGKILL)
    process.wait()


@pytest.mark.parametrize("after", [0.1, 0.25, 0.4, 0.55, 0.7, 0.85, 1.0, 1.3])
def test_a_report_that_is_interrupted_leaves_the_old_one_whole(after: float, tmp_path: Path) -> None:
    report = tmp_path / "report.html"
    report.write_text("the old report", encoding="utf-8")
    command = [
        "-m",
        "intent",
        "check",
        str(INSTALLATION),
        "--format",
        "html",
        "--output",
        str(report),
        "--replace",
    ]
    kill(start(*command), after)
    found = report.read_text(encoding="utf-8")
    assert found == "the old report" or found.rstrip().endswith("</html>")


@pytest.mark.parametrize("after", [0.02, 0.03, 0.05, 0.08, 0.13])
def test_a_file_being_written_is_always_one_whole_text(after: float, tmp_path: Path) -> None:
    path = tmp_path / "long.txt"
    process = start("-c", AGAIN_AND_AGAIN, str(path))
    deadline = time.monotonic() + 20
    while not path.exists() and time.monotonic() < deadline:
        time.sleep(0.01)
    kill(process, after)
    found = path.read_text(encoding="utf-8")
    assert len(found) == 3_000_000
    assert set(found) in ({"a"}, {"b"})
