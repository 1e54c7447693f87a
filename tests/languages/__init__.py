"""The languages in which a report can be told."""
