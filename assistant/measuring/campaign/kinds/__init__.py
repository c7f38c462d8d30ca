"""Kinds of falsehood. A module here that names a tuple `KINDS` is found by itself."""

from __future__ import annotations

import pkgutil
from functools import cache
from importlib import import_module

from assistant.measuring.campaign.told import Kind


@cache
def every_kind() -> tuple[Kind, ...]:
    """The kinds of all modules of this package, module by module in alphabetical order."""
    found: list[Kind] = []
    for module in sorted(pkgutil.iter_modules(__path__), key=lambda module: module.name):
        found += getattr(import_module(f"{__name__}.{module.name}"), "KINDS", ())
    return tuple(dict.fromkeys(found))  # a module may gather the kinds of others
