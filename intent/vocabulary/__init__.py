"""The terms of the trade, as SKOS and QUDT in Turtle, and their loader."""
