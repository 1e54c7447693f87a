"""A source that is cited, and where in it."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Citation:
    """A source, and the time in it at which the passage stands (`00:14:05`)."""

    source: str
    at: str | None = None
