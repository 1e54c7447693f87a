"""Hostile packages: each refused with its reason, in no time, and without a trace."""

from __future__ import annotations

import os
import random
import shutil
import time
import zipfile
from pathlib import Path
from typing import IO, cast

import pytest

from intent import verbs
from intent.diagnostics import Unusable
from intent.packages.limits import Limits
from intent.packages.receive import receive_package
from packages.hostile import IN_FOLDERS, IN_ZIPS, Hostile, sealed, zipped
from packages.package_examples import packed

LIMITS = Limits(most_files=200)
LONGEST = 5.0
"""Seconds that a refusal may take; each takes a fraction of one."""


@pytest.fixture(scope="module")
def sound(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return packed(tmp_path_factory.mktemp("sound"))


def state_of(folder: Path) -> dict[str, tuple[int, int, bytes]]:
    """Everything in a folder: kind, size, and what it holds where that can be read."""
    found = {}
    for place, folders, names in os.walk(os.fsencode(folder)):
        for name in [*folders, *names]:
            path = os.path.join(place, name)
            looked = os.lstat(path)
            small = not os.path.islink(path) and os.path.isfile(path) and looked.st_size < 1 << 20
            content = Path(os.fsdecode(path)).read_bytes() if small else b""
            found[os.fsdecode(path)] = (looked.st_mode, looked.st_size, content)
    return found


def refused(package: Path, folder: Path) -> list[str]:
    """The slugs with which a package is refused; nothing may have changed around it, and no time be lost."""
    before, begun = state_of(folder), time.monotonic()
    with pytest.raises(Unusable) as error:
        receive_package(package, folder / "opened", limits=LIMITS)
    assert time.monotonic() - begun < LONGEST
    assert state_of(folder) == before
    for found in error.value.diagnostics:
        assert found.span.file.startswith(str(package)), found
        assert str(found).isprintable() or "\n" in str(found)
        assert "\x1b" not in str(found)
    return [found.slug for found in error.value.diagnostics]


@pytest.mark.parametrize("hostile", IN_FOLDERS, ids=lambda one: one.name)
def test_hostile_folders_are_refused(hostile: Hostile, sound: Path, tmp_path: Path) -> None:
    package = tmp_path / "package"
    shutil.copytree(sound, package)
    hostile.spoils(package)
    assert hostile.slug in refused(package, tmp_path)


@pytest.mark.parametrize("hostile", IN_ZIPS, ids=lambda one: one.name)
def test_hostile_zips_are_refused(hostile: Hostile, sound: Path, tmp_path: Path) -> None:
    package = tmp_path / "package.zip"
    zipped(sound, package)
    hostile.spoils(package)
    assert hostile.slug in refused(package, tmp_path)


def test_there_are_enough_of_them() -> None:
    assert len(IN_FOLDERS) + len(IN_ZIPS) >= 40
    names = [one.name for one in (*IN_FOLDERS, *IN_ZIPS)]
    assert len(set(names)) >= len(names) - 2


def test_every_fault_is_told(sound: Path, tmp_path: Path) -> None:
    package = tmp_path / "package"
    shutil.copytree(sound, package)
    chosen = (
        "a pipe",
        "a name with a line end",
        "an Oxum that is wrong",
        "a tag file changed",
        "something to fetch",
    )
    for hostile in IN_FOLDERS:
        if hostile.name in chosen:
            hostile.spoils(package)
    (package / "data/dossier/work.md").write_text("other", encoding="utf-8")
    found = set(refused(package, tmp_path))
    assert {"special-file", "control-character", "oxum-differs", "fetch-item", "digest-differs"} <= found


def test_sound_packages_are_opened(sound: Path, tmp_path: Path) -> None:
    for name, method in (("stored.zip", 0), ("deflated.zip", 8)):
        zipped(sound, tmp_path / name, method=method)
        opened = receive_package(tmp_path / name, tmp_path / name.removesuffix(".zip"), limits=LIMITS)
        assert {path: content for path, (_, _, content) in relative(opened.folder).items()} == {
            path: content for path, (_, _, content) in relative(sound).items()
        }


def relative(folder: Path) -> dict[str, tuple[int, int, bytes]]:
    return {path.removeprefix(str(folder)): found for path, found in state_of(folder).items()}


class Pipe:
    """Something to write to, in which nobody can go back."""

    def __init__(self) -> None:
        self.written = bytearray()

    def write(self, data: bytes) -> int:
        self.written += data
        return len(data)

    def flush(self) -> None:
        """Nothing waits."""


def test_a_zip_from_a_stream_is_opened(sound: Path, tmp_path: Path) -> None:
    """Sizes that follow the entry, as in zips written to a pipe (APPNOTE 4.3.9)."""
    pipe = Pipe()
    with zipfile.ZipFile(cast(IO[bytes], pipe), "w") as archive:
        for path in sorted(path for path in sound.rglob("*") if path.is_file()):
            archive.writestr(f"package/{path.relative_to(sound).as_posix()}", path.read_bytes(), 8)
    (tmp_path / "streamed.zip").write_bytes(pipe.written)
    assert receive_package(tmp_path / "streamed.zip", tmp_path / "opened").judged.variance is not None


def test_verdicts_that_differ_are_told(sound: Path, tmp_path: Path) -> None:
    package = tmp_path / "package"
    shutil.copytree(sound, package)
    report = package / "data/report/report.json"
    text = report.read_text(encoding="utf-8")
    assert '"outcome": "not-acceptable"' in text
    assert '"verdict": "breach"' in text
    changed = text.replace('"not-acceptable"', '"acceptable"').replace('"breach"', '"allowed"')
    report.write_text(changed, encoding="utf-8")
    sealed(package)
    received = receive_package(package, tmp_path / "opened")
    assert {"outcome-differs", "verdict-differs"} <= {found.slug for found in received.findings}


def test_a_held_copy_is_compared(sound: Path, tmp_path: Path) -> None:
    held = sound.parent / "house/work.md"
    older = held.with_name("older.md")
    older.write_text(held.read_text("utf-8").replace("upright ± 2 deg", "upright ± 5 deg"), encoding="utf-8")
    received = verbs.receive(sound, tmp_path / "opened", older)
    assert received.comparison is not None
    assert "R1.1" in {one.name for one in received.comparison.differences}


def test_a_place_that_is_taken_is_left_alone(sound: Path, tmp_path: Path) -> None:
    (tmp_path / "taken").mkdir()
    places = {
        "file-exists": tmp_path / "taken",
        "within-package": sound / "within",
        "no-folder": tmp_path / "no/folder",
    }
    for slug, into in places.items():
        with pytest.raises(Unusable) as error:
            verbs.receive(sound, into)
        assert [found.slug for found in error.value.diagnostics] == [slug]
    assert not list((tmp_path / "taken").iterdir())
    assert not (sound / "within").exists()


@pytest.mark.parametrize("name", ["nothing", "device"])
def test_what_is_no_package(name: str, tmp_path: Path) -> None:
    package = Path("/dev/zero") if name == "device" else tmp_path / "nothing"
    with pytest.raises(Unusable):
        verbs.receive(package, tmp_path / "opened")


def test_no_damage_ends_in_anything_but_a_refusal(sound: Path, tmp_path: Path) -> None:
    """design.md, section 7, property 9: bytes changed, lost and put in, anywhere in a zip."""
    draw = random.Random(8493)
    zipped(sound, tmp_path / "sound.zip", method=zipfile.ZIP_DEFLATED)
    content = (tmp_path / "sound.zip").read_bytes()
    for number in range(60):
        damaged = bytearray(content)
        place = draw.randrange(len(damaged) - 4000 if number % 2 else 0, len(damaged))
        damaged[place : place + draw.randint(0, 3)] = draw.randbytes(draw.randint(1, 4))
        (tmp_path / "package.zip").write_bytes(damaged)
        try:
            receive_package(tmp_path / "package.zip", tmp_path / "opened", limits=LIMITS)
        except Unusable:
            assert sorted(path.name for path in tmp_path.iterdir()) == ["package.zip", "sound.zip"]
        else:  # bytes that say nothing, such as the time of an entry
            assert relative(tmp_path / "opened").keys() == relative(sound).keys()
            shutil.rmtree(tmp_path / "opened")


def test_a_bag_of_another_maker_is_opened(sound: Path, tmp_path: Path) -> None:
    """Written by the PyPI package `bagit`, with two algorithms, as an independent writer of RFC 8493."""
    bagit = pytest.importorskip("bagit")
    package = tmp_path / "package"
    shutil.copytree(sound / "data", package)
    bagit.make_bag(str(package), {"Contact-Name": "Odile Varga-Finn"}, checksums=["sha512", "sha256"])
    received = receive_package(package, tmp_path / "opened")
    assert received.judged.variance is not None
    assert received.left_out == ""


def test_digests_that_can_be_forged_are_told(sound: Path, tmp_path: Path) -> None:
    """MD5 is known to be forgeable (RFC 6151); RFC 8493, section 2.4, still names it."""
    bagit = pytest.importorskip("bagit")
    package = tmp_path / "package"
    shutil.copytree(sound / "data", package)
    bagit.make_bag(str(package), {"Contact-Name": "Odile Varga-Finn"}, checksums=["md5"])
    received = receive_package(package, tmp_path / "opened")
    assert "weak-digest" in {found.slug for found in received.findings}
