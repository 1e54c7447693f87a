"""The program's own way from the two texts of a case to its verdicts."""

from __future__ import annotations

from dataclasses import dataclass

from intent.dossier.draft import Reading
from intent.dossier.installation_text import read_installation
from intent.dossier.work_text import read_work
from intent.language.locale import ENGLISH
from intent.model.installation import Installation
from intent.model.work import Work
from intent.record.load_installation import load_installation
from intent.record.load_work import load_work
from intent.variance.judge import judge
from intent.variance.result import Variance
from intent.vocabulary.terms import Vocabulary
from oracle.cases import Case
from oracle.writing import installation_text, work_text

Rows = dict[tuple[str, str], str]


@dataclass(frozen=True)
class Loaded:
    """Two texts, read."""

    work: Work
    installation: Installation
    work_reading: Reading
    installation_reading: Reading


def loaded(work: str, installation: str, vocabulary: Vocabulary) -> Loaded:
    """The two texts as the program has them; fails, with both texts, where it finds an error in one."""
    reading = read_work(work, "work.md", vocabulary)
    typed = load_work(reading.triples, reading.iri, vocabulary)
    proposal = read_installation(installation, "installation.md", typed)
    errors = [one for one in (*reading.findings, *proposal.findings) if one.severity.value == "error"]
    assert not errors, f"{errors}\n{work}\n{installation}"
    found = load_installation(proposal.triples, proposal.iri, typed, reading.triples)
    return Loaded(typed, found, reading, proposal)


def judged_texts(work: str, installation: str, vocabulary: Vocabulary) -> Variance:
    found = loaded(work, installation, vocabulary)
    return judge(found.work, found.installation)


def judged(case: Case, vocabulary: Vocabulary) -> Variance:
    """What the program says of a case."""
    return judged_texts(work_text(case), installation_text(case), vocabulary)


def rows_of(variance: Variance) -> Rows:
    """The verdicts by subject and characteristic, but for those that are as documented."""
    return {
        (row.subject.written, ENGLISH.say(row.characteristic)): row.verdict.value
        for row in variance.rows
        if row.verdict.value != "as-documented"
    }
