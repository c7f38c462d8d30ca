"""The campaign of corruption: good answers made false, each shown false, each to be caught."""
