"""The forms under which a name is looked up: letters only, so that 'Ash-Dale' is 'ashdale'."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.reading.names.letter import Word, letters
from assistant.reading.text import plain

_RUN = re.compile(r"[^\W_]+")


def name_keys(name: str) -> tuple[str, ...]:
    """The keys of a listed name: with and without 'and', and the s of a possessive."""
    said = re.sub(r"^the\s+", "", plain(name))  # 'the Kettle' is the Kettle
    words = _RUN.findall(said)
    bare = _RUN.findall(re.sub(r"'s\b", "", said))
    forms = [words, bare]
    if "&" in said:
        forms.append(_RUN.findall(said.replace("&", " and ")))
    forms.extend([w for w in form if w != "and"] for form in forms[:])
    keys = ("".join(letters(w) for w in form) for form in forms)
    return tuple(dict.fromkeys(key for key in keys if key))


def name_words(name: str) -> frozenset[str]:
    """The words of a listed name."""
    said = plain(name)
    return frozenset(letters(w) for w in (*_RUN.findall(said), *(["and"] if "&" in said else [])))


def span_keys(words: Sequence[Word]) -> tuple[str, ...]:
    """The keys under which words of a letter are looked up: as they are, or without plural s."""
    own = [w.key for w in words if not w.possessive]
    keys = ["".join(w.key for w in words), "".join(own)]
    for place in {0, len(own) - 1}:
        if len(own[place]) > 4 and own[place].endswith("s"):
            keys.append("".join([*own[:place], own[place][:-1], *own[place + 1 :]]))
    return tuple(dict.fromkeys(keys))


_LOOK_ALIKE = str.maketrans("oil", "011")


def number_key(number: str) -> str:
    """A number without spaces, dashes and dots, in lower case."""
    return "".join(letters(run) for run in _RUN.findall(plain(number)))


def folded(key: str) -> str:
    """A number's key with the letters that people read as digits: O as 0, I and l as 1."""
    return key.translate(_LOOK_ALIKE)
