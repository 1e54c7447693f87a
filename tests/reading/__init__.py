"""Files, works with their sources, what is kept of earlier answers."""
