"""The drawings of an installation: elevation and plan, as documented and as proposed, each one SVG element."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass

from intent.drawings.captions import TITLES
from intent.drawings.compose import compose
from intent.drawings.set_up import stages_of
from intent.drawings.sheet import lay
from intent.drawings.stage import Stages, View, Which
from intent.drawings.svg import Element
from intent.language.locale import ENGLISH, Locale
from intent.language.message import Words
from intent.variance.result import Variance

WIDTH = 170.0
"""Millimetres: the width of the text on a sheet of A4."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawing:
    """One drawing, with its title."""

    view: View
    which: Which
    title: Words
    element: Element
    notes: tuple[Words, ...] = ()
    """How it is measured, names, and what is not drawn and why."""


def draw(
    variance: Variance,
    *,
    view: View = View.ELEVATION,
    which: Which = Which.PROPOSED,
    lines: bool = False,
    highlight: Collection[str] = (),
    locale: Locale = ENGLISH,
    width_mm: float = WIDTH,
    name: str = "",
) -> Element:
    """One drawing, as an `svg` element.

    ``lines`` leads from each player to what it feeds; ``highlight`` makes all but some parts quiet, and measures those
    alone. ``name`` begins the identifiers in the drawing: give each of several like drawings on a page its own.
    """
    stages = stages_of(variance)
    sheet = lay(stages, view, width_mm)
    prefix = _prefix(name, view, which)
    return compose(
        stages,
        sheet=sheet,
        which=which,
        prefix=prefix,
        locale=locale,
        highlight=frozenset(highlight),
        lines=lines,
        apart=False,
    ).element


def _prefix(name: str, view: View, which: Which) -> str:
    return "-".join(filter(None, ("drawing", name, view.value, which.value)))


def drawings_of(
    variance: Variance,
    *,
    lines: bool = False,
    locale: Locale = ENGLISH,
    width_mm: float = WIDTH,
    name: str = "",
    apart: bool = False,
) -> tuple[Drawing, ...]:
    """The four drawings of a report: each view as documented, then as proposed, of one scale and extent.

    ``apart`` leaves the notes out of the drawings, for a page that tells them beside.
    """
    return draw_all(
        stages_of(variance), lines=lines, locale=locale, width_mm=width_mm, name=name, apart=apart
    )


def draw_all(
    stages: Stages, *, lines: bool, locale: Locale, width_mm: float, name: str, apart: bool
) -> tuple[Drawing, ...]:
    """The same of two states that have been read, for a page that draws them at several widths."""
    made = []
    for view in View:
        sheet = lay(stages, view, width_mm)
        for which in Which:
            prefix = _prefix(name, view, which)
            composed = compose(
                stages,
                sheet=sheet,
                which=which,
                prefix=prefix,
                locale=locale,
                highlight=frozenset(),
                lines=lines,
                apart=apart,
            )
            title = TITLES[view, which]
            made.append(
                Drawing(view=view, which=which, title=title, element=composed.element, notes=composed.notes)
            )
    return tuple(made)
