"""A case: all that one customer wrote about one matter, and what it comes to."""
