"""What always holds of lifting, of openings, and of the effects that are told of them."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

from examples_read import vocabulary
from hypothesis import given, settings
from hypothesis import strategies as st
from test_cases import Case, read, whole_installation, whole_work

from intent.dossier.installation_text import read_installation
from intent.dossier.work_text import read_work
from intent.effects.assess import assess
from intent.formulas.niosh import (
    GRIPS,
    Lift,
    lifting_index,
    people_needed,
    reach_around,
    recommended_limit,
)
from intent.formulas.openings import Turning, clearance, clearance_in_car
from intent.language.locale import ENGLISH
from intent.record.load_installation import load_installation
from intent.record.load_work import load_work
from intent.values.bounds import NATURAL, known, point
from intent.values.regions import Interval
from intent.variance.result import EffectTopic, Variance

numbers = st.integers(0, 250).map(Fraction)
factors = st.fractions(Fraction(1, 10), 10, max_denominator=20)
sides = st.integers(1, 300).map(lambda centimetres: Fraction(centimetres, 100))
grips = st.sets(st.sampled_from(sorted(GRIPS)), min_size=1).map(frozenset)
BOXES = st.tuples(*[st.integers(20, 260)] * 3)
DOORS = st.tuples(*[st.integers(60, 220)] * 2)
FEW = settings(max_examples=60, deadline=None)


@st.composite
def bounds(draw: st.DrawFn) -> tuple[Interval, Interval]:
    """A number that is known well, and the same number known less well."""
    ends = sorted(draw(st.tuples(numbers, numbers, numbers, numbers)))
    wide = Interval(ends[0], draw(st.sampled_from([ends[3], None])))
    return Interval(ends[1], ends[2]), wide


@given(reach=bounds(), height=bounds(), travel=bounds(), turn=bounds(), all_grips=grips, fewer=grips)
@FEW
def test_a_limit_of_what_is_less_known_is_less_narrow(
    reach: tuple[Interval, Interval],
    height: tuple[Interval, Interval],
    travel: tuple[Interval, Interval],
    turn: tuple[Interval, Interval],
    all_grips: frozenset[str],
    fewer: frozenset[str],
) -> None:
    narrow = recommended_limit(
        Lift(reach=reach[0], height=height[0], travel=travel[0], turn=turn[0], grips=fewer)
    )
    wide = recommended_limit(
        Lift(reach=reach[1], height=height[1], travel=travel[1], turn=turn[1], grips=all_grips | fewer)
    )
    assert wide.holds(narrow)


@given(depth=bounds(), height=bounds())
@FEW
def test_a_reach_of_what_is_less_known_is_less_narrow(
    depth: tuple[Interval, Interval], height: tuple[Interval, Interval]
) -> None:
    assert reach_around(depth[1], height[1]).holds(reach_around(depth[0], height[0]))


@given(weight=bounds(), alone=bounds(), together=bounds())
@FEW
def test_people_needed_by_what_is_less_known_are_less_narrow(
    weight: tuple[Interval, Interval],
    alone: tuple[Interval, Interval],
    together: tuple[Interval, Interval],
) -> None:
    narrow, wide = (
        people_needed(lifting_index(weight[known_less], alone[known_less]), together[known_less])
        for known_less in (0, 1)
    )
    assert wide.holds(narrow)


@given(weight=sides, limit=sides, factor=factors)
@FEW
def test_the_index_does_not_depend_on_the_unit_of_weight(
    weight: Fraction, limit: Fraction, factor: Fraction
) -> None:
    scaled = lifting_index(point(weight * factor), point(limit * factor))
    assert scaled == lifting_index(point(weight), point(limit))


@given(p=sides, q=sides, r=sides, a=sides, b=sides, factor=st.integers(1, 9))
@FEW
def test_a_straight_clearance_grows_with_its_unit(
    p: Fraction, q: Fraction, r: Fraction, a: Fraction, b: Fraction, factor: int
) -> None:
    for turning in (Turning.UPRIGHT, Turning.LAID):
        once = known(clearance((point(p), point(q), point(r)), (point(a), point(b)), turning))
        box = point(p * factor), point(q * factor), point(r * factor)
        assert once is not None
        assert known(clearance(box, (point(a * factor), point(b * factor)), turning)) == once * factor


@given(p=sides, q=sides, r=sides, a=sides, b=sides)
@FEW
def test_which_side_is_called_the_length_is_all_the_same(
    p: Fraction, q: Fraction, r: Fraction, a: Fraction, b: Fraction
) -> None:
    one, other = (point(p), point(q), point(r)), (point(q), point(p), point(r))
    laid = (point(r), point(p), point(q))
    hole = point(a), point(b)
    for turning in Turning:
        if turning is not Turning.ON_BACK:  # which side is its back is told by their names
            assert clearance(one, hole, turning) == clearance(other, hole, turning)
    for turning in (Turning.LAID, Turning.ANY):
        assert clearance(one, hole, turning) == clearance(laid, hole, turning)
        assert clearance_in_car(one, (*hole, point(a)), turning) == clearance_in_car(
            laid, (*hole, point(a)), turning
        )


@given(p=sides, q=sides, r=sides, a=sides, b=sides)
@FEW
def test_what_goes_into_the_car_goes_through_its_door(
    p: Fraction, q: Fraction, r: Fraction, a: Fraction, b: Fraction
) -> None:
    box, car = (point(p), point(q), point(r)), (point(a), NATURAL, point(b))
    into = clearance_in_car(box, car, Turning.LAID).high
    through = clearance(box, (point(a), point(b)), Turning.LAID).high
    assert into is not None
    assert through is not None
    assert into <= through


def assessed(box: str, venue: str) -> Variance:
    work = (
        "## Parts\n\n### Chests\n\n- kind: object\n\n| part | name |\n| --- | --- |\n| O1 | chest |\n\n## Boxes\n\n"
        f"| box | holds | length | width | height | weight |\n| --- | --- | --- | --- | --- | --- |\n{box}\n"
    )
    case = Case(Path(__file__), 1, "", "", work, "", f"## Venue\n\n{venue}\n", "")
    reading = read(read_work(whole_work(case), "work.md", vocabulary()))
    documented = load_work(reading.triples, reading.iri, vocabulary())
    proposal = read(read_installation(whole_installation(case), "installation.md", documented, None))
    return assess(
        documented, load_installation(proposal.triples, proposal.iri, documented, reading.triples, ())
    )


@given(box=BOXES, door=DOORS, weight=st.integers(1, 99))
@settings(max_examples=15, deadline=None)
def test_what_is_told_does_not_depend_on_units(
    box: tuple[int, ...], door: tuple[int, ...], weight: int
) -> None:
    in_inches, in_millimetres = (
        assessed(
            f"| box-1 | O1 | {' | '.join(f'{side * one:g} {unit}' for side in box)} | {weight} kg |",
            f"- door width: {door[0] * one:g} {unit}\n- door height: {door[1] * one:g} {unit}\n"
            "- floor load limit: 3 kPa",
        )
        for one, unit in ((1, "in"), (25.4, "mm"))
    )
    assert _told(in_inches) == _told(in_millimetres)


@given(box=BOXES, door=DOORS)
@settings(max_examples=15, deadline=None)
def test_saying_less_never_finds_more(box: tuple[int, ...], door: tuple[int, ...]) -> None:
    """A side left blank never brings a sure obstacle that was not there; it leaves open what was settled."""
    length, width, height = (f"{side} cm" for side in box)
    venue = f"- door width: {door[0]} cm\n- door height: {door[1]} cm"
    whole = _sure(assessed(f"| box-1 | O1 | {length} | {width} | {height} | 20 kg |", venue))
    for blank in (f"| {width} | {height}", f"{length} | | {height}", f"{length} | {width} | "):
        found = assessed(f"| box-1 | O1 | {blank} | 20 kg |", venue)
        assert _sure(found) <= whole
        assert found.obstacles


def _sure(variance: Variance) -> set[str]:
    return {obstacle.slug for obstacle in variance.obstacles if obstacle.is_sure}


def _told(variance: Variance) -> tuple[list[object], list[str]]:
    effects = [
        (ENGLISH.say(effect.quantity), effect.proposed, ENGLISH.say(effect.sentence))
        for effect in variance.effects
        if effect.topic is EffectTopic.HANDLING
    ]
    return list(effects), [ENGLISH.say(finding.text) for finding in variance.obstacles]
