"""The report of an evaluation: one object, and the same for people in Markdown and HTML."""
