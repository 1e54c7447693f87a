"""What a term means, beside what it is called."""

from __future__ import annotations

from dataclasses import dataclass

from intent.vocabulary.terms import Concept


@dataclass(frozen=True, slots=True)
class Definition:
    """What a term means, to stand in a message as the term itself does."""

    term: Concept

    def label_in(self, language: str) -> str:
        """The definition in a language, else in English."""
        return self.term.text_in(language)
