"""A case: a small work and an installation of it, as plain data of this oracle's own, before they become text."""

from __future__ import annotations

import datetime
from dataclasses import dataclass, field, replace

from oracle.world import Written

Span = tuple[datetime.date, datetime.date]
EVER: Span = (datetime.date.min, datetime.date.max)


@dataclass(frozen=True)
class Date:
    """A date as written, and its first and last day."""

    text: str = ""
    span: Span = EVER


@dataclass(frozen=True)
class Someone:
    name: str
    role: str
    rank: int
    authority: str = ""
    """What the people table's column says, if anything."""
    until: Date = Date()
    successor: str = ""

    @property
    def authority_rank(self) -> int:
        return int(self.authority) if self.authority else self.rank


@dataclass(frozen=True)
class Place:
    """A part: its group, its device, and what is written of it."""

    name: str
    group: str
    kind: str = "display"
    device: str = ""
    cells: dict[str, Written] = field(default_factory=dict)


@dataclass(frozen=True)
class Reach:
    """A scope: its text, and what it names."""

    text: str
    names: tuple[str, ...] = ()
    """Parts and groups; `every display`, `additions`, `the work` and `the venue` stand for themselves."""
    excepted: tuple[str, ...] = ()


@dataclass(frozen=True)
class Saying:
    """What an assertion says of a characteristic of a scope."""

    trait: str
    reach: Reach
    written: Written
    negated: bool = False
    form: str = "each"
    """Or `number`, `total`, `difference`, `same`, `different`, or a relation such as `above`."""
    other: str = ""
    """The part that a relation is to."""

    @property
    def text(self) -> str:
        match self.form:
            case "each":
                return f"{self.trait} of {self.reach.text} is {'not ' if self.negated else ''}{self.written.text}"
            case "number":
                return f"number of {self.reach.text} is {self.written.text}"
            case "total":
                return f"total {self.trait} of {self.reach.text} is {self.written.text}"
            case "difference":
                return f"difference in {self.trait} between {self.reach.text} is {self.written.text}"
            case "same" | "different":
                return f"{self.trait} of {self.reach.text} is the {self.form} for all".replace(
                    "the diff", "diff"
                )
            case _:
                return f"{self.reach.text} is {self.form} {self.other}"


@dataclass(frozen=True)
class If:
    """A condition: a fact, or an assertion."""

    unless: bool
    fact: str = ""
    saying: Saying | None = None

    @property
    def text(self) -> str:
        said = self.saying.text if self.saying else f'"{self.fact}"'
        return f"{'unless' if self.unless else 'if'} {said}"


@dataclass(frozen=True)
class Line:
    """One instruction, with what its heading says for it."""

    name: str
    modality: str
    saying: Saying
    conditions: tuple[If, ...] = ()
    consents: tuple[str, ...] = ()
    choice: int = 0
    until: Date = Date()
    by: str = ""
    on: Date = Date()
    ground: str = "intent"
    withdrawn: Date = Date()
    supersedes: tuple[str, ...] = ()
    lifted_by: tuple[str, ...] | None = None

    @property
    def heading(self) -> str:
        return self.name.split(".")[0]


@dataclass(frozen=True)
class Answer:
    """A row under Consents."""

    person: str
    to: str
    yes: bool | None
    parts: tuple[str, ...] = ()
    value: Written | None = None
    terms: str = ""
    date: Date = Date()
    until: Date = Date()


@dataclass(frozen=True)
class Case:
    people: tuple[Someone, ...] = ()
    places: tuple[Place, ...] = ()
    devices: dict[str, dict[str, Written]] = field(default_factory=dict)
    work: dict[str, Written] = field(default_factory=dict)
    lines: tuple[Line, ...] = ()
    first: datetime.date = datetime.date(2027, 3, 1)
    last: datetime.date = datetime.date(2027, 3, 6)
    venue: dict[str, Written] = field(default_factory=dict)
    work_changes: dict[str, Written] = field(default_factory=dict)
    substitutions: tuple[Place, ...] = ()
    changes: dict[str, dict[str, Written]] = field(default_factory=dict)
    omissions: tuple[str, ...] = ()
    additions: tuple[Place, ...] = ()
    answers: tuple[Answer, ...] = ()
    attested: dict[str, bool] = field(default_factory=dict)

    def place(self, name: str) -> Place | None:
        return next((place for place in (*self.places, *self.additions) if place.name == name), None)

    def someone(self, name: str) -> Someone | None:
        return next((person for person in self.people if person.name == name), None)

    def unchanged(self) -> Case:
        """The documented state shown, with nothing proposed."""
        return replace(
            self,
            venue={},
            work_changes={},
            substitutions=(),
            changes={},
            omissions=(),
            additions=(),
            answers=(),
        )
