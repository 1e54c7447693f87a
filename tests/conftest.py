"""What all tests share: properties draw the same cases on every machine and run, and are not timed.

The vocabulary that ships cannot change while tests run. It is read once for all of them, since to read it takes longer
than most of what a test asks; processes that tests start read it for themselves.
"""

from __future__ import annotations

import os
from functools import cache

from hypothesis import settings

from intent.vocabulary import loader

settings.register_profile("steady", deadline=None, derandomize=True, database=None)
settings.load_profile("steady")

loader.read_vocabulary = cache(loader.read_vocabulary)  # before any test imports it by name
os.environ["INTENT_CACHE"] = "off"  # every test judges for itself, but those of what is kept
