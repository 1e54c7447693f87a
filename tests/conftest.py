"""What all tests share: properties draw the same cases on every machine and run, and are not timed."""

from __future__ import annotations

from hypothesis import settings

settings.register_profile("steady", deadline=None, derandomize=True, database=None)
settings.load_profile("steady")
