"""The one surface to import from: each of its names can be had, says what it does, and is on the command line."""

from __future__ import annotations

import inspect
import subprocess
import sys

import pytest

import intent
from intent import verbs
from intent.commands.main import COMMANDS, Commands
from intent.language.languages import LANGUAGES

PAPERS = (
    "check",
    "cards",
    "explain",
    "history",
    "compare",
    "questions",
    "terms",
    "pack",
    "prepare",
    "receive",
    "new",
)
"""The commands that write or tell something for people."""


@pytest.mark.parametrize("name", verbs.__all__)
def test_every_verb_can_be_imported_and_says_what_it_does(name: str) -> None:
    found = getattr(verbs, name)
    assert getattr(intent, name) is found
    assert inspect.getdoc(found)


def test_nothing_else_is_offered() -> None:
    for name in ("Path", "assess", "no_such_verb"):
        with pytest.raises(AttributeError):
            getattr(verbs, name)
        with pytest.raises(AttributeError):
            getattr(intent, name)


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_is_there(name: str) -> None:
    group = Commands()
    command = group.get_command(None, name)  # type: ignore[arg-type]  # it asks nothing of the context
    assert command is not None
    assert command.name == name


@pytest.mark.parametrize("name", PAPERS)
def test_every_paper_can_be_had_in_every_language(name: str) -> None:
    command = Commands().get_command(None, name)  # type: ignore[arg-type]
    assert command is not None
    (option,) = (one for one in command.params if one.name == "language")
    assert tuple(option.type.choices) == LANGUAGES  # type: ignore[attr-defined]


def test_asking_for_help_or_one_command_imports_no_other() -> None:
    program = (
        "import sys; from intent.commands.main import Commands; Commands().get_command(None, 'terms'); "
        "sys.exit(any(name.endswith(('.exchanging', '.installing', '.looking')) for name in sys.modules))"
    )
    subprocess.run([sys.executable, "-c", program], check=True)
