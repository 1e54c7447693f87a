"""The options that several commands share, each typed once."""

from __future__ import annotations

import datetime
import functools
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any, TypeVar, cast

import click

from intent.language.languages import LANGUAGES
from intent.reading.atomic_write import refuse_taken

FILE = click.Path(path_type=Path)
PAPERS = ("text", "markdown", "html", "pdf")
"""The forms in which a paper is told."""
_F = TypeVar("_F", bound=Callable[..., Any])


class Day(click.ParamType[datetime.date]):
    """A day as ISO 8601 writes it; where a year or a month alone will do, its first day."""

    name = "day"

    def __init__(self, *, or_longer: bool = False) -> None:
        self._forms = ("%Y-%m-%d", "%Y-%m", "%Y") if or_longer else ("%Y-%m-%d",)

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> datetime.date:
        """The day; a value that is none is refused, with how a day is written."""
        for form in self._forms:
            try:
                return datetime.datetime.strptime(str(value), form).date()
            except ValueError:
                continue
        longer = ", a month as 2026-12, a year as 2026" if len(self._forms) > 1 else ""
        message = f"`{value}` is no day; write the day as 2026-12-31{longer}"
        raise click.BadParameter(message, ctx=ctx, param=param)

    def get_metavar(self, param: click.Parameter, ctx: click.Context) -> str:
        """How `--help` names it."""
        return "YYYY-MM-DD"


def language_option(of: str) -> Callable[[_F], _F]:
    """The language of what is told."""
    text = f"The language of {of}; what its writers wrote stays as it is."
    return click.option(
        "--language", type=click.Choice(LANGUAGES), default="en", show_default=True, help=text
    )


def format_option(*forms: str, default: str = "text") -> Callable[[_F], _F]:
    """The form in which something is told."""
    return click.option("--format", "form", type=click.Choice(forms), default=default, show_default=True)


@dataclass(frozen=True, slots=True)
class Target:
    """A file to write, and whether what is there already may be written over."""

    path: Path
    replace: bool = False


def output_option(
    what: str = "Write here instead of printing.", *, required: bool = False
) -> Callable[[_F], _F]:
    """Where to write what would be printed, as a `Target`; what is there already is refused before any work."""

    def decorated(command: _F) -> _F:
        @functools.wraps(command)
        def aimed(*given: Any, output: Path | None, replace: bool, **named: Any) -> Any:
            if output is not None and not replace:
                refuse_taken(output)
            return command(*given, output=Target(output, replace) if output else None, **named)

        over = replace_option()(cast(_F, aimed))
        return click.option("--output", type=FILE, help=what, required=required)(over)

    return decorated


def replace_option() -> Callable[[_F], _F]:
    """Whether what is there already may be written over."""
    return click.option("--replace", is_flag=True, help="Write over the file if it is there already.")


def paper_option() -> Callable[[_F], _F]:
    """The size of the paper of a PDF."""
    sizes = click.Choice(["A4", "letter"])
    return click.option("--paper", type=sizes, default="A4", show_default=True, help="The paper of a PDF.")


def date_option(of: str) -> Callable[[_F], _F]:
    """The day that a paper bears."""
    return click.option("--date", type=Day(), help=f"{of}; today's if none.")


def work_option() -> Callable[[_F], _F]:
    """The work of an installation received without its path."""
    return click.option("--work", type=FILE, help="The work of an installation that names none.")
