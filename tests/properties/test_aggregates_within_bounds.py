"""An aggregate of values that are known only within bounds is what trying every value in them gives (arithmetic)."""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from itertools import product

from hypothesis import given
from hypothesis import strategies as st

from intent.dossier.installation_text import read_installation
from intent.dossier.work_text import read_work
from intent.model.assertions import Aggregate, Assertion, Relation, Scope, ScopeKind
from intent.model.meaning import every_value
from intent.names import NO, POSITION, YES, term_iri
from intent.record.load_installation import load_installation
from intent.record.load_work import load_work
from intent.values.regions import Interval, Region, region
from intent.values.sets import Labels
from intent.variance.aggregates import amounts
from intent.variance.state import State
from intent.variance.two_states import documented_state, proposed_state
from intent.vocabulary.loader import read_vocabulary

WORK = """# Two sets and two players

- number: 7
- owner: Thornacre Museum

## Parts

### Sets

- kind: display

| part |
| ---- |
| M1   |
| M2   |

### Players

- kind: player

| part | channel |
| ---- | ------- |
| P1   | A       |
| P2   | A       |

## Material

| material | channel | duration | loop length |
| -------- | ------- | -------- | ----------- |
| V1       | A       | 30 s     | 40 s        |
"""
INSTALLATION = "# As it is\n\n- work: work.md\n- dates: 2027-03-01/2027-06-30\n"
Ends = tuple[int, int]
angles = st.integers(0, 359).flatmap(lambda low: st.tuples(st.just(low), st.integers(low, 359)))
seconds = st.integers(0, 60).flatmap(lambda low: st.tuples(st.just(low), st.integers(low, 60)))
metres = st.integers(-3, 3).flatmap(lambda low: st.tuples(st.just(low), st.integers(low, 3)))
places = st.tuples(metres, metres, metres)


@cache
def state() -> State:
    """The two sets and the two players, of which nothing else is known."""
    vocabulary = read_vocabulary()
    reading = read_work(WORK, "work.md", vocabulary)
    assert not [found for found in reading.findings if found.is_error]
    work = load_work(reading.triples, reading.iri, vocabulary)
    proposal = read_installation(INSTALLATION, "loan.md", work, None)
    installation = load_installation(proposal.triples, proposal.iri, work, reading.triples, ())
    return proposed_state(work, installation, documented_state(work))


def between(ends: Ends) -> Interval:
    return Interval(Fraction(ends[0]), Fraction(ends[1]))


def whole_numbers(ends: Ends) -> range:
    return range(ends[0], ends[1] + 1)


def of(term: str, values: dict[str, list[Ends]]) -> State:
    """The state in which a characteristic of some parts is known just within bounds, one pair of ends a dimension."""
    vocabulary = state().vocabulary
    whole = every_value(vocabulary.characteristics[term], vocabulary)
    assert isinstance(whole, Region)
    boxes = {name: [tuple(between(ends) for ends in each)] for name, each in values.items()}
    return state().assuming({(name, term): region(box, whole) for name, box in boxes.items()})


def asked(
    aggregate: Aggregate, names: tuple[str, ...], term: str, relation: Relation | None = None
) -> Assertion:
    scope = Scope(kind=ScopeKind.NAMES, names=names[:1] if relation else names)
    other = names[1] if relation else None
    return Assertion(aggregate=aggregate, scope=scope, characteristic=term, relation=relation, other=other)


def bounds_of(state: State, assertion: Assertion, members: tuple[str, ...]) -> Interval:
    (amount,) = amounts(assertion, members, state)
    assert isinstance(amount.value, Region)
    return amount.value.bounds


def round_a(loop: int, one: int, two: int) -> int:
    apart = abs(one - two) % loop
    return min(apart, loop - apart)


@given(one=angles, two=angles)
def test_a_difference_of_angles_goes_the_shorter_way(one: Ends, two: Ends) -> None:
    rotation = term_iri("rotation")
    turned = of(rotation, {"M1": [one], "M2": [two]})
    every = [round_a(360, *pair) for pair in product(whole_numbers(one), whole_numbers(two))]
    found = bounds_of(turned, asked(Aggregate.DIFFERENCE, ("M1", "M2"), rotation), ("M1", "M2"))
    assert found == Interval(Fraction(min(every)), Fraction(max(every)))


@given(one=seconds, two=seconds)
def test_a_difference_of_offsets_goes_round_the_loop(one: Ends, two: Ends) -> None:
    offset = term_iri("start-offset")
    started = of(offset, {"P1": [one], "P2": [two]})
    every = [round_a(40, *pair) for pair in product(whole_numbers(one), whole_numbers(two))]
    found = bounds_of(started, asked(Aggregate.DIFFERENCE, ("P1", "P2"), offset), ("P1", "P2"))
    assert found == Interval(Fraction(min(every)), Fraction(max(every)))


@given(one=places, two=places)
def test_a_distance_is_between_the_nearest_and_the_furthest(
    one: tuple[Ends, Ends, Ends], two: tuple[Ends, Ends, Ends]
) -> None:
    placed = of(POSITION, {"M1": list(one), "M2": list(two)})
    apart = [
        {abs(mine - its) for mine, its in product(whole_numbers(first), whole_numbers(second))}
        for first, second in zip(one, two, strict=True)
    ]
    found = bounds_of(placed, asked(Aggregate.DISTANCE, ("M1", "M2"), POSITION), ("M1", "M2"))
    assert found.low == sum(min(axis) ** 2 for axis in apart)
    assert found.high == sum(max(axis) ** 2 for axis in apart)


BEYOND = {
    Relation.RIGHT_OF: (0, 1),
    Relation.LEFT_OF: (0, -1),
    Relation.ABOVE: (1, 1),
    Relation.BELOW: (1, -1),
    Relation.IN_FRONT_OF: (2, 1),
    Relation.BEHIND: (2, -1),
}
"""The axis, and whether further along it or less far."""


@given(one=places, two=places, relation=st.sampled_from(list(Relation)))
def test_a_relation_holds_where_it_does_for_every_value(
    one: tuple[Ends, Ends, Ends], two: tuple[Ends, Ends, Ends], relation: Relation
) -> None:
    placed = of(POSITION, {"M1": list(one), "M2": list(two)})
    axis, sign = BEYOND[relation]
    answers = {
        YES if (mine - its) * sign > 0 else NO
        for mine, its in product(whole_numbers(one[axis]), whole_numbers(two[axis]))
    }
    (amount,) = amounts(asked(Aggregate.RELATION, ("M1", "M2"), POSITION, relation), ("M1",), placed)
    assert amount.value == Labels(frozenset(answers))
