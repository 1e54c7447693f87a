"""A remedy that the documentation itself offers: parts that may be switched off, where that would really help."""

from __future__ import annotations

from pathlib import Path

import pytest

import intent
from intent import verbs

WORK = """# Two Lamps

- number: 7
- owner: Thornacre Museum

## People

| person | name             | role        |
| ------ | ---------------- | ----------- |
| artist | Ottiline Quarrow | artist      |
| cons   | Imogen Tarrasch  | conservator |

## Parts

### Lamps

- kind: lamp

| part | device | power  | rated voltage | power factor | circuit |
| ---- | ------ | ------ | ------------- | ------------ | ------- |
| L1   | E-1    | 1500 W | 230 V         | 1            | K1      |
| L2   | E-2    | 1500 W | 230 V         | 1            | K1      |

## Instructions

### R1 One may rest

- {line}
- by: artist
- on: 1999
"""
LOAN = """# Loan

- work: work.md
- dates: 2027-03-01/2027-06-30
- by: cons

## Venue

- mains: 230 V
- circuit current: {current}
- circuits: 1
"""
REMEDY = "With L2 switched off, which R1.1 allows, this would be gone: a circuit is overloaded."


def told(tmp_path: Path, line: str, current: str) -> str:
    (tmp_path / "work.md").write_text(WORK.format(line=line), encoding="utf-8")
    (tmp_path / "loan.md").write_text(LOAN.format(current=current), encoding="utf-8")
    report = verbs.report(intent.check(tmp_path / "loan.md"), "text")
    return " ".join(report.split())


def test_what_may_be_off_and_would_help_is_said_first_and_later(tmp_path: Path) -> None:
    assert told(tmp_path, "allowed: power state of L2 is off", "10 A").count(REMEDY) == 2


@pytest.mark.parametrize(
    ("line", "current"),
    [
        ("allowed: power state of L2 is off, with consent of artist", "10 A"),
        ("required: power state of L2 is on", "10 A"),
        ("allowed: power state of L2 is off", "5 A"),
        ("allowed: power state of L2 is off", "32 A"),
    ],
    ids=["a consent is open", "it has to be on", "one alone is too much", "nothing is in the way"],
)
def test_what_is_not_allowed_or_would_not_help_is_not_said(tmp_path: Path, line: str, current: str) -> None:
    assert "switched off, which" not in told(tmp_path, line, current)
