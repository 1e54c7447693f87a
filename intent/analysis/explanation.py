"""What governs a part, a group or the whole work on a day: which instructions, for which values, in whose words."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from intent.analysis.examination.biography import life_of
from intent.analysis.examination.governing import Stretch, stretches
from intent.analysis.examination.matters import Matter, matters_of
from intent.diagnostics import nearest, offered
from intent.language.locale import ENGLISH
from intent.language.message import Words, say
from intent.model.assertions import Aggregate, ScopeKind
from intent.model.installation import Installation
from intent.model.phrasing import scope_words
from intent.model.work import Heading, Instruction, Work
from intent.names import THE_VENUE, THE_WORK
from intent.values.dates import DaySpan
from intent.variance.case import Case, lay_out
from intent.variance.conditions import conditions_answer
from intent.variance.people import who_can_answer
from intent.variance.scopes import subject_name
from intent.variance.speaking import is_dated_in_force, is_superseded
from intent.vocabulary.phrases import normal
from intent.vocabulary.terms import Characteristic


@dataclass(frozen=True, slots=True, kw_only=True)
class Explained:
    """One instruction about a subject, with whether it holds on the day, and why not."""

    line: Instruction
    heading: Heading
    giver: str
    """Who gave it: name and role."""
    cited: str
    """Where it stands: sources with their titles and times."""
    life: str
    """Its dates in their order: `given 1992 – superseded 2006 by R15.1`."""
    holds: bool
    because: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Explanation:
    """All that is said of one characteristic of subjects that are governed alike."""

    subject: str
    """A part with its name, a group, several parts, `the work` or `the venue`."""
    characteristic: str
    documented: tuple[tuple[str, str], ...]
    """What is documented, each value with whose it is; of one value alone, with nobody named."""
    instructions: tuple[Explained, ...]
    stretches: tuple[Stretch, ...] = ()
    """The values as the instructions in force part them, with what they say of each."""


@dataclass(frozen=True, slots=True)
class Account:
    """What governs what was asked about, on a day."""

    work: Work
    day: datetime.date
    explanations: tuple[Explanation, ...]


class Unknown(Exception):
    """A part or characteristic that the work does not know; says what is near."""

    def __init__(self, message: Words) -> None:
        super().__init__(message)
        self.message = message

    def __str__(self) -> str:
        return ENGLISH.say(self.message)


def explain(work: Work, subject: str | None, characteristic: str | None, day: datetime.date) -> Account:
    """What governs a subject on a day: a part, a group, material, `the work`, `the venue`; the whole where none.

    A characteristic may stand in the subject's place: then it is that of every part. Raises `Unknown`.
    """
    is_bare = subject is not None and characteristic is None and not _find(work, subject)
    if is_bare and work.vocabulary.find_characteristic(subject or "") is not None:
        subject, characteristic = None, subject
    members = members_named(work, subject) if subject else _every_subject(work)
    wanted = characteristic_named(work, characteristic) if characteristic else None
    case = lay_out(work, Installation(iri="", title="", dates=DaySpan(day, day), work=work.iri))
    matters = [matter for matter in matters_of(case) if wanted is None or matter.characteristic == wanted]
    singles = _singles(case, matters, members, wanted, day)
    wholes = _wholes(case, matters, members, day)
    return Account(work, day, (*singles, *wholes))


def _find(work: Work, subject: str) -> tuple[str, ...]:
    wanted = normal(subject)
    if wanted in {THE_WORK, THE_VENUE, "work", "venue"}:
        return (THE_WORK if wanted.endswith("work") else THE_VENUE,)
    for group in work.groups:
        if normal(group.name) == wanted:
            return tuple(part.identifier for part in work.parts if part.group == group.name)
    things = [(part.identifier, part.name) for part in work.parts]
    things += [(material.identifier, material.name) for material in work.material]
    found = (identifier for identifier, name in things if wanted in {normal(identifier), normal(name)})
    return tuple(found)[:1]


def members_named(work: Work, subject: str) -> tuple[str, ...]:
    """The subjects that a name stands for: a part, the parts of a group, material, the work, the venue.

    Raises `Unknown`.
    """
    found = _find(work, subject)
    if not found:
        known = [*_every_subject(work), *(group.name for group in work.groups)]
        message = say("there is no part or group `{name}` in “{work}”", name=subject, work=work.title)
        raise Unknown(offered(message, nearest(subject, known)))
    return found


def _every_subject(work: Work) -> tuple[str, ...]:
    parts = (part.identifier for part in work.parts)
    return (*parts, *(material.identifier for material in work.material), THE_WORK, THE_VENUE)


def characteristic_named(work: Work, name: str) -> Characteristic:
    """The characteristic of a name in any language. Raises `Unknown`."""
    found = work.vocabulary.find_characteristic(name)
    if found is None:
        message = say("`{name}` is not a known characteristic", name=name)
        raise Unknown(offered(message, nearest(name, list(work.vocabulary.by_name))))
    return found


def _singles(
    case: Case,
    matters: Sequence[Matter],
    members: Sequence[str],
    wanted: Characteristic | None,
    day: datetime.date,
) -> Iterator[Explanation]:
    """What is said of each by itself; those governed alike are told together."""
    spoken: dict[tuple[str, str], list[Matter]] = {}
    for matter in matters:
        if matter.aggregate is Aggregate.EACH and matter.characteristic is not None:
            spoken.setdefault((matter.subject, matter.characteristic.iri), []).append(matter)
    alike: dict[tuple[str, tuple[Explained, ...], tuple[Stretch, ...]], list[str]] = {}
    for member in members:
        stated = [*case.documented.statements.get(member, {})] if len(members) == 1 else []
        for iri in dict.fromkeys([*([wanted.iri] if wanted else stated), *(iri for _, iri in spoken)]):
            about = spoken.get((member, iri), [])
            if about or iri in stated or (wanted and len(members) == 1):
                told = tuple(_explained(case, line, member, day) for line in _lines(case, about))
                key = (iri, told, stretches(case, about, day) if about else ())
                alike.setdefault(key, []).append(member)
    for (iri, told, parted), subjects in alike.items():
        characteristic = case.vocabulary.characteristics[iri]
        documented = _documented(case, subjects, characteristic)
        subject = _subject(case.work, subjects)
        yield Explanation(
            subject=subject,
            characteristic=characteristic.label,
            documented=documented,
            instructions=told,
            stretches=parted,
        )


def _wholes(
    case: Case, matters: Sequence[Matter], members: Sequence[str], day: datetime.date
) -> Iterator[Explanation]:
    """What is said of several together, of which a member is asked about."""
    together: dict[tuple[str, str], list[Matter]] = {}
    for matter in matters:
        others = (line.assertion.other for line in matter.lines)
        if matter.aggregate is not Aggregate.EACH and {*matter.members, *others} & set(members):
            together.setdefault((matter.subject, matter.label), []).append(matter)
    for (subject, label), about in together.items():
        lines = _lines(case, about)
        told = tuple(_explained(case, line, about[0].members[0], day) for line in lines)
        scope = lines[0].assertion.scope
        named = scope_words(scope, case.vocabulary) if scope.kind is ScopeKind.EVERY else subject
        yield Explanation(
            subject=named,
            characteristic=label,
            documented=(),
            instructions=told,
            stretches=stretches(case, about, day),
        )


def _lines(case: Case, matters: Sequence[Matter]) -> list[Instruction]:
    """Their instructions, in the order of the text."""
    held = {line.identifier for matter in matters for line in matter.lines}
    return [line for line in case.work.instructions if line.identifier in held]


def _documented(
    case: Case, subjects: Sequence[str], characteristic: Characteristic
) -> tuple[tuple[str, str], ...]:
    by_value: dict[str, list[str]] = {}
    for subject in subjects:
        if subject != THE_VENUE and (subject in case.documented.statements):
            by_value.setdefault(case.documented.words(subject, characteristic), []).append(subject)
    if len(by_value) == 1:
        return tuple((value, "") for value in by_value)
    return tuple((value, _subject(case.work, whose)) for value, whose in by_value.items())


def _subject(work: Work, subjects: Sequence[str]) -> str:
    """A part with its name; a group by its own; several parts by their identifiers."""
    if len(subjects) > 1:
        return subject_name(subjects, work).replace(THE_WORK, "every part")
    part = work.part(subjects[0])
    return f"{subjects[0]} ({part.name})" if part and part.name else subjects[0]


def _explained(case: Case, line: Instruction, member: str, day: datetime.date) -> Explained:
    heading = case.work.heading(line.heading)
    assert heading is not None
    holds, because = _standing(case, line, member, day)
    life = life_of(case, line)
    return Explained(
        line=line,
        heading=heading,
        giver=_giver(case.work, line),
        cited=_cited(case.work, line),
        life=life,
        holds=holds,
        because=because,
    )


def _standing(case: Case, line: Instruction, member: str, day: datetime.date) -> tuple[bool, str]:
    subjects = (member,) if line.assertion.aggregate is Aggregate.EACH else case.members[line.identifier]
    if not is_dated_in_force(line, day):
        return False, _why_not_in_force(line, day)
    if is_superseded(case, line, subjects, day):
        by = ", ".join(later.identifier for later in case.superseders[line.identifier])
        return False, f"superseded by {by}"
    _, opens = conditions_answer(case, line, subjects, day)
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
    return "not yet given"


def _conditions(case: Case, line: Instruction, has_open: bool, day: datetime.date) -> str:
    needs = []
    if has_open:
        needs.append("on its conditions")
    for person in line.consents:
        able = who_can_answer(case.work, person, day)
        needs.append(
            f"with the consent of {able.name}" if able else f"but nobody is left to consent for {person}"
        )
    return ", ".join(needs)
