"""An instruction over time, as a line of dates: given, on what conditions, superseded, withdrawn, until when."""

from __future__ import annotations

import datetime
from collections.abc import Iterator

from intent.model.phrasing import condition_words
from intent.model.work import Instruction
from intent.values.dates import FIRST_DAY
from intent.variance.case import Case


def life_of(case: Case, line: Instruction) -> str:
    """`given 1992 – if "…" – superseded 2006 by R15.1 – until 2034`."""
    stations = [f"given {line.on}" if line.on else "given at an unknown date"]
    stations += [condition_words(condition, case.vocabulary) for condition in line.conditions]
    stations += [f"with consent of {person}" for person in line.consents]
    ends = sorted(_ends(case, line))
    return " – ".join([*stations, *(words for _, words in ends)])


def _ends(case: Case, line: Instruction) -> Iterator[tuple[datetime.date, str]]:
    for later in case.superseders.get(line.identifier, ()):
        when = f" {later.on}" if later.on else ""
        clauses = [condition_words(condition, case.vocabulary) for condition in later.conditions]
        conditional = f" ({', '.join(clauses)})" if clauses else ""
        yield (
            later.on.first if later.on else FIRST_DAY,
            f"superseded{when} by {later.identifier}{conditional}",
        )
    if line.withdrawn:
        yield line.withdrawn.first, f"withdrawn {line.withdrawn}"
    if line.until:
        yield line.until.last, f"until {line.until}"
