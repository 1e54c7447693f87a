"""Step 1 and the open things of step 2: which lines speak of a subject on a day, and what they still wait for."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from oracle.cases import Answer, Case, If, Line, Someone, Span
from oracle.state import holds, meant, members, present, value_of
from oracle.world import Points, Trait

NOBODY = 6
"""The rank of observed practice."""
OVER, REFUSED = "over", "refused"
Open = frozenset[tuple[str, str]]
Standing = Open | str | None


@dataclass(frozen=True)
class Day:
    """One day of a case."""

    case: Case
    traits: Mapping[str, Trait]
    date: datetime.date

    @cached_property
    def ranks(self) -> dict[str, int]:
        return {person.name: person.authority_rank for person in self.case.people}

    def rank(self, line: Line) -> int:
        return self.ranks.get(line.by, NOBODY)

    def standing(self, line: Line, subject: str) -> Standing:
        """What is open in a line that speaks of a subject; OVER of a permission that is over; else None."""
        return self.standing_of(line, subject) if holds(self.case, line.saying.reach, subject) else None

    def standing_of(self, line: Line, subject: str) -> Standing:
        if self.date < line.on.span[0]:
            return None
        found = None if self.has_ended(line) else self._conditions(line, subject)
        if line.modality != "allowed":
            return found
        if found is None:
            return OVER
        for person in line.consents:
            points = value_of(self.case, self.traits[line.saying.trait], subject).points
            consent = self._consent(line, person, subject, points)
            if consent is None:
                return OVER
            found |= consent
        choices = self._earlier_choices(line, subject)
        return OVER if choices is None else found | choices

    def has_ended(self, line: Line) -> bool:
        """Withdrawn, superseded for good, or past its `until`."""
        withdrawn = bool(line.withdrawn.text) and line.withdrawn.span[0] <= self.date
        superseded = any(
            self.supersedes(other, line) and other.on.span[0] <= self.date for other in self.case.lines
        )
        return withdrawn or superseded or self.date > line.until.span[1]

    def supersedes(self, one: Line, two: Line) -> bool:
        """Whether one line withdraws another by right: not a later one, a higher one, or one of another ground."""
        named = bool({two.name, two.heading} & set(one.supersedes))
        later = two.on.span[0] > one.on.span[1]
        return named and one.ground == two.ground and not later and self.rank(one) <= self.rank(two)

    def _conditions(self, line: Line, subject: str) -> Open | None:
        found: set[tuple[str, str]] = set()
        for condition in line.conditions:
            answer = self._answered(line, condition, subject)
            if answer is None:
                found.add(("value", "") if condition.saying else ("attestation", condition.fact))
            elif answer is condition.unless:
                return None
        return frozenset(found)

    def _answered(self, line: Line, condition: If, subject: str) -> bool | None:
        if condition.saying is None:
            return self.case.attested.get(condition.fact)
        asked = members(self.case, condition.saying.reach)
        own = members(self.case, line.saying.reach)
        if set(asked) == set(own) and subject in own:
            asked = [subject]
        there = {*present(self.case), "the work", "the venue"}
        answers = [self._is_so(condition, each) for each in asked if each in there] or [None]
        return False if False in answers else None if None in answers else True

    def _is_so(self, condition: If, subject: str) -> bool | None:
        saying = condition.saying
        assert saying is not None
        points = value_of(self.case, self.traits[saying.trait], subject).points
        wanted = meant(self.case, self.traits, saying, subject)
        if wanted is None:
            return None
        return True if points <= wanted else None if points & wanted else False

    def _earlier_choices(self, line: Line, subject: str) -> Open | None:
        if line.choice < 2 or line.conditions:
            return frozenset()
        found: set[tuple[str, str]] = set()
        for other in self.case.lines:
            earlier = 0 < other.choice < line.choice and other.saying.trait == line.saying.trait
            if earlier and other.ground == line.ground and self._is_to_be_had(other, subject):
                fact = f"{other.name} cannot be had"
                if self.case.attested.get(fact) is False:
                    return None
                if fact not in self.case.attested:
                    found.add(("attestation", fact))
        return frozenset(found)

    def _is_to_be_had(self, line: Line, subject: str) -> bool:
        """Whether a choice is in force on a subject, whoever has refused it."""
        return (
            holds(self.case, line.saying.reach, subject)
            and line.on.span[0] <= self.date
            and not self.has_ended(line)
            and self._conditions(line, subject) is not None
        )

    # Consents

    def _consent(self, line: Line, person: str, subject: str, points: Points) -> Open | None:
        """What is open in a person's consent; None where it is refused, or nobody can give it."""
        found = self._latest(line, person, subject, points)
        if found == REFUSED:
            return None
        if isinstance(found, frozenset):
            return found
        living = self._living(person)
        return frozenset({("consent", living)}) if living else None

    def dispensations(self, line: Line, subject: str, points: Points) -> list[Open]:
        """What is open in each dispensation from a line."""
        if line.ground == "safety" or line.modality == "allowed":
            return []
        able = (person.name for person in self.case.people if self._may_lift(line, person))
        found = (self._latest(line, name, subject, points) for name in able)
        return [one for one in found if isinstance(one, frozenset)]

    def _may_lift(self, line: Line, person: Someone) -> bool:
        if line.lifted_by is None:
            return person.authority_rank <= self.rank(line)
        return person.name in line.lifted_by

    def _latest(self, line: Line, person: str, subject: str, points: Points) -> Open | str | None:
        """A person's latest answer: the open terms of a yes, REFUSED, or None where nothing counts."""
        given = list(self._begun(line, person, subject, points))
        yes = [one for one in given if one[0].yes]
        refused = [one for one in given if not one[0].yes and not any(later[1] > one[2] for later in yes)]
        if refused:
            lasting = any(answer.until.span[1] >= self.date for answer, _, _ in refused)
            return REFUSED if lasting else None
        last = [one for one in yes if not any(later[1] > one[2] for later in yes)]
        if not last or not all(self._lasts(answer) for answer, _, _ in last):
            return None
        return frozenset(
            ("attestation", answer.terms)
            for answer, _, _ in last
            if answer.terms and not self.case.attested.get(answer.terms)
        )

    def _lasts(self, answer: Answer) -> bool:
        return answer.until.span[1] >= self.date and self.case.attested.get(answer.terms) is not False

    def _begun(
        self, line: Line, person: str, subject: str, points: Points
    ) -> Iterator[tuple[Answer, datetime.date, datetime.date]]:
        """The answers that count for a person by this day, each with the first and last day of its giving."""
        for answer in self.case.answers:
            days = self._days(answer, person)
            if answer.yes is None or days is None or not self._is_to(answer, line):
                continue
            named = answer.value.cell or frozenset() if answer.value else None
            of_value = named is None or (points <= named if answer.yes else bool(points & named))
            begins = days[1] if answer.yes and answer.date.text else days[0]
            if of_value and (not answer.parts or subject in answer.parts) and begins <= self.date:
                yield answer, *days

    def _is_to(self, answer: Answer, line: Line) -> bool:
        if answer.to != line.heading:
            return answer.to == line.name
        calls = any(other.consents for other in self.case.lines if other.heading == line.heading)
        return bool(line.consents) if calls else line.modality != "allowed"

    def _days(self, answer: Answer, person: str) -> Span | None:
        """The days of an answer's date on which it is the person's, or a successor's once those before are gone."""
        first, last = answer.date.span
        someone, passed = self.case.someone(person), set[str]()
        while someone is not None and someone.name != answer.person:
            if someone.until.span[1] == datetime.date.max or not answer.date.text or someone.name in passed:
                return None
            passed.add(someone.name)
            first = max(first, someone.until.span[1] + datetime.timedelta(days=1))
            someone = self.case.someone(someone.successor)
        if someone is None or (not answer.date.text and someone.until.text):
            return None
        last = min(last, someone.until.span[1])
        return (first, last) if first <= last else None

    def _living(self, name: str) -> str | None:
        """Who can give that person's consent on the first day of the installation."""
        person: Someone | None = self.case.someone(name)
        while person is not None and person.until.span[1] < self.case.first:
            person = self.case.someone(person.successor)
        return person.name if person else None
