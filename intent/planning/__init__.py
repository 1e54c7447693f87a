"""What a showing takes: what is to be done for it, by whom and when."""
