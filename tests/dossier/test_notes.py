"""Notes: a section of prose, in a work and in an installation, whatever stands in it."""

from __future__ import annotations

import pytest
from rdflib.compare import isomorphic

from intent.dossier.installation_text import read_installation
from intent.dossier.work_text import read_work
from intent.dossier.write_installation import write_installation
from intent.dossier.write_work import write_work
from intent.record.load_installation import load_installation
from intent.record.load_work import load_work
from intent.vocabulary.loader import read_vocabulary

NOTES = """

Prose with a colon: and more.

- a list: of things
- and another

| a table | of no | columns |
| ------- | ----- | ------- |
| that    | are   | known   |

> and what somebody said
"""
WORK = """# Timetable for a Ferry

- number: 7
- owner: Thornacre Museum

## Parts

### Monitors

- kind: display

| part | rotation |
| ---- | -------- |
| M1   | upright  |
"""
LOAN = """# Loan to Halmsee

- work: work.md
- dates: 2027
"""


@pytest.mark.parametrize("heading", ["Notes", "Remarks", "Anmerkungen", "Remarques"])
def test_notes_are_kept_and_written_back(heading: str) -> None:
    vocabulary = read_vocabulary()
    once = read_work(f"{WORK}\n## {heading}{NOTES}", "work.md", vocabulary)
    assert not once.findings
    work = load_work(once.triples, once.iri, vocabulary)
    written = write_work(work)
    assert "- a list: of things" in written
    assert isomorphic(once.graph, read_work(written, "work.md", vocabulary).graph)
    loan = read_installation(f"{LOAN}\n## {heading}{NOTES}", "loan.md", work)
    assert not loan.findings
    installation = load_installation(loan.triples, loan.iri, work, once.triples)
    written = write_installation(installation, work)
    assert "| that    | are   | known   |" in written
    assert isomorphic(loan.graph, read_installation(written, "loan.md", work).graph)
