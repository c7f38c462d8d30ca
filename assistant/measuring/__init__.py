"""Measures the assistant: benchmarks, and the limits fitted to labelled questions."""
