"""Planning: what a showing takes, from duties and their days to limits, tasks and switching."""
