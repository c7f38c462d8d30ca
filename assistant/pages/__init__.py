"""The pages: what a browser sees, and the same answers over HTTP."""
