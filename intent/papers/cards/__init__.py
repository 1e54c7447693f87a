"""Placement cards: one for each part of an installation, to be taped where the part goes."""
