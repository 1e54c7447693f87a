"""What must always hold of light and wear: scaling, order, units, and bounds that only widen.

A number less well known never gives a narrower answer; twice the light does what twice the time does; an hour is sixty
minutes.
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from pathlib import Path

import pytest
from effects.test_effect_cases import assessed
from hypothesis import given
from hypothesis import strategies as st
from test_cases import Case

from intent.formulas import colour, lifetimes, photometry
from intent.language.locale import ENGLISH
from intent.model.subject import one
from intent.values.bounds import between, known, plus, point, times
from intent.values.regions import Interval
from intent.variance.result import Variance
from properties.strategies import fixed, nested

ROUNDING = Fraction(1, 10**9)
"""Powers are computed with sixteen digits."""
EITHER_WAY = between(-ROUNDING, ROUNDING)
luminances = st.fractions(Fraction(1, 100), Fraction(1000), max_denominator=100)
shares = st.fractions(Fraction(0), Fraction(1), max_denominator=100)
lights = st.integers(1, 2000).map(Fraction)
gammas = st.fractions(Fraction(1), Fraction(3), max_denominator=10)
hours = st.integers(1, 5000).map(Fraction)
lives = st.integers(1, 5000).map(Fraction)
temperatures = st.integers(1800, 20000).map(Fraction)

FORMULAS: dict[str, tuple[Callable[[Interval, Interval], Interval], st.SearchStrategy[Fraction]]] = {
    "reflected luminance": (photometry.reflected_luminance, shares),
    "contrast in the dark": (lambda one, two: photometry.contrast(times(one, point(1000)), two), shares),
    "contrast in the room": (lambda one, two: photometry.contrast(point(10**6), one, two), luminances),
    "projected luminance": (lambda one, two: photometry.projected_luminance(one, point(3), two), luminances),
    "displayed luminance by black": (lambda one, two: _shown(point(1000), one, two), gammas),
    "displayed luminance by white": (lambda one, two: _shown(one, point(0), two), gammas),
    "dose": (photometry.dose, hours),
    "passes": (lifetimes.passes, hours),
    "time in light": (lifetimes.time_in_light, lives),
    "copies needed": (lifetimes.copies_needed, lives),
    "mireds": (lambda one, _two: colour.mireds(one), lives),
}


def _shown(white: Interval, black: Interval, gamma: Interval) -> Interval:
    return photometry.displayed_luminance(Fraction(1, 2), white, black, gamma)


@pytest.mark.parametrize("name", FORMULAS)
@given(data=st.data())
@fixed(60)
def test_less_known_is_never_narrower(name: str, data: st.DataObject) -> None:
    formula, second = FORMULAS[name]
    (close, loose), (near, wide) = data.draw(nested(luminances)), data.draw(nested(second))
    narrow, wider = formula(close, near), formula(loose, wide)
    assert plus(wider, EITHER_WAY).holds(narrow), f"{name}: {narrow} not within {wider}"


@given(illuminance=lights, time=hours, factor=st.integers(1, 20))
@fixed(60)
def test_more_light_for_less_time_is_the_same_dose(
    illuminance: Fraction, time: Fraction, factor: int
) -> None:
    one = photometry.dose(point(illuminance * factor), point(time))
    assert one == photometry.dose(point(illuminance), point(time * factor))


@given(white=luminances, black=shares, reflectance=shares, illuminance=lights)
@fixed(100)
def test_a_room_never_adds_contrast(
    white: Fraction, black: Fraction, reflectance: Fraction, illuminance: Fraction
) -> None:
    bright, dark = point(white + 1), point(black + Fraction(1, 1000))
    reflected = photometry.reflected_luminance(point(reflectance), point(illuminance))
    left, whole = (
        known(photometry.contrast(bright, dark, reflected)),
        known(photometry.contrast(bright, dark)),
    )
    assert left is not None
    assert whole is not None
    assert 1 <= left <= whole


@given(white=luminances, factor=st.integers(2, 9), gamma=gammas, black=shares)
@fixed(100)
def test_a_display_twice_as_bright_shows_every_tone_twice_as_bright(
    white: Fraction, factor: int, gamma: Fraction, black: Fraction
) -> None:
    one = known(_shown(point(white), point(white * black), point(gamma)))
    two = known(_shown(point(white * factor), point(white * black * factor), point(gamma)))
    assert one is not None
    assert two is not None
    assert abs(one * factor - two) < ROUNDING * max(Fraction(1), two)
    assert white * black - ROUNDING <= one <= white + ROUNDING


@given(one=temperatures, two=temperatures)
@fixed(60)
def test_there_and_back_is_the_same_step_of_mireds(one: Fraction, two: Fraction) -> None:
    there = (known(colour.mireds(point(two))) or 0) - (known(colour.mireds(point(one))) or 0)
    back = (known(colour.mireds(point(one))) or 0) - (known(colour.mireds(point(two))) or 0)
    assert there == -back
    assert (there > 0) == (two < one)


@given(time=hours, life=lives)
@fixed(100)
def test_copies_are_enough_and_one_fewer_is_not(time: Fraction, life: Fraction) -> None:
    copies = known(lifetimes.copies_needed(point(time), point(life)))
    assert copies is not None
    assert copies * life >= time
    assert copies == 1 or (copies - 1) * life < time


WORK = """
## Parts

### Monitors

- kind: display

| part | device | technology       | channel | luminance | black level | reflectance | white point |
| ---- | ------ | ---------------- | ------- | --------- | ----------- | ----------- | ----------- |
| M1   | E-01   | cathode-ray tube | A       | 100 cd/m² | 0.1 cd/m²   | 0.05        | 6500 K      |

### Players

- kind: player

| part | device | technology     | channel | passes a copy | copies held |
| ---- | ------ | -------------- | ------- | ------------- | ----------- |
| P1   | E-11   | film projector | A       | 1000          | 2           |

### Objects

- kind: object

| part | device | light responsivity |
| ---- | ------ | ------------------ |
| B1   | O-1    | medium             |

## Material

| material | channel | loop length |
| -------- | ------- | ----------- |
| V1       | A       | 10 min      |
"""


def proposed(luminance: str, lit: str, open_for: str) -> Variance:
    """A panel in the place of M1, in some light, for some hours a day of a hundred days."""
    installation = f"""
- dates: 2027-03-01/2027-06-08

## Substitutions

| part | device | technology | luminance   | contrast | reflectance | white point |
| ---- | ------ | ---------- | ----------- | -------- | ----------- | ----------- |
| M1   | V-1    | LCD        | {luminance} | 1000:1   | 0.04        | 9300 K      |

## Venue

- ambient light: {lit}
- opening time per day: {open_for}
- days open: 100
"""
    return assessed(Case(Path("panel.md"), 1, "A panel", "A panel", WORK, "", installation, ""))


def told(variance: Variance) -> dict[tuple[str, tuple[str, ...]], Interval | None]:
    return {
        (ENGLISH.say(effect.quantity), effect.subject.members): effect.proposed
        for effect in variance.effects
        if effect.topic in {"light", "power"}
    }


@given(white=st.integers(50, 500), lit=st.integers(1, 400), day=st.integers(1, 24))
@fixed(8)
def test_another_unit_tells_the_same(white: int, lit: int, day: int) -> None:
    """An hour is 60 minutes."""
    hours = proposed(f"{white} cd/m²", f"{lit} lx", f"{day} h")
    minutes = proposed(f"{white} cd/m²", f"{lit} lx", f"{day * 60} min")
    assert told(hours) == told(minutes)
    assert [finding.text for finding in hours.obstacles] == [finding.text for finding in minutes.obstacles]


@given(white=st.integers(50, 500), lit=st.integers(1, 400), day=st.integers(1, 20), more=st.integers(1, 4))
@fixed(12)
def test_what_is_said_less_closely_is_told_less_closely(white: int, lit: int, day: int, more: int) -> None:
    """And what is not sure is no finding."""
    close = proposed(f"{white} cd/m²", f"{lit} lx", f"{day} h")
    loose = proposed(
        f"between {white} cd/m² and {white + 50 * more} cd/m²",
        f"between {lit} lx and {lit + more} lx",
        f"between {day} h and {day + more} h",
    )
    for quantity, bounds in told(loose).items():
        found = told(close).get(quantity)
        if bounds is not None and found is not None:
            assert plus(bounds, EITHER_WAY).holds(found), f"{quantity}: {found} not within {bounds}"
    slugs = {finding.slug for finding in close.obstacles}
    assert {finding.slug for finding in loose.obstacles} <= slugs


@given(lit=st.integers(1, 400), day=st.integers(1, 24))
@fixed(12)
def test_a_finding_is_told_just_where_a_limit_is_passed(lit: int, day: int) -> None:
    """The class may have 50 lx, and 150,000 lx·h in a year (CIE 157:2004, as quoted)."""
    every = proposed("100 cd/m²", f"{lit} lx", f"{day} h").obstacles
    found = [finding for finding in every if finding.subject == one("B1")]
    assert len(found) == (lit > 50) + (lit * day * 100 > 150_000)
    assert all(finding.slug == "light-dose" and "venue" in ENGLISH.say(finding.text) for finding in found)
