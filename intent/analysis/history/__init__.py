"""What was shown before: installations carried out, what departed then, and how far steps lead together."""
