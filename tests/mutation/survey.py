"""Which small changes to the rules are noticed: by the verdicts of the cases, by those of random works, or by nothing.

The verdicts of the unchanged program are taken first. Then each change is made in a process of its own, which judges
the same works again and stops at the first verdict that differs. A change of `values` has them read anew as well.
"""

from __future__ import annotations

import importlib.abc
import importlib.util
import multiprocessing
import os
import signal
import sys
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from importlib.machinery import ModuleSpec
from multiprocessing.connection import Connection, wait
from multiprocessing.process import BaseProcess
from pathlib import Path
from random import Random
from types import ModuleType
from typing import Any

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT / "tests"), str(ROOT), str(ROOT / "tests" / "mutation")]

from mutants import Mutant, mutants_of  # noqa: E402  after the folders are known

ROOMS = ("values", "variance")
WORDS = {"amounts.py", "reasons.py", "device_obstacles.py"}
"""Modules that tell what was found, and change no verdict."""
RANDOM_WORKS = 400
SECONDS = 120
"""A change that makes judging endless is noticed."""

Verdicts = frozenset[tuple[str, ...]]
Read = tuple[Any, Any]
"""A work and an installation; their classes are not named, since a change may have them imported anew."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Text:
    """A work and an installation of it."""

    name: str
    work: str
    pool: str
    installation: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Known:
    """A text as read, with the verdicts of the unchanged program."""

    text: Text
    read: Read
    verdicts: Verdicts


class _Changed(importlib.abc.MetaPathFinder, importlib.abc.Loader):
    """Finds the changed module in place of the one on the disk."""

    def __init__(self, mutant: Mutant) -> None:
        self.mutant = mutant
        self.name = ".".join(mutant.file.relative_to(ROOT).with_suffix("").parts)

    def find_spec(self, fullname: str, path: object, target: ModuleType | None = None) -> ModuleSpec | None:
        if fullname != self.name:
            return None
        return importlib.util.spec_from_loader(fullname, self, origin=str(self.mutant.file))

    def create_module(self, spec: ModuleSpec) -> ModuleType | None:
        return None

    def exec_module(self, module: ModuleType) -> None:
        exec(compile(self.mutant.source, str(self.mutant.file), "exec"), module.__dict__)


def texts() -> Iterator[Text]:
    """The cases, then random works as the oracle draws them."""
    from oracle.drawing import draw_case
    from oracle.world import small_world
    from oracle.writing import installation_text, work_text
    from test_cases import every_case, whole_installation, whole_work

    for case in every_case():
        yield Text(
            name=str(case), work=whole_work(case), pool=case.pool, installation=whole_installation(case)
        )
    world = small_world()
    for seed in range(RANDOM_WORKS):
        drawn = draw_case(Random(seed), world)
        yield Text(
            name=f"seed {seed}",
            work=work_text(drawn),
            pool="",
            installation=installation_text(drawn),
        )


def read(text: Text) -> Read:
    """A text as typed objects."""
    from examples_read import vocabulary

    from intent.dossier.installation_text import read_installation, read_pool
    from intent.dossier.work_text import read_work
    from intent.record.load_installation import load_installation
    from intent.record.load_work import load_work

    reading = read_work(text.work, "work.md", vocabulary())
    work = load_work(reading.triples, reading.iri, vocabulary())
    pool = read_pool(text.pool, "pool.md", work) if text.pool else None
    proposal = read_installation(text.installation, "installation.md", work, pool)
    devices = pool.triples if pool else ()
    return work, load_installation(proposal.triples, proposal.iri, work, reading.triples, devices)


def verdicts_of(found: Read) -> Verdicts:
    """The verdicts on an installation, and the outcome."""
    from intent.language.locale import ENGLISH
    from intent.variance.judge import judge

    variance = judge(*found)
    rows = (
        (row.subject.written, ENGLISH.say(row.characteristic), str(row.verdict), str(row.days))
        for row in variance.rows
    )
    return frozenset([*rows, ("outcome", str(variance.outcome), ",".join(variance.refer_to))])


def noticed(mutant: Mutant, known: Sequence[Known]) -> str:
    """By what a change is noticed; nothing where it is not."""
    anew = "values" in mutant.file.parts  # everything that is typed holds values, so all is read once more
    for name in list(sys.modules):
        if name.startswith("intent.variance") or (
            anew and name.partition(".")[0] in {"intent", "test_cases", "examples_read", "oracle"}
        ):
            del sys.modules[name]
    sys.meta_path.insert(0, _Changed(mutant))
    signal.alarm(SECONDS)
    if anew and not _values_hold():
        return "tests of values"  # asked first, since to read all works anew takes half a minute
    for one in known:
        try:
            differs = verdicts_of(read(one.text) if anew else one.read) != one.verdicts
        except Exception as fault:
            return f"{one.text.name}: {type(fault).__name__}"
        if differs:
            return one.text.name
    return ""


def _values_hold() -> bool:
    import pytest

    tests = [str(ROOT / "tests" / name) for name in ("test_values.py", "test_bounds.py", "test_dates.py")]
    return pytest.main(["-q", "-x", "-p", "no:xdist", *tests]) == 0


def _in_a_process(mutant: Mutant, known: Sequence[Known], says: Connection) -> None:
    quiet = os.open(os.devnull, os.O_WRONLY)
    os.dup2(quiet, 1)
    os.dup2(quiet, 2)
    says.send(noticed(mutant, known))


def survey(mutants: Iterable[Mutant], known: Sequence[Known]) -> Iterator[tuple[Mutant, str]]:
    """What `noticed` says of each, asked in a process of its own; one that dies or never ends has been noticed.

    The processes are forked here, where no other thread runs that could hold a lock.
    """
    waiting, running = iter(mutants), dict[int, tuple[Mutant, Connection, BaseProcess]]()
    while True:
        while len(running) < (os.cpu_count() or 1) and (mutant := next(waiting, None)) is not None:
            hears, says = multiprocessing.Pipe(duplex=False)
            process = multiprocessing.get_context("fork").Process(
                target=_in_a_process, args=(mutant, known, says)
            )
            process.start()
            says.close()
            running[process.sentinel] = (mutant, hears, process)
        if not running:
            return
        for sentinel in [one for one in wait(list(running)) if isinstance(one, int)]:
            asked, answer, ended = running.pop(sentinel)
            ended.join()
            yield asked, str(answer.recv()) if ended.exitcode == 0 else "it ends otherwise"
            answer.close()


def modules(wanted: Sequence[str]) -> list[Path]:
    """The modules to change: those named, by their path below `intent`, or all of the rooms."""
    if wanted:
        return [ROOT / "intent" / name for name in wanted]
    return [
        file
        for room in ROOMS
        for file in sorted((ROOT / "intent" / room).rglob("*.py"))
        if file.name not in WORDS
    ]


def main() -> None:
    """Print each change that only random works notice, and each that nothing does."""
    known = []
    for text in texts():
        found = read(text)
        known.append(Known(text=text, read=found, verdicts=verdicts_of(found)))
    files = modules(sys.argv[1:])
    unchanged = [
        Mutant(file=file, line=0, what="nothing", source=file.read_text(encoding="utf-8"))
        for file in files[:1]
    ]
    for mutant, by in survey(unchanged, known):
        if by:
            sys.exit(f"{mutant.file.name} is noticed unchanged, so that this would say nothing: {by}")
    every = [mutant for file in files for mutant in mutants_of(file)]
    counted = {"by a case": 0, "by a random work": 0, "by nothing": 0}
    for mutant, by in survey(every, known):
        how = "by a random work" if by.startswith("seed") else "by a case" if by else "by nothing"
        counted[how] += 1
        if how != "by a case":
            place = f"{mutant.file.relative_to(ROOT)}:{mutant.line}"
            print(f"{place}: noticed {by or 'by nothing'}: {mutant.what}", flush=True)
    print(", ".join(f"{number} noticed {how}" for how, number in counted.items()))


if __name__ == "__main__":
    main()
