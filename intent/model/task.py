"""A piece of the work of installing."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Task:
    """What is done, to what, after what, by how many and for how long."""

    iri: str
    identifier: str
    what: str = ""
    parts: tuple[str, ...] = ()
    after: tuple[str, ...] = ()
    """The tasks that have to be done before."""
    people: int | None = None
    time: str = ""
    """By the clock, with that many people, as written."""
    by: str = ""
    """A role or a person, as written."""
    note: str = ""
    internal: bool = False
