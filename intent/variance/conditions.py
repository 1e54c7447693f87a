"""Whether the conditions of an instruction hold: facts attested, assertions checked against the proposal."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Sequence
from fractions import Fraction

from intent.language.message import named
from intent.model.assertions import Aggregate, Assertion, Condition, Form, ScopeKind
from intent.model.instruction_text import AssertionSentence
from intent.model.meaning import admitted_values, scale, unchanged_values
from intent.model.work import Instruction, Modality
from intent.names import PRESENCE, YES
from intent.values.regions import Interval, Region, region
from intent.values.sets import Answer, Labels, ValueSet, lies
from intent.variance.aggregates import amounts, squared, unsquared
from intent.variance.attesting import fact_answer
from intent.variance.case import Case
from intent.variance.change import documented_for
from intent.variance.people import staff
from intent.variance.result import Open, OpenKind
from intent.variance.venue_asked import who_can_say


def conditions_answer(
    case: Case, line: Instruction, subjects: Sequence[str], day: datetime.date
) -> tuple[Answer, tuple[Open, ...]]:
    """Whether all conditions hold for a subject; what is open, where nobody has answered."""
    opens: list[Open] = []
    for condition in line.conditions:
        answer = _condition(case, line, condition, subjects, day)
        if answer is Answer.OUT:
            return Answer.OUT, ()
        if answer is Answer.OPEN:
            opens.append(_open(case, line, condition, day))
    return (Answer.OPEN, tuple(opens)) if opens else (Answer.IN, ())


def failing_condition(
    case: Case, line: Instruction, subjects: Sequence[str], day: datetime.date
) -> Condition | None:
    """The first condition that is known not to hold for a subject."""
    failing = (
        condition
        for condition in line.conditions
        if _condition(case, line, condition, subjects, day) is Answer.OUT
    )
    return next(failing, None)


def _condition(
    case: Case, line: Instruction, condition: Condition, subjects: Sequence[str], day: datetime.date
) -> Answer:
    if condition.assertion is None:
        # of a permission it is hoped that it holds, of a requirement or prohibition that it does not
        hoped = (line.modality is Modality.ALLOWED) is not condition.unless
        answer = fact_answer(case, condition.fact or "", day, hoped=hoped)
    else:
        members = case.members[line.identifier]
        own = (
            condition.assertion.aggregate is Aggregate.EACH
            and case.scopes.of_proposal(condition.assertion) == members
            and frozenset(subjects) <= frozenset(members)
        )
        answer = assertion_answer(case, condition.assertion, subjects if own else None)
    return answer.negated if condition.unless else answer


def _open(case: Case, line: Instruction, condition: Condition, day: datetime.date) -> Open:
    if condition.assertion is not None:
        return Open(
            kind=OpenKind.STATEMENT,
            text=named(AssertionSentence(condition.assertion, case.vocabulary)),
            person=who_can_say(
                case.work,
                case.installation,
                of_the_venue=condition.assertion.scope.kind is ScopeKind.VENUE,
            ),
            instruction=line.identifier,
            answer=not condition.unless,
        )
    who = next(iter(staff(case.work, day)), None)
    return Open(
        kind=OpenKind.ATTESTATION,
        text=condition.fact or "",
        person=who,
        instruction=line.identifier,
        answer=not condition.unless,
    )


def assertion_answer(case: Case, assertion: Assertion, subjects: Sequence[str] | None = None) -> Answer:
    """Whether an assertion is true of the proposal; of certain subjects, where it is asked of them alone."""
    members = tuple(subjects) if subjects is not None else case.scopes.of_proposal(assertion)
    if assertion.aggregate is not Aggregate.EACH:
        found = amounts(assertion, members, case.proposed)
        documented = documented_amounts(case, assertion, members)
        return every(
            lies_among(amount.value, admitted_amounts(case, assertion, documented.get(amount.members)))
            for amount in found
        )
    characteristic = case.vocabulary.characteristics[assertion.characteristic or ""]
    return every(
        lies_among(
            case.proposed.value(member, characteristic),
            admitted_values(
                assertion.expression,
                characteristic,
                case.vocabulary,
                documented_for(case, member, characteristic),
            ),
        )
        for member in members
        if characteristic.iri == PRESENCE or case.proposed.is_there(member)
    )


def every(answers: Iterable[Answer]) -> Answer:
    """In where all are, out where any is; open otherwise, and where nothing was asked."""
    found = set(answers)
    if Answer.OUT in found:
        return Answer.OUT
    return Answer.IN if found == {Answer.IN} else Answer.OPEN


def lies_among(value: ValueSet, among: ValueSet | None) -> Answer:
    return Answer.OPEN if among is None else lies(value, among)


def documented_amounts(
    case: Case, assertion: Assertion, members: Sequence[str]
) -> dict[tuple[str, ...], ValueSet]:
    """An aggregate's documented values: by pair, or for the whole under the members as proposed."""
    known = [member for member in members if member in case.documented.statements]
    documented = amounts(assertion, known, case.documented)
    if assertion.aggregate in {Aggregate.DIFFERENCE, Aggregate.DISTANCE, Aggregate.RELATION}:
        return {amount.members: amount.value for amount in documented}
    there = tuple(member for member in members if case.proposed.is_there(member))
    return {there: documented[0].value} if documented else {}


def admitted_amounts(case: Case, assertion: Assertion, documented: ValueSet | None) -> ValueSet | None:
    """What an aggregate's assertion admits, on the scale of its amounts."""
    if assertion.aggregate in {Aggregate.SAME, Aggregate.DIFFERENT, Aggregate.RELATION}:
        return Labels(frozenset({YES}))
    if assertion.expression.form is Form.AS_DOCUMENTED and documented is not None:
        return unchanged_amounts(case, assertion, documented)
    characteristic = case.vocabulary.characteristics.get(assertion.characteristic or "")
    compared = scale(assertion.aggregate, characteristic, case.vocabulary)
    if assertion.aggregate is Aggregate.DISTANCE:
        found = admitted_values(assertion.expression, compared, case.vocabulary)
        return squared(found) if isinstance(found, Region) else found
    return admitted_values(assertion.expression, compared, case.vocabulary, documented)


def unchanged_amounts(case: Case, assertion: Assertion, documented: ValueSet) -> ValueSet:
    """The amounts that count as the documented one: widened, once, by the tolerance of the characteristic."""
    if not isinstance(documented, Region):
        return documented
    characteristic = case.vocabulary.characteristics.get(assertion.characteristic or "")
    compared = scale(assertion.aggregate, characteristic, case.vocabulary)
    if assertion.aggregate is not Aggregate.DISTANCE:
        return unchanged_values(documented, compared)
    if not documented.is_point:
        return documented
    length = unsquared(documented.bounds.low or Fraction(0))
    widened = unchanged_values(region([(Interval(length, length),)], documented), compared)
    return squared(widened) if isinstance(widened, Region) else documented
