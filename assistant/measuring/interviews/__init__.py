"""Simulated customers interviewed, and labelled conversations held question by question."""
