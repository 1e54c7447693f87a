"""Precedents, chains of steps, histories and agreements, each in a case that can be read."""

from __future__ import annotations

from pathlib import Path

import pytest

from analysis.history.transcripts import assert_printed

TESTS = Path(__file__).parents[1]
CASES = sorted([*TESTS.glob("history/cases/*.md"), *TESTS.glob("comparison/cases/*.md")])


@pytest.mark.parametrize("path", CASES, ids=lambda path: f"{path.parent.parent.name}-{path.stem}")
def test_case(path: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    assert_printed(path, tmp_path)
