"""The interview: which question, if any, says most of what would be sold."""
