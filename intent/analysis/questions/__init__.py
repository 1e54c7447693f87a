"""What to ask at the next conversation: what nobody has said yet, ranked by what hangs on it."""
