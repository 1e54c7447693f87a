"""A work whose names are hard to tell apart from words, and its sentences read and compared."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from functools import cache
from pathlib import Path

from intent.dossier.duty_clauses import duty_trees
from intent.dossier.duty_line import DutyLine, read_duty
from intent.dossier.interpret import Line, read_line
from intent.dossier.register import Register
from intent.dossier.sentence import parse
from intent.dossier.trees import Sentence
from intent.dossier.work_register import register_of
from intent.dossier.work_text import read_work
from intent.model.assertions import Assertion, Condition, Form
from intent.model.instruction_text import SaidDuty, SaidLine
from intent.model.work import Modality, Work
from intent.record.load_work import load_work
from intent.vocabulary.loader import read_vocabulary
from intent.vocabulary.terms import Vocabulary

WORK = """# Names

- number: 7

## People

| person | name             | role            |
| ------ | ---------------- | --------------- |
| artist | Ottiline Quarrow | artist          |
| estate | Quarrow Estate   | artist's estate |

## Parts

### Monitors

- kind: display

| part | rotation |
| ---- | -------- |
| M1   | upright  |
| M2   | upright  |
| M3   | upright  |

### Écrans d'Or

- kind: display

| part | rotation |
| ---- | -------- |
| E1   | upright  |

### Tische, Bänke und der Rest

- kind: object

| part | support      |
| ---- | ------------ |
| O1   | on the floor |

### Port and Starboard

- kind: object

| part | support      |
| ---- | ------------ |
| O2   | on the floor |

### Players

- kind: player

| part | channel |
| ---- | ------- |
| P1   | A       |
| P2   | B       |

## Material

| material | channel |
| -------- | ------- |
| V1       | A       |

## Instructions

### R1 Sentences

- by: artist
"""


def rows_of(table: Path) -> list[tuple[str, ...]]:
    """The rows of a table of sentences, one in each language, without its head."""
    lines = [line for line in table.read_text(encoding="utf-8").splitlines() if line.startswith("|")]
    return [tuple(cell.strip() for cell in line.strip("|").split("|")) for line in lines[2:]]


@cache
def vocabulary() -> Vocabulary:
    return read_vocabulary()


@cache
def work() -> Work:
    reading = read_work(WORK, "work.md", vocabulary())
    assert not [found for found in reading.findings if found.is_error]
    return load_work(reading.triples, reading.iri, vocabulary())


@cache
def register() -> Register:
    return register_of(work())


def line_of(sentence: str, names: Register | None = None, terms: Vocabulary | None = None) -> Line:
    """A sentence, read: of the work above, or with the names of another."""
    names, terms = names or register(), terms or vocabulary()
    tree = parse(sentence, names.known(terms), terms.grammars)
    return read_line(Sentence(sentence, names, terms), tree, Modality.ALLOWED)


def duty_of(line: str) -> DutyLine:
    """A duty of the work above, read."""
    trees, broken = duty_trees(line, register().known(vocabulary()), vocabulary().grammars)
    read, faults = read_duty(Sentence(line, register(), vocabulary()), trees, vocabulary().grammars[0])
    assert not [*broken, *faults]
    return read


def duty_meaning(said: SaidDuty) -> tuple[object, ...]:
    """What a duty says; the order of conditions says nothing."""
    return said.what, said.person, said.role, said.timing, said.until, _meanings(said.conditions)


def meaning(said: SaidLine) -> tuple[object, ...]:
    """What a sentence says; the order of conditions and consents says nothing."""
    conditions = _meanings(said.conditions)
    return _meaning(said.assertion), conditions, set(said.consents), said.until, said.choice


def _meanings(conditions: Iterable[Condition]) -> set[Condition]:
    return {replace(one, assertion=_meaning(one.assertion) if one.assertion else None) for one in conditions}


def _meaning(assertion: Assertion) -> Assertion:
    if assertion.expression.form is not Form.ONE_OF:
        return assertion
    items = tuple(sorted(assertion.expression.items, key=repr))
    return replace(assertion, expression=replace(assertion.expression, items=items))
