"""Random changes to a valid work and installation: whatever comes of them, it is an answer and no traceback."""

from __future__ import annotations

import re
from pathlib import Path
from tempfile import TemporaryDirectory

import hypothesis.strategies as st
import pytest
from hypothesis import given, settings

from intent import verbs
from intent.diagnostics import Diagnostic, Unusable

WORK = """# Timetable for a Ferry

- artist: Ottiline Quarrow
- year: 1993
- number: 7
- owner: Thornacre Museum

## People

| person | name             | role            | until | successor |
| ------ | ---------------- | --------------- | ----- | --------- |
| artist | Ottiline Quarrow | artist          | 2016  | estate    |
| estate | Quarrow Estate   | artist's estate |       |           |
| cons   | Imogen Tarrasch  | conservator     |       |           |

## Parts

### Monitors

- kind: display

| part | device | technology       | visible diagonal | aspect ratio | rotation    | position         | channel |
| ---- | ------ | ---------------- | ---------------- | ------------ | ----------- | ---------------- | ------- |
| M1   | E-01   | cathode-ray tube | 13 in            | 4:3          | upright     | -0.8, 1.4, 0.0 m | A       |
| M2   | E-02   | cathode-ray tube | 9 in             | 4:3          | upside down | 0.8, 0.2, 0.0 m  | B       |

### Players

- kind: player

| part | device | technology   | channel | start offset |
| ---- | ------ | ------------ | ------- | ------------ |
| P1   | E-11   | optical disc | A       | 0 s          |
| P2   | E-12   | optical disc | B       | 45 s         |

## Devices

| device | like | model | status | power |
| ------ | ---- | ----- | ------ | ----- |
| E-01   |      | TV-13 | in use | 62 W  |
| E-21   | E-01 |       | spare  |       |

## Whole work

- sound: silent

## Material

| material | channel | duration | raster  |
| -------- | ------- | -------- | ------- |
| V1       | A       | 14:20    | 720×480 |

## Sources

### S1 Conversation

- kind: interview
- with: artist
- date: 1999-05-14

## Instructions

### R1 Tubes

> without the tube it is only a timetable

- required: technology of Monitors is cathode-ray tube
- allowed: technology of Monitors is flat panel, if "no tube can be had", with consent of estate, first choice
- forbidden: technology of M1 is one of projector or LED wall, unless rotation of M2 is upright
- source: S1 at 00:14:05

### R2 Wholes

- required: number of Monitors is 2
- required: visible diagonal of every display except M2 is between 12 and 14 in
- required: rotation of M2 is upside down ± 3 deg, until 2030
- required: difference in start offset between Players is at least 20 s
- required: total power of Monitors is at most 900 W
- required: model of M1 and M2 is the same for all
- required: distance between Monitors is at least 60 cm
- required: M2 is below M1
- required: sound of the work is silent
- required: mains of the venue is 230 V ± 10 %
- by: cons
- on: 2009-02
- supersedes: R1.3
- ground: safety
"""
LOAN = """# Loan to Halmsee

- work: work.md
- status: proposed
- dates: 2027-03-01/2027-06-30
- by: cons

## Venue

- mains: 230 V

## Substitutions

| part | device | technology | visible diagonal | aspect ratio |
| ---- | ------ | ---------- | ---------------- | ------------ |
| M1   | V-1    | LCD        | 15 in            | 4:3          |

## Changes

| part | rotation | position           |
| ---- | -------- | ------------------ |
| M2   | upright  | 0.8, 1.6, 0.0 m    |

## Omissions

- P2: no room for it

## Additions

| part | kind      | group    | technology     |
| ---- | --------- | -------- | -------------- |
| X1   | converter |          | HDMI converter |
| X2   |           | Monitors | LCD            |

## Consents

| person | to   | answer | for | value | terms              | date    | until |
| ------ | ---- | ------ | --- | ----- | ------------------ | ------- | ----- |
| estate | R1.2 | yes    | M1  | LCD   | "the case stays"   | 2026-10 | 2028  |

## Attestations

| fact              | holds | by   | date       |
| ----------------- | ----- | ---- | ---------- |
| no tube can be had | yes   | cons | 2026-09-20 |
"""
ODDITIES = [
    "|", "- ", "## ", "### ", "# ", "> ", "`", '"', "“", "±", "%", "\0", "\ufeff", "\u2028", "\r", "\n\n", "```", "<b>",
    "1/0", "9" * 40, "0", "-5 in", "½ in", "٣ in", "13 in ± -1 in", "0:0", "0×0", "- 1", "999999 deg", "1 000 W",
    "of", "is", "if", "every", "except", "any", "as documented", "90 % of documented", "one of",
    "between 5 in and 3 in", "the work", "the venue", "additions", "first choice",
    "Monitors", "M1", "R1", "R1.2", "S1", "artist", "V1", "E-01",
    "2027-02-30", "9999-12-31", "0001", "1993/", "../1993", "XXXX", "1993-21", "199X~", "../work.md", "/etc/passwd",
    "- source: S1", "- by: cons", "- keep: internal", "| a | b |\n| - | - |\n| c | d |",
]  # fmt: skip
Edit = tuple[int, float, float, str]
EDITS = st.lists(
    st.tuples(st.integers(0, 6), st.floats(0, 1), st.floats(0, 1), st.sampled_from(ODDITIES)), max_size=4
)


def edited(text: str, edits: list[Edit]) -> str:
    """The text with each edit made: lines and words taken out, moved, doubled or replaced."""
    for sort, one, two, oddity in edits:
        text = _edited(text, sort, one, two, oddity) or oddity
    return text


def _edited(text: str, sort: int, one: float, two: float, oddity: str) -> str:
    lines = text.split("\n")
    first, second = (min(int(place * len(lines)), len(lines) - 1) for place in (one, two))
    place = int(one * len(text))
    match sort:
        case 0:
            del lines[first]
        case 1:
            lines.insert(first, lines[second])
        case 2:
            lines[first], lines[second] = lines[second], lines[first]
        case 3:
            lines.insert(first, oddity)
        case 4:
            return text[:place] + oddity + text[place:]
        case 5:
            return text[:place] + text[place + 1 + int(two * 20) :]
        case _:
            words = list(re.finditer(r"[^\s|]+", text))
            if not words:
                return oddity
            word = words[min(int(one * len(words)), len(words) - 1)]
            return text[: word.start()] + oddity + text[word.end() :]
    return "\n".join(lines)


def tried(folder: Path, form: str) -> tuple[Diagnostic, ...]:
    """Check, report and convert; the diagnostics where the input cannot be used."""
    try:
        checked = verbs.check(folder / "loan.md")
        assert verbs.report(checked, form)
        assert verbs.convert(folder / "work.md", "turtle")[0]
        assert verbs.convert(folder / "loan.md", "markdown")[0]
    except Unusable as error:
        return error.diagnostics
    return ()


@given(EDITS, EDITS, st.sampled_from(["text", "html", "markdown", "json", "turtle"]))
@settings(max_examples=25, deadline=None, derandomize=True)
def test_no_change_ends_in_a_traceback(work: list[Edit], loan: list[Edit], form: str) -> None:
    """Whatever is raised is `Unusable`, and says where."""
    with TemporaryDirectory() as name:
        folder = Path(name)
        (folder / "work.md").write_text(edited(WORK, work), encoding="utf-8", newline="")
        (folder / "loan.md").write_text(edited(LOAN, loan), encoding="utf-8", newline="")
        found = tried(folder, form)
    assert not found or any(one.is_error for one in found)
    assert all(one.span.file for one in found)


def test_a_source_named_for_no_heading(tmp_path: Path) -> None:
    """What stands under Instructions before the first heading belongs to none of them."""
    (tmp_path / "work.md").write_text(WORK.replace("## Instructions\n", "## Instructions\n\n- source: S1\n"))
    with pytest.raises(Unusable, match="source"):
        verbs.validate(tmp_path / "work.md")
