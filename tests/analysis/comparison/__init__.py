"""Two states of a work compared: cases to read, and what must always hold."""
