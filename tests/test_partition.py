"""Values cut at the borders of several sets; and which of the sets cannot be met together."""

from __future__ import annotations

from fractions import Fraction
from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from intent.values.partition import ValuePiece, cut, smallest_clashes
from intent.values.regions import Interval, Region
from intent.values.sets import ANY_LABEL, Labels, ValueSet

NOTHING = Labels(frozenset())


def watts(low: int | None, high: int | None, *, beyond: bool = False, below: bool = False) -> Region:
    """So many watts, both ends among them; ``beyond`` the lower end only, or ``below`` the higher."""
    least, most = (None if end is None else Fraction(end) for end in (low, high))
    return Region(((Interval(least, most, beyond, below),),))


def names(*which: str) -> Labels:
    return Labels(frozenset(which))


def test_a_range_is_cut_where_two_others_begin_and_end() -> None:
    """Of 0 to 100 W, with 20 to 60 W and at least 40 W: each end is in the piece that holds it."""
    assert cut(watts(0, 100), [watts(20, 60), watts(40, None)]) == (
        ValuePiece(watts(40, 60), (True, True)),
        ValuePiece(watts(20, 40, below=True), (True, False)),
        ValuePiece(watts(60, 100, beyond=True), (False, True)),
        ValuePiece(watts(0, 20, below=True), (False, False)),
    )


def test_names_are_cut_into_those_of_a_set_and_all_others() -> None:
    """That others exist is known, though nobody lists them."""
    assert cut(ANY_LABEL, [names("LCD", "OLED")]) == (
        ValuePiece(names("LCD", "OLED"), (True,)),
        ValuePiece(Labels(frozenset({"LCD", "OLED"}), all_but=True), (False,)),
    )


def test_a_set_that_holds_none_or_all_of_the_values_cuts_nothing() -> None:
    assert cut(watts(0, 10), [watts(20, 30), watts(0, 50)]) == (ValuePiece(watts(0, 10), (False, True)),)


def test_what_is_cut_nowhere_is_one_piece_and_nothing_is_none() -> None:
    assert cut(watts(0, 10), []) == (ValuePiece(watts(0, 10), ()),)
    assert cut(NOTHING, [names("LCD")]) == cut(NOTHING, []) == ()


A, B, C = "LCD", "plasma panel", "OLED"
SAYS: dict[str, tuple[ValueSet, list[ValueSet], tuple[set[int], ...]]] = {
    "all can be met": (ANY_LABEL, [names(A, B), names(A, C)], ()),
    "nothing is asked": (ANY_LABEL, [], ()),
    "two that no value meets, and one that is met beside each": (
        watts(0, None),
        [watts(None, 40), watts(60, None), watts(None, 100)],
        ({0, 1},),
    ),
    "of three each two can be met, but not all of them": (
        ANY_LABEL,
        [names(A, B), names(B, C), names(A, C)],
        ({0, 1, 2},),
    ),
    "one that no value meets, whatever the others ask": (
        ANY_LABEL,
        [names(A), NOTHING, names(B)],
        ({0, 2}, {1}),
    ),
    "two that only values would meet that there are not": (
        watts(0, 50),
        [watts(None, 10), watts(20, None), watts(60, None)],
        ({0, 1}, {2}),
    ),
    "the same end is met by both": (watts(0, None), [watts(None, 40), watts(40, None)], ()),
    "an end that one of them leaves out is not": (
        watts(0, None),
        [watts(None, 40), watts(40, None, beyond=True)],
        ({0, 1},),
    ),
    "one against each of two others": (
        watts(0, None),
        [watts(None, 40), watts(60, None), watts(70, None)],
        ({0, 1}, {0, 2}),
    ),
    "where there is no value, nothing can be said": (NOTHING, [names(A), names(B)], ()),
}


@pytest.mark.parametrize("case", SAYS)
def test_the_smallest_choices_that_clash(case: str) -> None:
    whole, sets, clashes = SAYS[case]
    assert smallest_clashes(whole, sets) == tuple(map(frozenset, clashes))


@given(st.lists(st.frozensets(st.sampled_from("abcd")), max_size=5))
def test_a_clash_is_a_choice_without_a_value_of_which_every_part_has_one(sets: list[frozenset[str]]) -> None:
    """Told by trying every choice on every value."""
    values = frozenset("abcd")

    def clash(choice: frozenset[int]) -> bool:
        return not values.intersection(*(sets[place] for place in choice))

    choices = [
        frozenset(choice) for size in range(len(sets) + 1) for choice in combinations(range(len(sets)), size)
    ]
    least = {
        choice for choice in choices if clash(choice) and not any(clash(choice - {one}) for one in choice)
    }
    found = smallest_clashes(Labels(values), [Labels(names) for names in sets])
    assert set(found) == least
    assert list(found) == sorted(least, key=sorted)
