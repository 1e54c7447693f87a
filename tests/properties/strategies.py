"""Random works and installations, and the ways of reading them, for every property."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from fractions import Fraction
from random import Random

from examples_read import vocabulary
from hypothesis import HealthCheck, settings
from hypothesis import strategies as st
from oracle.cases import Case
from oracle.drawing import draw_case
from oracle.drawing_together import draw_together
from oracle.program import Rows, judged_texts, rows_of
from oracle.world import Written, small_world

from intent.values.regions import Interval

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


@st.composite
def nested(draw: st.DrawFn, numbers: st.SearchStrategy[Fraction]) -> tuple[Interval, Interval]:
    """Bounds, and wider ones, some of them without end."""
    ends = sorted(draw(st.lists(numbers, min_size=4, max_size=4)))
    high = draw(st.sampled_from([ends[3], None]))
    low = draw(st.sampled_from([ends[0], Fraction(0)]))
    return Interval(ends[1], ends[2]), Interval(low, high)


def assert_never_narrower(
    formula: Callable[[Interval, Interval], Interval],
    first: tuple[Interval, Interval],
    second: tuple[Interval, Interval],
) -> None:
    """Of two pairs of bounds and wider ones, the wider make an answer that holds that of the others."""
    narrow, wide = formula(first[0], second[0]), formula(first[1], second[1])
    assert wide.holds(narrow), f"{narrow} not within {wide}"


def over(cells: Mapping[str, Written], trait: str, written: Written | None) -> dict[str, Written]:
    """The cells with something else written in one, or nothing."""
    rest = {key: value for key, value in cells.items() if key != trait}
    return rest | {trait: written} if written else rest


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
