"""What is documented and what is proposed, point by point."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from oracle.cases import Case, Line, Reach, Saying
from oracle.world import Points, Trait

WORK, VENUE = "the work", "the venue"
TERM = "https://w3id.org/intent-record/term/"
PRESENT: Points = frozenset({TERM + "present"})
BROAD = ("flat panel", "projector")
"""Terms of this world that only gather others."""
ABSENT: Points = frozenset({TERM + "absent"})


@dataclass(frozen=True)
class Value:
    """What is proposed for a characteristic of a subject, beside what is documented of it."""

    points: Points
    documented: Points | None
    """None where nothing is documented."""
    given: bool = True
    """Whether the proposal, or the documentation that it leaves alone, says something."""
    touched: bool = False
    """Whether the proposal says something, or takes away the device that the documentation spoke of."""
    added: bool = False
    """Whether there is nothing that it could be compared with: an addition, or the venue."""

    gathers: bool = False
    """Whether another device comes where only a broad term is documented: it may differ within that term."""
    is_new_part: bool = False
    """Whether it is the presence of an addition: what a requirement asks of a group does not ask for more of it."""

    def is_unchanged(self, trait: Trait) -> bool:
        if self.documented is None:
            return not self.touched and not self.added
        return not self.gathers and self.points <= trait.widen(self.documented)

    def surely_differs(self, trait: Trait) -> bool:
        """Whether no point proposed is a documented one; what only may differ is not known to."""
        return self.documented is not None and not self.points & trait.widen(self.documented)


def present(case: Case) -> list[str]:
    """The parts that would be there."""
    return [place.name for place in (*case.places, *case.additions) if place.name not in case.omissions]


def documented(case: Case, trait: str, subject: str) -> Points | None:
    place = next((place for place in case.places if place.name == subject), None)
    if subject == WORK:
        written = case.work.get(trait)
    elif trait == "presence":
        return ABSENT if place is None else PRESENT
    elif place is None:
        return None
    else:
        written = place.cells.get(trait) or case.devices.get(place.device, {}).get(trait)
    return written.cell if written else None


def value_of(case: Case, trait: Trait, subject: str) -> Value:
    """What is proposed: what the installation says of it, else as documented, else anything."""
    known = documented(case, trait.name, subject)
    if trait.name == "presence":
        return _presence(case, subject, known)
    substitution = next((place for place in case.substitutions if place.name == subject), None)
    replaced = substitution is not None and trait.bearer == "device"
    found = dict(_said(case, trait.name, subject)).get(trait.name)
    added = subject == VENUE or any(place.name == subject for place in case.additions)
    broad = gathers(case, trait.name, subject)
    if found is not None:
        return Value(found, known, touched=True, added=added, gathers=broad)
    if known is None or replaced:
        return Value(trait.everything, known, given=False, touched=replaced, added=added)
    return Value(known, known)


def gathers(case: Case, trait: str, subject: str) -> bool:
    """Whether a term that only gathers others is documented of a part in whose place another device comes."""
    place = next((place for place in case.places if place.name == subject), None)
    written = place.cells.get(trait) if place else None
    replaced = any(one.name == subject for one in case.substitutions)
    return replaced and written is not None and written.text in BROAD


def _presence(case: Case, subject: str, known: Points | None) -> Value:
    absent = subject in case.omissions
    added = known == ABSENT
    return Value(ABSENT if absent else PRESENT, known, touched=absent or added, is_new_part=added)


def _said(case: Case, trait: str, subject: str) -> Iterator[tuple[str, Points]]:
    """What the installation says of a subject; what comes later counts."""
    for of in (case.venue,) if subject == VENUE else (case.work_changes,) if subject == WORK else ():
        if trait in of:
            yield trait, of[trait].cell or frozenset()
    for place in (*case.additions, *case.substitutions):
        if place.name == subject:
            for written in (case.devices.get(place.device, {}).get(trait), place.cells.get(trait)):
                if written:
                    yield trait, written.cell or frozenset()
    change = case.changes.get(subject, {}).get(trait)
    if change:
        yield trait, change.cell or frozenset()


def holds(case: Case, reach: Reach, subject: str) -> bool:
    return subject in members(case, reach)


def members(case: Case, reach: Reach, *, as_documented: bool = False) -> list[str]:
    """The subjects in a scope, additions among them unless the scope of the documented work is asked."""
    if reach.text in (WORK, VENUE):
        return [reach.text]
    places = case.places if as_documented else (*case.places, *case.additions)
    added = {place.name for place in case.additions}
    return [
        place.name
        for place in places
        if any(
            name in (place.name, place.group)
            or (name == "every display" and place.kind == "display")
            or (name == "additions" and place.name in added)
            for name in reach.names
        )
        and place.name not in reach.excepted
    ]


def meant(case: Case, traits: Mapping[str, Trait], saying: Saying, subject: str) -> Points | None:
    """The points that an assertion names, of one subject; None where it leans on what nobody has documented."""
    trait, written = traits[saying.trait], saying.written
    known = documented(case, saying.trait, subject)
    leans = written.text == "as documented" or written.text in trait.shares
    if leans and (known is None or _cannot_be_told(case, trait, subject, known)):
        return None
    if leans:
        above, below = trait.shares.get(written.text, (1, 1))
        points = trait.widen(_scaled(known or frozenset(), above, below))
    else:
        points = written.points
    return trait.everything - points if saying.negated else points


def _cannot_be_told(case: Case, trait: Trait, subject: str, known: Points) -> bool:
    """Whether a value lies within a term that only gathers others, of which nobody said which it was."""
    return gathers(case, trait.name, subject) and bool(value_of(case, trait, subject).points & known)


def _scaled(points: Points, above: int, below: int) -> Points:
    return points if above == below else frozenset(int(point) * above // below for point in points)


def about(case: Case, line: Line) -> frozenset[str]:
    """The parts of the documented work that a line is about, for the comparison of scopes."""
    return frozenset(members(case, line.saying.reach, as_documented=True))
