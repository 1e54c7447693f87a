"""What changed between two states of the documentation of one work, and which verdicts change because of it."""
