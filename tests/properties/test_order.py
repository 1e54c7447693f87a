"""Property 2: the order of headings, rows and sections never changes a verdict."""

from __future__ import annotations

import re
import shutil
from itertools import groupby
from pathlib import Path
from random import Random

import pytest
from examples_read import INSTALLATIONS, variance, vocabulary
from hypothesis import given
from oracle.cases import Case
from oracle.program import Rows, rows_of
from oracle.writing import installation_text, work_text

from intent.effects.assess import assess
from intent.reading.proposal import read_proposal
from intent.variance.result import Variance
from properties.strategies import cases, fixed, seeds, verdicts


def shuffled(text: str, random: Random) -> str:
    """A text with its sections, its headings within each, and the rows of its tables in another order."""
    return _blocks(text, "## ", random)


def _blocks(text: str, mark: str, random: Random) -> str:
    head, *blocks = re.split(rf"^(?={re.escape(mark)})", text, flags=re.MULTILINE)
    deeper = "#" + mark
    found = [_blocks(block, deeper, random) if len(mark) < 4 else _rows(block, random) for block in blocks]
    random.shuffle(found)
    return "".join(part.rstrip() + "\n\n" for part in (_rows(head, random), *found))


def _rows(text: str, random: Random) -> str:
    lines: list[str] = []
    for is_row, run in groupby(text.splitlines(), lambda line: line.startswith("|")):
        found = list(run)
        if is_row:
            rows = found[2:]
            random.shuffle(rows)
            found = [*found[:2], *rows]
        lines += found
    return "\n".join(lines) + "\n"


def unordered(rows: Rows) -> Rows:
    """Rows of several parts are named in the order of the work; that order is let go here."""
    return {
        (", ".join(sorted(subject.split(", "))), what): verdict for (subject, what), verdict in rows.items()
    }


@given(case=cases(), seed=seeds())
@fixed(150)
def test_order_never_changes_a_verdict(case: Case, seed: int) -> None:
    random = Random(seed)
    work, installation = work_text(case), installation_text(case)
    rows, outcome = verdicts(work, installation)
    other_work, other_installation = shuffled(work, random), shuffled(installation, random)
    other_rows, other_outcome = verdicts(other_work, other_installation)
    assert (unordered(other_rows), other_outcome) == (unordered(rows), outcome), (
        f"{work}\n{installation}\n\nin another order:\n{other_work}\n{other_installation}"
    )


def judged_anew(path: Path) -> Variance:
    found = read_proposal(path, None, vocabulary())
    return assess(found.documentation.work, found.installation)


@pytest.mark.parametrize("seed", [1])
@pytest.mark.parametrize("path", INSTALLATIONS, ids=lambda path: path.stem)
def test_order_never_changes_a_verdict_of_an_example(path: Path, seed: int, tmp_path: Path) -> None:
    random = Random(seed)
    folder = tmp_path / path.parents[1].name
    shutil.copytree(path.parents[1], folder)
    copy = folder / "installations" / path.name
    for file in (folder / "work.md", folder / "pool.md", copy):
        if file.exists():
            file.write_text(shuffled(file.read_text("utf-8"), random), "utf-8")
    before, after = variance(path), judged_anew(copy)
    assert unordered(rows_of(after)) == unordered(rows_of(before))
    assert after.outcome is before.outcome
