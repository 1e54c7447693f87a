"""Saying less never wins: against a limit a blank, a range, `any` and a broader term never end better than a value.

An outcome with what says less is acceptable only if it is with every value that this may stand for, and never better
than with the best of them.
"""

from __future__ import annotations

import os
from functools import cache
from random import Random

import pytest
from test_cases import documented, read

from intent.dossier.installation_text import read_installation
from intent.effects.assess import assess
from intent.record.load_installation import load_installation
from intent.variance.result import Outcome
from properties.drawn_limit import Drawn
from properties.limits_drawn import LIMITS

PAIRS = int(os.environ.get("INTENT_PAIRS", "25"))
"""Pairs of a value and what says less, for each limit; 5,000 are run by hand from time to time."""
GOODNESS = [Outcome.NOT_ACCEPTABLE, Outcome.REFER, Outcome.ON_CONDITIONS, Outcome.ACCEPTABLE]


@cache
def goodness(work: str, proposal: str) -> int:
    """How good the outcome of a proposal is."""
    reading, known = documented(work)
    found = read(read_installation(proposal, "installation.md", known))
    return GOODNESS.index(
        assess(known, load_installation(found.triples, found.iri, known, reading.triples)).outcome
    )


@pytest.mark.parametrize("drawn", LIMITS, ids=lambda drawn: drawn.name)
def test_saying_less_never_ends_better_than_a_value(drawn: Drawn) -> None:
    random = Random(drawn.name)
    done, seen = 0, set[int]()
    while done < PAIRS:
        held = drawn.drawn(random)
        for less, values in held.pairs(random):
            found = goodness(held.work, held.proposal(less))
            single = [goodness(held.work, held.proposal(value)) for value in values]
            said = f"{drawn.name}, `{less or ''}` beside {values}:\n{held.proposal(less)}"
            assert found <= max(single), f"it ends better than every value\n{said}"
            acceptable = GOODNESS.index(Outcome.ACCEPTABLE)
            assert found < acceptable or min(single) == acceptable, f"it hides a value\n{said}"
            done, seen = done + len(values), seen | set(single)
    assert len(seen) > 1, f"{drawn.name}: every value ends alike, so that nothing is held"
