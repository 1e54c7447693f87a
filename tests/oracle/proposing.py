"""Random proposals for a work: substitutions, changes, omissions, additions, consents and attestations."""

from __future__ import annotations

import datetime
from dataclasses import replace
from random import Random

from oracle.cases import Answer, Case, Date, Line, Place
from oracle.instructing import FACTS, World, day, year
from oracle.world import Written

TERMS = ("the cabinet stays", "the glass is kept")
ANSWERED = (
    day(datetime.date(2010, 6, 1)),
    day(datetime.date(2026, 10, 2)),
    day(datetime.date(2026, 10, 2)),
    day(datetime.date(2027, 3, 3)),
    year(2016),
    year(2026),
    Date("2027-03-02/2027-03-05", (datetime.date(2027, 3, 2), datetime.date(2027, 3, 5))),
    Date(),
)
FIRST, LAST = datetime.date(2027, 3, 1), datetime.date(2027, 3, 6)


def draw_proposal(random: Random, world: World, case: Case, names: list[str]) -> Case:
    parts = [place.name for place in case.places]
    substitutions = [
        _substitution(random, world, case, name, names) for name in parts if random.random() < 0.3
    ]
    changes: dict[str, dict[str, Written]] = {}
    for name in parts:
        of = {trait: random.choice(world[trait].cells) for trait in _changed(random, world, names)}
        if of:
            changes[name] = of
    presence = "presence" in names or random.random() < 0.1
    omissions = tuple(name for name in parts if presence and random.random() < 0.3)
    substituted = {place.name for place in substitutions}
    case = replace(
        case,
        first=FIRST,
        last=LAST if random.random() < 0.5 else FIRST,
        substitutions=tuple(place for place in substitutions if place.name not in omissions),
        changes={name: _of_place(world, of) if name in substituted else of
                 for name, of in changes.items() if name not in omissions},
        omissions=omissions,
        additions=_additions(random, world, presence),
        venue={"mains": random.choice(world["mains"].cells)} if random.random() < 0.7 else {},
        work_changes={"sound": random.choice(world["sound"].cells)} if random.random() < 0.5 else {},
    )  # fmt: skip
    case = replace(case, changes={name: of for name, of in case.changes.items() if of})
    return replace(case, answers=_answers(random, world, case), attested=_attested(random, case))


def _of_place(world: World, cells: dict[str, Written]) -> dict[str, Written]:
    """Of a part that gets another device, a change is only of its place."""
    return {name: written for name, written in cells.items() if world[name].bearer == "place"}


def _changed(random: Random, world: World, names: list[str]) -> list[str]:
    among = [
        name
        for name in (*names, "rotation", "casing", "channel")
        if world[name].bearer in {"device", "place"}
    ]
    return [name for name in dict.fromkeys(among) if name != "presence" and random.random() < 0.2]


def _substitution(random: Random, world: World, case: Case, name: str, names: list[str]) -> Place:
    device = random.choice(("V-1", "V-2", "N-1", ""))
    own = case.devices.get(device, {})
    cells: dict[str, Written] = {}
    for trait in ("technology", "visible diagonal", "casing", "model", "weight", "rotation"):
        likely = 0.75 if trait in names else 0.6 if world[trait].bearer == "device" else 0.2
        if trait not in own and random.random() < likely:
            cells[trait] = random.choice(world[trait].cells)
    return Place(name, "", device=device, cells=cells)


def _additions(random: Random, world: World, presence: bool) -> tuple[Place, ...]:
    if not presence or random.random() < 0.5:
        return ()
    if random.random() < 0.3:
        return (Place("X1", "", "converter"),)
    cells = {"technology": random.choice(world["technology"].cells)} if random.random() < 0.7 else {}
    return (Place("X1", random.choice(("", "Monitors")), cells=cells),)


def _answers(random: Random, world: World, case: Case) -> tuple[Answer, ...]:
    answers: list[Answer] = []
    for line in case.lines:
        asked = line.consents or _dispensing(random, line)
        if line.modality == "allowed" and not line.consents:
            continue
        for person in asked:
            count = random.choice((0, 1, 1, 1, 2))
            answers += [_answer(random, world, case, line, person) for _ in range(count)]
    return tuple(answers)


def _dispensing(random: Random, line: Line) -> tuple[str, ...]:
    """Who answers a line that calls for no consent: oftener where it names who may dispense from it."""
    if line.lifted_by is not None and random.random() < 0.5:
        return (random.choice((*line.lifted_by, "artist")),)
    return (random.choice(("artist", "estate", "cons", "reg")),) if random.random() < 0.2 else ()


def _answer(random: Random, world: World, case: Case, line: Line, person: str) -> Answer:
    someone = case.someone(person)
    if someone and someone.successor and random.random() < 0.5:
        person = someone.successor if random.random() < 0.8 else "cons"
    bearer = world[line.saying.trait].bearer
    named = bearer in {"device", "place"} and random.random() < 0.3
    value = None
    if random.random() < 0.2 and line.saying.trait in {"technology", "casing"}:
        value = random.choice(world[line.saying.trait].cells)
    return Answer(
        person,
        line.name if value else random.choice((line.name, line.name, line.heading)),
        random.choice((True, True, True, False, None)),
        ("M1",) if named else (),
        value,
        random.choice(("", "", *TERMS)),
        random.choice(ANSWERED),
        random.choice((Date(), Date(), year(2020), day(datetime.date(2027, 3, 4)))),
    )


def _attested(random: Random, case: Case) -> dict[str, bool]:
    found = {fact: random.random() < 0.6 for fact in FACTS if random.random() < 0.6}
    found |= {terms: random.random() < 0.8 for terms in TERMS if random.random() < 0.5}
    for line in case.lines:
        if line.choice and random.random() < 0.5:
            found[f"{line.name} cannot be had"] = random.random() < 0.7
    return found
