"""Random small cases, crowded enough that instructions meet: few parts, few characteristics, every clause."""

from __future__ import annotations

import datetime
from dataclasses import replace
from random import Random

from oracle.cases import Case, Line, Place, Someone
from oracle.instructing import World, day, draw_lines, year
from oracle.proposing import draw_proposal
from oracle.world import Trait, Written

PEOPLE = (
    Someone("artist", "artist", 1, successor="estate"),
    Someone("estate", "artist's estate", 2),
    Someone("fab", "fabricator", 3),
    Someone("cons", "conservator", 4),
    Someone("reg", "registrar", 5),
)
PRIMARY = (
    "technology", "technology", "technology", "visible diagonal", "visible diagonal", "rotation", "rotation",
    "casing", "presence", "model", "weight", "channel", "sound", "mains",
)  # fmt: skip


def draw_case(random: Random, world: World) -> Case:
    """A work and a proposal; only the characteristics of one or two are crowded with instructions."""
    case = Case(
        people=_people(random),
        places=_places(random, world),
        devices=_devices(random, world),
        work={"sound": random.choice(world["sound"].cells)} if random.random() < 0.7 else {},
    )
    names = [random.choice(PRIMARY) for _ in range(random.choice((1, 1, 2)))]
    if random.random() < 0.5:
        return _crowded(random, world, case, names[0])
    case = replace(case, lines=draw_lines(random, world, names))
    return draw_proposal(random, world, case, names)


def _crowded(random: Random, world: World, case: Case, name: str) -> Case:
    """Every line speaks of one characteristic of the first monitor, which the proposal changes."""
    while True:
        lines = draw_lines(random, world, [name])
        if all(
            line.saying.reach.text not in {"M2", "additions", "every display except M1"} for line in lines
        ):
            break
    lines = tuple(replace(line, ground="intent") if random.random() < 0.7 else line for line in lines)
    lines = tuple(_of_heading(line, lines) for line in lines)
    case = draw_proposal(random, world, replace(case, lines=lines), [name])
    if world[name].bearer not in {"device", "place"} or name == "presence" or "M1" in case.omissions:
        return case
    cells = {name: random.choice(world[name].cells)}
    others = tuple(place for place in case.substitutions if place.name != "M1")
    changes = {place: of for place, of in case.changes.items() if place != "M1"}
    return replace(case, substitutions=others, changes={"M1": cells, **changes})


def _of_heading(line: Line, lines: tuple[Line, ...]) -> Line:
    """What a heading says holds for all its lines."""
    first = next(other for other in lines if other.heading == line.heading)
    return replace(line, ground=first.ground)


def _people(random: Random) -> tuple[Someone, ...]:
    people = list(PEOPLE)
    if random.random() < 0.5:
        people[0] = replace(people[0], until=year(2016))
    if random.random() < 0.3:
        people[0] = replace(people[0], successor="")
    if random.random() < 0.3:
        people[1] = replace(people[1], until=random.choice((year(2020), day(datetime.date(2027, 3, 3)))))
    if random.random() < 0.2:
        people[1] = replace(people[1], successor="cons")
    if random.random() < 0.15:
        people[2] = replace(people[2], authority="4")
    return tuple(people)


def _places(random: Random, world: World) -> tuple[Place, ...]:
    members = (
        ("M1", "Monitors"),
        ("M2", "Monitors"),
        ("M3", "Monitors"),
        ("W1", "Windows"),
        ("W2", "Windows"),
    )
    count = random.choice((3, 4, 5))
    places = [
        Place(name, group, device=f"E-{number}", cells=_documented(random, world))
        for number, (name, group) in enumerate(members[:count], start=1)
    ]
    return tuple(places)


def _documented(random: Random, world: World) -> dict[str, Written]:
    cells = {"technology": random.choice(world["technology"].cells)}
    cells["visible diagonal"] = random.choice(_exact(world["visible diagonal"]))
    for name, chance in (("rotation", 0.8), ("channel", 0.7), ("casing", 0.7)):
        if random.random() < chance:
            cells[name] = random.choice(_exact(world[name]))
    return cells


def _exact(trait: Trait) -> list[Written]:
    return [written for written in trait.cells if "±" not in written.text]


def _devices(random: Random, world: World) -> dict[str, dict[str, Written]]:
    """The devices of the parts, with what only a device's own entry says, and two spares."""
    devices: dict[str, dict[str, Written]] = {}
    for name in ("E-1", "E-2", "E-3", "V-1", "V-2"):
        cells = {}
        for trait in ("model", "weight"):
            if random.random() < 0.7:
                cells[trait] = random.choice(_exact(world[trait]))
        if name.startswith("V") and random.random() < 0.5:
            cells["technology"] = random.choice(world["technology"].cells)
        devices[name] = cells
    return devices
