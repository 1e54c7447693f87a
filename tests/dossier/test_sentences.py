"""The grammar of the instruction sentence: each sentence of a table, and what it means."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from intent.dossier.work_text import read_work
from intent.language.figures import decimal
from intent.model.assertions import (
    Aggregate,
    Assertion,
    Condition,
    Dated,
    Expression,
    Form,
    Item,
    Measured,
    Named,
    Relative,
    Scope,
    ScopeKind,
    Text,
)
from intent.model.meaning import scale
from intent.model.work import Instruction
from intent.record.load_work import load_work
from intent.vocabulary.loader import read_vocabulary
from intent.vocabulary.terms import Characteristic, Vocabulary

FOLDER = Path(__file__).parent
TABLES = ("sentences.md", "sentences-german.md", "sentences-french.md")
WORK = """# Sentences

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

### Players

- kind: player

| part | channel |
| ---- | ------- |
| P1   | A       |
| P2   | B       |

### Port and Starboard

- kind: object

| part | support      |
| ---- | ------------ |
| O1   | on the floor |

## Material

| material | channel |
| -------- | ------- |
| V1       | A       |

## Instructions

### R1 Sentences

- by: artist
"""


def sentences() -> list[tuple[str, str, str, str]]:
    """Modality, sentence and meaning of each row of the tables, with its place."""
    found = []
    for table in TABLES:
        lines = enumerate((FOLDER / table).read_text(encoding="utf-8").splitlines(), start=1)
        rows = [(number, line.strip("|").split("|")) for number, line in lines if line.startswith("|")][2:]
        for number, (modality, sentence, meaning) in rows:
            found.append((f"{table}:{number}", modality.strip(), sentence.strip(), meaning.strip()))
    return found


@cache
def vocabulary() -> Vocabulary:
    return read_vocabulary()


@cache
def instructions() -> dict[str, Instruction]:
    """The sentences of the tables as lines of one work, by their place."""
    every = sentences()
    text = WORK + "".join(f"- {modality}: {sentence}\n" for _, modality, sentence, _ in every)
    reading = read_work(text, "work.md", vocabulary())
    assert [str(found) for found in reading.findings if found.is_error] == []
    lines = load_work(reading.triples, reading.iri, vocabulary()).instructions
    return {place: line for (place, *_), line in zip(every, lines, strict=True)}


@pytest.mark.parametrize(
    ("place", "modality", "sentence", "meaning"), sentences(), ids=[line for _, _, line, _ in sentences()]
)
def test_sentence(place: str, modality: str, sentence: str, meaning: str) -> None:
    line = instructions()[place]
    assert line.modality == modality
    assert told(line) == meaning, f"{place}: {sentence}"


def told(line: Instruction) -> str:
    clauses = [told_assertion(line.assertion), *map(told_condition, line.conditions)]
    if line.until is not None:
        clauses.append(f"until {line.until.last}")
    clauses += [f"consent of {person}" for person in line.consents]
    if line.choice is not None:
        clauses.append(f"choice {line.choice}")
    return "; ".join(clauses)


def told_condition(condition: Condition) -> str:
    word = "unless" if condition.unless else "if"
    if condition.assertion is not None:
        return f"{word} ({told_assertion(condition.assertion)})"
    return f"{word} “{condition.fact}”"


def told_assertion(assertion: Assertion) -> str:
    scope = told_scope(assertion.scope)
    about = vocabulary().characteristics.get(assertion.characteristic or "")
    label = about.label if about else ""
    compared = told_expression(assertion.expression, scale(assertion.aggregate, about, vocabulary()))
    match assertion.aggregate:
        case Aggregate.EACH:
            return f"{label} of each of {scope}: {compared}"
        case Aggregate.RELATION:
            return f"{scope} {assertion.relation} {assertion.other}"
        case Aggregate.SAME | Aggregate.DIFFERENT:
            alike = "the same" if assertion.aggregate is Aggregate.SAME else "different"
            return f"{label} {alike} for all of {scope}"
        case Aggregate.NUMBER | Aggregate.DISTANCE:
            return f"{assertion.aggregate} of {scope}: {compared}"
        case Aggregate.TOTAL:
            return f"total {label} of {scope}: {compared}"
    return f"difference in {label} of {scope}: {compared}"


def told_scope(scope: Scope) -> str:
    words = {
        ScopeKind.NAMES: ", ".join(scope.names),
        ScopeKind.EVERY: f"every {vocabulary().concepts[scope.part_kind].label}" if scope.part_kind else "",
        ScopeKind.ADDITIONS: "additions",
        ScopeKind.WORK: "the work",
        ScopeKind.VENUE: "the venue",
    }[scope.kind]
    return f"{words} except {', '.join(scope.excepted)}" if scope.excepted else words


def told_expression(expression: Expression, characteristic: Characteristic) -> str:
    items = [told_item(item, characteristic) for item in expression.items]
    if expression.form is Form.ONE_OF:
        items.sort()  # a set has no order
    words = {
        Form.ANY: "anything",
        Form.AS_DOCUMENTED: "as documented",
        Form.ONE_OF: f"{{{', '.join(items)}}}",
        Form.BETWEEN: f"[{', '.join(items)}]",
        Form.AT_LEAST: f"[{''.join(items)}, …]",
        Form.AT_MOST: f"[…, {''.join(items)}]",
    }[expression.form]
    return f"not {words}" if expression.negated else words


def told_item(item: Item, characteristic: Characteristic) -> str:
    if isinstance(item, Named):
        return vocabulary().concepts[item.concept].label
    if isinstance(item, Text):
        return f"“{item.text}”"
    if isinstance(item, Dated):
        return f"{item.span.first} to {item.span.last}"
    unit = vocabulary().reference_unit(characteristic.quantity_kind)
    symbol = f" {unit.symbol}" if unit else ""
    return told_number(item, characteristic, symbol) + told_tolerance(item, symbol)


def told_number(item: Measured | Relative, characteristic: Characteristic, symbol: str) -> str:
    if isinstance(item, Relative):
        return f"{decimal(item.percent)} % of documented"
    numbers = [decimal(number) for number in item.numbers]
    if characteristic.space == "raster":
        return "×".join(numbers)
    joined = ", ".join(numbers)
    return (f"({joined})" if len(numbers) > 1 else joined) + symbol


def told_tolerance(item: Measured | Relative, symbol: str) -> str:
    if item.tolerance_percent is not None:
        return f" ± {decimal(item.tolerance_percent)} %"
    return "" if item.tolerance is None else f" ± {decimal(item.tolerance)}{symbol}"
