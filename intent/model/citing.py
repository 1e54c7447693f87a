"""Where an instruction is written, and the words that stand behind it."""

from __future__ import annotations

from intent.model.citation import Citation
from intent.model.work import Heading, Instruction, Work


def citations_of(instruction: Instruction, heading: Heading | None) -> tuple[Citation, ...]:
    """The sources of an instruction; where it has none of its own, those of its heading."""
    return instruction.sources or (heading.sources if heading else ())


def words_behind(work: Work, instruction: Instruction) -> str:
    """The words quoted under its heading; without any, those quoted under the first source that has some."""
    heading = work.heading(instruction.heading)
    if heading and heading.words.strip():
        return heading.words.strip()
    sources = (work.source(citation.source) for citation in citations_of(instruction, heading))
    return next((source.words.strip() for source in sources if source and source.words.strip()), "")
