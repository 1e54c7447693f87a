"""What all tests share: properties draw the same cases on every machine and run, and are not timed."""

from __future__ import annotations

import os

from hypothesis import settings

settings.register_profile("steady", deadline=None, derandomize=True, database=None)
settings.load_profile("steady")

os.environ["INTENT_CACHE"] = "off"  # every test judges for itself, but those of what is kept
