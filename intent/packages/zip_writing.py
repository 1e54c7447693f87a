"""A folder as a zip that has the same bytes every time: entries in order, one fixed time, stored as they are.

Nothing is compressed, since what a compressor makes differs from one version of it to the next, and media are
compressed already.
"""

from __future__ import annotations

import shutil
import zipfile
from collections.abc import Iterable
from pathlib import Path

BLOCK = 1024 * 1024
_TIME = (1980, 1, 1, 0, 0, 0)
"""The earliest that a zip can say."""
_UNIX = 3
_ORDINARY = 0o100644 << 16


def write_zip(folder: Path, paths: Iterable[str], root: str, to: Path) -> None:
    """The files of a folder, below one top folder. Raises ``OSError``."""
    with zipfile.ZipFile(to, "w", zipfile.ZIP_STORED) as archive:
        for path in sorted(paths):
            info = zipfile.ZipInfo(f"{root}/{path}", _TIME)
            info.create_system, info.external_attr = _UNIX, _ORDINARY
            info.file_size = (folder / path).stat().st_size
            with (folder / path).open("rb") as source, archive.open(info, "w") as target:
                shutil.copyfileobj(source, target, BLOCK)
