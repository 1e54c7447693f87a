"""What is kept of an earlier check: the same answer, and only while nothing has changed that it rests on."""

from __future__ import annotations

import datetime
import shutil
import time
from pathlib import Path

import pytest

from intent import verbs
from intent.reading import answers_kept
from intent.verbs import judging

FARMS = Path(__file__).parents[2] / "examples" / "second-delivery"
LOAN = "installations/2027-maarholm-loan.md"


@pytest.fixture
def store(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder of the user's own for what is kept."""
    folder = tmp_path / "kept"
    monkeypatch.setenv(answers_kept.SETTING, str(folder))
    monkeypatch.setattr(answers_kept, "_COARSE", 0)  # the tests write a moment before they ask
    return folder


@pytest.fixture
def work(tmp_path: Path) -> Path:
    return Path(shutil.copytree(FARMS, tmp_path / "work"))


@pytest.fixture
def judged(monkeypatch: pytest.MonkeyPatch) -> list[Path]:
    """The installations that were judged, each time that one was."""
    found: list[Path] = []
    real = judging.judge_proposal

    def counted(installation: Path, *rest: object) -> judging.JudgedProposal:
        found.append(installation)
        return real(installation, *rest)  # type: ignore[arg-type]

    monkeypatch.setattr(judging, "judge_proposal", counted)
    return found


def test_the_same_is_judged_once_and_told_alike(store: Path, work: Path, judged: list[Path]) -> None:
    told = {
        form: [verbs.check_and_report(work / LOAN, None, form, language="de")[1] for _ in range(2)]
        for form in ("text", "html", "json", "turtle")
    }
    assert len(judged) == 1
    assert all(first == second for first, second in told.values())
    assert list(store.glob("*.kept"))


def touched(work: Path) -> list[Path]:
    """Every file that a check of the loan rests on."""
    return [
        work / "work.md",
        work / "terms.md",
        work / "pool.md",
        *sorted((work / "installations").glob("*.md")),
    ]


def test_whatever_it_rests_on_changes_it_is_judged_anew(store: Path, work: Path, judged: list[Path]) -> None:
    verbs.check(work / LOAN)
    for number, path in enumerate(touched(work), start=2):
        path.write_text(path.read_text(encoding="utf-8") + "\n", encoding="utf-8")
        verbs.check(work / LOAN)
        assert len(judged) == number, path
    (work / "installations" / "new.md").write_text("# Nothing yet\n", encoding="utf-8")
    verbs.check(work / LOAN)
    assert len(judged) == len(touched(work)) + 1


def test_a_page_is_told_anew_when_a_source_that_it_quotes_changes(store: Path, work: Path) -> None:
    def told() -> str:
        return verbs.check_and_report(work / LOAN, None, "html")[1]

    before = told()
    for source in verbs.check(work / LOAN).sources:
        source.write_text(source.read_text(encoding="utf-8") + "\nAdded later.\n", encoding="utf-8")
    after = told()
    assert before != after  # the digests of the sources stand in the page


def test_a_page_is_told_anew_on_another_day(store: Path, work: Path) -> None:
    first, second = (
        verbs.check_and_report(work / LOAN, None, "text", date=datetime.date(2027, 1, day))[1]
        for day in (5, 6)
    )
    assert "5 January 2027" in first
    assert "6 January 2027" in second


def test_what_was_written_during_the_work_is_not_vouched_for(store: Path, work: Path) -> None:
    begun = time.time_ns()
    path = work / LOAN
    path.write_text(path.read_text(encoding="utf-8") + "\n", encoding="utf-8")
    answers_kept.keep(["question"], "of the text as it was", (path,), begun=begun - 10**9)
    assert answers_kept.recall(["question"]) is None


def test_a_damaged_answer_is_worked_out_again(store: Path, work: Path, judged: list[Path]) -> None:
    before = verbs.check(work / LOAN).variance
    for path in store.glob("*.kept"):
        content = path.read_bytes()
        path.write_bytes(content[: len(content) // 2])
    assert verbs.check(work / LOAN).variance.rows == before.rows
    assert len(judged) == 2


def test_a_folder_in_which_others_may_write_is_not_used(store: Path, work: Path, judged: list[Path]) -> None:
    store.mkdir(mode=0o700)
    store.chmod(0o777)
    for _ in range(2):
        verbs.check(work / LOAN)
    assert len(judged) == 2
    assert not list(store.iterdir())


def test_it_can_be_switched_off(work: Path, judged: list[Path], monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv(answers_kept.SETTING, "off")
    for _ in range(2):
        verbs.check(work / LOAN)
    assert len(judged) == 2


def test_a_link_in_the_place_of_the_folder_is_not_followed(
    store: Path, tmp_path: Path, work: Path, judged: list[Path]
) -> None:
    (tmp_path / "elsewhere").mkdir(mode=0o700)
    store.symlink_to(tmp_path / "elsewhere")
    for _ in range(2):
        verbs.check(work / LOAN)
    assert len(judged) == 2


def test_only_so_many_are_kept(store: Path) -> None:
    for number in range(answers_kept.MOST + 5):
        answers_kept.keep(["question", str(number)], number, (), begun=0)
    assert len(list(store.glob("*.kept"))) == answers_kept.MOST
    assert answers_kept.recall(["question", str(answers_kept.MOST + 4)]) == answers_kept.MOST + 4


def test_a_fault_is_never_kept(store: Path, work: Path) -> None:
    path = work / LOAN
    path.write_text(path.read_text(encoding="utf-8").replace("- dates:", "- data:"), encoding="utf-8")
    for _ in range(2):
        with pytest.raises(Exception, match="dates"):
            verbs.check(path)
    assert not list(store.glob("*.kept")) if store.exists() else True
