"""Words of the vocabulary asked for by another name: what is about them, in one language and in English."""

from __future__ import annotations

import pytest

from intent import verbs
from intent.diagnostics import UnknownName
from intent.language.languages import locale_of
from intent.papers.telling import tell


def told(name: str | None, language: str = "en") -> str:
    return tell(verbs.terms(name, language=language).paper, "text", locale_of(language))


@pytest.mark.parametrize(
    ("name", "language", "found"),
    [
        ("flicker", "en", "pulse rate of the light:"),
        ("bruit", "fr", "bruit de marche"),
        ("Strom", "de", "Strom"),
    ],
)
def test_what_is_about_a_word_is_found_by_labels_and_meaning(name: str, language: str, found: str) -> None:
    assert found in told(name, language)


@pytest.mark.parametrize(
    ("name", "language", "title", "words"),
    [
        ("duty", "en", "DUTY, A FIELD OR A COLUMN", "Something to be done, in double quotes"),
        ("Pflicht", "de", "PFLICHT, EIN FELD ODER EINE SPALTE", "Etwas, das zu tun ist"),
        ("obligation", "fr", "OBLIGATION, UN CHAMP OU UNE COLONNE", "Ce qui est à faire"),
        ("lifted by", "en", "LIFTED BY, A FIELD OR A COLUMN", "`nobody`"),
        ("Log", "en", "LOG, A SECTION", "In it stand: "),
        ("Journal", "fr", "JOURNAL, UNE SECTION", "Ce qui est arrivé"),
        ("role", "en", "ROLES", "registrar"),
        ("statuses", "en", "STATUSES OF A DEVICE", "retired"),
        ("kind of source", "en", "KINDS OF SOURCE", "interview"),
        ("every week", "en", "EVERY WEEK, A WORD OF THE SENTENCE", "wöchentlich"),
    ],
)
def test_the_words_of_the_text_form_are_found(name: str, language: str, title: str, words: str) -> None:
    _, _, after = told(name, language).partition(f"{title}\n")
    assert words in after


@pytest.mark.parametrize("name", ["bruit", "Durchläufe", "durée de vie"])
def test_nothing_of_another_language_is_offered(name: str) -> None:
    with pytest.raises(UnknownName):
        verbs.terms(name)


def test_a_word_near_to_none_in_meaning_is_held_against_the_names_of_its_language() -> None:
    with pytest.raises(UnknownName, match="did you mean `artist`"):
        verbs.terms("artst")


def test_a_name_of_one_language_is_not_taken_for_a_word_of_another() -> None:
    assert "kein" not in told("kind").split()
    assert "KABEL" not in told("label")


@pytest.mark.parametrize(
    ("title", "word"),
    [
        ("ROLES", "registrar"),
        ("STATUSES OF A DEVICE", "retired"),
        ("STATUSES OF AN INSTALLATION", "agreed"),
        ("EVENTS OF A LOG", "cleaned"),
        ("KINDS OF SOURCE", "interview"),
        ("GROUNDS OF AN INSTRUCTION", "care"),
    ],
)
def test_the_words_of_other_columns_are_listed(title: str, word: str) -> None:
    _, _, after = told(None).partition(f"{title}\n\n")
    assert word in after.split("\n\n")[0]
