"""The shop's knowledge as typed objects."""
