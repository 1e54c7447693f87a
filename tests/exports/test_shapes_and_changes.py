"""Random works, their data changed at random: an engine with the shapes agrees with a check of what changed.

The shapes are made of the work before anything is changed. For more than the suite tries, set `INTENT_CHANGES=1000`.
"""

from __future__ import annotations

import os
from dataclasses import replace
from random import Random

import pytest
from oracle.cases import Answer, Case
from oracle.drawing import draw_case
from oracle.drawing_together import CELLS, draw_together
from oracle.instructing import FACTS
from oracle.proposing import ANSWERED, TERMS
from oracle.world import Written, small_world
from oracle.writing import installation_text, work_text
from rdflib import Graph

from exports.compared_rows import case_of_drawn, data_of, found_by_engine, places_of_rows, rows_compared
from intent.exports.work_shapes.instruction_shapes import shapes_of_work

CHANGES = int(os.environ.get("INTENT_CHANGES", "60"))
EACH, BATCH = 3, 5
"""Changes of one work, and works in one test."""


def changed(chance: Random, case: Case) -> Case:
    """The installation with one thing other than it was: a value, an answer, an attestation, a part that goes."""
    ways = [_value, _value, _value, _answer_gone, _answer_turned, _attested, _attested, _omitted]
    while (other := chance.choice(ways)(chance, case)) == case:
        pass
    return other


def _value(chance: Random, case: Case) -> Case:
    """Another value for one part, of the device or of the place that it has, or of the work."""
    place = chance.choice(case.places)
    if place.name in case.omissions or not place.cells:
        return replace(case, work_changes={"sound": chance.choice(small_world()["sound"].cells)})
    name = chance.choice(list(place.cells))
    together = [Written(text, frozenset()) for text in CELLS.get(name, ())]
    among = together or small_world()[name].cells
    cell = {name: chance.choice(among)}
    taken = [one for one in case.substitutions if one.name == place.name]
    if taken:
        own = case.devices.get(taken[0].device, {})
        if name in own:
            return case
        others = tuple(one for one in case.substitutions if one.name != place.name)
        return replace(case, substitutions=(*others, replace(taken[0], cells={**taken[0].cells, **cell})))
    return replace(case, changes={**case.changes, place.name: {**case.changes.get(place.name, {}), **cell}})


def _answer_gone(chance: Random, case: Case) -> Case:
    if not case.answers:
        return _attested(chance, case)
    gone = chance.randrange(len(case.answers))
    return replace(case, answers=(*case.answers[:gone], *case.answers[gone + 1 :]))


def _answer_turned(chance: Random, case: Case) -> Case:
    """An answer that says the contrary, or is of another day; or one more."""
    lines = [line for line in case.lines if line.consents or line.modality != "allowed"]
    if not case.answers and not lines:
        return _attested(chance, case)
    if case.answers and chance.random() < 0.6:
        place = chance.randrange(len(case.answers))
        other = replace(case.answers[place], yes=chance.random() < 0.5, date=chance.choice(ANSWERED))
        return replace(case, answers=(*case.answers[:place], other, *case.answers[place + 1 :]))
    if not lines:
        return case
    line = chance.choice(lines)
    person = chance.choice(line.consents or ("artist", "estate", "cons", "reg"))
    terms = chance.choice(("", *TERMS))
    more = Answer(person, line.name, chance.random() < 0.8, terms=terms, date=chance.choice(ANSWERED))
    return replace(case, answers=(*case.answers, more))


def _attested(chance: Random, case: Case) -> Case:
    """A fact attested, denied, or no longer said."""
    choices = [f"{line.name} cannot be had" for line in case.lines if line.choice]
    fact = chance.choice([*FACTS, *TERMS, *choices])
    left = {one: holds for one, holds in case.attested.items() if one != fact}
    return replace(case, attested=left if chance.random() < 0.2 else {**left, fact: chance.random() < 0.5})


def _omitted(chance: Random, case: Case) -> Case:
    name = chance.choice(case.places).name
    if name in case.omissions:
        return replace(case, omissions=tuple(one for one in case.omissions if one != name))
    return replace(
        case,
        omissions=(*case.omissions, name),
        substitutions=tuple(one for one in case.substitutions if one.name != name),
        changes={one: cells for one, cells in case.changes.items() if one != name},
    )


@pytest.mark.parametrize("batch", range(CHANGES // EACH // BATCH))
def test_an_engine_agrees_after_a_change(batch: int) -> None:
    for seed in range(batch * BATCH, (batch + 1) * BATCH):
        chance = Random(seed)
        drawn = draw_case(chance, small_world()) if seed % 3 else draw_together(chance)
        text = shapes_of_work(case_of_drawn(drawn).work)
        shapes = Graph().parse(data=text, format="turtle")
        for _ in range(EACH):
            other = changed(chance, drawn)
            case = case_of_drawn(other)
            found = found_by_engine(shapes, data_of(case))
            told = f"seed {seed}\n{work_text(other)}\n{installation_text(other)}"
            assert not found.missing, told
            wrong = [
                row
                for row in rows_compared(case, found)
                if row.is_decided and row.is_broken != row.is_found_broken
            ]
            assert not wrong, f"{wrong}\n{told}"
            assert found.broken <= places_of_rows(case), told
