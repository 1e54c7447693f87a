"""The cases of the variance: a work and an installation as text, and the verdicts that the rules give.

How a case is written is said in `cases/README.md`, which also holds what a case may leave out.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache, lru_cache
from pathlib import Path

import pytest
from examples_read import vocabulary

from intent.diagnostics import has_errors
from intent.dossier.draft import Reading
from intent.dossier.installation_text import read_installation, read_pool
from intent.dossier.work_text import read_work
from intent.language.locale import ENGLISH
from intent.model.work import Work
from intent.record.consistency import consistency_findings
from intent.record.load_installation import load_installation
from intent.record.load_work import load_work
from intent.variance.judge import judge
from intent.variance.result import Open, OpenKind, Row, Variance

CASES = Path(__file__).parent / "cases"
_FENCE = re.compile(r"^```(\w*)\s*$")
_LISTED = {"governing", "set aside", "ask", "open"}


@dataclass(frozen=True, slots=True)
class Block:
    word: str
    text: str
    line: int
    heading: str


@dataclass(frozen=True, slots=True)
class Case:
    """One proposal with what is expected of it."""

    file: Path
    line: int
    title: str
    name: str
    work: str
    pool: str
    installation: str
    expected: str

    def __str__(self) -> str:
        topic = self.file.relative_to(CASES).with_suffix("").as_posix()
        return f"{topic}:{self.line}"


def blocks(text: str) -> Iterator[Block]:
    word, start, heading, held = "", 0, "", list[str]()
    for number, line in enumerate(text.splitlines(), start=1):
        fence = _FENCE.match(line)
        if fence and not word:
            word, start, held = fence[1], number, []
        elif fence:
            yield Block(word, "\n".join(held), start, heading)
            word = ""
        elif word:
            held.append(line)
        elif line.startswith("#"):
            heading = line.lstrip("# ")


def cases_in(file: Path) -> Iterator[Case]:
    text = file.read_text(encoding="utf-8")
    title = text.partition("\n")[0].lstrip("# ")
    latest = {"work": "", "pool": "", "installation": ""}
    for block in blocks(text):
        if block.word != "expected":
            assert block.word in latest, f"{file}:{block.line}: no block is called `{block.word}`"
            latest[block.word] = block.text
            continue
        yield Case(file, block.line, title, block.heading, **latest, expected=block.text)
        latest["installation"] = ""


def every_case() -> list[Case]:
    files = sorted(file for file in CASES.rglob("*.md") if file.name != "README.md")
    return [case for file in files for case in cases_in(file)]


@cache
def supplied() -> Mapping[str, str]:
    return {block.word: block.text for block in blocks((CASES / "README.md").read_text(encoding="utf-8"))}


def whole_work(case: Case) -> str:
    """The work of a case with what it leaves out."""
    sections = [supplied()[word] for word in ("people", "parts") if f"## {word.title()}" not in case.work]
    head = "" if case.work.startswith("# ") else f"# {case.title}\n\n- number: 7\n- owner: Thornacre Museum\n"
    return "\n\n".join([head, case.work, *sections]).strip()


def whole_installation(case: Case) -> str:
    """The installation of a case with the lines of the head that it leaves out."""
    head, mark, sections = case.installation.partition("## ")
    lines = [line for line in supplied()["head"].splitlines() if line.partition(":")[0] not in head]
    return "\n".join([f"# {case.name}\n", *lines, head, mark + sections])


@lru_cache(maxsize=4)
def documented(text: str) -> tuple[Reading, Work]:
    """A work as read; cases that follow each other mostly have the same."""
    reading = read(read_work(text, "work.md", vocabulary()))
    return reading, load_work(reading.triples, reading.iri, vocabulary())


def found_in(case: Case) -> Variance:
    """The variance that the program finds."""
    reading, work = documented(whole_work(case))
    assert not has_errors(consistency_findings(work, reading.spans))
    pool = read(read_pool(case.pool, "pool.md", work)) if case.pool else None
    proposal = read(read_installation(whole_installation(case), "installation.md", work, pool))
    devices = pool.triples if pool else ()
    return judge(work, load_installation(proposal.triples, proposal.iri, work, reading.triples, devices))


def read(reading: Reading) -> Reading:
    errors = [str(found) for found in reading.findings if found.is_error]
    assert not errors, "the case itself is at fault\n" + "\n".join(errors)
    return reading


def rows_of(text: str) -> list[dict[str, str]]:
    """The rows of the table in a block, by column."""
    lines = [line for line in text.splitlines() if line.startswith("|")]
    cells = [[cell.strip() for cell in line.strip().strip("|").split("|")] for line in lines]
    return [dict(zip(cells[0], row, strict=True)) for row in cells[2:]]


def closing_lines(text: str) -> list[tuple[str, str]]:
    """What stands below the table: `outcome: refer`."""
    lines = [line for line in text.splitlines() if line.strip() and not line.startswith("|")]
    return [(name.strip(), value.strip()) for name, _, value in (line.partition(":") for line in lines)]


def key_of(row: Row) -> tuple[str, str]:
    """Subject and characteristic, as a case writes them."""
    return row.subject.written, ENGLISH.say(row.characteristic)


def told(row: Row) -> dict[str, str]:
    """A row as a case writes it."""
    return {
        "subject": row.subject.written,
        "characteristic": ENGLISH.say(row.characteristic),
        "verdict": row.verdict,
        "governing": ", ".join(line.identifier for line in row.governing),
        "set aside": ", ".join(
            f"{aside.instruction} by {aside.by}: {aside.because}" for aside in row.set_aside
        ),
        "ground": row.ground,
        "days": f"{row.days.first}/{row.days.last}" if row.days else "",
        "open": "; ".join(map(told_open, row.open)),
        "ask": ", ".join(row.ask),
        "documented": ENGLISH.say(row.documented),
        "proposed": ENGLISH.say(row.proposed),
        "reason": ENGLISH.say(row.reason),
        "no reason": ENGLISH.say(row.reason),
    }


def told_open(item: Open) -> str:
    if item.kind is OpenKind.CONSENT:
        return f"consent of {item.person}"
    if item.kind is OpenKind.ATTESTATION:
        fact = ENGLISH.say(item.text)
        return f'"{fact}"' if item.answer else f'not "{fact}"'
    return ENGLISH.say(item.text)


def told_outcome(name: str, wanted: str, variance: Variance) -> str:
    """What is found of a closing line, in the words of the case where it agrees."""
    every = {
        "obstacle": [f"{one.slug} {ENGLISH.say(one.text)}" for one in variance.obstacles],
        "note": [ENGLISH.say(note) for note in variance.notes],
    }
    if name in every:
        return wanted if any(wanted in text for text in every[name]) else "; ".join(every[name])
    if name in {"sentence", "denied"}:
        sentence = ENGLISH.say(variance.sentence if name == "sentence" else variance.denied)
        return wanted if sentence.startswith(wanted) else sentence
    return {"outcome": str(variance.outcome), "refer to": ", ".join(variance.refer_to)}[name]


def agrees(column: str, wanted: str, found: str) -> bool:
    if column == "reason":
        return wanted in found
    if column == "no reason":
        return not wanted or wanted not in found
    if column not in _LISTED:
        return wanted == found
    mark = ";" if column == "open" else ","
    return set(map(str.strip, wanted.split(mark))) == set(map(str.strip, found.split(mark)))


def compare(case: Case, variance: Variance) -> tuple[str, str]:
    """What is expected and what is found, as tables that are the same where the two agree."""
    wanted = rows_of(case.expected)
    columns = list(wanted[0]) if wanted else ["subject", "characteristic", "verdict"]
    found = {key_of(row): told(row) for row in variance.rows}
    expected, actual = [columns], [columns]
    for row in wanted:
        other = found.pop((row["subject"], row["characteristic"]), None)
        expected.append([row[column] for column in columns])
        actual.append([counterpart(row, other, column) for column in columns])
    departures = {key_of(row) for row in variance.departures}
    actual += [[row[column] for column in columns] for key, row in found.items() if key in departures]
    closing = closing_lines(case.expected)
    expected += [[f"{name}: {value}"] for name, value in closing]
    actual += [[f"{name}: {told_outcome(name, value, variance)}"] for name, value in closing]
    return table(expected), table(actual)


def counterpart(wanted: Mapping[str, str], found: Mapping[str, str] | None, column: str) -> str:
    if found is not None:
        return wanted[column] if agrees(column, wanted[column], found[column]) else found[column]
    if wanted["verdict"] in {"none", "as-documented"} or column in {"subject", "characteristic"}:
        return wanted[column]
    return "none" if column == "verdict" else ""


def table(rows: Iterable[list[str]]) -> str:
    every = list(rows)
    widths = [
        max(len(row[place]) for row in every if len(row) == len(every[0])) for place in range(len(every[0]))
    ]
    return "\n".join(
        "| " + " | ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)) + " |"
        if len(row) == len(widths)
        else row[0]
        for row in every
    )


@pytest.mark.parametrize("case", every_case(), ids=str)
def test_case(case: Case) -> None:
    expected, found = compare(case, found_in(case))
    if expected != found:
        place = f"{case.file.relative_to(CASES.parent.parent)}:{case.line}: {case.name}"
        pytest.fail(f"{place}\n\nexpected\n{expected}\n\nfound\n{found}", pytrace=False)


def test_every_case_has_a_name_of_its_own() -> None:
    every = every_case()
    assert len({(case.file, case.name) for case in every}) == len(every)
    assert len(every) >= 100
