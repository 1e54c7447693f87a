"""What can be found in the documentation by itself, before any installation exists."""
