"""Which characteristics the instructions ask of which subjects: what data must have, so that nothing is missing."""

from __future__ import annotations

from collections.abc import Iterator

from intent.exports.work_shapes.shape_names import NamedScope, ShapeNames, scopes_named
from intent.model.assertions import Aggregate, Assertion
from intent.names import POSITION
from intent.record.turtle_text import iri_term
from intent.variance.case import Case

NO_SINGLE_VALUE = {Aggregate.NUMBER}
"""What asks nothing of its members but whether they are there."""
OF_PLACES = {Aggregate.RELATION, Aggregate.DISTANCE}


def asked_of_members(assertion: Assertion) -> str | None:
    """The characteristic that an assertion asks of each of its members, by IRI."""
    if assertion.aggregate in NO_SINGLE_VALUE:
        return None
    return POSITION if assertion.aggregate in OF_PLACES else assertion.characteristic


def asked_values(case: Case, names: ShapeNames) -> dict[str, list[str]]:
    """The characteristics asked of each subject as proposed, by name and IRI, each once."""
    found: dict[str, dict[str, None]] = {}
    for scope in every_scope(case, names):
        assertion, characteristic = scope.assertion, asked_of_members(scope.assertion)
        if characteristic in case.vocabulary.characteristics:
            for member in (*case.scopes.of_proposal(assertion), *filter(None, [assertion.other])):
                found.setdefault(member, {}).setdefault(str(characteristic))
    return {member: list(characteristics) for member, characteristics in found.items()}


def every_scope(case: Case, names: ShapeNames) -> Iterator[NamedScope]:
    """All scopes, in the order of the text."""
    for line in case.work.instructions:
        yield from scopes_named(names, line)


def meant(case: Case, names: ShapeNames, subject: str) -> str:
    """What of the work or the installation is meant by the name by which a state is asked."""
    added = next((one.iri for one in case.installation.additions if one.identifier == subject), None)
    return iri_term(added) if added else names.subject(subject)
