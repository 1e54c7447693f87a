"""A story in the reader's language: every saying in it becomes words, and all else stays as its writers put it."""

from __future__ import annotations

from dataclasses import fields, is_dataclass, replace
from typing import Any

from intent.language.message import ENGLISH, Saying, Tongue
from intent.papers.story import Story


def told_in(story: Story, tongue: Tongue) -> Story:
    """The story, with everything that is ours in the language of the tongue."""
    return story if tongue is ENGLISH else replace(_told(story, tongue), tongue=tongue)


def _told(value: Any, tongue: Tongue) -> Any:
    """The value with its sayings said; of what reports made themselves, all that is in it."""
    if isinstance(value, Saying):
        return tongue.tell(value)
    if isinstance(value, tuple):
        return tuple(_told(one, tongue) for one in value)
    if is_dataclass(value) and type(value).__module__.startswith("intent.papers."):
        found = {one.name: _told(getattr(value, one.name), tongue) for one in fields(value)}
        return replace(value, **found)  # type: ignore[type-var]
    return value
