"""What matters to hands is on the card: damage that is meant, limits with tolerance, cables, mains, vents, box."""

from __future__ import annotations

import datetime
from pathlib import Path

import pytest
from click.testing import CliRunner
from examples_read import EXAMPLES
from read_cards import cards_in, text_of

from intent import verbs
from intent.commands.main import intent as command_line
from intent.papers.cards.fitting import EDGE, FOOT, HEAD, HEIGHT, LONGEST, pieces, text_height

HALMSEE = EXAMPLES / "low-farms" / "installations" / "2027-halmsee-loan.md"
WORK = """# Salt Ledger

- artist: Ansa Kilbride
- year: 1994
- number: 1996.7
- owner: Thornacre Museum
- terms: terms.md

## People

| person | name            | role        |
| ------ | --------------- | ----------- |
| artist | Ansa Kilbride   | artist      |
| cons   | Dorrit Amesbury | conservator |

## Parts

- origin: the middle of the threshold

### Sets

- kind: display

| part | name      | device | rotation | tilt    | position         | support      |
| ---- | --------- | ------ | -------- | ------- | ---------------- | ------------ |
| M1   | the pan   | E-01   | upright  | face up | -1.1, 1.55, 4.2 m | on the floor |
| M2   | the scale | E-02   | 350 deg  |         | 0, 1.55, 0 m     | on the floor |

### Players

- kind: player

| part | name  | device |
| ---- | ----- | ------ |
| P1   | brine | E-11   |

### Walls

- kind: object

| part | name     | enclosed | position      |
| ---- | -------- | -------- | ------------- |
| W1   | the wall | yes      | 0, 1.2, -2 m  |

## Devices

| device | technology       | plug   | rated voltage | power | input connector |
| ------ | ---------------- | ------ | ------------- | ----- | --------------- |
| E-02   | cathode-ray tube | type F | 230 V         | 62 W  | BNC             |
| E-11   | optical disc     |        |               |       |                 |

| device | like | casing | deliberate damage | repair | vent position | vent clearance |
| ------ | ---- | ------ | ----------------- | ------ | ------------- | -------------- |
| E-01   | E-02 | hidden | yes               | none   | top           | 10 cm          |

## Connections

| from | to | signal    | length | connector |
| ---- | -- | --------- | ------ | --------- |
| P1   | M1 | composite | 4 m    | BNC       |
| P1   | M2 | composite | 4 m    | BNC       |

## Boxes

| box    | holds | transport orientation |
| ------ | ----- | --------------------- |
| box-01 | M1    | only upright          |

## Instructions

### R1 Lying

> Words about both of them.

- required: rotation of M2 is 350 deg ± 4 deg
  > the scale has slipped
- required: tilt of M1 is face up
- required: position of M1 is (-1.1, 1.55, 4.2 m) ± 20 cm
- by: artist
- on: 1994

### R2 Nearness

- forbidden: barrier distance of M1 is at least 1 cm
- forbidden: presence of W1 is present, if "the house is damp"
- forbidden: support of M1 is not on the floor
- by: cons
- on: 2009
"""
TERMS = """# Terms of the house

## Characteristics

| characteristic | definition                                | bearer | values  |
| -------------- | ----------------------------------------- | ------ | ------- |
| repair         | How far a thing may be repaired, if ever. | device | concept |

## Values

| value | of     | definition      |
| ----- | ------ | --------------- |
| none  | repair | Not to be done. |
"""
LOAN = """# Loan to Halmsee

- work: work.md
- status: proposed
- dates: 2027-03-01/2027-06-30
- venue: Kunsthalle Halmsee
- by: cons
"""


@pytest.fixture(scope="module")
def salt(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("salt")
    (folder / "work.md").write_text(WORK, encoding="utf-8")
    (folder / "terms.md").write_text(TERMS, encoding="utf-8")
    path = folder / "loan.md"
    path.write_text(LOAN, encoding="utf-8")
    return path


@pytest.fixture(scope="module")
def page(salt: Path) -> str:
    return verbs.cards(salt, date=datetime.date(2026, 12, 31))[0]


@pytest.mark.parametrize(
    ("part", "told"),
    [
        ("M1", "face up"),
        ("M1", "4.20 m in front of the zero, 1.10 m to the left, centre 1.55 m above the floor"),
        ("M2", "at the zero, centre 1.55 m above the floor"),
        ("M2", "10° to the left"),
        ("M1", "casing hidden, deliberate damage, repair none"),
        ("M1", "plug type F, 230 V, 62 W"),
        ("M1", "top, keep 10 cm free"),
        ("M1", "box-01, only upright"),
        ("M1", "from P1 (brine): composite, BNC, 4 m"),
        ("M1", "input connector BNC"),
        ("P1", "to M1 (the pan) and M2 (the scale): composite, BNC, 4 m"),
        ("M1", "tilt face up ± 2° (R1.2)"),
        ("M1", "(-1.1, 1.55, 4.2 m) ± 20 cm (R1.3)"),
        ("M2", "rotation 350 deg ± 4 deg (R1.1)"),
        ("M1", "Barrier distance must be less than 1 cm. (R2.1)"),
        ("M1", "Support must not be anything but on the floor. (R2.3)"),
        ("W1", "This part must not be shown, if “the house is damp”. (R2.2)"),
        ("M2", "“the scale has slipped”"),
        ("M1", "Made on 31 December 2026."),
    ],
)
def test_what_is_on_a_card(page: str, part: str, told: str) -> None:
    assert told in text_of(page, part)


@pytest.mark.parametrize(
    ("part", "untold"),
    [
        ("M2", "Not to be done"),
        ("M2", "Words about both of them"),
        ("M1", "Words about both of them"),
        ("M1", "the scale has slipped"),
        ("W1", "Heat and blocked vents"),
        ("W1", "Mains and earthing"),
    ],
)
def test_what_is_of_another_part_or_nobody_is_not_on_a_card(page: str, part: str, untold: str) -> None:
    assert untold not in text_of(page, part)


def test_what_runs_is_still_warned_of(page: str) -> None:
    assert "Heat and blocked vents" in text_of(page, "M1")
    assert "High voltage and implosion" in text_of(page, "M1")


def test_a_tube_that_leaves_is_no_caution_of_the_panel_that_comes(salt: Path) -> None:
    panel = salt.with_name("panel.md")
    panel.write_text(
        f"{LOAN}\n## Substitutions\n\n| part | device | technology |\n| --- | --- | --- |\n| M2 | V-1 | LCD |\n",
        encoding="utf-8",
    )
    assert "High voltage and implosion" not in text_of(verbs.cards(panel)[0], "M2")


def test_what_a_permission_sets_aside_is_not_called_required(salt: Path) -> None:
    lines = "- required: technology of Sets is cathode-ray tube\n- allowed: technology of M2 is LCD\n"
    folder = salt.parent / "permitted"
    folder.mkdir()
    text = f"{WORK}\n### R3 Tubes\n\n{lines}- by: artist\n- on: 1994\n"
    (folder / "work.md").write_text(text, encoding="utf-8")
    (folder / "terms.md").write_text(TERMS, encoding="utf-8")
    panel = folder / "panel.md"
    panel.write_text(
        f"{LOAN}\n## Substitutions\n\n| part | device | technology |\n| --- | --- | --- |\n| M2 | V-1 | LCD |\n",
        encoding="utf-8",
    )
    page, _ = verbs.cards(panel)
    assert "technology cathode-ray tube (R3.1)" in text_of(page, "M1")
    assert "cathode-ray tube" not in text_of(page, "M2")


def test_what_is_long_goes_on_and_nothing_is_left_out(salt: Path) -> None:
    """Three hundred words in each of a quotation and a condition: more than a card holds."""
    words = " ".join(f"word{number}" for number in range(600))
    facts = " ".join(f"fact{number}" for number in range(600))
    folder = salt.parent / "long"
    folder.mkdir()
    text = WORK.replace("the scale has slipped", words).replace("the house is damp", facts)
    (folder / "work.md").write_text(text, encoding="utf-8")
    (folder / "terms.md").write_text(TERMS, encoding="utf-8")
    loan = folder / "loan.md"
    loan.write_text(LOAN, encoding="utf-8")
    page, _ = verbs.cards(loan)
    assert len([card for card in cards_in(page) if "M2" in card.text_content()[:4]]) > 2
    scale, wall = text_of(page, "M2"), text_of(page, "W1")
    assert all(f"word{number}" in scale for number in range(600))
    assert all(f"fact{number}" in wall for number in range(600))


def test_a_name_too_long_for_its_heading_is_told_in_full_below(salt: Path) -> None:
    name = (
        "the scale on which the widow of the ferryman weighed her salt every evening before the tide came in"
    )
    folder = salt.parent / "named"
    folder.mkdir()
    (folder / "work.md").write_text(WORK.replace("the scale ", f"{name} "), encoding="utf-8")
    (folder / "terms.md").write_text(TERMS, encoding="utf-8")
    loan = folder / "loan.md"
    loan.write_text(LOAN, encoding="utf-8")
    told = [card.find_class("told")[0].text_content() for card in cards_in(verbs.cards(loan)[0])]
    assert [one.startswith(name) for one in told].count(True) == 1


def test_no_piece_is_too_high_for_a_card() -> None:
    room = HEIGHT - 2 * EDGE - HEAD - FOOT
    assert room > 2 * LONGEST
    cut = pieces("a word and another " * 400, 3.3, 91.0)
    assert len(cut) > 1
    assert all(text_height(piece, 3.3, 91.0) <= LONGEST for piece in cut)
    assert " ".join(cut).split() == ("a word and another " * 400).split()


def test_the_command_takes_the_day(salt: Path, tmp_path: Path) -> None:
    output = tmp_path / "cards.html"
    run = CliRunner().invoke(
        command_line, ["cards", str(salt), "--output", str(output), "--date", "2027-01-02"]
    )
    assert run.exit_code == 0, run.output
    assert "Made on 2 January 2027." in output.read_text(encoding="utf-8")


def test_what_a_part_stands_on_and_what_a_player_plays_are_named() -> None:
    """Without these a preparator asks: `on another part` leaves open which, a channel which disc goes in."""
    page = verbs.cards(HALMSEE)[0]
    assert "O2 (hay cart)" in text_of(page, "K1")
    assert "O7 (the heron's case)" in text_of(page, "O6")
    assert "tands on" not in text_of(page, "O9"), "it hangs on the wall"
    assert "V1, 23:00, media/water.mkv" in text_of(page, "P1")
    assert "media/" not in text_of(page, "B1"), "what shows a channel plays nothing itself"
