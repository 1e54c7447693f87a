"""A bag that is being filled: files added and copied, and at last its declaration, metadata and manifests.

Source: RFC 8493, The BagIt File Packaging Format (V1.0), sections 2.1.1, 2.2.2, 2.1.3 and 2.2.1.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from pathlib import Path

from intent.diagnostics import Diagnostic, Span, Unusable
from intent.language.message import say
from intent.packages.carrying import CarriedFile
from intent.packages.contents import PAYLOAD
from intent.packages.file_names import collisions, name_faults
from intent.packages.manifest import SHA512, manifest_text
from intent.packages.opening import Copier, UnreadableFile
from intent.packages.tag_files import DECLARATION, DECLARED, INFO, info_text


@dataclass(frozen=True, slots=True)
class PackedFile:
    """A file of the package: its size in bytes, and its SHA-512."""

    size: int
    sha512: str


@dataclass(slots=True)
class BagBeingFilled:
    """A bag in a folder, with what lies in it so far by its path."""

    folder: Path
    packed: dict[str, PackedFile] = field(default_factory=dict)

    def add(self, path: str, content: bytes) -> None:
        place = self.folder / path
        place.parent.mkdir(parents=True, exist_ok=True)
        with place.open("xb") as stream:
            stream.write(content)
        self.packed[path] = PackedFile(len(content), hashlib.sha512(content).hexdigest())

    def add_all(self, files: Mapping[str, bytes], within: str = "") -> None:
        for name, content in files.items():
            self.add(f"{within}{name}", content)

    def copy(self, files: Iterable[CarriedFile]) -> None:
        """Copy the files that go with the dossier, each once. Raises `Unusable` where one cannot be read."""
        with Copier() as copier:
            for one in files:
                if one.is_there and one.inside not in self.packed:
                    self._copy(copier, one)

    def _copy(self, copier: Copier, one: CarriedFile) -> None:
        place = self.folder / one.inside
        place.parent.mkdir(parents=True, exist_ok=True)
        try:
            with one.path.open("rb", buffering=0) as stream:
                size, found = copier.copy(stream, None, place, [SHA512])
        except UnreadableFile as error:
            message = say("`{file}` cannot be read: {reason}", file=one.name, reason=error.reason)
            raise Unusable(
                [Diagnostic(slug="unreadable", message=message, span=Span(file=str(one.path)))]
            ) from None
        self.packed[one.inside] = PackedFile(size, found[SHA512])

    @property
    def oxum(self) -> str:
        """Octets and files of the payload so far."""
        payload = [one for path, one in self.packed.items() if _is_payload(path)]
        return f"{sum(one.size for one in payload)}.{len(payload)}"

    def seal(self, info: Iterable[tuple[str, str]]) -> None:
        """Write the tag files; nothing can be added afterwards."""
        self.add(DECLARATION, DECLARED.encode())
        self.add(INFO, info_text(info).encode())
        self.add(f"manifest-{SHA512}.txt", self._manifest(of_payload=True))
        self.add(f"tagmanifest-{SHA512}.txt", self._manifest(of_payload=False))

    def _manifest(self, *, of_payload: bool) -> bytes:
        found = {path: one.sha512 for path, one in self.packed.items() if _is_payload(path) is of_payload}
        return manifest_text(found).encode()

    def refuse_unsafe(self, span: Span) -> None:
        """Raises `Unusable` where a name could not travel, or would meet another on some system."""
        faults = [
            *(one for path in self.packed for one in name_faults(path)),
            *(one for _, one in collisions(self.packed)),
        ]
        if faults:
            raise Unusable(one.at(span) for one in faults)


def _is_payload(path: str) -> bool:
    return path.startswith(f"{PAYLOAD}/")
