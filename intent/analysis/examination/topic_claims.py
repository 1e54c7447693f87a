"""What the instructions of one ground claim of one topic: a characteristic of a subject, or of several as a whole."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from intent.analysis.examination.compatibility import condition_value, is_of_own_value
from intent.language.message import Words, named
from intent.model.assertions import Aggregate, ScopeKind
from intent.model.meaning import admitted_values, every_value
from intent.model.phrasing import characteristic_words
from intent.model.subject import Subject, additions
from intent.model.work import Instruction, Modality
from intent.values.sets import Labels, ValueSet, meet, union
from intent.variance.case import Case
from intent.variance.change import documented_for
from intent.variance.precedence import Claim
from intent.variance.result import RowKey
from intent.variance.scopes import subject_called, subject_of
from intent.variance.wholes import admitted_of_whole, every_amount, whole_key
from intent.vocabulary.terms import Characteristic

ADDITIONS = "additions"
"""The name by which values of additions are asked for, of which there are none yet."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TopicClaims:
    """One thing that can be so or otherwise, with all that the instructions of one ground claim of it."""

    subject: Subject
    members: tuple[str, ...]
    """The names by which a state is asked: identifiers, `the work`, `the venue`."""
    name: Words
    """The characteristic, or what an aggregate is called."""
    ground: str
    aggregate: Aggregate
    characteristic: Characteristic | None
    whole: ValueSet
    """All the values that it can have."""
    claims: tuple[Claim, ...]
    """In the order of the text; only those whose values are known."""
    satisfied_by: Mapping[str, ValueSet]
    """By identifier of a requirement or prohibition, the values that are not against it."""

    @property
    def key(self) -> RowKey:
        """The topic itself, on whatever ground; the same as of a row about it."""
        return self.subject.key, self.name

    @property
    def lines(self) -> tuple[Instruction, ...]:
        return tuple(claim.line for claim in self.claims)

    @property
    def demands(self) -> tuple[Claim, ...]:
        """The requirements and prohibitions."""
        return tuple(claim for claim in self.claims if claim.line.modality is not Modality.ALLOWED)

    @property
    def permissions(self) -> tuple[Claim, ...]:
        return tuple(claim for claim in self.claims if claim.line.modality is Modality.ALLOWED)

    def claim(self, identifier: str) -> Claim | None:
        """What one instruction claims of it."""
        return next((claim for claim in self.claims if claim.line.identifier == identifier), None)


def topics_claimed(case: Case) -> tuple[TopicClaims, ...]:
    """Every topic of which an instruction speaks, those of single subjects first, in the order of the text."""
    each: dict[tuple[str, str, str], list[Instruction]] = {}
    together: dict[tuple[object, ...], list[Instruction]] = {}
    for line in case.work.instructions:
        assertion = line.assertion
        if assertion.aggregate is not Aggregate.EACH:
            together.setdefault((*whole_key(case, line), line.ground), []).append(line)
        elif assertion.characteristic in case.vocabulary.characteristics:
            for member in members_of(case, line):
                each.setdefault((member, assertion.characteristic or "", line.ground), []).append(line)
    singles = (
        _single(case, member, case.vocabulary.characteristics[iri], lines)
        for (member, iri, _), lines in each.items()
    )
    wholes = (_whole(case, lines) for lines in together.values())
    return (*singles, *wholes)


def members_of(case: Case, line: Instruction) -> tuple[str, ...]:
    """The subjects of an instruction; of one on additions, none of which there are yet, the word itself."""
    if line.assertion.scope.kind is ScopeKind.ADDITIONS:
        return (ADDITIONS,)
    return case.members[line.identifier]


def possible_values(case: Case, subject: str, characteristic: Characteristic) -> ValueSet:
    """The values that a subject can have: names are looked up among those of its kind."""
    everything = every_value(characteristic, case.vocabulary)
    part = case.work.part(subject)
    if part is None or not isinstance(everything, Labels) or everything.all_but:
        return everything
    concepts = case.vocabulary.concepts
    suiting = (iri for iri in everything.names if case.vocabulary.applies(concepts[iri], part.kind.iri))
    return Labels(frozenset(suiting))


def _single(
    case: Case, member: str, characteristic: Characteristic, lines: Sequence[Instruction]
) -> TopicClaims:
    documented = documented_for(case, member, characteristic)
    whole = possible_values(case, member, characteristic)
    claims = [
        Claim(line, found)
        for line in lines
        if (found := admitted_values(line.assertion.expression, characteristic, case.vocabulary, documented))
        is not None
    ]
    return TopicClaims(
        subject=additions(()) if member == ADDITIONS else subject_called(member),
        members=(member,),
        name=named(characteristic),
        ground=lines[0].ground,
        aggregate=Aggregate.EACH,
        characteristic=characteristic,
        whole=whole,
        claims=tuple(claims),
        satisfied_by=_satisfied_by(case, claims, whole, (member,)),
    )


def _satisfied_by(
    case: Case, claims: Sequence[Claim], whole: ValueSet, subjects: Sequence[str]
) -> dict[str, ValueSet]:
    return {
        claim.line.identifier: _satisfying(case, claim, whole, subjects)
        for claim in claims
        if claim.line.modality is not Modality.ALLOWED
    }


def _satisfying(case: Case, claim: Claim, whole: ValueSet, subjects: Sequence[str]) -> ValueSet:
    """The values that are not against a demand; where it asks about the value itself, also those it passes over."""
    assert claim.admitted is not None
    is_required = claim.line.modality is Modality.REQUIRED
    found = meet(whole, claim.admitted if is_required else claim.admitted.complement())
    for condition in claim.line.conditions:
        if condition.assertion is None or not is_of_own_value(case, claim.line, condition, subjects):
            continue
        asked = condition_value(case, condition.assertion, subjects)
        if asked is not None:
            found = union(found, meet(whole, asked if condition.unless else asked.complement()))
    return found


def _whole(case: Case, lines: Sequence[Instruction]) -> TopicClaims:
    first = lines[0]
    assertion, members = first.assertion, case.members[first.identifier]
    claims = [
        Claim(line, found) for line in lines if (found := admitted_of_whole(case, line, members)) is not None
    ]
    whole = every_amount(case, assertion, members)
    return TopicClaims(
        subject=subject_of(members, case.work, assertion.scope),
        members=members,
        name=characteristic_words(assertion, case.vocabulary),
        ground=first.ground,
        aggregate=assertion.aggregate,
        characteristic=case.vocabulary.characteristics.get(assertion.characteristic or ""),
        whole=whole,
        claims=tuple(claims),
        satisfied_by=_satisfied_by(case, claims, whole, members),
    )
