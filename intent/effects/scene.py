"""The work as documented and as proposed, as the effects ask about it.

A scene answers in numbers within bounds and in names; a question about something that is not given is answered
with all that it could be, never with a guess.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from intent.language.message import Message, Words, named
from intent.model.as_proposed import connections_as_proposed
from intent.model.installation import Installation
from intent.model.work import Connection, Part, Work
from intent.names import THE_VENUE, term_iri
from intent.values.bounds import ZERO, hull, known
from intent.values.regions import Interval, Region
from intent.values.sets import Answer
from intent.variance.case import Case
from intent.variance.giving import bounds_of, is_stated, names_of
from intent.variance.state import State
from intent.vocabulary.named_term import UnknownTerm, local_name
from intent.vocabulary.terms import Characteristic, Concept, Vocabulary


@dataclass(frozen=True, slots=True)
class Scene:
    """One state of the work; characteristics, kinds and concepts by the local name of their term."""

    case: Case
    state: State

    @property
    def vocabulary(self) -> Vocabulary:
        return self.case.work.vocabulary

    @property
    def connections(self) -> tuple[Connection, ...]:
        """The connections of this state: those of the work, or what the proposal makes of them."""
        case = self.case
        if self.state is case.documented:
            return case.work.connections
        return connections_as_proposed(case.work, case.installation)

    def bounds(self, subject: str, characteristic: str) -> Interval:
        """A number, stated or computed, in reference units (metres, seconds, watts, degrees …)."""
        return bounds_of(self.state, subject, characteristic)

    def venue(self, characteristic: str) -> Interval:
        """A number of the venue's, in reference units."""
        return self.bounds(THE_VENUE, characteristic)

    def axes(self, subject: str, characteristic: str) -> tuple[Interval, ...]:
        """The numbers of a position (x, y, z in metres) or a raster (columns, rows), each within bounds."""
        value = self.state.value(subject, self.characteristic(characteristic))
        assert isinstance(value, Region)
        return tuple(
            Region(tuple((box[axis],) for box in value.boxes)).bounds for axis in range(len(value.whole))
        )

    def names(self, subject: str, characteristic: str) -> frozenset[str]:
        """The local names of the concepts that the value may be; all there are where none is given."""
        return frozenset(map(local_name, names_of(self.state, subject, characteristic)))

    def stated_names(self, subject: str, characteristic: str) -> frozenset[str]:
        """The local names of the concepts that a stated value may be; none where nothing is stated."""
        stated = self.states(subject, characteristic)
        return self.names(subject, characteristic) if stated else frozenset()

    def is_(self, subject: str, characteristic: str, *concepts: str) -> Answer:
        """Whether the value is a concept, or one of several, or something narrower: in, out, or open."""
        found = names_of(self.state, subject, characteristic)
        iris = map(term_iri, concepts)
        wanted = frozenset[str]().union(*(self.vocabulary.narrower.get(iri, {iri}) for iri in iris))
        if found and found <= wanted:
            return Answer.IN
        return Answer.OPEN if found & wanted or not found else Answer.OUT

    def text(self, subject: str, characteristic: str) -> Words:
        """What is written for a value; nothing where none is given."""
        found = self.characteristic(characteristic)
        return self.state.words(subject, found) if self.state.is_given(subject, found) else ""

    def texts(self, subject: str, characteristic: str) -> frozenset[str]:
        """The texts that a stated value may be, as they are compared; none where nothing is stated."""
        stated = self.states(subject, characteristic)
        return names_of(self.state, subject, characteristic) if stated else frozenset()

    def states(self, subject: str, characteristic: str) -> bool:
        """Whether a value is written, rather than computed or not given."""
        return is_stated(self.state, subject, characteristic)

    def is_given(self, subject: str, characteristic: str) -> bool:
        """Whether a value is written, or anything is known of it by what is."""
        return self.state.is_given(subject, self.characteristic(characteristic))

    def parts(self, *kinds: str) -> tuple[Part, ...]:
        """The parts that are there, additions last; of some kinds alone where any are named."""
        every = self.case.scopes.proposed.every
        there = (every[part] for part in self.state.present)
        wanted = [term_iri(kind) for kind in kinds]
        return tuple(
            part
            for part in there
            if not wanted or any(self.vocabulary.is_kind(part.kind.iri, kind) for kind in wanted)
        )

    def runs(self, part: str) -> Answer:
        """Whether a device is switched on while the work is shown, as it is where nobody says otherwise."""
        if not self.states(part, "power-state"):
            return Answer.IN
        return self.is_(part, "power-state", "switched-on")

    def running(self, *kinds: str) -> tuple[Part, ...]:
        """The parts that are there and are not surely switched off; of some kinds alone where any are named."""
        return tuple(part for part in self.parts(*kinds) if self.runs(part.identifier) is not Answer.OUT)

    def as_it_runs(self, part: str, running: Interval, at_rest: Interval = ZERO) -> Interval:
        """A number that holds while a device runs; at rest another, and either where nobody knows whether it runs."""
        return {
            Answer.IN: running,
            Answer.OUT: at_rest,
            Answer.OPEN: hull([running, at_rest]),
        }[self.runs(part)]

    def device(self, subject: str) -> str | None:
        """The device in a part's place."""
        return self.state.devices.get(subject)

    def one_a_device(self, parts: Iterable[str]) -> tuple[str, ...]:
        """The parts, of those that share a device only the first: a device takes its power and its weight once."""
        first: dict[str, str] = {}
        for part in parts:
            # a part without a device counts by itself, under a name that no device can have
            first.setdefault(self.device(part) or f" {part}", part)
        return tuple(first.values())

    def material(self, subject: str) -> tuple[str, ...]:
        """The material that a part's channel shows or sounds."""
        return self.state.material_of(subject)

    def term(self, name: str) -> Concept | Characteristic | UnknownTerm:
        """A term of the vocabulary, to be put in a place of a message."""
        return self.vocabulary.named(term_iri(name))

    def characteristic(self, name: str) -> Characteristic:
        return self.vocabulary.characteristics[term_iri(name)]

    def called(self, characteristic: str) -> Message:
        """What a characteristic is called, as a message by itself."""
        return named(self.characteristic(characteristic))

    def unknown(self, subject: str, *characteristics: str) -> tuple[Message, ...]:
        """What those characteristics are called of which nothing is given: what a closer answer would need."""
        return tuple(self.called(name) for name in characteristics if not self.is_given(subject, name))


@dataclass(frozen=True, slots=True)
class Sides:
    """The two states to compare."""

    documented: Scene
    proposed: Scene

    @property
    def work(self) -> Work:
        return self.proposed.case.work

    @property
    def installation(self) -> Installation:
        return self.proposed.case.installation

    def was_there(self, part: str) -> bool:
        """Whether a part is documented, and so has something to be compared with."""
        return part in self.documented.state.present

    def touches(self, *subjects: str) -> bool:
        """Whether the proposal states anything of some parts or material otherwise than the documentation."""
        before, after = self.documented.state, self.proposed.state
        return any(
            before.statements.get(subject) != after.statements.get(subject)
            or before.devices.get(subject) != after.devices.get(subject)
            for subject in subjects
        )

    def bounds(self, subject: str, characteristic: str) -> tuple[Interval, Interval]:
        """A number as documented and as proposed, in reference units."""
        return (
            self.documented.bounds(subject, characteristic),
            self.proposed.bounds(subject, characteristic),
        )

    @property
    def asks(self) -> tuple[str, ...]:
        """Whom a finding about the venue is put to: who proposes the installation."""
        return self.installation.proposers


def sides_of(case: Case) -> Sides:
    return Sides(Scene(case, case.documented), Scene(case, case.proposed))


def differ(before: Interval, after: Interval, share: Fraction = Fraction(1, 100)) -> bool:
    """Whether a number changes by more than a share; a hundredth of a length nobody sees (common practice)."""
    one, two = known(before), known(after)
    if one is None or two is None:
        return before != after
    return abs(two - one) > share * one
