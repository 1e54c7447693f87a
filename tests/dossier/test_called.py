"""How a person is called in the place of their role's name: written, kept, and told in each language."""

from __future__ import annotations

import pytest

from dossier.telling import vocabulary
from intent.dossier.work_text import read_work
from intent.dossier.write_work import write_work
from intent.language.locale import ENGLISH
from intent.model.naming import person_words, role_of
from intent.model.work import Work
from intent.record.load_work import load_work

WORK = """# Ferry

- number: 7

## People

| person | name             | role   | called           |
| ------ | ---------------- | ------ | ---------------- |
| ilka   | Ilka Brandvold   | artist | Künstlerin       |
| otto   | Ottiline Quarrow | artist | maker of puppets |
| odile  | Odile Varga-Finn | artist |                  |

## Parts

### Monitors

- kind: display

| part | rotation |
| ---- | -------- |
| M1   | upright  |
"""


def read(text: str) -> Work:
    reading = read_work(text, "work.md", vocabulary())
    assert [str(found) for found in reading.findings if found.is_error] == []
    return load_work(reading.triples, reading.iri, vocabulary())


@pytest.mark.parametrize(
    ("identifier", "told"),
    [
        ("ilka", {"en": "artist", "de": "Künstlerin", "fr": "artiste"}),
        ("otto", {"en": "maker of puppets", "de": "maker of puppets", "fr": "maker of puppets"}),
        ("odile", {"en": "artist", "de": "Künstlerin oder Künstler", "fr": "artiste"}),
    ],
)
def test_a_name_of_the_role_is_told_where_it_is_spoken_and_any_other_word_everywhere(
    identifier: str, told: dict[str, str]
) -> None:
    work = read(WORK)
    person = work.person(identifier)
    assert person is not None
    assert {language: role_of(work, person).label_in(language) for language in told} == told


def test_a_person_is_told_with_it() -> None:
    assert ENGLISH.say(person_words(read(WORK), "otto")) == "Ottiline Quarrow (maker of puppets)"


def test_it_comes_back() -> None:
    assert WORK.split("## Parts")[0] in write_work(read(WORK))
