"""What is said to a reader: messages, and the languages in which they are told."""
