"""Measures receiving a package against `sha512sum` on the same payload, in one run: the ratio should be 0.7 or more.

    tests/bench/receive [MEBIBYTES] [FOLDER]

The payload is one file of random bytes, 1024 MiB if not said. Everything is read once before, so that what is measured
is the work and not the disk's first reading. Each is done three times, in turn, and the best counts.
"""

from __future__ import annotations

import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from functools import partial
from os import urandom
from pathlib import Path

from intent import verbs

MEBIBYTE = 1024 * 1024
TURNS = 3
WORK = """# Timetable for a Ferry

- number: 7
- owner: Hollins Street Museum

## Parts

| part | kind    |
| ---- | ------- |
| M1   | display |

## Material

| material | channel | file        |
| -------- | ------- | ----------- |
| V1       | A       | media/v1.mkv |
"""


def main(arguments: list[str]) -> None:
    size = int(arguments[0]) if arguments else 1024
    with tempfile.TemporaryDirectory(dir=arguments[1] if len(arguments) > 1 else None) as name:
        measure(Path(name), size)


def measure(folder: Path, size: int) -> None:
    work = folder / "house/work.md"
    (work.parent / "media").mkdir(parents=True)
    work.write_text(WORK, encoding="utf-8")
    with (work.parent / "media/v1.mkv").open("wb") as stream:
        for _ in range(size // 16):
            stream.write(urandom(16 * MEBIBYTE))
    packages = [verbs.pack(work, folder / name, pdf=False).path for name in ("package", "package.zip")]
    shutil.rmtree(work.parent)
    payload = packages[0] / "data/dossier/media/v1.mkv"
    best: dict[str, float] = {}
    for _ in range(TURNS):
        took(
            best,
            "sha512sum",
            partial(subprocess.run, ["sha512sum", payload], check=True, capture_output=True),
        )
        for package in packages:
            took(best, f"receive {package.name}", partial(verbs.receive, package, folder / "opened"))
            shutil.rmtree(folder / "opened")
    for what, seconds in best.items():
        ratio = best["sha512sum"] / seconds
        print(f"{what:<22}{seconds:6.2f} s{size / seconds:8.0f} MiB/s   {ratio:.2f} of sha512sum")


def took(best: dict[str, float], what: str, does: Callable[[], object]) -> None:
    begun = time.perf_counter()
    does()
    best[what] = min(best.get(what, float("inf")), time.perf_counter() - begun)


if __name__ == "__main__":
    main(sys.argv[1:])
