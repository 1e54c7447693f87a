"""A work compared with itself says nothing; compared with a mutation of itself, exactly the mutations made."""

from __future__ import annotations

import datetime
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from random import Random

import pytest
from examples_read import INSTALLATIONS, WORKS, documentation, variance
from hypothesis import given
from properties.strategies import fixed, seeds

from intent.analysis.comparison.difference import Difference, ThingKind, What
from intent.analysis.comparison.turns import compare_verdicts
from intent.analysis.comparison.works import compare_works
from intent.language.locale import ENGLISH
from intent.model.assertions import Expression, Form, Measured
from intent.model.work import Work
from intent.names import TERM
from intent.values.dates import DaySpan
from intent.variance.judge import judge

Told = tuple[ThingKind, str, What, str]


@pytest.mark.parametrize("path", WORKS, ids=lambda path: path.parent.name)
def test_a_work_does_not_differ_from_itself(path: Path) -> None:
    work = documentation(path).work
    assert not compare_works(work, work).differences


@pytest.mark.parametrize("path", INSTALLATIONS, ids=lambda path: path.stem)
def test_no_verdict_turns_without_a_change(path: Path) -> None:
    before = variance(path)
    turn = compare_verdicts(before, judge(before.work, before.installation))
    assert not turn.rows
    assert turn.before is turn.after


@pytest.mark.parametrize("path", WORKS, ids=lambda path: path.parent.name)
def test_the_order_in_a_dossier_is_no_difference(path: Path) -> None:
    work = documentation(path).work
    turned = replace(
        work,
        parts=work.parts[::-1],
        devices=work.devices[::-1],
        instructions=work.instructions[::-1],
        headings=work.headings[::-1],
        people=work.people[::-1],
        sources=work.sources[::-1],
        boxes=work.boxes[::-1],
    )
    assert not compare_works(work, turned).differences


@given(seed=seeds())
@fixed(80)
def test_a_mutation_is_told_and_nothing_else(seed: int) -> None:
    chance = Random(seed)
    work = documentation(WORKS[0]).work
    mutated, expected = work, set[Told]()
    for mutate in chance.sample(MUTATIONS, chance.randint(1, len(MUTATIONS))):
        mutated, told = mutate(mutated, chance)
        expected |= told
    found = compare_works(work, mutated).differences
    assert len(found) == len(set(found))
    assert {key_of(one) for one in found} == expected
    back = {key_of(one) for one in compare_works(mutated, work).differences}
    turned = {What.ADDED: What.GONE, What.GONE: What.ADDED}
    assert back == {
        (
            sort,
            name,
            turned.get(what, What.CHANGED),
            respect or ("withdrawn" if what is What.WITHDRAWN else ""),
        )
        for sort, name, what, respect in expected
    }


def key_of(one: Difference) -> Told:
    return one.sort, ENGLISH.say(one.name), one.what, ENGLISH.say(one.respect)


def moved(work: Work, chance: Random) -> tuple[Work, set[Told]]:
    """A part gets a weight that nothing has."""
    place = chance.randrange(len(work.parts))
    part = work.parts[place]
    weight = Expression(
        form=Form.ONE_OF,
        items=(Measured(numbers=(Fraction(chance.randint(100, 999)),), written="x kg"),),
        written="x kg",
    )
    changed = replace(part, statements={**part.statements, str(TERM.weight): weight})
    parts = (*work.parts[:place], changed, *work.parts[place + 1 :])
    return replace(work, parts=parts), {(ThingKind.PART, part.identifier, What.CHANGED, "weight")}


def renamed(work: Work, chance: Random) -> tuple[Work, set[Told]]:
    person = chance.choice(work.people)
    people = tuple(replace(one, name="Jorun Pellew") if one is person else one for one in work.people)
    return replace(work, people=people), {(ThingKind.PERSON, person.identifier, What.CHANGED, "name")}


def without_box(work: Work, chance: Random) -> tuple[Work, set[Told]]:
    box = chance.choice(work.boxes)
    rest = tuple(one for one in work.boxes if one is not box)
    return replace(work, boxes=rest), {(ThingKind.BOX, box.identifier, What.GONE, "")}


def with_source(work: Work, chance: Random) -> tuple[Work, set[Told]]:
    more = replace(chance.choice(work.sources), identifier="S99")
    return replace(work, sources=(*work.sources, more)), {(ThingKind.SOURCE, "S99", What.ADDED, "")}


def reworded(work: Work, chance: Random) -> tuple[Work, set[Told]]:
    heading = chance.choice(work.headings)
    headings = tuple(replace(one, words=f"{one.words} !") if one is heading else one for one in work.headings)
    return replace(work, headings=headings), {(ThingKind.HEADING, heading.identifier, What.CHANGED, "words")}


def withdrawn(work: Work, chance: Random) -> tuple[Work, set[Told]]:
    heading = chance.choice([one for one in work.headings if one.withdrawn is None])
    day = datetime.date(2020, 1, 1)
    span = DaySpan(day, day, "2020-01-01")
    headings = tuple(
        replace(one, withdrawn=span) if one.identifier == heading.identifier else one for one in work.headings
    )
    return replace(work, headings=headings), {(ThingKind.HEADING, heading.identifier, What.WITHDRAWN, "")}


def consented(work: Work, chance: Random) -> tuple[Work, set[Told]]:
    line = chance.choice([one for one in work.instructions if not one.consents])
    lines = tuple(replace(one, consents=("solveig",)) if one is line else one for one in work.instructions)
    return replace(work, instructions=lines), {
        (ThingKind.INSTRUCTION, line.identifier, What.CHANGED, "consent of")
    }


MUTATIONS = (moved, renamed, without_box, with_source, reworded, withdrawn, consented)
