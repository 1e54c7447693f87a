"""A duty told in a language: it is the language's own, and reads as what was told."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings

from dossier.random_lines import duties
from dossier.telling import WORK, duty_meaning, duty_of, rows_of, vocabulary
from intent.dossier.duty_line import DutyLine
from intent.dossier.work_text import read_work
from intent.dossier.write_work import write_work
from intent.model.instruction_text import duty_text
from intent.names import INTENT
from intent.record.load_work import load_work

TABLE = Path(__file__).parent / "told-duties.md"
LANGUAGES = ("en", "de", "fr")
PEOPLE = ("artist", "estate")
"""The people of the work, by whose identifiers no role can be called."""


@pytest.mark.parametrize("row", rows_of(TABLE), ids=[row[0] for row in rows_of(TABLE)])
def test_each_language_tells_it_in_its_own_words(row: tuple[str, ...]) -> None:
    read = duty_of(row[0])
    assert tuple(duty_text(read, vocabulary(), language) for language in LANGUAGES) == row


@pytest.mark.parametrize("row", rows_of(TABLE), ids=[row[0] for row in rows_of(TABLE)])
def test_each_reads_as_the_same(row: tuple[str, ...]) -> None:
    english, *others = (duty_meaning(duty_of(cell)) for cell in row)
    assert others == [english] * 2


@pytest.mark.parametrize("language", LANGUAGES)
@given(duty=duties())
@settings(max_examples=100, deadline=None)
def test_what_is_told_reads_as_what_was_meant(language: str, duty: DutyLine) -> None:
    told = duty_text(duty, vocabulary(), language, PEOPLE)
    assert duty_meaning(duty_of(told)) == duty_meaning(duty), told


@given(duty=duties())
@settings(max_examples=60, deadline=None)
def test_a_duty_survives_being_written(duty: DutyLine) -> None:
    """Property 1, for duties: text to graph to text to graph."""
    once = read_work(
        f"{WORK}- duty: {duty_text(duty, vocabulary(), people=PEOPLE)}\n", "work.md", vocabulary()
    )
    text = write_work(load_work(once.triples, once.iri, vocabulary()))
    assert set(read_work(text, "work.md", vocabulary()).triples) == set(once.triples), text


OWN = (
    '"x", during, by borrower',
    '"x", every 1 days',
    '"x", every week',
    '"x", every 2 weeks, within 1 week of the end',
    "„x“, wöchentlich",
    "„x“, alle 2 Wochen, innerhalb von 3 Wochen ab Ende",
    "« x », chaque semaine",
    "« x », toutes les 2 semaines",
    "„x“, alle 3 Tage, durch die Leihnehmerin",
    "„x“, vor der Ausstellung, binnen 3 Tagen nach Beginn",
    "« x », tous les 3 jours, à la charge de l'emprunteur, dans les 14 jours à compter de la fin",
)


@pytest.mark.parametrize("line", OWN)
def test_a_works_own_words_come_back(line: str) -> None:
    once = read_work(f"{WORK}- duty: {line}\n", "work.md", vocabulary())
    assert not [found for found in once.findings if found.is_error]
    assert f"- duty: {line}\n" in write_work(load_work(once.triples, once.iri, vocabulary()))


WEEKS = {
    '"x", every week': '"x", every 7 days',
    '"x", weekly': '"x", every 7 days',
    '"x", every 2 weeks': '"x", every 14 days',
    '"x", within 1 week of the start': '"x", within 7 days of the start',
    "„x“, jede Woche": '"x", every 7 days',
    "„x“, alle 2 Wochen": '"x", every 14 days',
    "« x », toutes les semaines": '"x", every 7 days',
    "« x », toutes les 2 semaines": '"x", every 14 days',
}


@pytest.mark.parametrize("line", WEEKS)
def test_weeks_are_seven_days(line: str) -> None:
    assert duty_meaning(duty_of(line)) == duty_meaning(duty_of(WEEKS[line]))


def test_a_person_goes_before_a_role_of_the_same_name() -> None:
    """And a role of that name is written by another of its labels, so that it stays the role."""
    text = WORK.replace("\n\n## Parts", "\n| borrower | Tove Lindqvist | curator |\n\n## Parts", 1)
    once = read_work(f'{text}- duty: "x", by borrower\n- duty: "y", by Leihnehmer\n', "work.md", vocabulary())
    work = load_work(once.triples, once.iri, vocabulary())
    assert [(duty.person, bool(duty.role)) for duty in work.duties] == [("borrower", False), (None, True)]
    bare = [triple for triple in once.triples if triple[1] != INTENT.written]
    again = read_work(write_work(load_work(bare, once.iri, vocabulary())), "work.md", vocabulary())
    written = load_work(again.triples, again.iri, vocabulary())
    assert [(duty.person, duty.role) for duty in written.duties] == [
        (duty.person, duty.role) for duty in work.duties
    ]
