"""The languages in which papers are written; what one needs is read only when it is asked for."""

from __future__ import annotations

from intent.language.locale import ENGLISH, Locale

LANGUAGES = ("en", "de", "fr")
"""The languages in which a paper can be written, as language tags (BCP 47)."""


def locale_of(language: str) -> Locale:
    """How a language tells messages. Raises ``ValueError`` for a language in which no paper can be written."""
    if language == "en":
        return ENGLISH
    if language not in LANGUAGES:
        raise ValueError(f"`{language}` is not a language of a paper; choose one of {', '.join(LANGUAGES)}")
    # it reads a catalogue and CLDR data, for which English does not wait
    from intent.language.catalogued import catalogued_locale

    return catalogued_locale(language)
