"""What a proposal does to signal, time and sound: whether they arrive, how fast they run, how they drift."""
