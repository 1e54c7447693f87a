"""Random instructions: every modality, comparison, ground, clause and date, on a few characteristics."""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from dataclasses import replace
from random import Random

from oracle.cases import Date, If, Line, Reach, Saying
from oracle.world import Trait, Written

World = Mapping[str, Trait]
FACTS = ("no tube can be found", "the room is dark")
GROUNDS = ("intent", "intent", "intent", "intent", "intent", "safety", "loan")

LIFTERS: tuple[tuple[str, ...], ...] = (
    (),
    ("artist",),
    ("estate",),
    ("cons",),
    ("reg", "fab"),
    ("estate", "cons"),
)
"""Who alone may dispense; nobody, of the first."""


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


def draw_lines(random: Random, world: World, names: list[str]) -> tuple[Line, ...]:
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
    ground = random.choice(GROUNDS)
    return Line(
        "", "", saying,
        by=random.choice(("artist", "artist", "estate", "fab", "cons", "reg", "")),
        on=random.choice(DATES) if random.random() < 0.95 else day(datetime.date(2027, 3, 3)),
        ground=ground,
        lifted_by=random.choice(LIFTERS) if ground != "safety" and random.random() < 0.25 else None,
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
    negatable = (
        not written.text.startswith(("any", "at ", "between", "as ", "one of present"))
        and "%" not in written.text
    )
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
    reach = (
        saying.reach
        if own and random.random() < 0.5 and saying.reach.text != "additions"
        else _reach(random, trait)
    )
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
