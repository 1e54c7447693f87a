"""Cases that can be read: files, a command, and what it prints.

A case file holds blocks between three backquotes. The words after the first three name a file that is written, or
a command; the block of a command holds what it must print. Of `intent check` only the departures are told,
of `intent validate` what is found and not the sum.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from click.testing import CliRunner

from intent.commands.main import intent
from intent.diagnostics import Unusable

_BLOCK = re.compile(r"^```(?P<word>[^\n`]+)\n(?P<text>.*?)^```$", re.MULTILINE | re.DOTALL)


@dataclass(frozen=True, slots=True)
class Command:
    """A command of a case, with what it must print, and where it stands."""

    line: int
    arguments: tuple[str, ...]
    printed: str


@dataclass(frozen=True, slots=True)
class Transcript:
    files: dict[str, str]
    commands: tuple[Command, ...]


HEADING = "POINT BY POINT, WORST FIRST\n"
"""Above the points of a report."""


def read_transcript(path: Path) -> Transcript:
    text = path.read_text(encoding="utf-8")
    files, commands = dict[str, str](), list[Command]()
    for block in _BLOCK.finditer(text):
        word, held = block["word"].strip(), block["text"]
        if word.startswith("intent "):
            line = text.count("\n", 0, block.start()) + 1
            commands.append(Command(line, tuple(word.split()[1:]), held))
        else:
            files[word] = held
    return Transcript(files, tuple(commands))


def write_files(transcript: Transcript, folder: Path) -> None:
    for name, held in transcript.files.items():
        target = folder / name
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(held, encoding="utf-8")


def replayed(path: Path, folder: Path) -> Iterator[tuple[Command, str]]:
    """The commands of a case, each with what it prints; its files are written first, to the present folder."""
    transcript = read_transcript(path)
    write_files(transcript, folder)
    yield from ((command, printed_by(command)) for command in transcript.commands)


def assert_printed(path: Path, folder: Path) -> None:
    """Every command of a case prints what the case says."""
    for command, printed in replayed(path, folder):
        assert printed == command.printed, f"{path}:{command.line}"


def printed_by(command: Command) -> str:
    """What a command prints in the present folder, messages and all, and the exit code where it is not 0."""
    ran = CliRunner().invoke(intent, list(command.arguments), standalone_mode=False)
    if isinstance(ran.exception, Unusable):
        return "".join(f"{found}\n" for found in ran.exception.diagnostics) + "exit code 2\n"
    if ran.exception is not None and not isinstance(ran.exception, SystemExit):
        return f"{ran.exception}\n"
    code = f"exit code {ran.return_value}\n" if ran.return_value else ""
    return _told(command.arguments[0], ran.output) + code


def _told(command: str, output: str) -> str:
    """What matters of an output: of a check the departures, of a validation what is found, without the sum."""
    if command == "validate":
        return "".join(output.splitlines(keepends=True)[:-1])
    if command == "check":
        return "".join(_departures(output))
    return re.sub(r"\s*Written by intent \S+ on [^.]+\.", "", output)  # of whatever version and day


def _departures(report: str) -> Iterator[str]:
    lines = report.splitlines(keepends=True)
    if HEADING not in lines:
        return
    for line in lines[lines.index(HEADING) + 2 :]:
        if line.startswith("What the verdicts mean"):
            return
        yield line
