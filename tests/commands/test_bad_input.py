"""Input that cannot be used: each says what is wrong, ends with exit code 2, and writes nothing."""

from __future__ import annotations

import gc
import os
import subprocess
import sys
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import pytest

from intent.commands.main import main

WORK = """# Timetable for a Ferry

- number: 7
- owner: Thornacre Museum

## People

| person | name             | role        |
| ------ | ---------------- | ----------- |
| artist | Ottiline Quarrow | artist      |
| cons   | Imogen Tarrasch  | conservator |

## Parts

### Monitors

- kind: display

| part | rotation | visible diagonal |
| ---- | -------- | ---------------- |
| M1   | upright  | 13 in            |
| M2   | upright  | 13 in            |

## Sources

### S1 Conversation

- kind: interview
- with: artist
- date: 1999-05-14

## Instructions

### R1 Upright

- required: rotation of Monitors is upright ± 2 deg
- source: S1

### R2 Size

- required: visible diagonal of Monitors is 13 in ± 1 in
- source: S1
"""
LOAN = """# Loan to Halmsee

- work: work.md
- dates: 2027-03-01/2027-06-30
- by: cons
"""
CONTEXT = '{"@context": "https://example.org/context.jsonld", "@type": "Work"}'
TURTLE = "@prefix intent: <https://w3id.org/intent-record/ns#> .\n<https://example.org/ferry> a intent:Work"


@dataclass(frozen=True, slots=True)
class Ran:
    code: object
    out: str
    err: str


Run = Callable[..., Ran]


@pytest.fixture
def run(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], tmp_path: Path) -> Run:
    """The command line, in the folder of the test, which holds a work and an installation of it."""
    monkeypatch.chdir(tmp_path)
    (tmp_path / "work.md").write_text(WORK, encoding="utf-8")
    (tmp_path / "loan.md").write_text(LOAN, encoding="utf-8")

    def called(*arguments: str) -> Ran:
        monkeypatch.setattr(sys, "argv", ["intent", *arguments])
        with pytest.raises(SystemExit) as ended:
            main()
        gc.enable()
        printed = capsys.readouterr()
        return Ran(ended.value.code or 0, printed.out, printed.err)

    return called


def contents(folder: Path) -> dict[str, bytes]:
    return {
        str(path): path.read_bytes()
        for path in folder.rglob("*")
        if path.is_file() and path.stat().st_size < 10**6
    }


def refused(run: Run, *arguments: str) -> str:
    """What is said on the screen of something that is refused."""
    before = contents(Path.cwd())
    ran = run(*arguments)
    assert ran.code == 2, ran
    assert ran.out == ""
    assert "Traceback" not in ran.err
    assert contents(Path.cwd()) == before
    return ran.err


BAD_WORKS = {
    "a table with a ragged row": (
        "| M2   | upright  | 13 in            |",
        "| M2 | upright |",
        "[ragged-row]",
    ),
    "an identifier used twice": ("| M2   | upright", "| M1   | upright", "[repeated-identifier]"),
    "a name that is not known": ("rotation of Monitors", "rotation of Monitor", "[unknown-name]"),
    "a characteristic that is not known": (
        "required: rotation",
        "required: rotatoin",
        "[unknown-characteristic]",
    ),
    "a value that is not known": ("| M1   | upright", "| M1   | upwards", "[bad-quantity]"),
    "a unit of something else": ("13 in ± 1 in", "13 kg ± 1 in", "[bad-unit]"),
    "a day that there is not": ("1999-05-14", "1999-05-32", "[bad-date]"),
    "a sentence that breaks off": ("Monitors is upright ± 2 deg", "Monitors", "[sentence]"),
    "a source that there is not": ("- source: S1", "- source: S2", "[unknown-name]"),
    "a section that there is not": ("## Sources", "## Sauces", "[unknown-section]"),
    "superseding in a circle": (
        "- source: S1\n\n### R2 Size\n",
        "- source: S1\n- supersedes: R2\n\n### R2 Size\n\n- supersedes: R1\n",
        "[supersedes-in-a-circle]",
    ),
    "own terms outside the folder": ("- number: 7", "- number: 7\n- terms: ../terms.md", "[outside-folder]"),
    "own terms that are not there": ("- number: 7", "- number: 7\n- terms: terms.md", "[no-file]"),
    "own terms that are a folder": ("- number: 7", "- number: 7\n- terms: .", "[is-a-folder]"),
}


@pytest.mark.parametrize("name", BAD_WORKS)
def test_a_work_at_fault(run: Run, name: str) -> None:
    old, new, slug = BAD_WORKS[name]
    assert old in WORK
    Path("work.md").write_text(WORK.replace(old, new), encoding="utf-8")
    for command in (("validate", "work.md"), ("check", "loan.md")):
        said = refused(run, *command)
        assert slug in said
        assert "work.md:" in said
    assert slug in refused(run, "convert", "work.md", "--to", "turtle", "--output", "out.ttl")


BAD_FILES: dict[str, tuple[str, bytes, str]] = {
    "an empty file": ("work.md", b"", "[empty-file]"),
    "a file in Latin-1": ("work.md", WORK.replace("Ferry", "Fähre").encode("latin-1"), "work.md:1:20: error"),
    "a file with a NUL byte": ("work.md", WORK.replace("Ferry", "Fer\0ry").encode(), "[not-text]"),
    "a file in UTF-16": ("work.md", WORK.encode("utf-16"), "it looks like UTF-16"),
    "Turtle that is none": ("work.ttl", TURTLE.encode(), "work.ttl:2:"),
    "Turtle in Latin-1": ("work.ttl", (TURTLE + " # ä").encode("latin-1"), "[not-utf-8]"),
    "JSON-LD that is none": ("work.jsonld", b'{"@id": }', "[bad-json-ld]"),
    "JSON-LD that names a remote context": ("work.jsonld", CONTEXT.encode(), "[remote-context]"),
    "JSON that is no record": ("work.json", b"[1, 2, 3]", "[no-work]"),
    "a graph without a work": ("work.ttl", b"", "[no-work]"),
    "N-Triples that are none": ("work.nt", b"<a> <b> .", "[bad-n-triples]"),
}


@pytest.mark.parametrize("name", BAD_FILES)
def test_a_file_that_cannot_be_read(run: Run, name: str) -> None:
    file, content, said = BAD_FILES[name]
    Path(file).write_bytes(content)
    assert said in refused(run, "validate", file)
    assert said in refused(run, "explain", file, "M1")


def test_no_file(run: Run) -> None:
    for arguments in (
        ("validate", "none.md"),
        ("check", "none.md"),
        ("check", "none.md", "loan.md"),
        ("explain", "none.md", "M1"),
        ("convert", "none.md", "--to", "turtle"),
        ("terms", "--work", "none.md"),
    ):
        said = refused(run, *arguments)
        assert "none.md" in said
        assert "[no-file]" in said or "[another-work]" in said


def test_a_folder(run: Run) -> None:
    Path("works").mkdir()
    assert "[is-a-folder]" in refused(run, "validate", "works")
    assert "[is-a-folder]" in refused(run, "convert", "work.md", "--to", "turtle", "--output", "works")


def test_a_file_of_fifty_megabytes(run: Run) -> None:
    with open("large.md", "wb") as large:
        large.truncate(50 * 1024 * 1024)
    assert "[too-large]" in refused(run, "validate", "large.md")


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no named pipes")
def test_a_named_pipe(run: Run) -> None:
    os.mkfifo("pipe.md")
    assert "not an ordinary file" in refused(run, "validate", "pipe.md")


def test_a_name_that_no_file_can_have(run: Run) -> None:
    assert "[unreadable]" in refused(run, "validate", "x" * 300 + ".md")


def test_links_that_lead_out_of_the_folder(run: Run, tmp_path: Path) -> None:
    """A path is where it leads, not how it is written."""
    Path("work").mkdir()
    Path("terms.md").write_text("# Terms\n", encoding="utf-8")
    Path("work/terms.md").symlink_to(tmp_path / "terms.md")
    Path("work/work.md").write_text(
        WORK.replace("- number: 7", "- number: 7\n- terms: terms.md"), encoding="utf-8"
    )
    assert "[outside-folder]" in refused(run, "validate", "work/work.md")


@pytest.mark.parametrize(
    "pool", ["/etc/passwd", "../pool.md", "store/../../pool.md", "file:///etc/passwd", "C:\\pool.md"]
)
def test_a_pool_outside_the_folder(run: Run, pool: str) -> None:
    Path("loan.md").write_text(LOAN + f"- pool: {pool}\n", encoding="utf-8")
    said = refused(run, "check", "loan.md")
    assert "loan.md:6:9: error" in said
    assert any(slug in said for slug in ("[outside-folder]", "[bad-path]", "[no-file]"))


def test_an_installation_of_another_work(run: Run) -> None:
    Path("tram.md").write_text(
        WORK.replace("Ferry", "Tram").replace("- number: 7", "- number: 8"), encoding="utf-8"
    )
    assert "[another-work]" in refused(run, "check", "tram.md", "loan.md")


def test_an_installation_that_names_no_work(run: Run) -> None:
    Path("loan.md").write_text(LOAN.replace("- work: work.md\n", ""), encoding="utf-8")
    assert "[no-work]" in refused(run, "check", "loan.md")
    assert run("check", "work.md", "loan.md").code == 0


def test_an_installation_without_dates(run: Run) -> None:
    Path("loan.md").write_text(LOAN.replace("- dates: 2027-03-01/2027-06-30\n", ""), encoding="utf-8")
    assert "[no-dates]" in refused(run, "check", "loan.md")


def test_a_work_where_an_installation_is_wanted(run: Run) -> None:
    refused(run, "check", "work.md")


def test_output_that_cannot_be_written(run: Run) -> None:
    said = refused(run, "check", "loan.md", "--output", "no-such-folder/report.txt")
    assert "[unwritable]" in said


@pytest.mark.skipif(
    not hasattr(os, "geteuid") or os.geteuid() == 0, reason="nothing is read-only for the administrator"
)
def test_a_folder_that_is_read_only(run: Run) -> None:
    Path("shut").mkdir(mode=0o500)
    assert "[unwritable]" in refused(run, "check", "loan.md", "--output", "shut/report.txt")


def test_output_is_whole_or_as_it_was(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    """The disk is full: what was there is still there, and nothing is left lying about."""

    def full(handle: int) -> None:
        raise OSError(28, "No space left on device")

    Path("report.txt").write_text("the report of last year\n", encoding="utf-8")
    monkeypatch.setattr(os, "fsync", full)
    assert "No space left" in refused(run, "check", "loan.md", "--output", "report.txt", "--replace")


def test_bad_input_leaves_the_output_as_it_was(run: Run) -> None:
    Path("report.txt").write_text("the report of last year\n", encoding="utf-8")
    Path("work.md").write_text(WORK.replace("13 in ± 1 in", "13"), encoding="utf-8")
    refused(run, "check", "loan.md", "--output", "report.txt", "--replace")


def test_new_over_what_is_there(run: Run) -> None:
    assert "[file-exists]" in refused(run, "new", "work.md")
    assert run("new", "fresh.md").code == 0


def test_calls_that_make_no_sense(run: Run) -> None:
    for arguments in (
        (),
        ("chek", "loan.md"),
        ("check",),
        ("check", "work.md", "work.md", "loan.md"),
        ("check", "loan.md", "--date", "yesterday"),
        ("convert", "work.md"),
        ("convert", "work.md", "--to", "rdf-xml"),
        ("explain", "work.md", "M9"),
        ("explain", "work.md", "M1", "rotatoin"),
        ("explain", "work.md", "M1", "--on", "2027-02-30"),
        ("terms", "rotatoin"),
        ("validate", "work.md", "--colour"),
    ):
        refused_call(run, *arguments)


def refused_call(run: Run, *arguments: str) -> None:
    ran = run(*arguments)
    assert ran.code == 2, arguments
    assert "Traceback" not in ran.err
    assert ran.err or not arguments


def test_in_a_process_of_its_own(run: Run, tmp_path: Path) -> None:
    """The same through a shell: on the screen for errors, with exit code 2."""
    Path("work.md").write_text(WORK.replace("13 in ± 1 in", "13"), encoding="utf-8")
    root = Path(__file__).parents[2]
    ended = subprocess.run(
        [sys.executable, "-m", "intent", "validate", "work.md"],
        cwd=tmp_path,
        env={**os.environ, "PYTHONPATH": str(root)},
        capture_output=True,
        text=True,
        check=False,
    )
    assert ended.returncode == 2
    assert ended.stdout == ""
    assert ended.stderr.startswith("work.md:41:45: error")
    assert "[no-unit]" in ended.stderr
