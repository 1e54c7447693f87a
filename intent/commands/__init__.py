"""The commands, room by room: read arguments, call a verb, print. What a command does is in `intent.verbs`."""
