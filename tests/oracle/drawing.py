"""Random small cases, crowded enough that instructions meet: few parts, few characteristics, every clause."""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from dataclasses import replace
from random import Random

from oracle.cases import Answer, Case, Date, If, Line, Place, Reach, Saying, Someone
from oracle.world import Trait, Written

World = Mapping[str, Trait]
FACTS = ("no tube can be found", "the room is dark")
TERMS = ("the cabinet stays", "the glass is kept")
GROUNDS = ("intent", "intent", "intent", "intent", "intent", "safety", "loan")
FIRST, LAST = datetime.date(2027, 3, 1), datetime.date(2027, 3, 6)


def year(number: int) -> Date:
    return Date(str(number), (datetime.date(number, 1, 1), datetime.date(number, 12, 31)))


def day(date: datetime.date) -> Date:
    return Date(date.isoformat(), (date, date))


DATES = (
    *(year(number) for number in (1993, 1999, 1999, 2009)),
    day(datetime.date(1999, 5, 14)),
    day(datetime.date(2009, 2, 3)),
    Date("1998/2001", (datetime.date(1998, 1, 1), datetime.date(2001, 12, 31))),
    Date("1999-05", (datetime.date(1999, 5, 1), datetime.date(1999, 5, 31))),
    Date("1993~", (datetime.date(1992, 1, 1), datetime.date(1994, 12, 31))),
    Date("199X", (datetime.date(1990, 1, 1), datetime.date(1999, 12, 31))),
    Date(),
)
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
    case = replace(case, lines=_lines(random, world, names))
    return _proposed(random, world, case, names)


def _crowded(random: Random, world: World, case: Case, name: str) -> Case:
    """Every line speaks of one characteristic of the first monitor, which the proposal changes."""
    while True:
        lines = _lines(random, world, [name])
        if all(line.saying.reach.text not in {"M2", "additions", "every display except M1"} for line in lines):
            break
    lines = tuple(replace(line, ground="intent") if random.random() < 0.7 else line for line in lines)
    lines = tuple(_of_heading(line, lines) for line in lines)
    case = _proposed(random, world, replace(case, lines=lines), [name])
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
    members = (("M1", "Monitors"), ("M2", "Monitors"), ("M3", "Monitors"), ("W1", "Windows"), ("W2", "Windows"))
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


def _lines(random: Random, world: World, names: list[str]) -> tuple[Line, ...]:
    lines: list[Line] = []
    for number in range(1, random.choice((1, 2, 2, 3, 3, 4)) + 1):
        shared = _shared(random, [line.name for line in lines])
        for place in range(1, random.choice((1, 1, 2, 3)) + 1):
            if len(lines) < 6:
                name = f"R{number}.{place}"
                lines.append(_line(random, world, random.choice(names), replace(shared, name=name)))
    return tuple(_with_choices(random, lines))


def _shared(random: Random, earlier: list[str]) -> Line:
    supersedes: tuple[str, ...] = ()
    if earlier and random.random() < 0.35:
        target = random.choice(earlier)
        supersedes = (random.choice((target, target.split(".")[0])),)
    withdrawn = Date()
    if random.random() < 0.12:
        withdrawn = random.choice((year(2012), day(datetime.date(2027, 3, 4)), year(2030)))
    saying = Saying("technology", Reach("M1", ("M1",)), Written("any", frozenset()))
    return Line(
        "", "", saying,
        by=random.choice(("artist", "artist", "estate", "fab", "cons", "reg", "")),
        on=random.choice(DATES) if random.random() < 0.95 else day(datetime.date(2027, 3, 3)),
        ground=random.choice(GROUNDS),
        withdrawn=withdrawn,
        supersedes=supersedes,
    )  # fmt: skip


def _line(random: Random, world: World, name: str, shared: Line) -> Line:
    modality = random.choice(("required", "required", "allowed", "allowed", "forbidden"))
    saying = _saying(random, world, name)
    conditions = tuple(_condition(random, world, saying) for _ in range(random.choice((0, 0, 0, 0, 1, 1, 2))))
    conditions = tuple({condition.fact or condition.text: condition for condition in conditions}.values())
    line = replace(shared, modality=modality, saying=saying, conditions=conditions)
    if random.random() < 0.1:
        line = replace(line, until=random.choice((year(2012), day(datetime.date(2027, 3, 2)), year(2030))))
    if modality == "allowed" and random.random() < 0.35:
        line = replace(line, consents=(random.choice(("artist", "estate", "cons")),))
    return line


def _saying(random: Random, world: World, name: str) -> Saying:
    trait = world[name]
    written = random.choice(trait.comparisons)
    if trait.shares and random.random() < 0.15:
        written = Written(random.choice(list(trait.shares)), frozenset())
    if name in {"technology", "visible diagonal", "presence"} and random.random() < 0.1:
        written = Written("as documented", frozenset())
    negatable = not written.text.startswith(("any", "at ", "between", "as ", "one of present")) and "%" not in written.text
    return Saying(name, _reach(random, trait), written, negatable and random.random() < 0.15)


def _reach(random: Random, trait: Trait) -> Reach:
    if trait.bearer == "work":
        return Reach("the work")
    if trait.bearer == "venue":
        return Reach("the venue")
    pool = [
        Reach("M1", ("M1",)), Reach("M1", ("M1",)), Reach("M2", ("M2",)), Reach("M1 and M2", ("M1", "M2")),
        Reach("Monitors", ("Monitors",)), Reach("Monitors", ("Monitors",)),
        Reach("Monitors except M3", ("Monitors",), ("M3",)), Reach("every display", ("every display",)),
        Reach("every display except M1", ("every display",), ("M1",)),
    ]  # fmt: skip
    if trait.name in {"presence", "technology"}:
        pool.append(Reach("additions", ("additions",)))
    return random.choice(pool)


def _condition(random: Random, world: World, saying: Saying) -> If:
    if random.random() < 0.6:
        return If(random.random() < 0.4, fact=random.choice(FACTS))
    name = random.choice(("technology", "visible diagonal", "rotation", "sound", "mains"))
    trait = world[name]
    own = trait.bearer in {"device", "place"} and world[saying.trait].bearer in {"device", "place"}
    reach = saying.reach if own and random.random() < 0.5 and saying.reach.text != "additions" else _reach(random, trait)
    if reach.text == "additions":
        reach = Reach("M1", ("M1",))
    return If(random.random() < 0.4, saying=Saying(name, reach, random.choice(trait.comparisons)))


def _with_choices(random: Random, lines: list[Line]) -> list[Line]:
    """Ordinals for the permissions of one heading; choices spread over headings are not drawn."""
    if random.random() > 0.3:
        return lines
    allowed = [line.name for line in lines if line.modality == "allowed"]
    heading = random.choice(allowed).split(".")[0] if allowed else ""
    chosen = [name for name in allowed if name.split(".")[0] == heading]
    return [
        replace(line, choice=chosen.index(line.name) + 1) if line.name in chosen and len(chosen) > 1 else line
        for line in lines
    ]


def _proposed(random: Random, world: World, case: Case, names: list[str]) -> Case:
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
    among = [name for name in (*names, "rotation", "casing", "channel") if world[name].bearer in {"device", "place"}]
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
    answers = []
    for line in case.lines:
        asked = line.consents or ((random.choice(("artist", "estate", "cons", "reg")),) if random.random() < 0.2 else ())
        if line.modality == "allowed" and not line.consents:
            continue
        for person in asked:
            if random.random() < 0.75:
                answers.append(_answer(random, world, case, line, person))
    return tuple({(answer.to.split(".")[0]): answer for answer in answers}.values())


def _answer(random: Random, world: World, case: Case, line: Line, person: str) -> Answer:
    someone = case.someone(person)
    if someone and someone.successor and random.random() < 0.5:
        person = someone.successor
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
        random.choice((day(datetime.date(2010, 6, 1)), day(datetime.date(2026, 10, 2)), day(datetime.date(2027, 3, 3)))),
        random.choice((Date(), Date(), year(2020), day(datetime.date(2027, 3, 4)))),
    )


def _attested(random: Random, case: Case) -> dict[str, bool]:
    found = {fact: random.random() < 0.6 for fact in FACTS if random.random() < 0.6}
    found |= {terms: True for terms in TERMS if random.random() < 0.5}
    for line in case.lines:
        if line.choice and random.random() < 0.5:
            found[f"{line.name} cannot be had"] = random.random() < 0.7
    return found
