"""CSV cells that a spreadsheet would take for a formula, with an apostrophe before them, and such cells without it."""

from __future__ import annotations

import re

FORMULA_SIGNS = ("=", "+", "-", "@", "\t", "\r")
"""With these a spreadsheet may take a text for a formula (common practice, no source)."""
_SIGNS = re.escape("".join(FORMULA_SIGNS))
_GUARDED = re.compile(rf" *'(?='*[{_SIGNS}])|\t(?=[{_SIGNS}])")
_TO_GUARD = re.compile(rf"'*[{_SIGNS}]")
"""An apostrophe that a writer put before such a sign is guarded as well, or else it would be lost on the way in."""


def guarded(text: str) -> str:
    """A cell that no spreadsheet takes for a formula."""
    return f"'{text}" if _TO_GUARD.match(text) else text


def is_guarded(text: str) -> bool:
    """Whether a cell was guarded, by us or with a tab by another program."""
    return _GUARDED.match(text) is not None


def unguarded(text: str) -> str:
    """A guarded cell as it was before."""
    return _GUARDED.sub("", text, count=1)
