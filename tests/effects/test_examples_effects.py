"""The three examples show each effect at least once, and every installation keeps its outcome.

What the figures must be is held in the cases beside this file; here it is held that the examples carry what they are
computed from, and that the report that a curator should grasp at a glance says what it must.
"""

from __future__ import annotations

import pytest
from examples_read import EXAMPLES, INSTALLATIONS
from examples_read import variance as variance_of

from intent.language.locale import ENGLISH
from intent.variance.obstacle import in_the_way
from intent.variance.result import Effect, Outcome, Variance, Verdict

OUTCOMES = {
    "low-farms/2016-gallery-two": Outcome.ACCEPTABLE,
    "low-farms/2024-gallery-four": Outcome.ACCEPTABLE,
    "low-farms/2025-port-imbrie": Outcome.NOT_ACCEPTABLE,
    "low-farms/2026-netloft": Outcome.REFER,
    "low-farms/2027-halmsee-loan": Outcome.ON_CONDITIONS,
    "second-delivery/2016-stair-hall": Outcome.ACCEPTABLE,
    "second-delivery/2019-vessen": Outcome.ACCEPTABLE,
    "second-delivery/2023-lower-hall": Outcome.ACCEPTABLE,
    "second-delivery/2025-light-festival": Outcome.NOT_ACCEPTABLE,
    "second-delivery/2026-open-night": Outcome.REFER,
    "second-delivery/2027-maarholm-loan": Outcome.ON_CONDITIONS,
    "kestrel-held/2018-twenty-years": Outcome.ACCEPTABLE,
    "kestrel-held/2025-night-bank": Outcome.NOT_ACCEPTABLE,
    "kestrel-held/2026-river-museum": Outcome.ON_CONDITIONS,
    "kestrel-held/2026-river-museum-as-hung": Outcome.ACCEPTABLE,
    "kestrel-held/2027-hall-of-birds": Outcome.REFER,
}
NAMES = """
bars above and below
bars at the sides
bars at the sides of the upright screen
bars from the mains
burn-in
circuit
clearance at the door
clearance in the corridor
clearance in the lift
connections that fit
contrast
converter for the mains
copies needed
current
current in all
current on one circuit
deinterlacing
devices that can sound
distortion
drift in a day
enclosed
fit
gap above and below
gap at the side
gap between pictures at the side
gap between screens at the side
hanging load
heat in all
heavy loads on stairs
hours
illuminance
inrush current
lamp hours
leakage to earth
leakage to earth in all
lifting index
light dose
lines of the screen to a line of the picture
lines or picture elements seen up to
load on the floor
loop length
lost share
loudspeakers
luminance
material taken as it is
material with sound
mid-grey
people to lift
picture area
picture height
picture rotation
picture shape shown
picture width
playback speed
players of its channel
players whose picture arrives
players whose sound arrives
power
power in all
room across the opening
room at the vents
room contrast
room to turn a corner
room up the opening
screen curvature
share of the picture inside the mask
share of what the lift may carry
signal converters
speed on the venue's mains
time in operation
time of a standing picture
time until the loops meet again
time until the offset may leave its range
timecode behind the clock
uneven frames
vent position
white point
white, warmer than the material's
"""
"""What the rooms can tell. A gap, or a bar on a slanting screen, has a second name on the other axis, left out here."""
HERD = {"B2", "B4", "B6", "B8"}


def variance(name: str) -> Variance:
    work, installation = name.split("/")
    return variance_of(EXAMPLES / work / "installations" / f"{installation}.md")


def effect(name: str, part: str, quantity: str) -> Effect:
    return next(
        one for one in variance(name).effects if part in one.subject.members and called(one) == quantity
    )


def called(effect: Effect) -> str:
    return ENGLISH.say(effect.quantity)


@pytest.mark.parametrize("name", OUTCOMES)
def test_outcome(name: str) -> None:
    assert variance(name).outcome is OUTCOMES[name]


def test_every_installation_is_held() -> None:
    files = {f"{file.parts[-3]}/{file.stem}" for file in INSTALLATIONS}
    assert files == set(OUTCOMES)


@pytest.mark.parametrize("quantity", NAMES.strip().splitlines())
def test_each_effect_occurs(quantity: str) -> None:
    assert any(called(one) == quantity for name in OUTCOMES for one in variance(name).effects), quantity


@pytest.mark.parametrize("name", OUTCOMES)
def test_an_acceptable_venue_is_enough(name: str) -> None:
    if variance(name).outcome in {Outcome.ACCEPTABLE, Outcome.ON_CONDITIONS}:
        assert not [one for one in in_the_way(variance(name).obstacles) if one.is_sure]


def test_wide_panels_for_the_herd() -> None:
    """Of one diagonal, a 16:9 screen is 9/√337 of it high and a 4:3 one 3/5: 18.3 % less. A 4:3 picture that it shows
    whole has (81/337) ÷ (9/25) of the area: 33.2 % less. (Arithmetic of right-angled triangles.)
    """
    high, large = (effect("low-farms/2025-port-imbrie", "B4", f"picture {of}") for of in ("height", "area"))
    assert set(high.subject.members) >= HERD
    assert set(large.subject.members) >= HERD
    assert ENGLISH.say(high.sentence) == "18.3 % less than documented"
    assert ENGLISH.say(large.sentence) == "33.2 % less than documented"


def test_an_instruction_speaks_of_what_is_computed() -> None:
    rows = variance("low-farms/2025-port-imbrie").rows
    spoken = [
        row
        for row in rows
        if ENGLISH.say(row.characteristic) == "picture area" and row.verdict is Verdict.BREACH
    ]
    assert {part for row in spoken for part in row.subject.members} == HERD
