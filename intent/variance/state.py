"""What is documented of each part, and what the proposal makes of it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace

from intent.language.message import Words
from intent.model.assertions import Expression, Form, Named, Statements
from intent.model.installation import Change, Installation
from intent.model.meaning import given_value, is_relative
from intent.model.phrasing import NOT_GIVEN, expression_words, region_words
from intent.model.work import Device, Part, Work
from intent.names import ABSENT, CHANNEL, PRESENCE, PRESENT, THE_VENUE, THE_WORK
from intent.values.bounds import NATURAL, point
from intent.values.regions import Interval, Region
from intent.values.sets import ValueSet
from intent.variance.computed import computed_region
from intent.vocabulary.terms import Characteristic, Vocabulary


@dataclass(frozen=True, slots=True)
class WorkedOut:
    """What a state has been asked already, with the answers.

    It grows while a state is asked, and is no part of what the state says: an answer is the same whether it is looked
    up here or worked out again. It lives and goes with its state.
    """

    values: dict[tuple[str, str], ValueSet] = field(default_factory=dict)
    """By subject and characteristic."""
    given: dict[tuple[int, str], tuple[Expression | None, ValueSet]] = field(default_factory=dict)
    """What each expression gives, by its identity; it is kept with its value, so that its identity stays its own."""


@dataclass(frozen=True, slots=True, kw_only=True)
class State:
    """The statements of every subject: identifiers of parts and material, `the work`, `the venue`."""

    vocabulary: Vocabulary
    statements: Mapping[str, Statements]
    present: Mapping[str, None]
    """The parts that are there, in the order of the work, additions last."""
    devices: Mapping[str, str | None]
    """The device in each part's place."""
    documented: State | None = None
    """Of a proposed state: the documented one, of which shares may be given."""
    days: Interval = NATURAL
    """How many days the installation lasts."""
    worked_out: WorkedOut = field(default_factory=WorkedOut, compare=False, repr=False)

    def is_there(self, subject: str) -> bool:
        """Whether a subject can be asked: a part that is present, material, the work, the venue."""
        return subject in self.present or subject not in self.devices

    def expression(self, subject: str, characteristic: Characteristic) -> Expression | None:
        if characteristic.iri == PRESENCE:
            is_there = subject in self.present
            return Expression(form=Form.ONE_OF, items=(Named(PRESENT if is_there else ABSENT),))
        return self.statements.get(subject, {}).get(characteristic.iri)

    def value(self, subject: str, characteristic: Characteristic) -> ValueSet:
        """The set of values that the state gives; every value where it gives none."""
        key = (subject, characteristic.iri)
        known = self.worked_out.values
        found = known.get(key)
        if found is None:
            found = known[key] = self._value(subject, characteristic)
        return found

    def _value(self, subject: str, characteristic: Characteristic) -> ValueSet:
        expression = self.expression(subject, characteristic)
        stated = self._stated(subject, characteristic, expression)
        if expression is None and characteristic.is_computed and isinstance(stated, Region):
            return computed_region(characteristic.iri, self, subject, stated)
        return stated

    def _stated(
        self, subject: str, characteristic: Characteristic, expression: Expression | None
    ) -> ValueSet:
        """What an expression gives; many subjects share one, as devices do that are alike."""
        if expression is not None and is_relative(expression):
            before = self.documented.value(subject, characteristic) if self.documented else None
            return given_value(expression, characteristic, self.vocabulary, before)
        key = (id(expression), characteristic.iri)
        found = self.worked_out.given.get(key)
        if found is None or found[0] is not expression:
            value = given_value(expression, characteristic, self.vocabulary)
            found = self.worked_out.given[key] = (expression, value)
        return found[1]

    def is_given(self, subject: str, characteristic: Characteristic) -> bool:
        """Whether a value is stated, or anything is known of it by what is."""
        if self.expression(subject, characteristic) is not None:
            return True
        if not characteristic.is_computed:
            return False
        return self.value(subject, characteristic) != given_value(None, characteristic, self.vocabulary)

    def words(self, subject: str, characteristic: Characteristic) -> Words:
        """The value for a reader: as it is stated, or the bounds that follow from what is."""
        expression = self.expression(subject, characteristic)
        if expression is None and self.is_given(subject, characteristic):
            computed = self.value(subject, characteristic)
            assert isinstance(computed, Region)
            return region_words(computed, characteristic, self.vocabulary)
        return expression_words(expression, self.vocabulary) if expression else NOT_GIVEN

    def material_of(self, subject: str) -> tuple[str, ...]:
        """The material that a part's channel shows or sounds."""
        channel = self.vocabulary.characteristics[CHANNEL]
        if self.expression(subject, channel) is None:
            return ()
        shown = self.value(subject, channel)
        return tuple(
            other
            for other in self.statements
            if other not in self.devices
            and self.expression(other, channel) is not None
            and self.value(other, channel) == shown
        )

    def with_values_of(self, other: State, subjects: Iterable[tuple[str, str]]) -> State:
        """This state, but with another's statements where named, as pairs of subject and characteristic."""
        statements = {subject: dict(stated) for subject, stated in self.statements.items()}
        present = dict.fromkeys(self.present)
        for subject, characteristic in subjects:
            if characteristic == PRESENCE:
                if subject in other.present:
                    present[subject] = None
                else:
                    present.pop(subject, None)
                continue
            stated = other.statements.get(subject, {}).get(characteristic)
            mine = statements.setdefault(subject, {})
            mine.pop(characteristic, None)
            if stated is not None:
                mine[characteristic] = stated
        return replace(self, statements=statements, present=present, worked_out=WorkedOut())

    def assuming(self, values: Mapping[tuple[str, str], ValueSet]) -> State:
        """This state, but with certain values, by subject and characteristic, whatever is stated."""
        return replace(self, worked_out=WorkedOut(values=dict(values)))

    def asked_of(self, statements: Mapping[str, Statements]) -> State:
        """A state in which other things than parts can be asked about, such as boxes."""
        return State(
            vocabulary=self.vocabulary, statements=statements, present={}, devices={}, days=self.days
        )


@dataclass(frozen=True, slots=True)
class Entries:
    """What is known of each device: its row, the row of the part that names it, and what it is like."""

    devices: Mapping[str, Device]
    parts_of: Mapping[str, tuple[Part, ...]]
    vocabulary: Vocabulary

    def of(self, device: str | None) -> Statements:
        found: dict[str, Expression] = {}
        seen: set[str] = set()
        while device is not None and device not in seen:
            seen.add(device)
            for characteristic, expression in self._own(device).items():
                found.setdefault(characteristic, expression)
            known = self.devices.get(device)
            device = known.like if known else None
        return found

    def _own(self, device: str) -> Statements:
        known = self.devices.get(device)
        own = dict(known.statements) if known else {}
        for part in self.parts_of.get(device, ()):
            for characteristic, expression in part.statements.items():
                if is_of_device(characteristic, self.vocabulary):
                    own.setdefault(characteristic, expression)
        return own


def is_of_device(characteristic: str, vocabulary: Vocabulary) -> bool:
    """Whether a characteristic goes with the device when another takes its place."""
    found = vocabulary.characteristics.get(characteristic)
    return found is not None and "device" in found.bearers


def entries_of(work: Work, pool: Iterable[Device] = ()) -> Entries:
    parts_of: dict[str, tuple[Part, ...]] = {}
    for part in work.parts:
        if part.device:
            parts_of[part.device] = (*parts_of.get(part.device, ()), part)
    devices = {device.identifier: device for device in (*work.devices, *pool)}
    return Entries(devices, parts_of, work.vocabulary)


def documented_state(work: Work) -> State:
    entries = entries_of(work)
    statements: dict[str, Statements] = {
        part.identifier: {**entries.of(part.device), **part.statements} for part in work.parts
    }
    statements.update({material.identifier: material.statements for material in work.material})
    statements[THE_WORK] = work.statements
    statements[THE_VENUE] = {}
    present = dict.fromkeys(part.identifier for part in work.parts)
    return State(
        vocabulary=work.vocabulary,
        statements=statements,
        present=present,
        devices={part.identifier: part.device for part in work.parts},
    )


def proposed_state(work: Work, installation: Installation, documented: State) -> State:
    """The documented state with the proposal's substitutions, changes, omissions and additions."""
    entries = entries_of(work, installation.devices)
    statements: dict[str, Statements] = dict(documented.statements)
    devices = dict(documented.devices)
    for substitution in installation.substitutions:
        placed = {
            characteristic: expression
            for characteristic, expression in statements.get(substitution.part, {}).items()
            if not is_of_device(characteristic, work.vocabulary)
        }
        arrived = entries.of(substitution.device)
        statements[substitution.part] = {**placed, **arrived, **substitution.statements}
        devices[substitution.part] = substitution.device
    for change in installation.changes:
        for part, changed in _altered(change, devices, work.vocabulary):
            statements[part] = {**statements.get(part, {}), **changed}
    for addition in installation.additions:
        statements[addition.identifier] = {**entries.of(addition.device), **addition.statements}
        devices[addition.identifier] = addition.device
    statements[THE_WORK] = {**work.statements, **installation.work_statements}
    statements[THE_VENUE] = installation.venue_statements
    omitted = {omission.part for omission in installation.omissions}
    there = [part for part in documented.present if part not in omitted]
    there += [addition.identifier for addition in installation.additions]
    resolved = {
        subject: _resolved(stated, documented.statements.get(subject, {}))
        for subject, stated in statements.items()
    }
    days = (installation.dates.last - installation.dates.first).days + 1
    return State(
        vocabulary=work.vocabulary,
        statements=resolved,
        present=dict.fromkeys(there),
        devices=devices,
        documented=documented,
        days=point(days),
        worked_out=WorkedOut(given=documented.worked_out.given),  # most devices are as documented
    )


def _altered(
    change: Change, devices: Mapping[str, str | None], vocabulary: Vocabulary
) -> Iterator[tuple[str, Statements]]:
    """The parts that a change alters: what is of the device also where the device serves another part."""
    device = devices.get(change.part)
    of_device = {iri: stated for iri, stated in change.statements.items() if is_of_device(iri, vocabulary)}
    if device is not None and of_device:
        yield from (
            (part, of_device) for part, other in devices.items() if other == device and part != change.part
        )
    yield change.part, change.statements


def _resolved(stated: Statements, documented: Statements) -> Statements:
    """What is proposed `as documented` is what the documentation says, and not given where it says nothing."""
    if not any(expression.form is Form.AS_DOCUMENTED for expression in stated.values()):
        return stated
    found = {
        iri: documented.get(iri) if expression.form is Form.AS_DOCUMENTED else expression
        for iri, expression in stated.items()
    }
    return {iri: expression for iri, expression in found.items() if expression is not None}
