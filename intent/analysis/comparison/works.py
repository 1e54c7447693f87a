"""What changed between two states of the documentation of one work."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from intent.analysis.comparison.difference import WITHDRAWN, Difference, ThingKind, What, compared
from intent.analysis.comparison.things import things_of
from intent.language.message import joined
from intent.model.duty import Duty
from intent.model.work import Work
from intent.names import TERM
from intent.variance.case import superseders_of

_NUMBER = str(TERM["field-number"])


@dataclass(frozen=True, slots=True)
class Comparison:
    """Two states of one work, and every difference, in the order of the work."""

    old: Work
    new: Work
    differences: tuple[Difference, ...]


def compare_works(old: Work, new: Work) -> Comparison:
    """Every difference between two states; matched are things of one name."""
    found = [*map(_as_withdrawal, compared(things_of(old), things_of(new))), *_superseded(old, new)]
    places = {sort: place for place, sort in enumerate(ThingKind)}
    return Comparison(old, new, tuple(sorted(found, key=lambda one: places[one.sort])))


def is_same_work(old: Work, new: Work) -> bool:
    """Whether two works with different IRIs are taken for one: by their title, or by their number."""
    return old.title == new.title or bool(_numbers(old) & _numbers(new))


def _numbers(work: Work) -> set[str]:
    """The number under which the owner holds the work, where there is one."""
    number = work.fields.get(work.vocabulary.fields[_NUMBER].property)
    return {number} if number else set()


def _as_withdrawal(one: Difference) -> Difference:
    """A date of withdrawal where there was none is a withdrawal."""
    if one.sort is ThingKind.HEADING and one.respect == WITHDRAWN and not one.before:
        return Difference(sort=one.sort, name=one.name, what=What.WITHDRAWN, after=one.after)
    return one


def _superseded(old: Work, new: Work) -> Iterator[Difference]:
    """The instructions and duties that something supersedes with effect, where it did not before."""
    before, after = superseders_of(old), superseders_of(new)
    known = {line.identifier: line for line in old.lines}
    for identifier, later in after.items():
        earlier = {line.identifier for line in before.get(identifier, ())}
        new_ones = [line.identifier for line in later if line.identifier not in earlier]
        if identifier in known and new_ones:
            yield Difference(
                sort=ThingKind.DUTY if isinstance(known[identifier], Duty) else ThingKind.INSTRUCTION,
                name=identifier,
                what=What.SUPERSEDED,
                after=joined(new_ones, ", "),
            )
