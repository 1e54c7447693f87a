"""Random cases about several parts together: numbers, totals, differences, sameness, where one stands to another."""

from __future__ import annotations

import datetime
from dataclasses import replace
from random import Random

from oracle.cases import Case, Date, If, Line, Place, Reach, Saying
from oracle.drawing import PEOPLE
from oracle.instructing import DATES, FACTS
from oracle.world import Written

NOTHING: frozenset[int | str] = frozenset()
REACHES = (
    Reach("Monitors", ("Monitors",)),
    Reach("Monitors", ("Monitors",)),
    Reach("M1 and M2", ("M1", "M2")),
    Reach("M1 and M3", ("M1", "M3")),
)
CELLS = {
    "weight": ("10 kg", "20 kg", "21 kg", "40 kg"),
    "model": ("TV-13", "TV-9", "PX-15"),
    "start offset": ("0 s", "15 s", "16 s", "45 s"),
    "position": ("0, 1, 0 m", "0, 2, 0 m", "0, 0, 0 m"),
}
LIMITS = {
    "number": ("3", "2", "at least 2", "at most 3", "between 2 and 4"),
    "total": ("at most 60 kg", "at least 30 kg", "between 30 and 100 kg"),
    "difference": ("at least 20 s", "at most 30 s", "at most 15 s"),
}


def written(text: str) -> Written:
    return Written(text, NOTHING)


def draw_together(random: Random) -> Case:
    """Three monitors with every cell sometimes blank, one or two aggregates, and a proposal."""
    places = tuple(
        Place(f"M{number}", "Monitors", device=f"E-{number}", cells=_cells(random, 0.85))
        for number in (1, 2, 3)
    )
    form = random.choice(("number", "total", "difference", "same", "different", "relation"))
    lines = tuple(_line(random, form, place) for place in range(1, random.choice((1, 1, 2, 3)) + 1))
    if random.random() < 0.4:
        lines = (*lines, _permission(random, lines[0]))
    return _proposed(random, Case(people=PEOPLE, places=places, lines=lines), form)


def _cells(random: Random, chance: float) -> dict[str, Written]:
    return {
        trait: written(random.choice(texts)) for trait, texts in CELLS.items() if random.random() < chance
    }


def _line(random: Random, form: str, place: int) -> Line:
    modality = random.choice(("required", "required", "required", "allowed", "forbidden"))
    if form in {"difference", "relation", "same", "different"} and modality == "forbidden":
        modality = "required"
    conditions = (If(random.random() < 0.5, fact=random.choice(FACTS)),) if random.random() < 0.25 else ()
    return Line(
        f"R{place}.1",
        modality,
        _saying(random, form),
        conditions,
        by=random.choice(("artist", "cons", "reg", "estate")),
        on=random.choice(DATES),
    )


def _saying(random: Random, form: str) -> Saying:
    if form == "relation":
        return Saying(
            "position", Reach("M1", ("M1",)), written(""), form=random.choice(("above", "below")), other="M2"
        )
    trait = {"total": "weight", "difference": "start offset"}.get(form, "model" if form != "number" else "")
    return Saying(trait, random.choice(REACHES), written(random.choice(LIMITS.get(form, ("",)))), form=form)


def _permission(random: Random, line: Line) -> Line:
    """A permission to a part that may break what is required of several."""
    trait = "presence" if line.saying.form == "number" else line.saying.trait
    text = random.choice(("absent", "absent", "present")) if trait == "presence" else "any"
    reach = random.choice((Reach("M3", ("M3",)), Reach("Monitors", ("Monitors",))))
    by, on = random.choice(("artist", "cons", "reg")), Date("1995", _span(1995))
    return Line("R9.1", "allowed", Saying(trait, reach, written(text)), by=by, on=on)


def _span(year: int) -> tuple[datetime.date, datetime.date]:
    return datetime.date(year, 1, 1), datetime.date(year, 12, 31)


def _proposed(random: Random, case: Case, form: str) -> Case:
    day = datetime.date(2027, 3, 1)
    case = replace(case, first=day, last=day)
    if form == "number" or random.random() < 0.15:
        omissions = tuple(place.name for place in case.places if random.random() < 0.3)
        case = replace(case, omissions=omissions)
    if form == "number" and random.random() < 0.3:
        case = replace(case, additions=(Place("X1", random.choice(("Monitors", ""))),))
    substitutions = []
    changes: dict[str, dict[str, Written]] = {}
    for place in case.places:
        if place.name in case.omissions or random.random() < 0.4:
            continue
        of = _cells(random, 0.6)
        device = {trait: text for trait, text in of.items() if trait in {"weight", "model"}}
        standing = {trait: text for trait, text in of.items() if trait not in device}
        if random.random() < 0.5:
            substitutions.append(Place(place.name, "", cells=device))
        if standing:
            changes[place.name] = standing
    attested = {fact: random.random() < 0.6 for fact in FACTS if random.random() < 0.6}
    return replace(case, substitutions=tuple(substitutions), changes=changes, attested=attested)
