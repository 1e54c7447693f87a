"""Instructions that would supersede what they cannot."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from intent.analysis.examination.findings import Finding, heading_node, identifiers
from intent.analysis.examination.topic_claims import TopicClaims
from intent.language.message import Message, Place, say_of
from intent.model.duty import Duty
from intent.model.work import Instruction
from intent.names import TERM
from intent.variance.case import Case, SupersedingFault, meant_to_supersede, superseding_fault

Fault = tuple[SupersedingFault, str, str]
"""What is wrong; of another ground, the earlier one's and the later one's."""
_MESSAGES = {
    SupersedingFault.LATER: say_of(
        1,
        "{heading} supersedes {lines} without effect: {lines} is later",
        "{heading} supersedes {lines} without effect: {lines} are later",
    ),
    SupersedingFault.HIGHER: say_of(
        1,
        "{heading} supersedes {lines} without effect: {lines} is of higher authority",
        "{heading} supersedes {lines} without effect: {lines} are of higher authority",
    ),
    SupersedingFault.OTHER_GROUND: say_of(
        1,
        "{heading} supersedes {lines} without effect: {lines} is of another ground ({its}, not {ground})",
        "{heading} supersedes {lines} without effect: {lines} are of another ground ({its}, not {ground})",
    ),
}


def no_effect(case: Case, _: Sequence[TopicClaims]) -> Iterator[Finding]:
    """Headings that would supersede something later, higher, or of another ground."""
    found: dict[tuple[str, Fault], list[tuple[Instruction | Duty, Instruction | Duty]]] = {}
    for line, earlier in meant_to_supersede(case.work):
        kind = superseding_fault(case.work, line, earlier)
        if (
            kind is not None and kind is not SupersedingFault.ITSELF
        ):  # the shapes refuse what supersedes itself
            is_of_ground = kind is SupersedingFault.OTHER_GROUND
            fault: Fault = (kind, earlier.ground, line.ground) if is_of_ground else (kind, "", "")
            found.setdefault((line.heading, fault), []).append((line, earlier))
    for (heading, fault), pairs in found.items():
        earlier_lines = identifiers(earlier for _, earlier in pairs)
        yield Finding(
            slug="no-effect",
            message=_message(case, heading, fault, earlier_lines),
            node=heading_node(case.work, pairs[0][0]),
            subject=heading,
            lines=(*identifiers(line for line, _ in pairs), *earlier_lines),
        )


def _message(case: Case, heading: str, fault: Fault, lines: tuple[str, ...]) -> Message:
    kind, its, own = fault
    return _MESSAGES[kind].filled(
        len(lines), heading=heading, lines=lines, its=_ground(case, its), ground=_ground(case, own)
    )


def _ground(case: Case, ground: str) -> Place:
    return case.vocabulary.find_value((str(TERM.grounds),), ground) or ground
