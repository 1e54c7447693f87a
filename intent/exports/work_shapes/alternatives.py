"""In what ways an instruction does not stand against what is shown: each a shape with a name, and why in words."""

from __future__ import annotations

from dataclasses import dataclass

from intent.exports.work_shapes.node_shapes import none_of
from intent.variance.case import Case
from intent.variance.precedence import Claim, prevails


@dataclass(frozen=True, slots=True)
class Alternative:
    """One way: a subject on some days that conforms to the shape is not judged by the instruction, or keeps it."""

    name: str
    why: str
    shape: str


def unasked(sure: str) -> Alternative:
    """That an instruction does not surely ask anything."""
    why = "It is not in force on these days, the part is absent, or a condition does not surely hold."
    return Alternative("unasked", why, none_of(sure))


def kept(shape: str) -> Alternative:
    return Alternative("kept", "What is shown is not surely against it.", shape)


def dispensed(shape: str) -> Alternative:
    return Alternative("dispensed", "Somebody who may has dispensed from it.", shape)


def falls(case: Case, line: Claim, rival: Claim, shape: str) -> Alternative:
    """That an instruction falls, or ties, to another."""
    mine, other = line.line.identifier, rival.line.identifier
    because = prevails(case, rival, line)
    if because is not None:
        why = f"{other} prevails over {mine} by {because.value}, and {_says(rival)}."
    else:
        why = f"Neither of {other} and {mine} prevails over the other, and {_says(rival)}: a contradiction."
    return Alternative(f"falls-to-{other}", why, shape)


def _says(rival: Claim) -> str:
    is_permission = rival.line.modality.value == "allowed"
    return (
        "permits what is shown, or may"
        if is_permission
        else "is met, which no value does that keeps the other"
    )
