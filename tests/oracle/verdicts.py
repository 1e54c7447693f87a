"""Steps 2 to 4: what each line says, what falls, and the verdict, by going through lists of points.

The text followed is the section on verdicts of the project's documentation; each function is one sentence of it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from oracle.cases import Line
from oracle.speaking import Day, Open
from oracle.state import Value, about, meant
from oracle.world import Points, Trait

ORDER = (
    "forbidden", "breach", "contradiction", "unknown", "uncovered", "conditional", "allowed", "as-required",
    "as-documented",
)  # fmt: skip


@dataclass(frozen=True)
class Said:
    """What one line says of a proposed value."""

    line: Line
    points: Points
    """What it names."""
    admitted: Points
    """What satisfies it."""
    word: str
    """`meets`, `permits`, `against`, `perhaps against`, `perhaps permits`, or nothing."""
    open: Open = frozenset()
    is_over: bool = False
    """Of a permission: it says nothing, and still speaks."""
    counted: tuple[str, ...] = ()
    """Of a number that decides a presence: what it counts."""
    is_known: bool = True
    """Whether it is known what it names; not of `as documented` where nothing is."""

    def is_of_like_values(self, other: Said) -> bool:
        """Whether the points of both can be laid beside each other."""
        return self.counted == other.counted and self.is_known and other.is_known


_TABLE = {
    ("required", "in"): "meets", ("required", "out"): "against", ("required", "open"): "perhaps against",
    ("allowed", "in"): "permits", ("allowed", "out"): "", ("allowed", "open"): "perhaps permits",
    ("forbidden", "in"): "against", ("forbidden", "out"): "", ("forbidden", "open"): "perhaps against",
}  # fmt: skip
_WHERE_OPEN = {"against": "perhaps against", "meets": "permits"}


def say(
    line: Line, points: Points | None, everything: Points, proposed: Points, standing: Open | str
) -> Said:
    """Step 2."""
    if isinstance(standing, str):
        return Said(line, points or everything, everything, "", is_over=True)
    is_known = points is not None
    if points is None:
        place, points = "open", everything
    else:
        place = "in" if proposed <= points else "open" if proposed & points else "out"
    word = _TABLE[line.modality, place]
    if standing and line.modality != "allowed":
        word = _WHERE_OPEN.get(word, word)
    admitted = everything - points if line.modality == "forbidden" else points
    return Said(line, points, admitted, word, standing, is_known=is_known)


def prevails(day: Day, one: Said, two: Said) -> bool | None:
    """Whether one prevails over two; None where nothing tells them apart, or they contradict each other."""
    first, second = one.line, two.line
    mine, theirs = about(day.case, first), about(day.case, second)
    if day.rank(first) != day.rank(second):
        return day.rank(first) < day.rank(second)
    if mine < theirs or theirs < mine:
        small, large = (first, second) if mine < theirs else (second, first)
        lasting = small.modality == "allowed" and large.modality != "allowed"
        if lasting and large.on.span[0] > small.on.span[1]:
            return None
        return mine < theirs
    if first.on.span[0] > second.on.span[1] or second.on.span[0] > first.on.span[1]:
        return first.on.span[0] > second.on.span[1]
    if "allowed" in (first.modality, second.modality) and first.modality != second.modality:
        permission, other = (one, two) if first.modality == "allowed" else (two, one)
        wins = _is_exception(permission, other)
        return None if wins is None else wins is (permission is one)
    return None


def _is_exception(permission: Said, other: Said) -> bool | None:
    """Rule 4."""
    if other.line.modality == "required":
        return True
    if permission.line.conditions or permission.line.consents:
        return True
    if not permission.is_of_like_values(other):
        return None
    if permission.points < other.points:
        return True
    return False if permission.points > other.points else None


def _lifts(one: Said, against: Said) -> bool:
    """Whether a line that agrees with the value can lift one that does not, if it prevails.

    A number of some parts and a number of others are two values: meeting the one is nothing to the other. Nor can it be
    said that no value satisfies both where nobody knows which values one of them names.
    """
    if one.word == "permits" and one.line.modality == "allowed":
        return True
    if not one.is_of_like_values(against):
        return False
    return one.word in {"meets", "permits"} and not one.admitted & against.admitted


@dataclass(frozen=True)
class Fate:
    """What becomes of an `against` or a `perhaps against`."""

    of: Said
    falls: bool
    only_to_permissions: bool
    still_open: Open
    """What is open in the best permission."""
    ties: bool
    perhaps: bool
    """Whether it would fall to a `perhaps permits`."""


def fate(day: Day, against: Said, said: Sequence[Said], dispensations: Sequence[Open]) -> Fate:
    """Step 3."""
    able = [one for one in said if one is not against and _lifts(one, against)]
    winners = [one for one in able if prevails(day, one, against) is True]
    permissions = [(len(one.open), one.line.choice, one.open) for one in winners if one.word == "permits"]
    permissions += [(len(still_open), 0, still_open) for still_open in dispensations]
    falls = bool(winners or permissions)
    return Fate(
        against,
        falls,
        falls and all(one.word == "permits" for one in winners),
        min(permissions, key=lambda one: one[:2])[2] if permissions else frozenset(),
        not falls and any(prevails(day, against, one) is not True for one in able),
        any(one.word == "perhaps permits" and prevails(day, one, against) is True for one in said),
    )


def ground_verdict(
    day: Day, ground: str, trait: Trait, value: Value, said: Sequence[Said], fates: Sequence[Fate]
) -> tuple[str, Open]:
    """Step 4, with what is open; an empty verdict where the ground has nothing to say."""
    sure = [one for one in fates if one.of.word == "against" and not one.falls]
    standing = [one for one in sure if not one.ties and not one.perhaps]
    fallen = [one for one in fates if one.falls and one.only_to_permissions]
    if any(one.of.line.modality == "forbidden" for one in standing):
        return "forbidden", frozenset()
    if standing:
        return "breach", frozenset()
    if any(one.ties for one in sure):
        return "contradiction", frozenset()
    if sure or any(not one.falls for one in fates):
        return "unknown", frozenset()
    if fallen:
        still_open: Open = frozenset().union(*(one.still_open for one in fallen))
        return ("conditional" if still_open else "allowed"), still_open
    if any(one.word == "meets" for one in said):
        return "as-required", frozenset()
    if value.is_unchanged(trait):
        return "as-documented", frozenset()
    return _of_intent(trait, value, said) if ground == "intent" else ("", frozenset())


def _of_intent(trait: Trait, value: Value, said: Sequence[Said]) -> tuple[str, Open]:
    covering = [(len(one.open), one.line.choice, one.open) for one in said if one.word == "permits"]
    if covering:
        best = min(covering, key=lambda one: one[:2])[2]
        return ("conditional" if best else "allowed"), best
    asked = bool(said) or (trait.unasked and not value.added)
    if any(one.word == "perhaps permits" for one in said) or (not value.given and asked):
        return "unknown", frozenset()
    if value.added:
        uncovered = any(one.line.modality == "allowed" for one in said)
        return ("uncovered" if uncovered else ""), frozenset()
    if asked:
        return ("uncovered" if value.surely_differs(trait) else "unknown"), frozenset()
    return "", frozenset()


def _asks_for_no_more(value: Value, one: Said) -> bool:
    """Whether a requirement that a group be there is all that speaks for a new member of it."""
    of_all = one.line.modality == "required" and one.line.saying.reach.text != "additions"
    return value.is_new_part and of_all and one.word in {"meets", "permits"}


def judge_subject(
    day: Day, trait: Trait, value: Value, subject: str, lines: Sequence[Line]
) -> tuple[str, Open]:
    """The worst of the grounds, on one day."""
    found: list[tuple[str, Open]] = []
    for ground in ("intent", "safety", "law", "loan", "care"):
        said = []
        for line in lines:
            standing = day.standing(line, subject) if line.ground == ground else None
            if standing is not None:
                points = meant(day.case, day.traits, line.saying, subject)
                one = say(line, points, trait.everything, value.points, standing)
                said.append(replace(one, word="") if _asks_for_no_more(value, one) else one)
        fates = [
            fate(day, one, said, day.dispensations(one.line, subject, value.points))
            for one in said
            if one.word in {"against", "perhaps against"}
        ]
        found.append(ground_verdict(day, ground, trait, value, said, fates))
    worst = min((verdict for verdict, _ in found if verdict), key=ORDER.index, default="")
    return worst, frozenset().union(*(still_open for verdict, still_open in found if verdict == worst))
