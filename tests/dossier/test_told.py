"""A sentence told in a language: it is the language's own, and reads as what was told."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from examples_read import WORKS, documentation
from hypothesis import given, settings

from dossier.random_lines import lines
from dossier.telling import WORK, line_of, meaning, rows_of, vocabulary
from intent.dossier.interpret import Line
from intent.dossier.work_register import register_of
from intent.dossier.work_text import read_work
from intent.dossier.write_work import write_work
from intent.language.languages import locale_of
from intent.language.locale import ENGLISH
from intent.language.message import joined, named
from intent.model.instruction_text import InstructionSentence, modality_term, sentence_text
from intent.model.work import Instruction, Work
from intent.record.load_work import load_work

TABLE = Path(__file__).parent / "told.md"
LANGUAGES = ("en", "de", "fr")


@pytest.mark.parametrize("row", rows_of(TABLE), ids=[row[0] for row in rows_of(TABLE)])
def test_each_language_tells_it_in_its_own_words(row: tuple[str, ...]) -> None:
    read = line_of(row[0])
    assert tuple(sentence_text(read, vocabulary(), language) for language in LANGUAGES) == row


@pytest.mark.parametrize("row", rows_of(TABLE), ids=[row[0] for row in rows_of(TABLE)])
def test_each_reads_as_the_same(row: tuple[str, ...]) -> None:
    english, *others = (line_of(cell) for cell in row)
    assert [meaning(other) for other in others] == [meaning(english)] * 2


@pytest.mark.parametrize("language", LANGUAGES)
@given(line=lines())
@settings(max_examples=250, deadline=None)
def test_what_is_told_reads_as_what_was_meant(language: str, line: Line) -> None:
    told = sentence_text(line, vocabulary(), language)
    assert meaning(line_of(told)) == meaning(line), told


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("path", WORKS, ids=lambda path: path.parent.name)
def test_the_instructions_of_the_examples_are_told_so_that_they_read_the_same(
    path: Path, language: str
) -> None:
    work = documentation(path).work
    for line in work.instructions:
        told = InstructionSentence(line, work.vocabulary).label_in(language)
        assert meaning(line_of(told, register_of(work), work.vocabulary)) == meaning(line), told


def test_a_sentence_stands_in_a_message_and_is_told_in_its_language() -> None:
    line = instruction("Technologie von M1 ist Bildröhre, mit Zustimmung von estate")
    sentence = InstructionSentence(line, vocabulary())
    message = joined([named(modality_term(line.modality, vocabulary())), named(sentence)])
    assert ENGLISH.say(message) == "allowed technology of M1 is cathode-ray tube, with consent of estate"
    told = locale_of("fr").say(message)
    assert told == "autorisé technologie de M1 est tube cathodique, avec l’accord d’estate"


def instruction(sentence: str) -> Instruction:
    return work_with(sentence).instructions[0]


def work_with(*sentences: str) -> Work:
    text = WORK + "".join(f"- allowed: {sentence}\n" for sentence in sentences)
    reading = read_work(text, "work.md", vocabulary())
    assert not [found for found in reading.findings if found.is_error]
    return load_work(reading.triples, reading.iri, vocabulary())


OWN = {
    "Technologie von M1 ist Bildröhre": {"en", "fr"},
    "technologie de M1 est tube cathodique": {"en", "de"},
    "technology of M1 is cathode-ray tube": {"de", "fr"},
    "Technology of M1  is “cathode-ray tube”": {"de", "fr"},
    "technology of M1 is CRT": {"en", "de", "fr"},
}
"""Sentences as they may be written, with the languages that tell them in other words."""


@pytest.mark.parametrize("sentence", OWN)
def test_it_is_known_where_the_writers_own_line_says_it_otherwise(sentence: str) -> None:
    told = InstructionSentence(instruction(sentence), vocabulary())
    assert {language for language in LANGUAGES if told.differs_in(language)} == OWN[sentence]


def test_a_works_own_words_come_back() -> None:
    """And what is written as it would be told is not kept twice."""
    lines_of_work = work_with(*OWN)
    written = write_work(lines_of_work)
    for sentence in ("Technologie von M1 ist Bildröhre", "technology of M1 is CRT"):
        assert f"- allowed: {sentence}\n" in written
    assert [line.written for line in lines_of_work.instructions if not line.written] == ["", ""]
    assert "- allowed: technology of M1 is cathode-ray tube\n" in written


def test_words_that_say_something_else_by_now_are_not_written() -> None:
    """A record from elsewhere may belie its own words."""
    found = work_with("Technologie von M1 ist Bildröhre")
    (line,) = found.instructions
    belied = replace(found, instructions=(replace(line, written="Technologie von M1 ist LCD"),))
    assert "- allowed: technology of M1 is cathode-ray tube\n" in write_work(belied)
    nonsense = replace(found, instructions=(replace(line, written="M1 ist"),))
    assert "- allowed: technology of M1 is cathode-ray tube\n" in write_work(nonsense)
