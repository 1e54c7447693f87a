"""Nothing of one's own is lost: what is written over, what is kept of it, and what ends in a message."""

from __future__ import annotations

import os
import stat
import subprocess
import sys
import threading
from pathlib import Path

import pytest
from test_bad_input import LOAN, WORK

from intent.diagnostics import Unusable
from intent.reading.atomic_write import write_whole

WRITING = (
    ("convert", "work.md", "--to", "markdown", "--output", "work.md"),
    ("check", "loan.md", "--output", "loan.md"),
    ("check", "loan.md", "--format", "html", "--output", "work.md"),
    ("explain", "work.md", "M1", "--output", "work.md"),
    ("questions", "work.md", "--output", "work.md"),
    ("sheet", "work.md", "parts", "work.md"),
    ("sheet", "work.md", "parts", "parts.csv"),
    ("cards", "loan.md", "--output", "report.html"),
    ("packing", "loan.md", "--output", "report.html"),
    ("export", "work.md", "--to", "lido", "--output", "report.html"),
    ("terms", "rotation", "--output", "report.html"),
)
OWN = {"work.md": WORK, "loan.md": LOAN, "parts.csv": "part,rotation\nM1,upright\n", "report.html": "mine"}


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    for name, text in OWN.items():
        (tmp_path / name).write_text(text, encoding="utf-8")
    return tmp_path


def run(folder: Path, *arguments: str, output: int | None = None) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "intent", *arguments],
        cwd=folder,
        stdout=subprocess.PIPE if output is None else output,
        stderr=subprocess.PIPE,
        text=True,
        check=False,
    )


@pytest.mark.parametrize("arguments", WRITING, ids=" ".join)
def test_nothing_that_is_there_is_written_over_unasked(folder: Path, arguments: tuple[str, ...]) -> None:
    ran = run(folder, *arguments)
    assert ran.returncode == 2
    assert "[file-exists]" in ran.stderr
    assert "--replace" in ran.stderr
    assert {path.name: path.read_text(encoding="utf-8") for path in folder.iterdir()} == OWN


def test_what_is_to_be_written_over_is(folder: Path) -> None:
    assert run(folder, "check", "loan.md", "--output", "report.html", "--replace").returncode == 0
    assert "mine" not in (folder / "report.html").read_text(encoding="utf-8")


def test_a_file_keeps_its_permissions_its_ends_of_lines_and_the_link_to_it(tmp_path: Path) -> None:
    held, link = tmp_path / "held.md", tmp_path / "link.md"
    held.write_bytes(b"one\r\ntwo\r\n")
    held.chmod(0o640)
    link.symlink_to(held)
    write_whole(link, "three\nfour\n", replace=True)
    assert link.is_symlink()
    assert held.read_bytes() == b"three\r\nfour\r\n"
    assert stat.S_IMODE(held.stat().st_mode) == 0o640


def test_a_file_with_both_ends_of_lines_is_written_as_it_comes(tmp_path: Path) -> None:
    held = tmp_path / "held.md"
    held.write_bytes(b"one\r\ntwo\n")
    write_whole(held, "three\n", replace=True)
    assert held.read_bytes() == b"three\n"


def test_a_write_protected_file_stays(tmp_path: Path) -> None:
    held = tmp_path / "held.md"
    held.write_text("mine", encoding="utf-8")
    held.chmod(0o444)
    with pytest.raises(Unusable) as refused:
        write_whole(held, "theirs", replace=True)
    assert refused.value.diagnostics[0].slug == "write-protected"
    assert held.read_text(encoding="utf-8") == "mine"


def test_a_pipe_is_written_into_and_stays_one(tmp_path: Path) -> None:
    pipe, read = tmp_path / "pipe", list[bytes]()
    os.mkfifo(pipe)
    reader = threading.Thread(target=lambda: read.append(pipe.read_bytes()))
    reader.start()
    write_whole(pipe, "through\n")
    reader.join(timeout=20)
    assert read == [b"through\n"]
    assert stat.S_ISFIFO(pipe.stat().st_mode)


def test_a_device_is_written_into_and_stays_one(folder: Path) -> None:
    assert run(folder, "check", "loan.md", "--output", os.devnull).returncode == 0
    assert stat.S_ISCHR(Path(os.devnull).stat().st_mode)


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="this system has no device that is always full")
def test_a_full_disk_ends_in_a_message(folder: Path) -> None:
    with open("/dev/full", "w") as full:
        ran = run(folder, "check", "loan.md", output=full.fileno())
    assert ran.returncode == 2
    assert "cannot be written" in ran.stderr
    assert "Traceback" not in ran.stderr
    assert "Exception ignored" not in ran.stderr


@pytest.mark.parametrize("form", ["text", "turtle"])
def test_a_closed_output_ends_in_a_message(folder: Path, form: str) -> None:
    command = f'"{sys.executable}" -m intent check loan.md --format {form} >&-'
    ran = subprocess.run(command, shell=True, cwd=folder, capture_output=True, text=True, check=False)
    assert ran.returncode == 2
    assert "--output" in ran.stderr
    assert "Traceback" not in ran.stderr


@pytest.mark.parametrize("encoding", ["latin-1", "cp437", "cp850"])
def test_a_narrow_output_loses_nothing_and_ends_well(folder: Path, encoding: str) -> None:
    """What such an output cannot hold is shown by its number."""
    text = (folder / "work.md").read_text(encoding="utf-8").replace("Ferry", "Ferry “Ψ”")
    (folder / "work.md").write_text(text, encoding="utf-8")
    ran = subprocess.run(
        [sys.executable, "-m", "intent", "check", "loan.md"],
        cwd=folder,
        env={**os.environ, "PYTHONIOENCODING": encoding},
        capture_output=True,
        check=False,
    )
    assert ran.returncode == 0, ran.stderr
    assert b"\\u03a8" in ran.stdout
