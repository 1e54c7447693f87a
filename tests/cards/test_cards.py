"""What stands on a placement card, and what must not."""

from __future__ import annotations

import re
from importlib.resources import files
from pathlib import Path

import pytest
from click.testing import CliRunner
from lxml import html
from read_cards import cards_by_part, text_of

from cards.conftest import LOAN, WORK
from intent import verbs
from intent.commands.main import intent as command_line
from intent.diagnostics import Unusable

EXAMPLES = Path(__file__).parents[2] / "examples"
LOANS = (
    "low-farms/installations/2027-halmsee-loan.md",
    "kestrel-held/installations/2027-hall-of-birds.md",
    "second-delivery/installations/2027-maarholm-loan.md",
)


@pytest.fixture(scope="module")
def page(loan: Path) -> str:
    return verbs.cards(loan)[0]


def test_every_part_that_is_there_has_a_card(page: str) -> None:
    assert set(cards_by_part(page)) == {"M1", "M2", "M4", "P1", "C1", "X1"}


@pytest.mark.parametrize(
    ("unit", "aside", "up"),
    [
        ("m", "0.254 m", "1.27 m"),
        ("mm", "254 mm", "1270 mm"),
        ("cm", "25.4 cm", "127 cm"),
        ("in", "10 in", "50 in"),
    ],
)
def test_positions_are_told_in_the_unit_asked_for(loan: Path, unit: str, aside: str, up: str) -> None:
    """An inch is 25.4 mm exactly (international yard and pound agreement, 1959)."""
    told = text_of(verbs.cards(loan, unit=unit)[0], "M1")
    assert (
        f"{aside} to the left of the zero, neither in front of it nor behind it, centre {up} above the floor"
        in told
    )
    assert "the zero is the foot of the left pillar" in told


@pytest.mark.parametrize(("language", "aside"), [("en", "25.4 cm"), ("de", "25,4 cm"), ("fr", "25,4 cm")])
def test_lengths_have_the_decimal_mark_of_the_language_and_no_mark_between_thousands(
    loan: Path, language: str, aside: str
) -> None:
    """SI Brochure, 9th edition (2019), 5.4.4: no dots or commas between groups of digits (from memory)."""
    assert aside in text_of(verbs.cards(loan, unit="cm", language=language)[0], "M1")
    assert "1270 mm" in text_of(verbs.cards(loan, unit="mm", language=language)[0], "M1")


def test_the_way_up_is_said_large_beside_its_drawing(page: str) -> None:
    lying = cards_by_part(page)["M1"].find_class("lying")[0]
    assert lying.find_class("way-up")
    assert [one.text_content() for one in lying.iter("strong")] == ["turned left"]


def test_the_signal_is_followed_to_its_player(page: str) -> None:
    assert "A, from P1 (the machine), through C1" in text_of(page, "M1")
    assert "A, to M1 (the well) and M2 (the bucket)" in text_of(page, "P1")
    assert "to M1 (the well) and M2 (the bucket)" in text_of(page, "C1")


def test_what_must_not_be_done_is_told_safety_first_with_what_lifts_it(page: str) -> None:
    told = text_of(page, "M2")
    air, panel = (
        told.index("Rotation must not be upside down. (R3.1, for safety)"),
        told.index("Technology must not be flat panel. (R2.1)"),
    )
    assert air < panel
    assert "if “no tube can be had”, with consent of Ottiline Quarrow (artist)" in told
    assert "R2.2" not in text_of(page, "M1")


def test_the_artist_is_quoted_with_the_source(page: str) -> None:
    told = text_of(page, "M1")
    assert "“It fell in, and we left it.”" in told
    assert "Ottiline Quarrow, 14 May 1999 (S1 at 0:14:05)" in told


def test_another_device_and_an_addition_have_cards_of_what_is_proposed(page: str) -> None:
    assert "V-1, LCD, PX-15, 15 in, 4:3, in the place of E-02" in text_of(page, "M2")
    assert "another device than documented" in text_of(page, "M2")
    assert re.search(
        r"Not settled, ask before installing: [^.]*technology \(conditional\)", text_of(page, "M2")
    )
    assert "added for this installation" in text_of(page, "X1")


def test_the_part_is_filled_in_its_drawing(page: str) -> None:
    cards = cards_by_part(page)
    for part in ("M1", "M2", "X1"):
        drawn = cards[part].find_class("where")
        assert drawn, part
        assert f"{part} from the front" in drawn[0].text_content()
    assert "its place is not drawn" in text_of(page, "P1")


def test_nothing_internal_is_on_a_card(page: str) -> None:
    """Rows and sources marked `keep: internal`; of the part itself, identifier and kind stay."""
    for hidden in (
        "hidden set",
        "E-04",
        "14 in",
        "Words that stay in the house",
        "Letter that stays here",
        "Hidden",
    ):
        assert hidden not in page
    assert "No position" in text_of(page, "M4")


DUTIES = """
### R77 Care

- duty: "wipe the glass, and say that you have", every 3 days
- duty: "photograph every set", by borrower, within 14 days of the end
- by: artist
- on: 1988
"""


def test_what_is_to_be_done_is_on_a_card_of_its_own(tmp_path: Path) -> None:
    (tmp_path / "work.md").write_text(WORK + DUTIES, encoding="utf-8")
    (tmp_path / "loan.md").write_text(LOAN, encoding="utf-8")
    told = text_of(verbs.cards(tmp_path / "loan.md")[0], "")
    assert told.startswith("To be done")
    assert "wipe the glass, and say that you havewhoever installs, every 3 days from 1 March 2027" in told
    assert "photograph every setborrower, by 14 July 2027" in told


def test_some_parts_alone(loan: Path) -> None:
    assert set(cards_by_part(verbs.cards(loan, parts=["P1", "M1"])[0])) == {"M1", "P1"}


@pytest.mark.parametrize(("part", "told"), [("M9", "has no part `M9`"), ("M3", "left out")])
def test_a_part_that_is_not_there_is_named(loan: Path, part: str, told: str) -> None:
    with pytest.raises(Unusable, match=told) as caught:
        verbs.cards(loan, parts=[part])
    assert [found.slug for found in caught.value.diagnostics] == ["no-card"]


@pytest.mark.parametrize("path", LOANS)
def test_the_examples_have_cards_that_are_always_the_same(path: str) -> None:
    page, _ = verbs.cards(EXAMPLES / path)
    assert page == verbs.cards(EXAMPLES / path)[0]
    assert len(cards_by_part(page)) > 4


def test_the_labels_name_every_part(loan: Path) -> None:
    labels = html.fromstring(verbs.cards(loan, sheet="labels")[0])
    assert [label.findtext(".//h2") for label in labels.iter("article")] == [
        "M1",
        "M2",
        "M4",
        "P1",
        "C1",
        "X1",
    ]


def test_no_type_is_too_small_for_a_photocopy() -> None:
    """Seven points, 2.47 mm, is the least that copies well (common practice, no source)."""
    style = files("intent.papers.cards").joinpath("cards.css").read_text(encoding="utf-8")
    sizes = [float(size) for size in re.findall(r"font(?:-size)?: ([\d.]+)mm", style)]
    assert min(sizes) >= 2.47
    assert set(re.findall(r"#[0-9a-f]{3,6}", re.sub(r"@media screen.*", "", style, flags=re.DOTALL))) == {
        "#fff",
        "#000",
    }


def test_the_command_writes_a_page(loan: Path, tmp_path: Path) -> None:
    output = tmp_path / "cards.html"
    run = CliRunner().invoke(command_line, ["cards", str(loan), "--output", str(output), "--units", "in"])
    assert run.exit_code == 0, run.output
    assert "10 in to the left" in output.read_text(encoding="utf-8")


def test_the_command_refuses_another_ending(loan: Path, tmp_path: Path) -> None:
    run = CliRunner().invoke(command_line, ["cards", str(loan), "--output", str(tmp_path / "cards.txt")])
    assert run.exit_code == 2
    assert "neither in .html nor in .pdf" in run.output
