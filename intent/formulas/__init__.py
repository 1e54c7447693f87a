"""Formulas with their published sources: numbers in, numbers out; nothing here knows a work."""
