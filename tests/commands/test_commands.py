"""The commands: their exit codes, their formats, and the help that each must have."""

from __future__ import annotations

import gc
import json
import sys
from collections.abc import Callable, Iterator
from pathlib import Path

import click
import pytest

from intent.commands.main import intent as command_line
from intent.commands.main import main

EXAMPLES = Path(__file__).parents[2] / "examples"
WORK = """# Timetable for a Ferry

- number: 7
- owner: Thornacre Museum

## People

| person | name             | role   |
| ------ | ---------------- | ------ |
| artist | Ottiline Quarrow | artist |

## Parts

### Monitors

- kind: display

| part | rotation |
| ---- | -------- |
| M1   | upright  |

## Sources

### S1 Conversation

- kind: interview
- with: artist
- date: 1999-05-14

## Instructions

### R1 Upright

- required: rotation of Monitors is upright ± 2 deg
- source: S1
"""
LOAN = """# Loan to Halmsee

- work: work.md
- dates: 2027-03-01/2027-06-30
- by: artist
"""
TURNED = LOAN + "\n## Changes\n\n| part | rotation    |\n| ---- | ----------- |\n| M1   | turned left |\n"
CONVERTED = [("turtle", "w.ttl"), ("json-ld", "w.jsonld"), ("n-triples", "w.nt"), ("markdown", "w.md")]
Run = Callable[..., tuple[int, str, str]]


@pytest.fixture
def run(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], tmp_path: Path) -> Run:
    """The command line, in a folder with a work and two installations; exit code, output, messages."""
    monkeypatch.chdir(tmp_path)
    for name, text in (("work.md", WORK), ("loan.md", LOAN), ("turned.md", TURNED)):
        (tmp_path / name).write_text(text, encoding="utf-8")

    def called(*arguments: str) -> tuple[int, str, str]:
        monkeypatch.setattr(sys, "argv", ["intent", *arguments])
        with pytest.raises(SystemExit) as ended:
            main()
        gc.enable()
        printed = capsys.readouterr()
        return int(ended.value.code or 0), printed.out, printed.err

    return called


def commands(
    group: click.Group, path: tuple[str, ...] = ()
) -> Iterator[tuple[tuple[str, ...], click.Command]]:
    for name, command in sorted(group.commands.items()):
        yield (*path, name), command
        if isinstance(command, click.Group):
            yield from commands(command, (*path, name))


EVERY_COMMAND = list(commands(command_line))


@pytest.mark.parametrize(
    ("path", "command"), EVERY_COMMAND, ids=[" ".join(path) for path, _ in EVERY_COMMAND]
)
def test_every_command_has_help_with_an_example(
    run: Run, path: tuple[str, ...], command: click.Command
) -> None:
    code, out, err = run(*path, "--help")
    assert (code, err) == (0, "")
    assert command.help
    assert f"Example: intent {' '.join(path)} " in " ".join(out.split())
    for parameter in command.params:
        if isinstance(parameter, click.Option) and parameter.name not in {"help", "version"}:
            assert parameter.help or parameter.required or isinstance(parameter.type, click.Choice), (
                parameter.name
            )


def test_an_example_names_only_options_that_there_are() -> None:
    for path, command in EVERY_COMMAND:
        example = (command.help or "").rpartition("Example:")[2].split()
        options = {option for parameter in command.params for option in parameter.opts}
        assert {word for word in example if word.startswith("--")} <= options, path


def test_validate_ends_with_0_1_or_2(run: Run) -> None:
    assert run("validate", "work.md")[0] == 0
    assert run("validate", "loan.md")[0] == 0
    Path("work.md").write_text(WORK.replace("- source: S1\n", ""), encoding="utf-8")
    code, out, err = run("validate", "work.md")
    assert code == 1
    assert out == "work.md: 2 warnings\n"
    assert "warning" in err
    Path("work.md").write_text(WORK.replace("± 2 deg", "± 2 kg"), encoding="utf-8")
    assert run("validate", "work.md")[0] == 2


def test_validate_ends_by_counting(run: Run) -> None:
    assert run("validate", "work.md")[1] == "work.md: nothing wrong with the form\n"
    Path("work.md").write_text(WORK.replace("± 2 deg", "± 2,5 deg"), encoding="utf-8")
    code, out, err = run("validate", "work.md")
    assert (code, out) == (2, "")
    assert err.splitlines()[-1] == "work.md: 1 error"


def test_what_is_wrong_is_counted_file_by_file(run: Run) -> None:
    Path("work.md").write_text(WORK.replace("± 2 deg", "± 2 kg"), encoding="utf-8")
    code, out, err = run("validate", "loan.md")
    assert (code, out) == (2, "")
    assert err.splitlines()[-1] == "work.md: 1 error"


def test_a_new_installation_names_the_work_that_it_is_of(run: Run) -> None:
    Path("loans").mkdir()
    for language in ("en", "de", "fr"):
        file = f"loans/{language}.md"
        assert run("new", "--installation", "--work", "work.md", "--language", language, file)[0] == 0
        assert ": ../work.md\n" in Path(file).read_text(encoding="utf-8")
    assert run("new", "--work", "work.md", "other.md")[0] == 2
    assert not Path("other.md").exists()


def test_a_day_that_is_none_is_refused_with_how_one_is_written(run: Run) -> None:
    code, _, err = run("explain", "work.md", "M1", "rotation", "--on", "31.12.2026")
    assert code == 2
    assert "`31.12.2026` is no day; write the day as 2026-12-31, a month as 2026-12, a year as 2026" in err
    code, _, err = run("questions", "work.md", "--date", "2026-02-30")
    assert code == 2
    assert err.endswith("`2026-02-30` is no day; write the day as 2026-12-31\n")


EXPECTED = """
## Expectations

| part | characteristic | value       | verdict   |
| ---- | -------------- | ----------- | --------- |
| M1   | rotation       | turned left | uncovered |
"""


@pytest.mark.parametrize(("day", "code"), [("1999-05-13", 0), ("1999-05-14", 1)])
def test_a_case_without_a_day_is_judged_on_the_day_that_is_given(run: Run, day: str, code: int) -> None:
    Path("work.md").write_text(WORK + EXPECTED, encoding="utf-8")
    found, _, err = run("validate", "work.md", "--date", day)
    assert found == code
    assert ("`uncovered` is expected, and M1 is judged `breach`: R1.1 requires otherwise" in err) == bool(
        code
    )


def test_a_work_and_an_installation_are_told_apart(run: Run) -> None:
    assert "this is a work; name an installation [is-a-work]" in run("check", "work.md")[2]
    code, _, err = run("explain", "loan.md", "M1")
    assert code == 2
    assert "this is an installation; name its work, `work.md` [is-an-installation]" in err


def test_a_note_is_no_reason_to_look(run: Run) -> None:
    """A tolerance that is not stated is said, and weighs nothing."""
    Path("work.md").write_text(WORK.replace(" ± 2 deg", ""), encoding="utf-8")
    code, _, err = run("validate", "work.md")
    assert code == 0
    assert "[no-tolerance-stated]" in err


def test_check_ends_with_0_1_or_2(run: Run) -> None:
    code, out, err = run("check", "loan.md")
    assert (code, err) == (0, "")
    assert "Acceptable" in out
    assert run("check", "turned.md")[0] == 1
    assert run("check", "work.md", "turned.md")[0] == 1
    assert run("check", "none.md")[0] == 2


@pytest.mark.parametrize("form", ["text", "html", "markdown", "json", "turtle"])
def test_check_writes_what_it_prints(run: Run, form: str) -> None:
    date = ("--date", "2027-01-15")
    _, out, _ = run("check", "turned.md", "--format", form, *date)
    code, nothing, _ = run("check", "turned.md", "--format", form, "--output", "report", *date)
    assert code == 1
    assert nothing == ""
    assert Path("report").read_text(encoding="utf-8") == out
    assert [path.name for path in Path.cwd().iterdir() if path.name.startswith(".")] == []


def test_check_writes_over_an_earlier_report(run: Run) -> None:
    Path("report.txt").write_text("of last year\n", encoding="utf-8")
    run("check", "loan.md", "--output", "report.txt", "--replace")
    assert "of last year" not in Path("report.txt").read_text(encoding="utf-8")


def test_the_json_has_the_form_that_is_promised(run: Run) -> None:
    told = json.loads(run("check", "turned.md", "--format", "json")[1])
    assert told["work"]["title"] == "Timetable for a Ferry"
    assert (told["installation"]["title"], told["installation"]["date"]) == ("Loan to Halmsee", "2027-03-01")
    assert (told["outcome"], told["refer_to"]) == ("not-acceptable", ["artist"])
    assert {"effects", "notes"} <= set(told)
    (row,) = [row for row in told["verdicts"] if row["verdict"] == "breach"]
    assert {
        name: row[name] for name in ("subject", "characteristic", "documented", "proposed", "governing")
    } == {
        "subject": "M1",
        "characteristic": "rotation",
        "documented": "upright",
        "proposed": "turned left",
        "governing": ["R1.1"],
    }
    assert (row["set_aside"], row["ground"], row["days"], row["open"]) == ([], "intent", None, [])


def test_explain_ends_with_0_or_2(run: Run) -> None:
    code, out, err = run("explain", "work.md", "M1")
    assert (code, err) == (0, "")
    assert "R1.1" in out
    assert run("explain", "work.md", "M1", "rotation", "--on", "2005")[0] == 0
    assert run("explain", "work.md", "M2")[0] == 2


def test_convert_ends_with_0_or_2(run: Run) -> None:
    """Whatever form a work is in, an installation of it can be checked against it."""
    for form, file in CONVERTED:
        assert run("convert", "work.md", "--to", form, "--output", file, "--replace")[0] == 0
        assert run("validate", file)[0] == 0
        assert run("check", file, "loan.md")[0] == 0
    assert run("convert", "none.md", "--to", "turtle")[0] == 2


def test_a_converted_work_gives_the_same_verdicts(run: Run) -> None:
    told = json.loads(run("check", "turned.md", "--format", "json")[1])
    for form, file in CONVERTED:
        run("convert", "work.md", "--to", form, "--output", file, "--replace")
        Path("again.md").write_text(TURNED.replace("work.md", file), encoding="utf-8")
        again = json.loads(run("check", "again.md", "--format", "json")[1])
        assert (again["outcome"], again["verdicts"]) == (told["outcome"], told["verdicts"])


def test_compare_ends_with_0_1_or_2(run: Run) -> None:
    assert run("compare", "work.md", "work.md")[0] == 0
    Path("later.md").write_text(WORK.replace("± 2 deg", "± 3 deg"), encoding="utf-8")
    code, out, _ = run("compare", "work.md", "later.md")
    assert code == 1
    assert "R1.1" in out
    assert run("compare", "work.md", "later.md", "--installation", "turned.md")[0] == 1
    Path("other.md").write_text(
        WORK.replace("Ferry", "Tram").replace("number: 7", "number: 8"), encoding="utf-8"
    )
    assert run("compare", "work.md", "other.md")[0] == 2
    assert run("compare", "work.md", "none.md")[0] == 2


def test_compare_says_where_only_the_title_makes_two_states_one_work(run: Run) -> None:
    Path("later.md").write_text(
        WORK.replace("owner: Thornacre Museum", "owner: Halmsee Museum"), encoding="utf-8"
    )
    assert "[another-iri]" in run("compare", "work.md", "later.md")[2]


def test_history_ends_with_0_or_2(run: Run) -> None:
    Path("installations").mkdir()
    shown = TURNED.replace("work.md", "../work.md").replace("- by:", "- status: carried out\n- by:")
    Path("installations/2027.md").write_text(shown, encoding="utf-8")
    code, out, _ = run("history", "work.md")
    assert code == 0
    assert "Loan to Halmsee" in out
    assert run("history", "work.md", "M1", "rotation")[0] == 0
    assert run("history", "work.md", "M9")[0] == 2
    assert run("history", "none.md")[0] == 2


def test_terms_ends_with_0_or_2(run: Run) -> None:
    assert run("terms")[0] == 0
    code, out, _ = run("terms", "rotation")
    assert code == 0
    assert "rotation" in out
    assert run("terms", "rotatoin")[0] == 2


def test_new_ends_with_0_or_2(run: Run) -> None:
    """What is written to start from can be read as it is."""
    assert run("new", "fresh/work.md")[0] == 2
    assert run("new", "fresh.md")[0] == 0
    assert run("validate", "fresh.md")[0] in {0, 1}
    Path("work.md").unlink()
    assert run("new", "work.md")[0] == 0
    assert run("new", "--installation", "first.md")[0] == 0
    assert run("check", "first.md")[0] in {0, 1}
    assert run("new", "first.md")[0] == 2


def test_help_and_version(run: Run) -> None:
    assert "check" in run("--help")[1]
    assert run("-h")[0] == 0


FIRST_EXAMPLES = [min(work.parent.glob("installations/*.md")) for work in sorted(EXAMPLES.glob("*/work.md"))]


@pytest.mark.parametrize("installation", FIRST_EXAMPLES, ids=lambda file: file.stem)
def test_the_examples_can_be_checked(run: Run, installation: Path) -> None:
    code, out, _ = run("check", str(installation), "--format", "json")
    assert code in {0, 1}
    assert (json.loads(out)["outcome"] == "acceptable") == (code == 0)
