"""The program's verdicts against those counted out, over many random cases with fixed seeds.

Where design.md is silent these readings hold here as in the program: what is given where nothing is documented is
unknown unless an instruction decides; so is what may or may not be the documented value; a condition that asks only
of parts which are absent is open; a requirement of a group does not ask for more of it.
"""

from __future__ import annotations

from random import Random

import pytest

from intent.language.locale import ENGLISH
from intent.variance.result import Open, OpenKind, Variance, Verdict
from intent.vocabulary.loader import read_vocabulary
from intent.vocabulary.terms import Vocabulary
from oracle.cases import Case
from oracle.drawing import draw_case
from oracle.drawing_together import draw_together
from oracle.judging import Judged, Key, judged_rows, outcome
from oracle.program import Rows, judged, rows_of
from oracle.speaking import Day
from oracle.together import presence_by_number, rows_together
from oracle.world import Trait, small_world
from oracle.writing import installation_text, work_text

OpenThings = frozenset[tuple[str, str]]
"""Kind and person, or kind and fact, of what would have to be closed."""
CASES = 1000
TOGETHER = 700
BATCHES = 10


@pytest.fixture(scope="module")
def vocabulary() -> Vocabulary:
    return read_vocabulary()


@pytest.fixture(scope="module")
def world() -> dict[str, Trait]:
    return small_world()


def differences(expected: Rows, found: Rows) -> list[str]:
    """Each row on which the two differ."""
    return [
        f"{subject}, {characteristic}: counted out {expected.get((subject, characteristic))}, "
        f"found {found.get((subject, characteristic))}"
        for subject, characteristic in sorted({*expected, *found})
        if expected.get((subject, characteristic)) != found.get((subject, characteristic))
    ]


def still_open(expected: dict[Key, Judged], variance: Variance) -> list[str]:
    """Each conditional row that names other things to be closed than those of one of its days, or of all together.

    A consent that would better nothing there is not named (tests/properties/test_asked.py holds what that means).
    """
    found = {
        (row.subject.written, ENGLISH.say(row.characteristic)): frozenset(_named(one) for one in row.open)
        for row in variance.rows
        if row.verdict is Verdict.CONDITIONAL
    }
    return [
        f"{key}: counted out as open {[sorted(one) for one in expected[key].open]}, found {sorted(named)}"
        for key, named in found.items()
        if key in expected and not _is_as_counted(named, expected[key].open)
    ]


def _is_as_counted(named: OpenThings, by_day: frozenset[OpenThings]) -> bool:
    every = frozenset[tuple[str, str]]().union(*by_day)
    idle = {one for one in every - named if one[0] == "consent"}
    return named in by_day or named == every - idle


def _named(one: Open) -> tuple[str, str]:
    if one.kind is OpenKind.CONSENT:
        return "consent", one.person or ""
    if one.kind is OpenKind.ATTESTATION:
        return one.kind.value, ENGLISH.say(one.text)
    return "value", ""


def told(seed: int, case: Case, what: list[str]) -> str:
    return "\n".join([f"seed {seed}", *what, "", work_text(case), installation_text(case)])


@pytest.mark.parametrize("batch", range(BATCHES))
def test_rows_and_outcome_are_as_counted_out(
    batch: int, vocabulary: Vocabulary, world: dict[str, Trait]
) -> None:
    for seed in range(batch, CASES, BATCHES):
        case = draw_case(Random(seed), world)
        variance = judged(case, vocabulary)
        every = rows_of(variance)
        found = {key: verdict for key, verdict in every.items() if key[1] in world}
        expected = judged_rows(case, world)
        what = differences({key: one.verdict for key, one in expected.items()}, found)
        what = what or still_open(expected, variance)
        if not what and not variance.obstacles:
            wanted = outcome(case, world, every)
            what = [f"outcome: counted out {wanted}, found {variance.outcome.value}"] * (
                wanted != variance.outcome.value
            )
        assert not what, told(seed, case, what)


@pytest.mark.parametrize("batch", range(BATCHES))
def test_what_is_said_of_several_parts_is_as_counted_out(
    batch: int, vocabulary: Vocabulary, world: dict[str, Trait]
) -> None:
    for seed in range(batch, TOGETHER, BATCHES):
        case = draw_together(Random(seed))
        every = rows_of(judged(case, vocabulary))
        day = Day(case, world, case.first)
        expected = rows_together(day)
        characteristics = {"number", "above M2", "below M2"}
        found = {
            key: verdict
            for key, verdict in every.items()
            if key[1] in characteristics or key[1].split()[0] in {"total", "difference", "same", "different"}
        }
        if not any(line.saying.trait == "presence" for line in case.lines):
            for name in (*case.omissions, *(place.name for place in case.additions)):
                expected[name, "presence"] = presence_by_number(day, name)
                found[name, "presence"] = every.get((name, "presence"), "none")
        assert not differences(expected, found), told(seed, case, differences(expected, found))
