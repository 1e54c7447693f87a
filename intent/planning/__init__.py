"""What a showing takes: what is to be done for it, by whom and when; what feeds what, and how it is switched."""
