"""In what order a work is switched on and off, where the dossier says so and where it says nothing.

The usual order (what feeds power, control, what shows, what stands between, what plays, and amplifiers last; off the
other way round) is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

import pytest
from examples_read import INSTALLATIONS, proposal, vocabulary
from oracle.program import loaded

from intent.effects.power.consumers import consumers
from intent.effects.scene import Scene, sides_of
from intent.planning.switching import Switching, SwitchingStep, switching_of
from intent.values.sets import Answer
from intent.variance.case import lay_out

WORK = """# Lamp Room

- number: 7
- owner: Thornacre Museum

## Parts

### All

| part | kind        | technology          | power state  | start-up order | shut-down order |
| ---- | ----------- | ------------------- | ------------ | -------------- | --------------- |
| P1   | player      | media player        |              | {p1}           | {p1_down}       |
| C1   | converter   | distribution amplifier |              |                |                 |
| C2   | converter   | HDMI converter      |              |                |                 |
| A1   | converter   | audio amplifier     |              |                |                 |
| S1   | loudspeaker | passive loudspeaker |              |                |                 |
| M1   | display     | LCD                 |              | {m1}           |                 |
| M2   | display     | LCD                 | switched off |                |                 |
| N1   | converter   | mains transformer   |              |                |                 |
| K1   | control     |                     |              |                |                 |
| O1   | object      |                     |              |                |                 |

## Connections

| from | to | signal    |
| ---- | -- | --------- |
| P1   | C1 | composite |
| C1   | C2 | composite |
| C2   | M1 | HDMI      |
"""
LOAN = """# Loan

- work: work.md
- dates: 2027-03-01/2027-06-30
"""


def _switching(p1: str = "", m1: str = "", p1_down: str = "") -> Switching:
    found = loaded(WORK.format(p1=p1, m1=m1, p1_down=p1_down), LOAN, vocabulary())
    return switching_of(sides_of(lay_out(found.work, found.installation)).proposed)


def _turns(steps: Iterable[SwitchingStep]) -> list[tuple[str, ...]]:
    return [step.parts for step in steps]


def test_usual_order_where_the_dossier_says_nothing() -> None:
    """Of the two converters the second takes the signal first to be ready, since the first one gives it."""
    usual = [("N1",), ("K1",), ("M1",), ("C2",), ("C1",), ("P1",), ("A1",)]
    switching = _switching()
    assert _turns(switching.on) == usual
    assert _turns(switching.off) == usual[::-1]
    assert not any(step.is_stated for step in (*switching.on, *switching.off))


def test_what_is_off_stays_off_and_what_takes_no_power_is_not_switched() -> None:
    switching = _switching()
    named = {part for step in switching.on for part in step.parts}
    assert switching.stays_off == ("M2",)
    assert named.isdisjoint({"S1", "O1", "M2"})


def test_what_the_dossier_says_goes_first_and_off_goes_the_other_way() -> None:
    switching = _switching(p1="1", m1="2")
    assert _turns(switching.on)[:2] == [("P1",), ("M1",)]
    assert [step.is_stated for step in switching.on] == [True, True, *[False] * 5]
    assert _turns(switching.off)[-2:] == [("M1",), ("P1",)]


def test_an_order_of_shutting_down_is_the_dossiers_own() -> None:
    switching = _switching(p1_down="1")
    assert _turns(switching.off)[0] == ("P1",)
    assert switching.off[0].is_stated
    assert not any(step.is_stated for step in switching.on)


@pytest.mark.parametrize("path", INSTALLATIONS, ids=lambda path: path.stem)
def test_whatever_takes_power_is_switched_once_each_way_or_stays_off(path: Path) -> None:
    found = proposal(path)
    scene: Scene = sides_of(lay_out(found.documentation.work, found.installation)).proposed
    switching = switching_of(scene)
    on = [part for step in switching.on for part in step.parts]
    assert len(on) == len(set(on))
    assert sorted(on) == sorted(part for step in switching.off for part in step.parts)
    assert set(consumers(scene)) <= {*on, *switching.stays_off}
    assert all(scene.runs(part) is Answer.OUT for part in switching.stays_off)
