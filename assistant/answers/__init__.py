"""Composes an answer and checks it again, claim by claim, before anyone sees it."""
