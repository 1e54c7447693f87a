"""A proposal judged: read, assessed, and laid beside what was shown before."""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path

from intent.analysis.history.agreement import read_agreement
from intent.analysis.history.precedents import Forerunners, precedents_of
from intent.effects.assess import assess
from intent.names import INTENT
from intent.reading.past import files_beside, installations_folder, read_past
from intent.reading.proposal import Proposal, read_proposal
from intent.variance.result import Variance
from intent.vocabulary.loader import read_vocabulary


@dataclass(frozen=True, slots=True, kw_only=True)
class JudgedProposal:
    """A proposal with its variance, and how that stands to what was shown before; its shapes may still be speaking."""

    proposal: Proposal
    variance: Variance
    standings: tuple[Forerunners, ...] = ()

    @property
    def rests_on(self) -> tuple[Path, ...]:
        """Every file and folder that was looked at; nothing where that cannot be told beforehand."""
        if str(INTENT.agreedAs) in self.proposal.installation.fields:
            return ()  # what was agreed is read as well, from wherever it says
        documentation = self.proposal.documentation
        read = (Path(file.name) for file in self.proposal.files)
        return (*read, installations_folder(documentation), *files_beside(documentation))


def judge_proposal(installation: Path, work: Path | None) -> JudgedProposal:
    """The variance of a proposal beside what was shown before. Raises `Unusable`."""
    proposal = read_proposal(installation, work, read_vocabulary())
    variance = assess(proposal.documentation.work, proposal.installation)
    past = read_past(proposal.documentation)
    notes = tuple(found.message for found in (*past.findings, *read_agreement(proposal)))
    if notes:
        variance = replace(variance, notes=(*variance.notes, *notes))
    standings = precedents_of(variance, past.installations) if past.installations else ()
    return JudgedProposal(proposal=proposal, variance=variance, standings=standings)
