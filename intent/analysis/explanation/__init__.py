"""What governs a subject on a day: which instructions, for which values, in whose words."""
