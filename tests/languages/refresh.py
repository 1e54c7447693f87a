"""Brings the catalogues up to date with what is said in the source: `python tests/languages/refresh.py`.

Translations stay, what is new stands there to be translated, and what nobody says any more goes. A translator opens
the files in `intent/language/catalogues` with any tool that reads gettext's PO format.
"""

from __future__ import annotations

import io
import re
import sys
from pathlib import Path

from babel.messages.catalog import Catalog
from babel.messages.pofile import read_po, write_po

TESTS = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(TESTS), str(TESTS.parent)]

from languages.patterns import SOURCE, Pattern, patterns  # noqa: E402  after the folders are known

CATALOGUES = SOURCE / "language" / "catalogues"
_OF_A_DAY = re.compile(
    rb'^"(POT-Creation-Date|PO-Revision-Date|Last-Translator|Language-Team|Report-Msgid|Generated).*\n',
    re.MULTILINE,
)
"""Lines of a header that would differ from one day or one translator to another."""


def refreshed(old: Catalog, said: dict[str, Pattern]) -> Catalog:
    """A catalogue with the patterns that are said, in the order of the source, and the translations that there are."""
    new = Catalog(
        locale=old.locale, project="intent", version="", header_comment=old.header_comment, fuzzy=False
    )
    for pattern in sorted(said.values(), key=_order):
        known = old.get(pattern.one)
        forms = _strings(known.string) if known else ()
        if pattern.several:
            told = forms if len(forms) == new.num_plurals else ("",) * new.num_plurals
            new.add((pattern.one, pattern.several), string=told, auto_comments=[pattern.file])
        else:
            new.add(pattern.one, string=forms[0] if forms else "", auto_comments=[pattern.file])
    return new


def _order(pattern: Pattern) -> tuple[str, int]:
    return pattern.file, pattern.line


def write(catalogue: Catalog, file: Path) -> None:
    """The catalogue without what would differ from day to day; a file that says the same keeps its time."""
    written = io.BytesIO()
    write_po(written, catalogue, width=0)
    text = _OF_A_DAY.sub(b"", written.getvalue())
    if text != file.read_bytes():
        file.write_bytes(text)


def main() -> None:
    """Refresh each catalogue, and say what is left to translate."""
    said = patterns()
    for file in sorted(CATALOGUES.glob("*.po")):
        with file.open("rb") as stream:
            catalogue = refreshed(read_po(stream, locale=file.stem), said)
        write(catalogue, file)
        left = sum(not all(_strings(one.string)) for one in catalogue if one.id)
        print(f"{file.name}: {left} to translate")


def _strings(string: str | tuple[str, ...] | list[str] | None) -> tuple[str, ...]:
    """The plural forms of a translation; of one that counts nothing, itself."""
    return (string or "",) if string is None or isinstance(string, str) else tuple(string)


if __name__ == "__main__":
    main()
