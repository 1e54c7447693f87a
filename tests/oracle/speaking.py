"""Step 1 and the open things of step 2: which lines speak of a subject on a day, and what they still wait for."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from oracle.cases import Answer, Case, If, Line, Someone
from oracle.state import holds, meant, members, present, value_of
from oracle.world import Points, Trait

NOBODY = 6
"""The rank of observed practice."""
Open = frozenset[tuple[str, str]]


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

    def open_of(self, line: Line, subject: str) -> Open | None:
        """What is open in a line that speaks of a subject; None where it does not speak."""
        if not holds(self.case, line.saying.reach, subject):
            return None
        return self.in_force(line, subject, withdrawal=True)

    def in_force(self, line: Line, subject: str, *, withdrawal: bool) -> Open | None:
        if not self._in_its_time(line) or (withdrawal and self._is_withdrawn(line, subject)):
            return None
        found = self._conditions(line, subject)
        if found is None or line.modality != "allowed":
            return found
        for person in line.consents:
            points = value_of(self.case, self.traits[line.saying.trait], subject).points
            consent = self._consent(line, person, subject, points)
            if consent is None:
                return None
            found |= consent
        choices = self._earlier_choices(line, subject)
        return None if choices is None else found | choices

    def _in_its_time(self, line: Line) -> bool:
        before_the_end = not line.withdrawn.text or self.date < line.withdrawn.span[0]
        return line.on.span[0] <= self.date <= line.until.span[1] and before_the_end

    def _is_withdrawn(self, line: Line, subject: str) -> bool:
        return any(
            self.supersedes(other, line)
            and other.on.span[0] <= self.date
            and self._conditions(other, subject) == frozenset()
            and not self._is_refused(other, subject)
            for other in self.case.lines
        )

    def _is_refused(self, line: Line, subject: str) -> bool:
        if line.modality != "allowed" or not line.consents:
            return False
        points = value_of(self.case, self.traits[line.saying.trait], subject).points
        return any(self._consent(line, person, subject, points) is None for person in line.consents)

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
            if earlier and other.ground == line.ground and self.open_of(other, subject) is not None:
                fact = f"{other.name} cannot be had"
                if self.case.attested.get(fact) is False:
                    return None
                if fact not in self.case.attested:
                    found.add(("attestation", fact))
        return frozenset(found)

    # Consents

    def _consent(self, line: Line, person: str, subject: str, points: Points) -> Open | None:
        given = [
            answer for answer in self._counting(line, subject, points) if person in self._stands_for(answer)
        ]
        if any(answer.yes is False for answer in given):
            return None
        agreed = [self._terms(answer) for answer in given if answer.yes]
        if agreed:
            return min(agreed, key=len)
        living = self._living(person)
        return frozenset({("consent", living)}) if living else None

    def dispensations(self, line: Line, subject: str, points: Points) -> list[Open]:
        """What is open in each dispensation from a line."""
        if line.ground == "safety" or line.modality == "allowed":
            return []
        return [
            self._terms(answer)
            for answer in self._counting(line, subject, points)
            if answer.yes and min(self.ranks[name] for name in self._stands_for(answer)) <= self.rank(line)
        ]

    def _counting(self, line: Line, subject: str, points: Points) -> Iterator[Answer]:
        for answer in self.case.answers:
            person = self.case.someone(answer.person)
            if (
                answer.to in (line.name, line.heading)
                and answer.date.span[0] <= self.date <= answer.until.span[1]
                and (person is None or answer.date.span[0] <= person.until.span[1])
                and (not answer.parts or subject in answer.parts)
                and (answer.value is None or points <= (answer.value.cell or frozenset()))
            ):
                yield answer

    def _terms(self, answer: Answer) -> Open:
        unmet = answer.terms and not self.case.attested.get(answer.terms)
        return frozenset({("attestation", answer.terms)}) if unmet else frozenset()

    def _stands_for(self, answer: Answer) -> list[str]:
        """The person, and all those whose successor, near or far, that person was by then."""
        found = [answer.person]
        for name in found:
            found += [
                person.name
                for person in self.case.people
                if person.successor == name
                and person.until.span[1] < answer.date.span[0]
                and person.name not in found
            ]
        return found

    def _living(self, name: str) -> str | None:
        """Who can give that person's consent on this day."""
        person: Someone | None = self.case.someone(name)
        while person is not None and person.until.span[1] < self.date:
            person = self.case.someone(person.successor)
        return person.name if person else None
