"""Ranks of authority, of which the lower number prevails.

The vocabulary says which rank a role has, from 1 to 6; the rules themselves speak of these.
"""

from __future__ import annotations

ARTIST_RANK = 1
ESTATE_RANK = 2
"""Of the artist's estate: the lowest of those who can grant a right in the work."""
STAFF_RANK = 4
"""Of conservators and curators: the highest of those who work in the house."""
OBSERVED_PRACTICE_RANK = 6
"""Of those who are not known, and of what was always done without anybody having said so."""
