"""A small invented work with a proposal for it, to be read beside what stands on its cards."""

from __future__ import annotations

from pathlib import Path

import pytest

WORK = """# Nine Lamps for a Cistern

- artist: Ottiline Quarrow
- year: 1988
- number: 1990.4
- owner: Thornacre Museum

## People

| person | name             | role        | keep     |
| ------ | ---------------- | ----------- | -------- |
| artist | Ottiline Quarrow | artist      |          |
| cons   | Dorrit Amesbury  | conservator |          |
| guard  | Hidden Person    | technician  | internal |

## Parts

- origin: the foot of the left pillar

### Monitors

- kind: display

| part | name       | device | technology | visible diagonal | rotation    | position           | channel | keep     |
| ---- | ---------- | ------ | ---------- | ---------------- | ----------- | ------------------ | ------- | -------- |
| M1   | the well   | E-01   | CRT        | 13 in            | turned left | -0.254, 1.27, 0 m  | A       |          |
| M2   | the bucket | E-02   | CRT        | 13 in            | upright     | 0.80, 1.27, 0.30 m | A       |          |
| M3   | the rope   | E-03   | CRT        | 13 in            | upright     | 1.60, 1.27, 0 m    | A       |          |
| M4   | hidden set | E-04   | CRT        | 14 in            | upright     | 2.40, 1.27, 0 m    | A       | internal |

### Players

- kind: player

| part | name        | device | technology   | channel |
| ---- | ----------- | ------ | ------------ | ------- |
| P1   | the machine | E-11   | optical disc | A       |

### Boxes

- kind: converter

| part | name            | device |
| ---- | --------------- | ------ |
| C1   | the distributor | E-12   |

## Connections

| from | to | signal    |
| ---- | -- | --------- |
| P1   | C1 | composite |
| C1   | M1 | composite |
| C1   | M2 | composite |

## Sources

### S1 Conversation

- kind: interview
- with: artist
- date: 1999-05-14

### S2 Letter that stays here

- kind: letter
- by: artist
- date: 2001-02-03
- keep: internal

## Instructions

### R1 Lying

> It fell in, and we left it.

- required: rotation of M1 is turned left
- source: S1 at 0:14:05

### R2 Behind glass

> Words that stay in the house.

- forbidden: technology of Monitors is flat panel
- allowed: technology of M2 is LCD, if "no tube can be had", with consent of artist
- source: S2

### R3 Air

- forbidden: rotation of Monitors is upside down
- ground: safety
- by: cons
- on: 2009-02
"""
LOAN = """# Loan to Halmsee

- work: work.md
- status: proposed
- dates: 2027-03-01/2027-06-30
- venue: Kunsthalle Halmsee
- by: cons

## Substitutions

| part | device | technology | visible diagonal | aspect ratio | model |
| ---- | ------ | ---------- | ---------------- | ------------ | ----- |
| M2   | V-1    | LCD        | 15 in            | 4:3          | PX-15 |

## Omissions

- M3: no room

## Additions

| part | kind      | name      | position          |
| ---- | --------- | --------- | ----------------- |
| X1   | furniture | the bench | 0.50, 0.22, 2.0 m |
"""


@pytest.fixture(scope="session")
def loan(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("cistern")
    (folder / "work.md").write_text(WORK, encoding="utf-8")
    path = folder / "loan.md"
    path.write_text(LOAN, encoding="utf-8")
    return path
