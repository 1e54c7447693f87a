"""The text form: Markdown to graph, and graph to Markdown."""
