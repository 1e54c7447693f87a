"""What cannot be read, and why."""

from __future__ import annotations

from intent.language.locale import ENGLISH
from intent.language.message import Words


class Unreadable(Exception):
    """A value that cannot be read; says why in plain words."""

    def __init__(self, slug: str, message: Words) -> None:
        super().__init__(slug, message)
        self.slug = slug
        self.message = message

    def __str__(self) -> str:
        return ENGLISH.say(self.message)
