"""Lint: what in the notes and tables a shop should mend, one finding a line."""
