"""Where the published schemas lie; the project ships none of them, and a test that needs one skips without it."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

STANDARDS = Path(os.environ.get("INTENT_STANDARDS", Path(__file__).parents[3] / "shared/standards"))


def standard(*steps: str) -> Path:
    """The path of a schema; skips the test, saying so, where it is absent."""
    path = STANDARDS.joinpath(*steps)
    if not path.exists():
        pytest.skip(
            f"the schema {'/'.join(steps)} is not in {STANDARDS}; set INTENT_STANDARDS to where it is"
        )
    return path
