"""Whatever a visitor can notice is told when it changes, whoever adds a characteristic.

Each case documents one value of one characteristic, proposes another, and nobody speaks of either. Of place, work and
material it has a row; of a device a row, an obstacle or an effect.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from examples_read import vocabulary
from test_cases import Case, documented, found_in, read, whole_installation, whole_work

from intent.dossier.installation_text import read_installation
from intent.effects.assess import assess
from intent.names import PRESENCE, term_iri
from intent.record.load_installation import load_installation
from intent.variance.result import Outcome, Variance, Verdict
from intent.vocabulary.terms import Characteristic

BEARERS = ("place", "work", "material")
NOTICED = [
    (bearer, one)
    for one in vocabulary().characteristics.values()
    for bearer in BEARERS
    if bearer in one.bearers and one.seen <= 2 and one.iri != PRESENCE
]
OTHERS = {
    "angle": ("10 deg", "100 deg"),
    "position": ("0, 0, 0 m", "1, 1, 1 m"),
    "ratio": ("4:3", "16:9"),
    "count": ("1", "2"),
    "raster": ("720×576", "640×480"),
    "text": ("one way", "another way"),
}
"""Two values of each sort that no tolerance makes one."""


def two_values(one: Characteristic, kind: str | None = None) -> tuple[str, str]:
    known = vocabulary()
    if one.space in {"concept", "yes-no"}:
        # the ordinary one first, where there is one, so that the second is never what a blank says
        suiting = [
            each for each in known.in_scheme(*one.schemes) if kind is None or known.applies(each, kind)
        ]
        concepts = sorted(suiting, key=lambda found: found.iri != one.ordinary_value)
        within = known.narrower[concepts[0].iri]
        return concepts[0].label, next(other.label for other in concepts if other.iri not in within)
    if one.space in OTHERS:
        return OTHERS[one.space]
    assumed = known.units.get(one.assumed_unit or "") or known.reference_unit(one.quantity_kind)
    symbol = (assumed.symbol if assumed else "") or ("%" if one.space == "quantity" else "")
    return f"11 {symbol}".strip(), f"77 {symbol}".strip()


def kind_of(one: Characteristic) -> str:
    known = vocabulary()
    return next((known.concepts[iri].label for iri in sorted(one.applies_to)), "display")


def stated(bearer: str, one: Characteristic, value: str, section: str) -> str:
    """A value in the documentation (`Parts`, `Material`) or in a proposal (`Changes`), and of the work in either."""
    if bearer == "work":
        return f"## Whole work\n\n- {one.label}: {value}\n"
    name, column = ("V1", "material") if bearer == "material" else ("M1", "part")
    column = "part" if section == "Changes" else column
    head = f"### Things\n\n- kind: {kind_of(one)}\n\n" if section == "Parts" else ""
    cell = f"\n\n| {column} | {one.label} |\n| --- | --- |\n| {name} | {value} |\n"
    return f"## {section}\n\n{head.strip()}{cell}"


def proposed(bearer: str, one: Characteristic, before: str | None, after: str) -> Case:
    section = {"place": "Parts", "material": "Material", "work": "Whole work"}[bearer]
    before_it = stated(bearer, one, before, section) if before is not None else ""
    if bearer == "place" and before is None:
        before_it = f"## Parts\n\n### Things\n\n- kind: {kind_of(one)}\n\n| part |\n| --- |\n| M1 |\n"
    if bearer == "material" and before is None:
        before_it = "## Material\n\n| material |\n| --- |\n| V1 |\n"
    return Case(
        file=Path(__file__),
        line=0,
        title="Noticed",
        name="Noticed",
        work=before_it,
        pool="",
        installation=stated(bearer, one, after, "Changes"),
        expected="",
    )


@pytest.mark.parametrize(("bearer", "one"), NOTICED, ids=lambda value: getattr(value, "label", value))
def test_a_change_has_a_row(bearer: str, one: Characteristic) -> None:
    before, after = two_values(one)
    found = found_in(proposed(bearer, one, before, after))
    assert found.outcome is not Outcome.ACCEPTABLE
    assert [row for row in found.departures if row.term == one.iri and row.verdict is Verdict.UNCOVERED]


@pytest.mark.parametrize(
    ("bearer", "one"),
    [(bearer, one) for bearer, one in NOTICED if one.has_ordinary],
    ids=lambda value: getattr(value, "label", value),
)
def test_so_has_a_change_from_what_is_ordinary(bearer: str, one: Characteristic) -> None:
    """Though nobody wrote the ordinary value down."""
    after = two_values(one)[1]
    found = found_in(proposed(bearer, one, None, after))
    assert [row for row in found.departures if row.term == one.iri and row.verdict is Verdict.UNCOVERED]


SHOWING = ("display", "player", "loudspeaker")
OF_DEVICES = [
    (kind, one)
    for kind in SHOWING
    for one in vocabulary().characteristics.values()
    if "device" in one.bearers and one.seen <= 2 and vocabulary().applies(one, term_iri(kind))
]


def with_device(kind: str, one: Characteristic, before: str, after: str) -> Variance:
    """A proposal with another device, of which all is said that is documented of the one that goes."""
    head = f"| part | device | {one.label} |\n| --- | --- | --- |\n| M1 |"
    case = Case(
        file=Path(__file__),
        line=0,
        title="Noticed",
        name="Noticed",
        work=f"## Parts\n\n### Things\n\n- kind: {kind}\n\n{head} E-01 | {before} |\n",
        pool="",
        installation=f"## Substitutions\n\n{head} V-1 | {after} |\n",
        expected="",
    )
    reading, work = documented(whole_work(case))
    proposal = read(read_installation(whole_installation(case), "installation.md", work))
    return assess(work, load_installation(proposal.triples, proposal.iri, work, reading.triples))


@pytest.mark.parametrize(("kind", "one"), OF_DEVICES, ids=lambda value: getattr(value, "label", value))
def test_a_change_of_a_device_has_a_row_or_an_effect(kind: str, one: Characteristic) -> None:
    before, after = two_values(one, term_iri(kind))
    alike, found = (with_device(kind, one, before, value) for value in (before, after))
    has_row = any(row.term == one.iri for row in found.departures)
    assert has_row or set(found.effects) - set(alike.effects) or set(found.obstacles) - set(alike.obstacles)
