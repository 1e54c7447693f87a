"""What is said of several parts together, by going through every way the open values may turn out.

Each member has a short list of values that it may have; the list is run through in every combination, and an
assertion that is true of all of them is met, of none is broken, and of some is open.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from itertools import combinations, product

from oracle.cases import Case, Saying
from oracle.state import members, present
from oracle.world import ELSE, Written

UNKNOWN = (0, 5, 10, 15, 16, 20, 25, 30, 40, 45, 50, 60, 70, 80, 90, 100, 1000)
"""What a measured value may be that nobody gave.

Enough to fall on either side of every bound used here, and to make up what any total as documented leaves.
"""
MODELS = ("TV-13", "TV-9", "PX-15", ELSE, "yet another")
PAIRED = ("difference", "same", "different", "above", "below")
"""What nobody can say of one part."""
Values = Mapping[str, tuple[int | str, ...]]


@dataclass(frozen=True)
class Subject:
    """What a row is about."""

    name: str
    characteristic: str
    members: tuple[str, ...]


def cell_values(written: Written | None, trait: str) -> tuple[int | str, ...]:
    """Every value that a cell leaves open."""
    if trait == "model":
        return MODELS if written is None else (written.text,)
    if written is None:
        return UNKNOWN if trait != "position" else (-1, 0, 1, 2, 3)
    number = written.text.split(",")[1] if trait == "position" else written.text.split()[0]
    return (int(number),)


def values(case: Case, trait: str, *, proposed: bool) -> Values:
    """The values that each part may have."""
    found = {}
    for place in (*case.places, *(case.additions if proposed else ())):
        written = place.cells.get(trait)
        substituted = next((one for one in case.substitutions if one.name == place.name), None)
        if proposed and substituted is not None and trait in {"weight", "model"}:
            written = substituted.cells.get(trait)
        if proposed:
            written = case.changes.get(place.name, {}).get(trait, written)
        found[place.name] = cell_values(written, trait)
    return found


def subject_of(case: Case, saying: Saying) -> Subject:
    among = tuple(members(case, saying.reach))
    names = {
        "number": "number", "total": f"total {saying.trait}", "difference": f"difference in {saying.trait}",
        "same": f"same {saying.trait}", "different": f"different {saying.trait}",
    }  # fmt: skip
    group = saying.reach.text in {place.group for place in case.places}
    if saying.form not in names:
        return Subject(saying.reach.text, f"{saying.form} {saying.other}", (*among, saying.other))
    return Subject(saying.reach.text if group else ", ".join(among), names[saying.form], among)


def outcomes(
    case: Case, saying: Saying, parts: tuple[str, ...], *, proposed: bool, undone: Collection[str] = ()
) -> frozenset[bool]:
    """Whether the assertion is true of these parts, in every way that the values may turn out.

    ``undone`` are departures taken back: of these parts the documented value counts, or that they are there or not.
    """
    among = there_of(case, parts, proposed=proposed)
    if saying.form == "number":
        back = [name for name in undone if name in case.omissions]
        away = [name for name in undone if name in among]
        return frozenset({allows(saying.written, len(among) + len(back) - len(away))})
    known = dict(values(case, saying.trait, proposed=proposed))
    before = values(case, saying.trait, proposed=False)
    known |= {name: before[name] for name in undone}
    return frozenset(_true(saying, found) for found in product(*(known[name] for name in among)))


def there_of(case: Case, parts: tuple[str, ...], *, proposed: bool) -> list[str]:
    there = present(case) if proposed else [place.name for place in case.places]
    return [name for name in parts if name in there]


def _true(saying: Saying, found: tuple[int | str, ...]) -> bool:
    pairs = list(combinations(found, 2))
    match saying.form:
        case "total":
            return allows(saying.written, sum(int(one) for one in found))
        case "same":
            return all(one == two for one, two in pairs)
        case "different":
            return all(one != two for one, two in pairs)
        case "difference":
            return all(allows(saying.written, abs(int(one) - int(two))) for one, two in pairs)
        case "above":
            return all(int(one) > int(two) for one, two in pairs)
        case _:
            return all(int(one) < int(two) for one, two in pairs)


def allows(written: Written, number: int) -> bool:
    """`at least`, `at most`, `between`, or a number by itself."""
    numbers = [int(word) for word in written.text.split() if word.isdigit()]
    low, high = numbers[0], numbers[-1]
    if written.text.startswith("at least"):
        return number >= low
    return number <= high if written.text.startswith("at most") else low <= number <= high


def satisfying(saying: Saying) -> frozenset[int | str]:
    if saying.form in {"number", "total", "difference"}:
        return frozenset(number for number in range(200) if allows(saying.written, number))
    return frozenset({1})


def amounts(case: Case, saying: Saying, parts: tuple[str, ...], *, proposed: bool) -> frozenset[int]:
    """Every value that the aggregate may have."""
    among = there_of(case, parts, proposed=proposed)
    if saying.form == "number":
        return frozenset({len(among)})
    known = values(case, saying.trait, proposed=proposed)
    found: set[int] = set()
    for one in product(*(known[name] for name in among)):
        if saying.form == "total":
            found.add(sum(int(number) for number in one))
        elif saying.form == "difference":
            found.add(abs(int(one[0]) - int(one[1])))
        else:
            found.add(int(_true(saying, one)))
    return frozenset(found)
