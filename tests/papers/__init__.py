"""The reports: what they say, and how they are shown."""
