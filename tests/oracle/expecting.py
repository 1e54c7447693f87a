"""An expectation of a case, drawn at random: as a row of the dossier, and as the installation that says the same."""

from __future__ import annotations

import datetime
from dataclasses import dataclass, replace
from random import Random

from oracle.cases import Answer, Case, Date, Place
from oracle.world import Trait, Written, small_world
from oracle.writing import table


@dataclass(frozen=True)
class Expected:
    """One value of something, with what is given."""

    subject: str
    members: tuple[str, ...]
    trait: str
    value: Written
    day: datetime.date
    facts: dict[str, bool]
    answers: tuple[tuple[str, bool, str], ...]
    """Person, yes or no, and the instruction that is answered; none: all that ask the person."""

    def table(self, verdict: str) -> str:
        """The section of the dossier."""
        given = [f'"{fact}"' if holds else f'not "{fact}"' for fact, holds in self.facts.items()]
        given += [
            f"{'consent' if yes else 'refusal'} of {person}" + (f" to {line}" if line else "")
            for person, yes, line in self.answers
        ]
        row = {
            "part": self.subject,
            "characteristic": self.trait,
            "value": self.value.text,
            "given": "; ".join(given),
            "on": self.day.isoformat(),
            "verdict": verdict,
        }
        return "\n## Expectations\n\n" + table(tuple(row), [row]) + "\n"


def draw_expected(random: Random, case: Case) -> Expected:
    """A value of a part, a group, the work or the venue, with some of the answers that the case has a use for."""
    traits = small_world()
    spoken = [line.saying.trait for line in case.lines if line.saying.trait in traits]
    trait = traits[random.choice(spoken if spoken and random.random() < 0.9 else list(traits))]
    subject, members, _ = random.choice([one for one in _subjects(case) if trait.bearer in one[2]])
    lines = [line for line in case.lines if line.saying.trait == trait.name] or list(case.lines)
    facts = {one.fact for line in lines for one in line.conditions if one.fact}
    asked = sorted({person for line in lines for person in line.consents})
    people = [person.name for person in case.people]
    answers = [(person, random.random() < 0.7, "") for person in asked if random.random() < 0.5]
    if people and lines and random.random() < 0.2:
        answers.append((random.choice(people), random.random() < 0.7, random.choice(lines).name))
    return Expected(
        subject=subject,
        members=members,
        trait=trait.name,
        value=random.choice(trait.cells),
        day=case.first,
        facts={fact: random.random() < 0.7 for fact in sorted(facts) if random.random() < 0.7},
        answers=tuple(answers),
    )


def _subjects(case: Case) -> list[tuple[str, tuple[str, ...], tuple[str, ...]]]:
    """What something can be expected of, its members, and whose characteristics it has."""
    of_parts = ("device", "place")
    parts = [(place.name, (place.name,), of_parts) for place in case.places]
    groups = [
        (group, tuple(place.name for place in case.places if place.group == group), of_parts)
        for group in dict.fromkeys(place.group for place in case.places)
    ]
    return [
        *parts,
        *groups,
        ("the work", ("the work",), ("work",)),
        ("the venue", ("the venue",), ("venue",)),
    ]


def as_installation(case: Case, expected: Expected) -> Case:
    """The same as a proposal of that day."""
    traits, cells = small_world(), {expected.trait: expected.value}
    bare = replace(
        case,
        first=expected.day,
        last=expected.day,
        venue={},
        work_changes={},
        substitutions=(),
        changes={},
        omissions=(),
        additions=(),
        answers=_answers(case, expected),
        attested=expected.facts,
    )
    match traits[expected.trait].bearer:
        case "work":
            return replace(bare, work_changes=cells)
        case "venue":
            return replace(bare, venue=cells)
        case "device":
            places = [place for place in case.places if place.name in expected.members]
            arriving = tuple(_arriving(case, place, cells, traits) for place in places)
            return replace(bare, substitutions=arriving)
    if expected.trait == "presence":
        return replace(bare, omissions=expected.members if expected.value.text == "absent" else ())
    return replace(bare, changes=dict.fromkeys(expected.members, cells))


def _arriving(case: Case, place: Place, cells: dict[str, Written], traits: dict[str, Trait]) -> Place:
    """Another device that is as the documented one but for the value."""
    own = {name: of for name, of in place.cells.items() if _is_of_device(name, traits)}
    documented = {**case.devices.get(place.device, {}), **_of_others(case, place, traits), **own}
    return Place(name=place.name, group=place.group, device=f"X-{place.name}", cells={**documented, **cells})


def _of_others(case: Case, place: Place, traits: dict[str, Trait]) -> dict[str, Written]:
    """What the rows of other parts say of a device that serves them too."""
    return {
        name: of
        for other in case.places
        if place.device and other.device == place.device
        for name, of in other.cells.items()
        if _is_of_device(name, traits)
    }


def _is_of_device(name: str, traits: dict[str, Trait]) -> bool:
    """Whether it goes with the device; a start offset, which is a place's, is in cases of differences alone."""
    return name in traits and traits[name].bearer == "device"


def _answers(case: Case, expected: Expected) -> tuple[Answer, ...]:
    on = Date(expected.day.isoformat(), (expected.day, expected.day))
    found = []
    for person, yes, to in expected.answers:
        asking = [line.name for line in case.lines if person in _able(case, line.consents)]
        of_trait = [line.name for line in case.lines if line.saying.trait in {expected.trait, ""}]
        lines = [to] if to else [name for name in asking if name in of_trait or expected.trait == "presence"]
        found += [Answer(person=person, to=line, yes=yes, date=on) for line in lines]
    return tuple(found)


def _able(case: Case, asked: tuple[str, ...]) -> set[str]:
    """Those who are asked, and everybody who has succeeded them."""
    able, people = set(asked), {person.name: person for person in case.people}
    for _ in case.people:
        able |= {people[name].successor for name in able if name in people and people[name].successor}
    return able
