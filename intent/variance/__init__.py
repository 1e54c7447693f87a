"""Which instructions govern, what they say of a value, the verdicts and the outcome."""
