"""The texts to start from: each can be read, says the same in every language, and is found where it is left so."""

from __future__ import annotations

import re

import pytest

from dossier.telling import vocabulary
from intent.dossier.installation_text import read_installation
from intent.dossier.template_text import template_text
from intent.dossier.work_text import read_work
from intent.model.work import Work
from intent.record.load_work import load_work

LANGUAGES = ("en", "de", "fr")
RARE = ("notes-section", "own-characteristics-section", "own-values-section")
"""Sections for a collection of its own words, and for what is not read."""
PLACEHOLDERS = 6
"""Of a work: its title, its artist twice, the museum, the conservator, and the words quoted."""


def work(language: str) -> Work:
    reading = read_work(template_text("work", language), "work.md", vocabulary())
    assert [str(found) for found in reading.findings if found.is_error] == []
    return load_work(reading.triples, reading.iri, vocabulary())


@pytest.mark.parametrize("language", LANGUAGES)
def test_what_is_left_of_it_is_found(language: str) -> None:
    reading = read_work(template_text("work", language), "work.md", vocabulary())
    found = [finding for finding in reading.findings if finding.slug == "template-text"]
    assert len(found) == PLACEHOLDERS


@pytest.mark.parametrize("language", LANGUAGES[1:])
def test_a_work_begins_with_the_same_things(language: str) -> None:
    english, other = work("en"), work(language)
    assert [part.statements for part in other.parts] == [part.statements for part in english.parts]
    assert [person.role for person in other.people] == [person.role for person in english.people]
    assert [device.status for device in other.devices] == [device.status for device in english.devices]
    assert other.statements == english.statements
    assert [source.kind for source in other.sources] == [source.kind for source in english.sources]
    assert said(other) == said(english)


def said(found: Work) -> list[tuple[str, str]]:
    """Modality and assertion of each instruction; the group and the facts are called otherwise in each language."""
    group = found.groups[0].name
    return [(line.modality, line.sentence.split(",")[0].replace(group, "…")) for line in found.instructions]


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_section_of_a_work_is_shown(language: str) -> None:
    text = template_text("work", language)
    shown = set(re.findall("^## (.+)$", text, re.MULTILINE))
    sections = vocabulary().sections.values()
    of_a_work = {one.label_in(language) for one in sections if "work" in one.documents and one.labels}
    rare = {one.label_in(language) for one in sections if one.iri.endswith(RARE)}
    assert shown == of_a_work - rare


@pytest.mark.parametrize("language", LANGUAGES)
def test_what_is_shown_in_a_note_can_be_written(language: str) -> None:
    """Two duties, and who alone may dispense, put under the heading."""
    text = template_text("work", language)
    shown = re.findall(r"`(- (?:duty|lifted by|Pflicht|aufzuheben von|obligation|levée par) ?: [^`]+)`", text)
    assert len(shown) == 3
    last = text.index("\n", text.index(" S1\n", text.index("### R1"))) + 1
    tried = text[:last] + "".join(f"{line}\n" for line in shown) + text[last:]
    reading = read_work(tried, "work.md", vocabulary())
    assert [str(found) for found in reading.findings if found.is_error] == []
    found = load_work(reading.triples, reading.iri, vocabulary())
    assert [(bool(duty.person), duty.timing.every, duty.timing.within) for duty in found.duties] == [
        (True, 14, None),
        (False, None, 14),
    ]
    assert found.headings[0].lifted_by == ("artist",)


@pytest.mark.parametrize("language", LANGUAGES)
def test_an_installation_can_be_read_beside_it(language: str) -> None:
    text = template_text("installation", language)
    reading = read_installation(text, "installation.md", work(language))
    assert [str(found) for found in reading.findings if found.is_error] == []
    assert [found.slug for found in reading.findings] == ["template-text", "template-text"]


def test_a_language_without_one_begins_in_english() -> None:
    assert template_text("work", "it") == template_text("work")
