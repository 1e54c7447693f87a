"""The judgement of a topic on one day, with the values it was about, and how much it weighs."""

from __future__ import annotations

from dataclasses import dataclass

from intent.language.message import Words
from intent.model.work import Instruction
from intent.variance.case import Case
from intent.variance.verdict import Judgement


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """The judgement of one day, or of its gravest ground, with the values it was about."""

    judgement: Judgement
    ground: str
    documented: Words
    proposed: Words
    also_against: tuple[Instruction, ...] = ()
    is_broken_beyond_practice: bool = False
    """Whether something is broken, on any ground, that does not rank with observed practice."""


def gravity(case: Case, judgement: Judgement) -> tuple[int, bool]:
    """How much a judgement weighs; where more than observed practice is broken, it weighs more."""
    return judgement.verdict.badness, judgement.is_broken_beyond_practice(case)
