"""A small work with something to keep in the house, and an installation of it."""

from __future__ import annotations

from pathlib import Path

SECRETS = (
    "Zephrine Ostlund",
    "z.ostlund@thornacre.example",
    "84,000 crowns",
    "strong room two",
    "Letter that is nobody's business",
    "not to be told to anybody at all",
    "shelf nine of the cellar",
    "Pellucid Optics",
    "cabinet with the red seal",
    "their solicitor has the other half",
    "to be asked about once they have signed",
    "dropped by the insurer's own man",
    "smelt of smoke when it was switched on",
)
"""What must nowhere be found in what leaves."""

WORK = f"""# Timetable for a Ferry

- number: 7
- owner: Hollins Street Museum
- insurance value: {SECRETS[2]}

Two screens at a landing stage.

<!-- {SECRETS[10]} -->

## People

| person | name               | role        | until | successor | contact                     | keep     |
| ------ | ------------------ | ----------- | ----- | --------- | --------------------------- | -------- |
| artist | Ottiline Quarrow   | artist      | 2016  | heir      |                             |          |
| heir   | {SECRETS[0]}   | artist's estate |       |           | {SECRETS[1]} | internal |
| cons   | Odile Varga-Finn   | conservator |       |           | odile@thornacre.example     |          |

## Parts

### Monitors

- kind: display

| part | device | rotation    | visible diagonal |
| ---- | ------ | ----------- | ---------------- |
| M1   | E-1    | upright     | 13 in            |
| M2   | E-2    | turned left | 13 in            |

## Devices

| device | technology       | maker           | status | storage place   | keep     |
| ------ | ---------------- | --------------- | ------ | --------------- | -------- |
| E-1    | cathode-ray tube | Corvane         | in use | {SECRETS[3]} |          |
| E-2    | cathode-ray tube | Corvane         | in use |                 |          |
| E-3    | cathode-ray tube | {SECRETS[7]} | spare  |                 | internal |

## Log

| date | device | event   | remark           | keep     |
| ---- | ------ | ------- | ---------------- | -------- |
| 2019 | E-1    | cleaned |                  |          |
| 2020 | E-3    | fault   | {SECRETS[11]} |          |
| 2021 | E-1    | fault   | {SECRETS[12]} | internal |

## Boxes

| box | holds  | length | width | height | weight | keep     |
| --- | ------ | ------ | ----- | ------ | ------ | -------- |
| B-1 | M1, M2 | 60 cm  | 55 cm | 50 cm  | 30 kg  |          |

## Sources

### S1 Note inside the cabinet

- kind: inscription
- by: artist
- date: 1993
- file: sources/note.md
- held at: {SECRETS[6]}

### S2 {SECRETS[4]}

- kind: letter
- by: artist
- date: 1999-05-14
- file: sources/letter.md
- keep: internal

{SECRETS[9]}

## Instructions

### R1 Upright

> This way up, whatever they say.

- required: rotation of M1 is upright ± 2 deg
- allowed: rotation of M2 is any, with consent of heir
- source: S1

### R2 Tubes

> {SECRETS[5]}

- required: technology of Monitors is cathode-ray tube
- source: S2
"""
LOAN = """# Loan to Halmsee

- work: ../work.md
- status: proposed
- dates: 2027-03-01/2027-06-30
- venue: Kunsthalle Halmsee
- by: cons
- pool: ../pool.md

## Substitutions

| part | device |
| ---- | ------ |
| M2   | P-1    |

## Changes

| part | rotation |
| ---- | -------- |
| M1   | 20 deg   |
"""
POOL = f"""# Devices of the store

## Devices

| device | technology | visible diagonal | storage place | status |
| ------ | ---------- | ---------------- | ------------- | ------ |
| P-1    | LCD        | 13 in            | {SECRETS[8]} | in use |
"""


def written(folder: Path) -> Path:
    """The work in a folder; gives its installation."""
    for name, text in (
        ("work.md", WORK),
        ("installations/loan.md", LOAN),
        ("pool.md", POOL),
        ("sources/note.md", "This way up, whatever they say.\n"),
        ("sources/letter.md", f"{SECRETS[5]}\n"),
    ):
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text, encoding="utf-8")
    return folder / "installations/loan.md"
