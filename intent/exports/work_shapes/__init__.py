"""Instructions as shapes of the work, and an installation as data, so that a stranger can check one by the other."""
