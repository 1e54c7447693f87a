"""One state of a work: what is stated of each part, and what follows from it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from functools import reduce

from intent.language.message import Joint, Words, listed
from intent.model.assertions import Expression, Form, Named, Statements
from intent.model.meaning import given_value, is_relative, ordinary_expression
from intent.model.phrasing import NOT_GIVEN, expression_words, region_words
from intent.names import ABSENT, CHANNEL, PRESENCE, PRESENT, THE_VENUE, THE_WORK
from intent.values.bounds import NATURAL
from intent.values.regions import Interval, Region
from intent.values.sets import ValueSet, union
from intent.variance.computed import computed_region
from intent.vocabulary.terms import Characteristic, Vocabulary

_PART, _MATERIAL = frozenset({"device", "place"}), frozenset({"material"})
_WHOLES = {THE_WORK: frozenset({"work"}), THE_VENUE: frozenset({"venue"})}


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
    kinds: Mapping[str, str] = field(default_factory=dict)
    """The IRI of each part's kind."""
    replaced: frozenset[str] = frozenset()
    """Of a proposed state: the parts in whose place another device comes."""
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
        if expression is not None:
            return stated
        if characteristic.is_computed and isinstance(stated, Region):
            computed = computed_region(characteristic.iri, self, subject, stated)
            if computed != stated:
                return computed
        granted = [
            self._stated(giver, characteristic, one) for giver, one in self._unsaid(subject, characteristic)
        ]
        return reduce(union, granted) if granted else stated

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
        if not characteristic.is_computed and not characteristic.has_ordinary:
            return False
        return self.value(subject, characteristic) != given_value(None, characteristic, self.vocabulary)

    def words(self, subject: str, characteristic: Characteristic) -> Words:
        """The value for a reader: as it is stated, or the bounds that follow from what is."""
        expression = self.expression(subject, characteristic)
        if expression is not None:
            return expression_words(expression, self.vocabulary)
        if not self.is_given(subject, characteristic):
            return NOT_GIVEN
        if characteristic.is_computed and not self.is_granted(subject, characteristic):
            computed = self.value(subject, characteristic)
            assert isinstance(computed, Region)
            return region_words(computed, characteristic, self.vocabulary)
        unsaid = (expression_words(one, self.vocabulary) for _, one in self._unsaid(subject, characteristic))
        return listed(dict.fromkeys(unsaid), Joint.OR)

    def is_granted(self, subject: str, characteristic: Characteristic) -> bool:
        """Whether a value is only what everybody takes for granted: nobody states it, nor the material shown."""
        if self.expression(subject, characteristic) is not None or not characteristic.has_ordinary:
            return False
        granted = ordinary_expression(characteristic, self.vocabulary)
        given = [one for _, one in self._unsaid(subject, characteristic)]
        computed = characteristic.is_computed and self.value(subject, characteristic) != given_value(
            granted, characteristic, self.vocabulary
        )
        return given == [granted] and not computed

    def _unsaid(self, subject: str, characteristic: Characteristic) -> tuple[tuple[str, Expression], ...]:
        """What holds where nothing is said, and of what: what the material shown says, else what is ordinary."""
        if not characteristic.has_ordinary or not self._can_have(subject, characteristic):
            return ()
        if subject in self.devices and "material" in characteristic.bearers:
            shown = ((one, self.expression(one, characteristic)) for one in self.material_of(subject))
            told = tuple((one, expression) for one, expression in shown if expression is not None)
            if told:
                return told
        ordinary = ordinary_expression(characteristic, self.vocabulary)
        assert ordinary is not None
        if subject in self.replaced and "device" in characteristic.bearers and self.documented is not None:
            # another device is not known to be ordinary where the one documented was not
            value = given_value(ordinary, characteristic, self.vocabulary)
            if self.documented.value(subject, characteristic) != value:
                return ()
        return ((subject, ordinary),)

    def _can_have(self, subject: str, characteristic: Characteristic) -> bool:
        """Whether a characteristic is said of such a subject: of that kind of part, of material, of the work."""
        fits = subject not in self.devices or self.vocabulary.applies(
            characteristic, self.kinds.get(subject, "")
        )
        return fits and bool(characteristic.bearers & self.bearers_of(subject))

    def bearers_of(self, subject: str) -> frozenset[str]:
        """What a subject is to the vocabulary: a part is a device in its place."""
        return _PART if subject in self.devices else _WHOLES.get(subject, _MATERIAL)

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
