"""A proposal laid beside the work, with all that judging asks again and again worked out once."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from enum import Enum, auto

from intent.model.authority import OBSERVED_PRACTICE_RANK
from intent.model.duty import Duty
from intent.model.installation import Attestation, Consent, Installation
from intent.model.work import Instruction, Modality, Work
from intent.variance.scopes import Scopes, scopes_of
from intent.variance.state import State
from intent.variance.two_states import documented_state, proposed_state
from intent.vocabulary.phrases import normal
from intent.vocabulary.terms import Characteristic, Vocabulary


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """Everything that judging one proposal asks for, worked out once."""

    work: Work
    installation: Installation
    documented: State
    proposed: State
    scopes: Scopes
    ranks: Mapping[str, int]
    """The rank of each instruction: that of who gave it."""
    breadths: Mapping[str, frozenset[str]]
    """The subjects of each instruction in the documented work, which rule 2 compares."""
    members: Mapping[str, tuple[str, ...]]
    """The subjects of each instruction as proposed."""
    superseders: Mapping[str, tuple[Instruction | Duty, ...]]
    """By identifier, what supersedes an instruction or a duty with effect."""
    consents: Mapping[str, tuple[Consent, ...]]
    """The consents to each instruction."""
    attested: Mapping[str, tuple[Attestation, ...]]
    """The attestations of each fact."""
    substituted: frozenset[str]
    """The parts in whose place another device comes."""
    counting_unasked: tuple[Characteristic, ...]
    """What counts of a device without anybody speaking of it."""

    @property
    def vocabulary(self) -> Vocabulary:
        return self.work.vocabulary

    def counts_unasked(self, subject: str, characteristic: Characteristic) -> bool:
        """Whether a departure counts where no instruction speaks of it: of such a bearer, and not through another.

        What says a part of another characteristic again, as a height does of a position, counts through that one.
        """
        if not characteristic.unasked_of & self.proposed.bearers_of(subject):
            return False
        other = self.vocabulary.characteristics.get(characteristic.restates or "")
        return other is None or not all(
            state.is_given(subject, other) for state in (self.documented, self.proposed)
        )


def lay_out(work: Work, installation: Installation) -> Case:
    """The case of one installation of a work."""
    documented = documented_state(work)
    scopes = scopes_of(work, installation)
    ranks = {line.identifier: rank_of(work, line) for line in work.instructions}
    consents: dict[str, tuple[Consent, ...]] = {}
    for consent in installation.consents:
        for identifier in answered_by(work, consent):
            consents[identifier] = (*consents.get(identifier, ()), consent)
    attested: dict[str, tuple[Attestation, ...]] = {}
    for attestation in installation.attestations:
        fact = normal(attestation.fact)
        attested[fact] = (*attested.get(fact, ()), attestation)
    return Case(
        work=work,
        installation=installation,
        documented=documented,
        proposed=proposed_state(work, installation, documented),
        scopes=scopes,
        ranks=ranks,
        breadths={line.identifier: frozenset(scopes.of_work(line.assertion)) for line in work.instructions},
        members={line.identifier: scopes.of_proposal(line.assertion) for line in work.instructions},
        superseders=superseders_of(work),
        consents=consents,
        attested=attested,
        substituted=frozenset(substitution.part for substitution in installation.substitutions),
        counting_unasked=tuple(
            characteristic
            for characteristic in work.vocabulary.characteristics.values()
            if "device" in characteristic.unasked_of
        ),
    )


def rank_of(work: Work, line: Instruction | Duty) -> int:
    person = work.person(line.by)
    return person.authority if person is not None else OBSERVED_PRACTICE_RANK


def answered_by(work: Work, consent: Consent) -> tuple[str, ...]:
    """The instructions that a consent answers: of a heading, the lines that call for one.

    Only where none of them does, it is a dispensation from each of the heading's requirements and prohibitions.
    """
    answered: list[str] = []
    for name in consent.to:
        lines = [line for line in work.instructions if line.heading == name]
        calling = [line for line in lines if line.consents]
        demands = [line for line in lines if line.modality is not Modality.ALLOWED]
        answered += [line.identifier for line in calling or demands]
        answered += [line.identifier for line in work.instructions if line.identifier == name]
    return tuple(dict.fromkeys(answered))


def superseders_of(work: Work) -> dict[str, tuple[Instruction | Duty, ...]]:
    """What supersedes each line with effect: nothing later, higher, or of another ground is superseded."""
    found: dict[str, tuple[Instruction | Duty, ...]] = {}
    for line, earlier in meant_to_supersede(work):
        if superseding_fault(work, line, earlier) is None:
            found[earlier.identifier] = (*found.get(earlier.identifier, ()), line)
    return found


def meant_to_supersede(work: Work) -> Iterator[tuple[Instruction | Duty, Instruction | Duty]]:
    """Each line whose heading supersedes, with each line that it names, whether with effect or not.

    The instructions of a heading stand for it; where it has none its duties do, for what it supersedes is withdrawn
    whatever it says itself.
    """
    for heading in work.headings:
        if not heading.supersedes:
            continue
        own = [line for line in work.lines if line.heading == heading.identifier]
        named = [line for line in work.lines if {line.identifier, line.heading} & set(heading.supersedes)]
        instructions = [line for line in own if isinstance(line, Instruction)]
        yield from ((line, earlier) for line in instructions or own for earlier in named)


class SupersedingFault(Enum):
    """Why one instruction cannot supersede another."""

    ITSELF = auto()
    """Both stand under one heading."""
    LATER = auto()
    """The other is later."""
    HIGHER = auto()
    """The other is of higher authority."""
    OTHER_GROUND = auto()


def superseding_fault(
    work: Work, line: Instruction | Duty, earlier: Instruction | Duty
) -> SupersedingFault | None:
    """Why one instruction or duty cannot supersede another; nothing where it can."""
    if line.identifier == earlier.identifier or line.heading == earlier.heading:
        return SupersedingFault.ITSELF
    if line.on is not None and earlier.on is not None and earlier.on.is_later_than(line.on):
        return SupersedingFault.LATER
    if rank_of(work, earlier) < rank_of(work, line):
        return SupersedingFault.HIGHER
    return SupersedingFault.OTHER_GROUND if earlier.ground != line.ground else None
