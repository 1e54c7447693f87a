"""Verbs that tell of a work: explain, history, compare, questions. Each answers with data and with a paper."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path

from intent.analysis.comparison.turns import Turn, compare_verdicts
from intent.analysis.comparison.works import Comparison, compare_works, is_same_work
from intent.analysis.explanation.explain import Account
from intent.analysis.explanation.explain import explain as explain_work
from intent.analysis.history.chronicle import Chronicle, chronicle
from intent.analysis.questions.agenda import draw_up
from intent.analysis.questions.question import Agenda
from intent.diagnostics import Diagnostic, Severity, Span, refusal
from intent.effects.assess import assess
from intent.language.message import say
from intent.papers.agenda_paper import agenda_paper
from intent.papers.chronicle_paper import chronicle_json, chronicle_paper
from intent.papers.comparison_paper import comparison_json, comparison_paper
from intent.papers.explanation_paper import explanation_paper
from intent.reading.documentation import Documentation, read_documentation
from intent.reading.past import read_past
from intent.reading.proposal import read_beside
from intent.verbs.reading_either import read_usable
from intent.verbs.replying import Reply
from intent.vocabulary.loader import read_vocabulary


def explain(
    work: str | Path,
    subject: str | None = None,
    characteristic: str | None = None,
    on: datetime.date | None = None,
) -> Reply[Account]:
    """What governs a part, a group, a characteristic or the whole work on a day, today's if none.

    Raises `Unusable`, and `intent.diagnostics.UnknownName` for an unknown name.
    """
    found = explain_work(read_usable(work).work, subject, characteristic, on or datetime.date.today())
    return Reply(found=found, paper=explanation_paper(found))


def history(
    work: str | Path, subject: str | None = None, characteristic: str | None = None
) -> Reply[Chronicle]:
    """How a work was shown, and what beside it is no installation carried out.

    Raises `Unusable`, and `intent.diagnostics.UnknownName` for an unknown name.
    """
    documentation = read_usable(work)
    past = read_past(documentation, all_told=True)
    found = chronicle(documentation.work, past.installations, subject, characteristic)
    return Reply(
        found=found,
        paper=chronicle_paper(found),
        findings=past.findings,
        for_programs=partial(chronicle_json, found),
    )


@dataclass(frozen=True, slots=True)
class Compared:
    """What changed between two states of a work, and which verdicts on an installation change with it."""

    works: Comparison
    verdicts: Turn | None


def compare(old: str | Path, new: str | Path, installation: str | Path | None = None) -> Reply[Compared]:
    """What changed between two states of a work, and which verdicts on an installation change with it.

    Raises `Unusable`, also where the two are not states of one work.
    """
    shipped = read_vocabulary()
    states = [read_documentation(Path(path), shipped) for path in (old, new)]
    for state in states:
        state.validated()
    findings = _one_work(states[0], states[1])
    turn = _turn(Path(installation), states) if installation is not None else None
    found = Compared(compare_works(states[0].work, states[1].work), turn)
    return Reply(
        found=found,
        paper=comparison_paper(found.works, turn),
        findings=findings,
        for_programs=partial(comparison_json, found.works, turn),
    )


def _turn(installation: Path, states: Sequence[Documentation]) -> Turn:
    """Which verdicts on an installation are others in the later state."""
    proposals = [read_beside(installation, state) for state in _around(installation, states)]
    for proposal in proposals:
        proposal.validated()
    before, after = (assess(one.documentation.work, one.installation) for one in proposals)
    return compare_verdicts(before, after)


def _around(installation: Path, states: Sequence[Documentation]) -> Iterator[Documentation]:
    """States of a work as though all lay where the installation is kept, with its pool."""
    place = installation.resolve()
    folders = [state.folder for state in states if place.is_relative_to(state.folder.resolve())]
    yield from (replace(state, folder=folders[0] if folders else installation.parent) for state in states)


def _one_work(old: Documentation, new: Documentation) -> tuple[Diagnostic, ...]:
    """Whether two states are of one work: a warning where only title or number say so. Raises `Unusable`."""
    if old.work.iri == new.work.iri:
        return ()
    span = Span(file=new.files[0].name)
    if not is_same_work(old.work, new.work):
        message = say(
            "“{work}” is another work than “{other}”; compare two states of one",
            work=new.work.title,
            other=old.work.title,
        )
        raise refusal("another-work", message, span)
    message = say(
        "the two have different IRIs ({old}, {new}) and are taken for one work by title or number",
        old=old.work.iri,
        new=new.work.iri,
    )
    return (Diagnostic(slug="another-iri", message=message, span=span, severity=Severity.WARNING),)


def questions(work: str | Path, date: datetime.date | None = None) -> Reply[Agenda]:
    """What to ask at the next conversation, and what beside the work could not be read.

    ``date`` is the day of the conversation, today if none. Raises `Unusable`.
    """
    documentation = read_usable(work)
    past = read_past(documentation)
    agenda = draw_up(documentation.work, past.installations, date or datetime.date.today())
    return Reply(found=agenda, paper=agenda_paper(agenda), findings=past.findings)
