"""Killed at any moment, packing and receiving leave nothing under the final name, or the whole.

A child process does the work and kills itself (signal 9) when it has opened, made, renamed or removed for the n-th
time; others are killed from outside after so many milliseconds. Nothing gets the chance to clean up.
"""

from __future__ import annotations

import json
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest
from redaction.work_with_secrets import written

from packages.package_examples import packed

SCRIPT = """
import json, os, shutil, signal, sys
from pathlib import Path
from intent import verbs
import intent.packages.package, intent.packages.receive

verb, given, folder, every = getattr(verbs, sys.argv[1]), sys.argv[2], Path(sys.argv[3]), int(sys.argv[4])
suffix, options = sys.argv[5], {"pdf": False} if sys.argv[1] == "pack" else {}

def killed_at(last, target):
    count = 0
    def hook(event, arguments):
        nonlocal count
        if event in {"open", "os.mkdir", "os.rename", "os.remove", "os.rmdir", "os.chmod", "os.listdir", "os.scandir"}:
            count += 1
            if count == last:
                os.kill(os.getpid(), signal.SIGKILL)
    child = os.fork()
    if not child:
        sys.addaudithook(hook)
        try:
            verb(given, target, **options)
        finally:
            os._exit(0)
    return os.waitpid(child, 0)[1]

last, told = 1, []
while True:
    target = folder / f"{last}{suffix}"
    status = killed_at(last, target)
    told.append((str(target), status))
    if not status:
        break
    last += every
print(json.dumps(told))
"""
STEPS = {"pack": "131", "receive": "37"}
"""How many steps lie between one death and the next."""
ONE = """
import sys
from intent import verbs

options = {"pdf": False} if sys.argv[1] == "pack" else {}
print("begun", flush=True)
getattr(verbs, sys.argv[1])(*sys.argv[2:], **options)
"""


def whole(path: Path) -> object:
    if path.is_dir():
        return {
            one.relative_to(path).as_posix(): one.read_bytes() for one in path.rglob("*") if one.is_file()
        }
    return path.read_bytes() if path.exists() else None


@pytest.mark.parametrize(
    ("verb", "suffix"),
    [("pack", ""), ("pack", ".zip"), ("receive", "")],
    ids=["pack", "pack a zip", "receive"],
)
def test_killed_at_the_nth_step(verb: str, suffix: str, tmp_path: Path) -> None:
    given = written(tmp_path / "house") if verb == "pack" else packed(tmp_path)
    into = tmp_path / "into"
    into.mkdir()
    run = subprocess.run(
        [sys.executable, "-c", SCRIPT, verb, given, into, STEPS[verb], suffix],
        check=True,
        capture_output=True,
        text=True,
    )
    told = json.loads(run.stdout)
    assert len(told) > 4
    *killed, (last, _) = [(Path(path), status) for path, status in told]
    expected = whole(last)
    assert expected
    assert {status for _, status in killed} == {signal.SIGKILL}
    for path, _ in killed:
        assert whole(path) in (None, expected), path


@pytest.mark.parametrize("verb", ["pack", "receive"])
def test_killed_from_outside(verb: str, tmp_path: Path) -> None:
    house = tmp_path / "house"
    loan = written(house)
    (house / "sources/note.md").write_bytes(b"This way up, whatever they say.\n" * 1_000_000)
    sound = tmp_path / "sound"
    command = [sys.executable, "-c", ONE]
    subprocess.run([*command, "pack", loan, sound], check=True, capture_output=True)
    given = loan if verb == "pack" else sound
    expected = whole(sound)
    for delay in (0, 90, 220, 400, 700):
        target = tmp_path / f"{delay}"
        with subprocess.Popen([*command, verb, given, target], stdout=subprocess.PIPE) as child:
            assert child.stdout is not None
            child.stdout.readline()
            time.sleep(delay / 1000)
            child.kill()
        assert whole(target) in (None, expected)
