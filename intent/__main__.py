"""`python -m intent` is the same as `intent`."""

from intent.commands.main import main

main()
