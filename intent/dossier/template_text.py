"""What is left of the text that `intent new` wrote: the places that stand for something to be filled in."""

from __future__ import annotations

import re
from collections.abc import Iterator
from importlib.resources import files

from intent.diagnostics import Severity, Span
from intent.dossier.draft import Draft
from intent.language.languages import LANGUAGES
from intent.language.message import say

_TEMPLATES = {"work": "new-work", "installation": "new-installation"}
_FILLED_IN = re.compile(
    r"^# (?P<title>.+)$|^> (?P<words>.+)$|(?:: |\| )(?P<name>(?:Name|Nom) [^\s|][^|\n]*?)\s*(?:\||$)",
    re.MULTILINE,
)


_WORK_NAMED = "work.md"
"""The work's file as the template of an installation names it."""


def template_text(document: str, language: str = "en", work: str = _WORK_NAMED) -> str:
    """The commented text that a ``work`` or an ``installation`` is begun with; in English where a language has none.

    An installation's names the file of its ``work``.
    """
    folder, name = files("intent.dossier"), _TEMPLATES[document]
    own = folder.joinpath(f"{name}.{language}.md")
    text = (own if own.is_file() else folder.joinpath(f"{name}.md")).read_text(encoding="utf-8")
    return text.replace(f": {_WORK_NAMED}\n", f": {work}\n", 1)


def find_template_text(draft: Draft, text: str, document: str) -> None:
    """Find the placeholders of the templates of a ``work`` or an ``installation`` in a text, in any language."""
    for words in dict.fromkeys(_placeholders(document)):
        if words not in text:
            continue
        stands = re.compile(rf"(?:^#+ |^> |: |\| ){re.escape(words)}\s*(?:\||$)")
        for number, line in enumerate(text.splitlines(), start=1):
            if stands.search(line):
                span = Span(
                    file=draft.file, line=number, column=line.index(words) + 1, text=line, length=len(words)
                )
                message = say("this is still the template's text")
                draft.wrong("template-text", message, span, Severity.WARNING)


def _placeholders(document: str) -> Iterator[str]:
    for language in LANGUAGES:
        for match in _FILLED_IN.finditer(template_text(document, language)):
            yield match[match.lastgroup or 0]
