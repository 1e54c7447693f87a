"""The terminal report keeps to its width, and says without colour all that it says with it."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from intent.papers import Evidence, write_report
from intent.papers.layout import columns_of, wrapped
from intent.variance.result import Variance

DIGEST = 10 + 64
"""Columns of a digest with its label, which is not broken so that it can be copied."""


@pytest.mark.parametrize("width", [40, 60, 80, 120])
def test_keeps_to_the_width(width: int, variance: Variance, evidence: Evidence) -> None:
    for line in write_report(variance, "text", evidence, width=width).splitlines():
        assert columns_of(line) <= (DIGEST if "SHA-256" in line else width), line


def test_colour_adds_nothing_but_colour(variance: Variance, evidence: Evidence) -> None:
    plain = write_report(variance, "text", evidence)
    coloured = write_report(variance, "text", evidence, colour=True)
    assert "\x1b" not in plain
    assert re.sub(r"\x1b\[\d+m", "", coloured) == plain != coloured


def test_verdicts_are_spelled_out(variance: Variance, evidence: Evidence) -> None:
    report = write_report(variance, "text", evidence)
    for word in ("BREACH", "UNCOVERED", "CONDITIONAL", "NOT ACCEPTABLE"):
        assert word in report


def test_worst_first_whatever_the_order_of_rows(variance: Variance, evidence: Evidence) -> None:
    report = write_report(replace(variance, rows=tuple(reversed(variance.rows))), "text", evidence)
    assert report.index("BREACH") < report.index("UNCOVERED") < report.index("CONDITIONAL")


def test_wide_characters_take_two_columns() -> None:
    """Unicode Standard Annex 11: East Asian wide characters take two columns, combining ones none."""
    assert columns_of("時刻表") == 6
    assert columns_of("e\u0301") == 1
    assert list(wrapped("時刻表 時刻表", 7)) == ["時刻表", "時刻表"]
