"""What is left of the text that `intent new` wrote: the places that stand for something to be filled in."""

from __future__ import annotations

import re
from collections.abc import Iterator
from importlib.resources import files

from intent.diagnostics import Severity, Span
from intent.dossier.draft import Draft
from intent.language.message import say

TEMPLATES = {"work": "new-work.md", "installation": "new-installation.md"}
_FILLED_IN = re.compile(
    r"^# (?P<title>.+)$|^> (?P<words>.+)$|(?:: |\| )(?P<name>Name of [^|\n]*?)\s*(?:\||$)", re.MULTILINE
)


def find_template_text(draft: Draft, text: str, document: str) -> None:
    """Find the placeholders of the template of a ``work`` or an ``installation`` in a text."""
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
    template = files("intent.dossier").joinpath(TEMPLATES[document]).read_text(encoding="utf-8")
    for match in _FILLED_IN.finditer(template):
        yield match[match.lastgroup or 0]
