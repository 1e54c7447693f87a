"""`python -m intent` is the same as `intent`."""

from intent.cli import main

main()
