"""Looks through JSON-LD before it is read: it may name no context outside itself, nor nest without end."""

from __future__ import annotations

import json
import re
from collections.abc import Iterable

from intent.diagnostics import Span, refusal
from intent.language.message import say

MAXIMUM_DEPTH = 200
"""How deep objects and lists may stand in one another; a record needs five. No source for the limit."""

LONGEST_LINE = 200
"""A longer line is not quoted: often a whole document stands on one."""

_BRACKETS = re.compile(r'"(?:[^"\\]|\\.)*"?|[\[\]{}]', re.DOTALL)
_CONTEXT = "@context"
_IMPORT = "@import"


def refuse_unclosed(text: str, file: str) -> None:
    """Raise `Unusable` where the text is no JSON, nests too deeply, or names a context by IRI."""
    _refuse_depth(text, file)
    named: list[str] = []

    def look(pairs: list[tuple[str, object]]) -> dict[str, object]:
        for key, value in pairs:
            if key == _CONTEXT:
                named.extend(_names(value))
            elif key == _IMPORT and isinstance(value, str):
                named.append(value)
        return dict(pairs)

    try:
        json.loads(text, object_pairs_hook=look, parse_int=str, parse_float=str)
    except json.JSONDecodeError as error:
        what = error.msg[:1].lower() + error.msg[1:]
        message = say(
            "this is not JSON: {fault}; correct it here, or ask the sender for the file again", fault=what
        )
        raise refusal("bad-json-ld", message, _span(text, file, error.pos)) from None
    if named:
        message = say(
            "the file's meaning depends on a context kept elsewhere, `{context}`, which is not fetched; "
            "ask the sender for a file with its context written out in it",
            context=named[0],
        )
        raise refusal("remote-context", message, _span(text, file, _place(text, named[0]), len(named[0]) + 2))


def _names(context: object) -> Iterable[str]:
    """The contexts named by IRI; one written out is an object, and `null` forgets what was said before."""
    members = context if isinstance(context, list) else [context]
    return [member for member in members if isinstance(member, str)]


def _refuse_depth(text: str, file: str) -> None:
    depth = 0
    for found in _BRACKETS.finditer(text):
        if found.group() in "{[":
            depth += 1
        elif found.group() in "]}":
            depth -= 1
        if depth > MAXIMUM_DEPTH:
            message = say(
                "objects stand more than {most} deep in one another; a record is never so deep",
                most=MAXIMUM_DEPTH,
            )
            raise refusal("nested-too-deeply", message, _span(text, file, found.start()))


def _place(text: str, name: str) -> int:
    """Where a context is named: the first such text after the first word that speaks of contexts."""
    start = max(
        0, min((at for word in (_CONTEXT, _IMPORT) if (at := text.find(f'"{word}"')) >= 0), default=0)
    )
    found = text.find(json.dumps(name, ensure_ascii=False), start)
    return found if found >= 0 else start


def _span(text: str, file: str, place: int, length: int = 1) -> Span:
    begin = text.rfind("\n", 0, place) + 1
    end = text.find("\n", place)
    line = text[begin : end if end >= 0 else len(text)].rstrip("\r")
    column = place - begin + 1
    shown = line if len(line) <= LONGEST_LINE else ""
    return Span(file=file, line=text.count("\n", 0, place) + 1, column=column, text=shown, length=length)
