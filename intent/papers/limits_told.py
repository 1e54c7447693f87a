"""The limits that hold while a work is shown, as a paper tells them: each as a sentence, with its ground."""

from __future__ import annotations

from intent.language.message import say
from intent.papers.document import Block, Column, PaperTable
from intent.papers.inline import Content
from intent.papers.instructions_told import as_written, instruction_words
from intent.papers.verdict_words import ground_words
from intent.planning.limits_held import limits_held
from intent.variance.result import Because, Variance


def limit_blocks(variance: Variance) -> tuple[Block, ...]:
    """One row a limit; nothing where there is none. Of what was dispensed with for this showing nothing is said."""
    lifted = {
        fallen.instruction
        for row in variance.rows
        for fallen in row.set_aside
        if fallen.because is Because.DISPENSATION
    }
    work = variance.work
    rows: tuple[tuple[Content, ...], ...] = tuple(
        ((instruction_words(work, line), as_written(work, line)), ground_words(line.ground))
        for line in limits_held(work, variance.installation)
        if line.identifier not in lifted
    )
    return (PaperTable(columns=(Column(say("limit")), Column(say("why"), 20)), rows=rows),) if rows else ()
