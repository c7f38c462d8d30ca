"""A supplier's sheet merged into a table of the shop: read, matched, planned, proved, written."""
