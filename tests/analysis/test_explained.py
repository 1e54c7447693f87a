"""What `explain` tells: texts in, text out, in the file beside this one."""

from __future__ import annotations

import datetime
from pathlib import Path

import pytest
from examples_read import vocabulary
from test_cases import Case, blocks, read, whole_work

from intent.analysis.explanation.explain import Account, explain
from intent.diagnostics import UnknownName
from intent.dossier.work_text import read_work
from intent.model.work import Work
from intent.papers.explanation_paper import explanation_paper
from intent.papers.telling import tell
from intent.record.load_work import load_work

FILE = Path(__file__).parent / "explained.md"


def every_case() -> list[Case]:
    """Each text that is expected, with what is asked in the place of an installation."""
    found, latest = [], {"work": "", "asked": ""}
    for block in blocks(FILE.read_text(encoding="utf-8")):
        latest[block.word] = block.text
        if block.word == "told":
            asked = latest["asked"]
            found.append(
                Case(FILE, block.line, "Explained", block.heading, latest["work"], "", asked, block.text)
            )
    return found


def work_of(case: Case) -> Work:
    reading = read(read_work(whole_work(case), "work.md", vocabulary()))
    return load_work(reading.triples, reading.iri, vocabulary())


def account_of(case: Case) -> Account:
    """What is asked is written `M1, technology, on 2005-01-01`; the whole work is `everything`."""
    *asked, day = (word.strip() for word in case.installation.split(","))
    subject, characteristic = (*asked, None, None)[:2]
    on = datetime.date.fromisoformat(day.removeprefix("on "))
    return explain(work_of(case), None if subject == "everything" else subject, characteristic, on)


@pytest.mark.parametrize("case", every_case(), ids=lambda case: f"explained:{case.line}")
def test_explained(case: Case) -> None:
    expected, found = case.expected.strip(), tell(explanation_paper(account_of(case)), "text").strip()
    if expected != found:
        place = f"{case.file.name}:{case.line}: {case.name}"
        pytest.fail(f"{place}\n\nexpected\n{expected}\n\nfound\n{found}", pytrace=False)


def test_parts_that_are_governed_alike_are_told_once() -> None:
    case = every_case()[0]
    whole = explain(work_of(case), None, None, datetime.date(2027, 1, 1)).explanations
    assert len({(one.subject, one.characteristic) for one in whole}) == len(whole)
    for one in whole:
        assert not any(
            other is not one
            and other.characteristic == one.characteristic
            and (other.instructions, other.stretches) == (one.instructions, one.stretches)
            for other in whole
        )


@pytest.mark.parametrize(
    ("subject", "characteristic"), [("M33", None), ("M1", "rotatoin"), ("Monitor", None)]
)
def test_an_unknown_name_is_refused_with_what_is_near(subject: str, characteristic: str | None) -> None:
    with pytest.raises(UnknownName, match="did you mean"):
        explain(work_of(every_case()[0]), subject, characteristic, datetime.date(2027, 1, 1))
