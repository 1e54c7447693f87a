"""Clashes against brute force: every choice of demands, on every year, under every answer, for every value."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from itertools import chain, combinations, product

from examples_read import vocabulary
from hypothesis import HealthCheck, event, given, settings
from hypothesis import strategies as st
from test_cases import read, supplied

from intent.analysis.examination.clashes import clashes_of
from intent.analysis.examination.examine import undisturbed
from intent.analysis.examination.topic_claims import topics_claimed
from intent.dossier.work_text import read_work
from intent.record.load_work import load_work

Point = str | float
YEARS = range(1998, 2013)
NARROWER = {
    "cathode-ray tube": (),
    "flat panel": ("LCD", "plasma panel", "OLED"),
    "LCD": (),
    "plasma panel": (),
    "OLED": (),
    "projector": (),
}
"""Some of format.md, "Terms that must exist"; what is narrower than `projector` lies alike to all of these."""
TECHNOLOGIES = (*NARROWER, "LED wall")
INCHES = tuple(step / 2 for step in range(80))
"""Half inches: the bounds that are written are whole ones, so that every piece holds a point."""
FACTS = ("the wall is dry", "the door is wide")
TURNS = ("upright", "turned left", "at an angle")


@dataclass(frozen=True)
class Demand:
    modality: str
    words: str
    points: frozenset[Point]
    """The values that it names."""
    since: int
    until: int | None
    facts: tuple[tuple[str, bool], ...] = ()
    """Facts, each with whether it must hold."""
    turn: str | None = None
    """The rotation that it asks for."""
    asked: tuple[str, frozenset[Point]] | None = None
    """What it asks of the value itself."""

    def sentence(self, characteristic: str) -> str:
        clauses = [f'{"if" if holds else "unless"} "{fact}"' for fact, holds in self.facts]
        if self.turn:
            clauses.append(f"if rotation of M1 is {self.turn}")
        if self.asked:
            clauses.append(f"if {characteristic} of M1 is {self.asked[0]}")
        if self.until:
            clauses.append(f"until {self.until}")
        return ", ".join([f"{self.modality}: {characteristic} of M1 is {self.words}", *clauses])

    def is_against(self, point: Point) -> bool:
        if self.asked and point not in self.asked[1]:
            return False
        return (point in self.points) is (self.modality == "forbidden")

    def is_in_force(self, year: int, answers: dict[str, bool], turn: str) -> bool:
        in_time = self.since <= year and (self.until is None or year <= self.until)
        agreed = all(answers[fact] is holds for fact, holds in self.facts)
        return in_time and agreed and self.turn in {None, turn}


@cache
def technologies() -> tuple[tuple[str, frozenset[Point]], ...]:
    single = {name: frozenset[Point]({name, *NARROWER.get(name, ())}) for name in NARROWER}
    pairs = {f"one of {one} or {two}": single[one] | single[two] for one, two in combinations(NARROWER, 2)}
    negated = {f"not {name}": frozenset(TECHNOLOGIES) - points for name, points in single.items()}
    return tuple({**single, **pairs, **negated}.items())


@cache
def diagonals() -> tuple[tuple[str, frozenset[Point]], ...]:
    bounds = (6, 9, 12, 14, 20)
    named: dict[str, frozenset[Point]] = {}
    for low in bounds:
        named[f"at least {low} in"] = frozenset(inch for inch in INCHES if inch >= low)
        named[f"at most {low} in"] = frozenset(inch for inch in INCHES if inch <= low)
        for high in (bound for bound in bounds if bound > low):
            within = frozenset[Point](inch for inch in INCHES if low <= inch <= high)
            named[f"between {low} in and {high} in"] = within
            named[f"not between {low} in and {high} in"] = frozenset(INCHES) - within
    return tuple(named.items())


@st.composite
def demands(draw: st.DrawFn, characteristic: str) -> tuple[Demand, ...]:
    named = technologies() if characteristic == "technology" else diagonals()
    return tuple(_demand(draw, named) for _ in range(draw(st.integers(2, 5))))


def _demand(draw: st.DrawFn, named: tuple[tuple[str, frozenset[Point]], ...]) -> Demand:
    modality = draw(st.sampled_from(["required", "required", "forbidden"]))
    words, points = draw(st.sampled_from(named))
    since = draw(st.sampled_from([1999, 1999, 2003, 2006]))
    until = draw(st.sampled_from([None, None, None, since + 1, since + 3]))
    clause = draw(st.sampled_from(["", "", "", "fact", "facts", "turn", "own"]))
    count = {"fact": 1, "facts": 2}.get(clause, 0)
    facts = tuple((fact, draw(st.booleans())) for fact in draw(st.permutations(FACTS))[:count])
    turn = draw(st.sampled_from(TURNS[:2])) if clause == "turn" else None
    positive = tuple(one for one in named if not one[0].startswith("not"))
    asked = draw(st.sampled_from(positive)) if clause == "own" else None
    return Demand(modality, words, points, since, until, facts, turn, asked)


def text_of(every: tuple[Demand, ...], characteristic: str) -> str:
    headings = [
        f"### R{number} Said\n\n- {demand.sentence(characteristic)}\n- by: artist\n- on: {demand.since}"
        for number, demand in enumerate(every, start=1)
    ]
    head = "# A Work\n\n- number: 7\n- owner: Thornacre Museum"
    return "\n\n".join([head, supplied()["people"], supplied()["parts"], "## Instructions", *headings])


def found_by_program(every: tuple[Demand, ...], characteristic: str) -> set[frozenset[str]]:
    reading = read(read_work(text_of(every, characteristic), "work.md", vocabulary()))
    case = undisturbed(load_work(reading.triples, reading.iri, vocabulary()))
    clashes = chain.from_iterable(clashes_of(case, topic) for topic in topics_claimed(case))
    return {frozenset(claim.line.identifier for claim in clash) for clash in clashes}


def found_by_force(every: tuple[Demand, ...], points: tuple[Point, ...]) -> set[frozenset[str]]:
    clashing: list[frozenset[int]] = []
    for size in range(1, len(every) + 1):
        for chosen in map(frozenset, combinations(range(len(every)), size)):
            is_least = not any(smaller <= chosen for smaller in clashing)
            if is_least and _clash([every[place] for place in chosen], points):
                clashing.append(chosen)
    return {frozenset(f"R{place + 1}.1" for place in chosen) for chosen in clashing}


def _clash(chosen: list[Demand], points: tuple[Point, ...]) -> bool:
    """Whether all are once in force together, and every value is against one of them."""
    if not all(any(demand.is_against(point) for demand in chosen) for point in points):
        return False
    worlds = product(YEARS, product([True, False], repeat=len(FACTS)), TURNS)
    return any(
        all(demand.is_in_force(year, dict(zip(FACTS, answers, strict=True)), turn) for demand in chosen)
        for year, answers, turn in worlds
    )


FIXED = settings(
    max_examples=200, derandomize=True, deadline=None, database=None, suppress_health_check=list(HealthCheck)
)


@given(every=demands("technology"))
@FIXED
def test_clashes_over_technologies_are_those_that_brute_force_finds(every: tuple[Demand, ...]) -> None:
    expected = found_by_force(every, TECHNOLOGIES)
    event(f"{len(expected)} clashes")
    assert found_by_program(every, "technology") == expected, text_of(every, "technology")


@given(every=demands("visible diagonal"))
@FIXED
def test_clashes_over_sizes_are_those_that_brute_force_finds(every: tuple[Demand, ...]) -> None:
    expected = found_by_force(every, INCHES)
    event(f"{len(expected)} clashes")
    assert found_by_program(every, "visible diagonal") == expected, text_of(every, "visible diagonal")
