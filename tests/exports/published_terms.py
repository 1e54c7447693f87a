"""The list of published terms of the Art & Architecture Thesaurus that stands beside this file."""

from __future__ import annotations

import re
from pathlib import Path

AAT = "http://vocab.getty.edu/aat/"


def published_aat() -> dict[str, str]:
    """Each term's name as published, by its IRI."""
    rows = re.findall(
        r"^\| (\d{9}) \| ([^|]+?) \|", Path(__file__).with_name("aat.md").read_text(), re.MULTILINE
    )
    return {f"{AAT}{number}": name for number, name in rows}
