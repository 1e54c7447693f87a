"""What was shown before: cases to read, and what must always hold."""
