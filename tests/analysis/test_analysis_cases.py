"""What is found in a documentation by itself: texts in, findings out, in the files beside this one.

Each file is about the kind of finding that it is named for, and tells no others.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from examples_read import vocabulary
from test_cases import Case, blocks, read, supplied, whole_work

from intent.analysis.examination.examine import CHECKS, analyse, analyse_answers
from intent.diagnostics import Diagnostic
from intent.dossier.installation_text import read_installation
from intent.dossier.work_text import read_work
from intent.language.locale import ENGLISH
from intent.record.load_installation import load_installation
from intent.record.load_work import load_work

CASES = Path(__file__).parent / "cases"


def cases_in(file: Path) -> Iterator[Case]:
    text = file.read_text(encoding="utf-8")
    title, work, installation = text.partition("\n")[0].lstrip("# "), "", ""
    for block in blocks(text):
        if block.word == "work":
            work = block.text
        elif block.word == "installation":
            installation = block.text
        else:
            assert block.word == "findings", f"{file}:{block.line}: no block is called `{block.word}`"
            yield Case(file, block.line, title, block.heading, work, "", installation, block.text)
            installation = ""


def every_case() -> list[Case]:
    return [case for file in sorted(CASES.glob("*.md")) for case in cases_in(file)]


def name_of(case: Case) -> str:
    return f"{case.file.stem}:{case.line}"


def found_in(case: Case) -> tuple[Diagnostic, ...]:
    """The findings of the kind that the file is about."""
    return tuple(found for found in every_finding(case) if found.slug == case.file.stem)


def every_finding(case: Case) -> tuple[Diagnostic, ...]:
    reading = read(read_work(whole_work(case), "work.md", vocabulary()))
    work = load_work(reading.triples, reading.iri, vocabulary())
    if not case.installation:
        return analyse(work, reading.spans)
    head = "\n".join(line for line in supplied()["head"].splitlines())
    proposal = read(
        read_installation(f"# Loan\n\n{head}\n\n{case.installation}", "installation.md", work, None)
    )
    installation = load_installation(proposal.triples, proposal.iri, work, reading.triples)
    return analyse_answers(work, installation, proposal.spans)


@pytest.mark.parametrize("case", every_case(), ids=name_of)
def test_case(case: Case) -> None:
    lines = [f"{found.severity} {found.slug}: {ENGLISH.say(found.message)}" for found in found_in(case)]
    expected, found = case.expected.strip(), "\n".join(lines) or "nothing"
    if expected != found:
        place = f"{case.file.relative_to(CASES.parent.parent)}:{case.line}: {case.name}"
        pytest.fail(f"{place}\n\nexpected\n{expected}\n\nfound\n{found}", pytrace=False)


def test_every_finding_stands_at_a_place_in_the_text() -> None:
    assert all(found.span.line for case in every_case() for found in found_in(case))


def test_a_dilemma_is_told_at_the_last_of_its_instructions() -> None:
    """Whoever reads from the top has met the others there."""
    case = next(case for case in every_case() if case.name == "No barrier, and one at arm's length")
    (found,) = found_in(case)
    assert found.subject == "R2.1"
    assert "barrier distance of M1 is at least 80 cm" in found.span.text


def test_every_kind_is_found_in_some_case_and_not_in_another() -> None:
    kinds = {check.__name__.replace("_", "-") for check in CHECKS}
    for kind in kinds:
        found = [bool(found_in(case)) for case in every_case() if case.file.stem == kind]
        assert True in found, f"no case in which {kind} is found"
        assert False in found, f"no case in which {kind} is not found"
