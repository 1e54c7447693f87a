"""One work in English, German and French: the names of things differ, and what is read does not."""

from __future__ import annotations

from pathlib import Path

import pytest

from intent.dossier.draft import Reading
from intent.dossier.installation_text import read_installation
from intent.dossier.work_text import read_work
from intent.names import INTENT
from intent.record.load_work import load_work
from intent.vocabulary.loader import read_vocabulary

LANGUAGES = Path(__file__).parent / "languages"


def read(language: str) -> Reading:
    text = (LANGUAGES / f"{language}.md").read_text(encoding="utf-8")
    return read_work(text, "work.md", read_vocabulary())


def statements(reading: Reading) -> set[str]:
    """The statements of the graph, a measured value told by its number and unit.

    It keeps what was written besides, `upside down` or `auf dem Kopf`, and its own name is made from that; and an
    instruction keeps its writer's own words.
    """
    triples = [
        (str(subject), str(predicate), value.n3())
        for subject, predicate, value in reading.triples
        if predicate != INTENT.written
    ]
    about: dict[str, list[str]] = {}
    for subject, predicate, value in triples:
        if "#value." in subject:
            about.setdefault(f"<{subject}>", []).append(f"{predicate} {value}")
    told = {name: "; ".join(sorted(words)) for name, words in about.items()}
    return {
        f"{told.get(f'<{subject}>', subject)} {predicate} {told.get(value, value)}"
        for subject, predicate, value in triples
    }


@pytest.mark.parametrize("language", ["english", "german", "french", "mixed"])
def test_no_word_is_unknown(language: str) -> None:
    assert [str(found) for found in read(language).findings if found.is_error] == []


@pytest.mark.parametrize("language", ["german", "french", "mixed"])
def test_the_graph_is_that_of_the_english(language: str) -> None:
    assert statements(read(language)) ^ statements(read("english")) == set()


@pytest.mark.parametrize(
    "fact",
    [
        "R1.2 cannot be had",
        "R1.2 ist nicht zu haben",
        "„R1.2 ist nicht mehr zu haben“",
        "R1.2 est introuvable",
    ],
)
def test_an_earlier_choice_that_cannot_be_had_is_attested_in_any_language(fact: str) -> None:
    assert facts(fact) == ["R1.2 cannot be had"]


def test_other_facts_stay_as_they_were_written() -> None:
    assert facts("Die Röhre ist nicht zu haben") == ["Die Röhre ist nicht zu haben"]


def facts(fact: str) -> list[str]:
    reading = read("english")
    work = load_work(reading.triples, reading.iri, read_vocabulary())
    text = f"""# Showing

- dates: 2027

## Attestations

| fact   | holds | by   |
| ------ | ----- | ---- |
| {fact} | yes   | cons |
"""
    found = read_installation(text, "installation.md", work)
    assert [str(finding) for finding in found.findings if finding.is_error] == []
    return [str(value) for _, predicate, value in found.triples if predicate == INTENT.fact]
