"""What somebody has denied: a consent refused, or a fact said otherwise than a permission needs it."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Denial:
    """An answer on record for which a value is not permitted: a refusal, a fact, or, with neither, that an earlier
    choice can be had."""

    instruction: str
    """The instruction that would permit it, or would not stand against it."""
    refused_by: str = ""
    """The identifier of who has refused."""
    fact: str = ""
    """The fact that is attested."""
    holds: bool = False
    """Whether the fact is attested to hold, or not to hold."""
