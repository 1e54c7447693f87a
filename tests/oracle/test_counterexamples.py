"""Small texts on which the two ways to a verdict once differed, with the verdict and the sentence it follows."""

from __future__ import annotations

import pytest

from intent.vocabulary.loader import read_vocabulary
from oracle.program import judged_texts, rows_of

WORK = """# Three Sets

- artist: Ina Fellmark
- number: 1

## People

| person | name           | role            | until | successor |
| ------ | -------------- | --------------- | ----- | --------- |
| artist | Ina Fellmark   | artist          | 2016  | estate    |
| estate | Fellmark Trust | artist's estate |       |           |
| fab    | Odo Varnisch   | fabricator      |       |           |
| reg    | Ulla Steen     | registrar       |       |           |

## Parts

### Monitors

- kind: display

| part | technology       | rotation    |
| ---- | ---------------- | ----------- |
| M1   | cathode-ray tube | upright     |
| M2   | cathode-ray tube | turned left |
| M3   | cathode-ray tube | upright     |

## Instructions
"""
PROPOSAL = """# Proposal

- work: work.md
- dates: 2027-03-01/2027-03-06
"""


def heading(number: int, line: str, *shared: str) -> str:
    return (
        "\n".join([f"\n### R{number} Something said\n", f"- {line}", *(f"- {one}" for one in shared)]) + "\n"
    )


OLED = "required: technology of M1 is OLED"
TUBES = heading(1, "required: technology of Monitors is cathode-ray tube", "by: reg", "on: 1999")
CASES = {
    # "a breach of an instruction that ranks with observed practice only makes it refer": here another is broken too.
    "practice and a lender": (
        heading(1, OLED) + heading(2, OLED, "by: artist", "on: 1999", "ground: loan"),
        "",
        {("M1", "technology"): "breach"},
        "not-acceptable",
    ),
    # The same, where the second is in force on some days only.
    "practice, and from the third day the estate": (
        heading(1, OLED) + heading(2, OLED, "by: estate", "on: 2027-03-03"),
        "",
        {("M1", "technology"): "breach"},
        "not-acceptable",
    ),
    # "Documentation that is silent never permits."
    "as documented, of an addition": (
        heading(1, "allowed: technology of additions is as documented", "by: artist", "on: 1999")
        + heading(2, "allowed: presence of additions is present", "by: artist", "on: 1999"),
        "\n## Additions\n\n| part | kind | technology |\n| --- | --- | --- |\n| X1 | display | OLED |\n",
        {("X1", "technology"): "unknown", ("X1", "presence"): "allowed"},
        "refer",
    ),
    # "`presence` is `present` or `absent`": nothing satisfies both, so the higher requirement lifts the prohibition.
    "not present is absent": (
        heading(1, "required: presence of M1 is not present", "by: estate", "on: 1999")
        + heading(2, "forbidden: presence of M1 is absent", "by: reg", "on: 1999"),
        "\n## Omissions\n\n- M1: no room\n",
        {("M1", "presence"): "as-required"},
        "acceptable",
    ),
    # "What an instruction supersedes is withdrawn, for good and for all its parts": its condition plays no part.
    "a condition about another part than the subject holds": (
        TUBES
        + heading(
            2,
            "allowed: technology of M1 is any, if rotation of M1 is upright",
            "by: fab",
            "on: 2009",
            "supersedes: R1",
        ),
        "",
        {},
        "acceptable",
    ),
    "a condition about another part than the subject does not hold": (
        TUBES
        + heading(
            2,
            "allowed: technology of M1 is any, if rotation of M1 is turned left",
            "by: fab",
            "on: 2009",
            "supersedes: R1",
        ),
        "\n## Changes\n\n| part | technology |\n| --- | --- |\n| M2 | OLED |\n",
        {("M2", "technology"): "uncovered"},
        "refer",
    ),
    # "It counts … for the parts and value it names": this refusal is for projectors, and none is proposed.
    "a refusal for another value takes nothing away": (
        heading(1, "forbidden: rotation of M1 is upright", "by: artist", "on: 1999")
        + heading(
            2,
            "allowed: technology of M1 is any, with consent of estate",
            "by: artist",
            "on: 2001",
            "supersedes: R1",
        ),
        "\n## Consents\n\n| person | to | answer | value | date |\n| --- | --- | --- | --- | --- |\n"
        "| estate | R2.1 | no | projector | 2026-10-02 |\n",
        {},
        "acceptable",
    ),
}


@pytest.mark.parametrize("name", CASES)
def test_a_verdict_that_once_differed(name: str) -> None:
    instructions, proposed, expected, outcome = CASES[name]
    variance = judged_texts(WORK + instructions, PROPOSAL + proposed, read_vocabulary())
    assert rows_of(variance) == expected
    assert variance.outcome.value == outcome
