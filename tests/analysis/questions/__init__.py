"""What to ask next: a case to read, and what must hold of every agenda."""
