"""Reads a customer's message into facts, each with the words it came from."""
