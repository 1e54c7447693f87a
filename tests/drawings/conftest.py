"""A work and an installation read from text, laid beside each other."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from intent.dossier.draft import Reading
from intent.dossier.installation_text import read_installation
from intent.dossier.work_text import read_work
from intent.record.load_installation import load_installation
from intent.record.load_work import load_work
from intent.variance.judge import judge
from intent.variance.result import Variance
from intent.vocabulary.loader import read_vocabulary
from intent.vocabulary.terms import Vocabulary

Judges = Callable[[str, str], Variance]
CASES = Path(__file__).parent / "cases"


@pytest.fixture(scope="session")
def vocabulary() -> Vocabulary:
    return read_vocabulary()


@pytest.fixture(scope="session")
def judged(vocabulary: Vocabulary) -> Judges:
    """The variance of an installation from a work, both as text."""

    def judged_texts(work_text: str, installation_text: str) -> Variance:
        documented = _without_errors(read_work(work_text, "work.md", vocabulary))
        work = load_work(documented.triples, documented.iri, vocabulary)
        proposed = _without_errors(read_installation(installation_text, "installation.md", work, None))
        installation = load_installation(proposed.triples, proposed.iri, work, documented.triples, ())
        return judge(work, installation)

    return judged_texts


def _without_errors(reading: Reading) -> Reading:
    errors = [str(found) for found in reading.findings if found.is_error]
    assert not errors, "\n".join(errors)
    return reading


@pytest.fixture(scope="session")
def case(judged: Judges) -> Callable[[str], Variance]:
    """The variance of a folder under `cases`."""

    def from_folder(name: str) -> Variance:
        texts = [(CASES / name / file).read_text(encoding="utf-8") for file in ("work.md", "installation.md")]
        return judged(texts[0], texts[1])

    return from_folder
