"""The languages in which a report can be told, each with its catalogue: a file that gives the English patterns anew.

A catalogue is read only when its language is asked for; English has none.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from importlib.resources import files

from intent.language.message import ENGLISH, Term, Tongue, catalogue
from intent.vocabulary.terms import Vocabulary

LANGUAGES = ("en", "de", "fr")
"""Language tags (BCP 47)."""
_HELD = re.compile(r" (?=[:;?!»])|(?<=«) ")
"""In French, the spaces that hold a mark to its word (Imprimerie nationale, Lexique des règles typographiques)."""


def tongue_of(language: str, vocabulary: Vocabulary) -> Tongue:
    """How a language says patterns, numbers and the terms of a vocabulary. Raises ``ValueError`` for an unknown one."""
    if language not in LANGUAGES:
        raise ValueError(f"`{language}` is not a language of a report; choose one of {', '.join(LANGUAGES)}")
    if language == "en":
        return ENGLISH

    def term(named: Term) -> str:
        known = vocabulary.concepts.get(named.iri) or vocabulary.characteristics.get(named.iri)
        return known.label_in(language) if known else named.english

    return Tongue(pattern=catalogue(read_catalogue(language)), term=term, decimal_mark=",", language=language)


def read_catalogue(language: str) -> Mapping[str, str]:
    """The patterns of a language by the English ones."""
    text = files("intent.language").joinpath("catalogues", f"{language}.toml").read_text(encoding="utf-8")
    found: dict[str, str] = {}
    for patterns in tomllib.loads(text).values():
        found.update(patterns)
    if language == "fr":
        return {
            english: _HELD.sub("\N{NARROW NO-BREAK SPACE}", pattern) for english, pattern in found.items()
        }
    return found
