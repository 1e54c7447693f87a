"""The effects of a proposal: a work and an installation as text, and the quantities before and after.

Every row of an expected table is found, word for word in the columns that it has (topic, parts, quantity, documented,
proposed, sentence, missing, source). Below the table, `finding:` is a finding about the venue, `no finding:` says that
there is none, `without:` names a quantity that is not told, and `outcome:` is that of the whole.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from test_cases import (
    Case,
    cases_in,
    closing_lines,
    read,
    rows_of,
    vocabulary,
    whole_installation,
    whole_work,
)

from intent.dossier.installation_text import read_installation, read_pool
from intent.dossier.work_text import read_work
from intent.effects.assess import assess
from intent.language.message import Figure, figure_words
from intent.record.load_installation import load_installation
from intent.record.load_work import load_work
from intent.variance.result import Effect, Variance

CASES = Path(__file__).parent / "cases"


def every_case() -> list[Case]:
    return [case for file in sorted(CASES.glob("*.md")) for case in cases_in(file)]


def assessed(case: Case) -> Variance:
    reading = read(read_work(whole_work(case), "work.md", vocabulary()))
    work = load_work(reading.triples, reading.iri, vocabulary())
    pool = read(read_pool(case.pool, "pool.md", work)) if case.pool else None
    proposal = read(read_installation(whole_installation(case), "installation.md", work, pool))
    devices = pool.triples if pool else ()
    return assess(work, load_installation(proposal.triples, proposal.iri, work, reading.triples, devices))


def told(effect: Effect) -> dict[str, str]:
    return {
        "topic": effect.topic.value,
        "parts": ", ".join(effect.members),
        "quantity": effect.quantity,
        "documented": figure_words(Figure(effect.documented, effect.unit)) if effect.documented else "",
        "proposed": figure_words(Figure(effect.proposed, effect.unit)) if effect.proposed else "",
        "sentence": str(effect.sentence),
        "missing": ", ".join(effect.missing),
        "source": effect.source,
    }


@pytest.mark.parametrize("case", every_case(), ids=lambda case: f"{case.file.stem}:{case.line}")
def test_effect_case(case: Case) -> None:
    variance = assessed(case)
    found = [told(effect) for effect in variance.effects]
    where = f"{case.file}:{case.line}"
    listing = "\n".join(" | ".join(one.values()) for one in found)
    for row in rows_of(case.expected) if "|" in case.expected else []:
        assert any(row.items() <= one.items() for one in found), f"{where}: {row}\nfound:\n{listing}"
    findings = [finding.text for finding in variance.findings]
    for word, text in closing_lines(case.expected):
        if word == "finding":
            assert text in findings, f"{where}: {text}\nfound:\n" + "\n".join(findings)
        elif word == "without":
            assert not [one for one in found if one["quantity"] == text], (
                f"{where}: {text}\nfound:\n{listing}"
            )
        elif word == "outcome":
            assert variance.outcome == text, f"{where}: {variance.outcome}"
        elif word == "no finding":
            assert not findings, f"{where}:\n" + "\n".join(findings)
        else:
            raise AssertionError(f"{where}: no line is called `{word}`")
