"""A work for readers of other standards, and for spreadsheets."""
