"""Counter assistant for a toilet-spares shop."""
