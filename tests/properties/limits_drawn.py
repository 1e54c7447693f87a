"""Every limit that is held, against what stands in the place of another and against what is added."""

from __future__ import annotations

from dataclasses import replace

from properties.drawn_limit import Drawn
from properties.limits_of_handling import HANDLED, LIT
from properties.limits_of_power import POWERED, SUPPLYING
from properties.limits_of_showing import SHOWING

ADDED = {
    "H1": (("kind", "loudspeaker"), ("support", "hung from the ceiling"), ("height", "2 m")),
    "F1": (("kind", "loudspeaker"), ("support", "on the floor"), ("height", "0.5 m")),
    "M1": (("kind", "display"), ("technology", "LCD"), ("channel", "A")),
    "C1": (("kind", "converter"),),
}
"""What is said of an addition, beside what is drawn: as much as is documented of the part that it is like."""


def as_addition(drawn: Drawn) -> Drawn:
    """The same limit, held against something that is added."""
    return replace(
        drawn,
        name=f"{drawn.name}, of an addition",
        section="Additions",
        others=tuple((dict(ADDED[drawn.part]) | dict(drawn.others)).items()),
        fed_by="P1" if drawn.part == "M1" else "",
    )


EVERY = (*HANDLED, *LIT, *POWERED, *SUPPLYING, *SHOWING)
LIMITS = (
    *EVERY,
    *(as_addition(drawn) for drawn in EVERY if drawn.section == "Substitutions" and drawn.part in ADDED),
)
