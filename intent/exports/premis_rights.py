"""Permissions as rights of PREMIS: what may be done, on which conditions, from when to when, and who granted it.

Only who could grant one gives a right: the artist, or whoever speaks for the artist's estate, in their own time. What
anybody else allows is told among the significant properties of what it is about.

Source: PREMIS Data Dictionary for Preservation Metadata, version 3.0 (2015): unit 4.1 rightsStatement.
"""

from __future__ import annotations

from collections.abc import Iterator

from intent.analysis.exceptions import Exceptions
from intent.exports.catalogue import citations, line_text, person_text, speaker
from intent.exports.premis_things import IRI, linking_agent, linking_object
from intent.exports.xml_text import Content, XmlElement, branch, leaf, present
from intent.model.authority import ESTATE_RANK
from intent.model.instruction_text import condition_text
from intent.model.work import Instruction, Modality, Work
from intent.names import INTENT, THE_VENUE, THE_WORK
from intent.variance.attesting import cannot_be_had
from intent.variance.people import is_in_time
from intent.variance.scopes import Scopes


def is_right(work: Work, line: Instruction) -> bool:
    """Whether an instruction grants a right: a permission of somebody who can grant one, on the ground of intent."""
    giver = work.person(line.by)
    if line.modality is not Modality.ALLOWED or line.ground != "intent" or giver is None:
        return False
    return giver.authority <= ESTATE_RANK and is_in_time(giver, line.on)


def rights(work: Work, line: Instruction, scopes: Scopes, exceptions: Exceptions) -> XmlElement:
    """The right that a permission grants: to install the work so, with its restrictions."""
    person = work.person(line.by)
    content = (
        branch(
            "rightsStatementIdentifier",
            leaf("rightsStatementIdentifierType", IRI),
            leaf("rightsStatementIdentifierValue", line.iri),
        ),
        leaf("rightsBasis", "other"),
        branch("otherRightsInformation", *_basis(work, line)),
        branch(
            "rightsGranted",
            leaf("act", "install", valueURI=str(INTENT.install)),
            _restrictions(work, line, exceptions),
            _term(line),
            leaf("rightsGrantedNote", line_text(work, line)),
        ),
        (linking_object(iri) for iri in _meant(work, line, scopes)),
        linking_agent(person.iri, person.role.label) if person else None,
    )
    return present(branch("rightsStatement", content))


def _basis(work: Work, line: Instruction) -> Iterator[Content]:
    for text in citations(work, line):
        yield branch(
            "otherRightsDocumentationIdentifier",
            leaf("otherRightsDocumentationIdentifierType", "source"),
            leaf("otherRightsDocumentationIdentifierValue", text),
        )
    yield leaf("otherRightsBasis", "permission of the artist, or of who speaks for the artist")
    yield leaf("otherRightsNote", speaker(work, line))


def _restrictions(work: Work, line: Instruction, exceptions: Exceptions) -> Iterator[Content]:
    texts = [condition_text(condition, work.vocabulary) for condition in line.conditions]
    texts += [f"with consent of {person_text(work, name)}" for name in line.consents]
    earlier = [work.instruction(name) for name in exceptions.earlier.get(line.identifier, ())]
    texts += [f"only once it is attested that {cannot_be_had(one)}" for one in earlier if one is not None]
    if line.until is not None and line.on is None:
        texts.append(f"until {line.until}")
    yield from (leaf("restriction", text) for text in texts)


def _term(line: Instruction) -> XmlElement | None:
    """From the date of the instruction to its last day, as they were written; an end that nobody named is not there.

    Source: data dictionary, 4.1.6.3 termOfGrant; its dates are in the Extended Date/Time Format.
    """
    if line.on is None:
        return None
    end = str(line.until) if line.until is not None else ""
    return branch("termOfGrant", leaf("startDate", str(line.on)), leaf("endDate", end))


def _meant(work: Work, line: Instruction, scopes: Scopes) -> Iterator[str]:
    """The objects that the permission is about; the work where it is about the whole, or about what is added."""
    iris = {part.identifier: part.iri for part in work.parts}
    iris.update({one.identifier: one.iri for one in work.material})
    members = [name for name in scopes.of_work(line.assertion) if name not in {THE_WORK, THE_VENUE}]
    found = [iris[name] for name in members if name in iris]
    yield from found or [work.iri]
