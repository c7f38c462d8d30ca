"""One small file for each kind of claim; a new file here is found by itself.

A file may hold `FRAMES` (wordings with their own look-up), `ATTRIBUTES` (of seals) and
`TRAITS` (of toilets and their valves).
"""
