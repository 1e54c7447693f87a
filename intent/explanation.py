"""What governs a part or a characteristic on a day, in whose words."""

from __future__ import annotations

import datetime
from collections.abc import Iterator
from dataclasses import dataclass

from intent.assertions import Aggregate
from intent.dates import DaySpan
from intent.diagnostics import nearest
from intent.installation import Installation
from intent.model import Heading, Instruction, Work
from intent.phrasing import NOT_GIVEN
from intent.variance.case import Case, lay_out
from intent.variance.conditions import conditions_answer
from intent.variance.people import who_can_answer
from intent.variance.speaking import is_dated_in_force, is_superseded
from intent.variance.state import THE_VENUE, THE_WORK
from intent.vocabulary.phrases import normal
from intent.vocabulary.terms import Characteristic


@dataclass(frozen=True, slots=True)
class Explained:
    """One instruction about a subject, with whether it holds on the day, and why not."""

    line: Instruction
    heading: Heading
    giver: str
    """Who gave it: name and role."""
    cited: str
    """Where it stands: sources with their titles and times."""
    holds: bool
    because: str


@dataclass(frozen=True, slots=True)
class Explanation:
    """All that is said of one characteristic of a subject."""

    subject: str
    name: str
    characteristic: str
    documented: str
    instructions: tuple[Explained, ...]


class Unknown(Exception):
    """A part or characteristic that the work does not know; says what is near."""


def explain(
    work: Work, subject: str, characteristic: str | None = None, day: datetime.date | None = None
) -> tuple[Explanation, ...]:
    """What governs a subject: a part, a group, material, `the work` or `the venue`. Raises `Unknown`.

    ``day`` is the day on which to look; without one, dates are passed over and only withdrawals count.
    """
    members = members_named(work, subject)
    wanted = characteristic_named(work, characteristic) if characteristic else None
    span = DaySpan(day, day) if day else DaySpan(datetime.date.max, datetime.date.max)
    case = lay_out(work, Installation("", "", span, work.iri))
    return tuple(
        found
        for member in members
        for found in _of_member(case, member, wanted, span.first)
        if found.instructions or wanted is not None or found.documented != NOT_GIVEN
    )


def members_named(work: Work, subject: str) -> tuple[str, ...]:
    """The subjects that a name stands for: a part, the parts of a group, material, the work, the venue.

    Raises `Unknown`.
    """
    wanted = normal(subject)
    if wanted in {THE_WORK, THE_VENUE, "work", "venue"}:
        return (THE_WORK if wanted.endswith("work") else THE_VENUE,)
    for group in work.groups:
        if normal(group.name) == wanted:
            return tuple(part.identifier for part in work.parts if part.group == group.name)
    things = [(part.identifier, part.name) for part in work.parts]
    things += [(material.identifier, material.name) for material in work.material]
    found = [identifier for identifier, name in things if wanted in {normal(identifier), normal(name)}]
    if not found:
        known = [
            *(identifier for identifier, _ in things),
            *(group.name for group in work.groups),
            THE_WORK,
            THE_VENUE,
        ]
        raise Unknown(f"there is no part or group `{subject}` in “{work.title}”{nearest(subject, known)}")
    return (found[0],)


def characteristic_named(work: Work, name: str) -> Characteristic:
    """The characteristic of a name in any language. Raises `Unknown`."""
    found = work.vocabulary.find_characteristic(name)
    if found is None:
        raise Unknown(f"`{name}` is not a known characteristic{nearest(name, list(work.vocabulary.by_name))}")
    return found


def _of_member(
    case: Case, member: str, wanted: Characteristic | None, day: datetime.date
) -> Iterator[Explanation]:
    spoken = [line for line in case.work.instructions if member in case.members[line.identifier]]
    by_topic: dict[str, list[Instruction]] = {}
    for line in spoken:
        by_topic.setdefault(line.assertion.characteristic or "", []).append(line)
    iris = list(
        dict.fromkeys([*case.documented.statements.get(member, {}), *(iri for iri in by_topic if iri)])
    )
    for iri in [wanted.iri] if wanted else iris:
        characteristic = case.vocabulary.characteristics[iri]
        explained = tuple(_explained(case, line, member, day) for line in by_topic.get(iri, ()))
        documented = case.documented.words(member, characteristic)
        yield Explanation(member, _name(case.work, member), characteristic.label, documented, explained)
    if wanted is None and by_topic.get(""):
        explained = tuple(_explained(case, line, member, day) for line in by_topic[""])
        yield Explanation(member, _name(case.work, member), "number, distance and place", "", explained)


def _name(work: Work, member: str) -> str:
    part = work.part(member)
    return part.name if part else ""


def _explained(case: Case, line: Instruction, member: str, day: datetime.date) -> Explained:
    heading = case.work.heading(line.heading)
    assert heading is not None
    holds, because = _standing(case, line, member, day)
    return Explained(line, heading, _giver(case.work, line), _cited(case.work, line), holds, because)


def _standing(case: Case, line: Instruction, member: str, day: datetime.date) -> tuple[bool, str]:
    if not is_dated_in_force(line, day):
        return False, _why_not_in_force(line, day)
    if is_superseded(case, line, (member,), day):
        by = ", ".join(later.identifier for later in case.superseders[line.identifier])
        return False, f"superseded by {by}"
    _, opens = conditions_answer(case, line, (member,), day)
    return True, _conditions(case, line, bool(opens), day)


def _giver(work: Work, line: Instruction) -> str:
    person = work.person(line.by)
    return f"{person.name or person.identifier} ({person.role.label})" if person else "nobody named"


def _cited(work: Work, line: Instruction) -> str:
    return "; ".join(
        f"{found.title or found.identifier} ({citation.source}{f' at {citation.at}' if citation.at else ''})"
        for citation in line.sources
        if (found := work.source(citation.source)) is not None
    )


def _why_not_in_force(line: Instruction, day: datetime.date) -> str:
    if line.withdrawn is not None and day >= line.withdrawn.first:
        return f"withdrawn on {line.withdrawn}"
    if line.until is not None and day > line.until.last:
        return f"held until {line.until}"
    return f"given only on {line.on}"


def _conditions(case: Case, line: Instruction, has_open: bool, day: datetime.date) -> str:
    needs = []
    if has_open:
        needs.append("on its conditions")
    for person in line.consents:
        able = who_can_answer(case.work, person, day)
        needs.append(
            f"with the consent of {able.name}" if able else f"but nobody is left to consent for {person}"
        )
    if line.assertion.aggregate is not Aggregate.EACH:
        needs.append(f"of {line.assertion.scope.written} together")
    return ", ".join(needs)
