"""Random works and installations, and the ways of reading them, for every property."""

from __future__ import annotations

from random import Random

from examples_read import vocabulary
from hypothesis import HealthCheck, settings
from hypothesis import strategies as st
from oracle.cases import Case
from oracle.drawing import draw_case
from oracle.drawing_together import draw_together
from oracle.program import Rows, judged_texts, rows_of
from oracle.world import small_world

GOOD = {"none", "allowed", "as-required", "as-documented"}
"""The verdicts that are acceptable by themselves; `none` is no row."""


def fixed(examples: int) -> settings:
    """The same examples on every run, as many as said."""
    return settings(
        max_examples=examples,
        derandomize=True,
        deadline=None,
        database=None,
        suppress_health_check=list(HealthCheck),
    )


def seeds() -> st.SearchStrategy[int]:
    return st.integers(0, 2**32)


def crowded() -> st.SearchStrategy[Case]:
    """Cases in which instructions meet on single parts, from a seed: they stay as varied as the oracle's."""
    return seeds().map(lambda seed: draw_case(Random(seed), small_world()))


def together() -> st.SearchStrategy[Case]:
    """Cases of numbers, totals, differences and sameness."""
    return seeds().map(lambda seed: draw_together(Random(seed)))


def cases() -> st.SearchStrategy[Case]:
    return crowded() | together()


def verdicts(work: str, installation: str) -> tuple[Rows, str]:
    """The rows that are not as documented, and the outcome."""
    variance = judged_texts(work, installation, vocabulary())
    return rows_of(variance), variance.outcome.value
