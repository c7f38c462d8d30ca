"""How sure is sure enough: weights and limits, fitted to labelled questions for each model."""

from __future__ import annotations

import math
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from assistant.errors import KnowledgeError

OWN = Path("eval") / "limits.toml"
FITTED = Path(__file__).with_name("limits.toml")


@dataclass(frozen=True)
class Signals:
    """What speaks for a passage as the answer to a question.

    The cosines of the whole passage, of the likest wording of its question and of its best
    sentence, and the highest of the three; the weight of the question's words that stand in it,
    and how many words of weight the question has (a long one shares more by chance), both in
    tens; and how high the three rankings put it together, from 0 to 1.
    """

    passage: float
    wording: float
    sentence: float
    likest: float
    words: float
    length: float
    ranks: float


@dataclass(frozen=True)
class Limits:
    """A logistic model of 'this passage answers' and its limit; limits for looks by meaning."""

    passage: float
    wording: float
    sentence: float
    likest: float
    words: float
    length: float
    ranks: float
    bias: float
    answers_at: float
    looks_at: float
    looks_ahead: float

    def likely(self, signals: Signals) -> float:
        """The likelihood that a passage answers, from 0 to 1."""
        odds = self.bias + sum(
            getattr(self, signal) * value for signal, value in vars(signals).items()
        )
        return 1 / (1 + math.exp(-odds))


def limits_for(model: str, shop: Path | None = None) -> Limits:
    """The limits fitted for a model: by the shop itself, in its `eval/limits.toml`, or by us.

    Raises:
        KnowledgeError: none were fitted for it; limits of another model mean nothing for it.
    """
    for path in (shop / OWN if shop else FITTED, FITTED):
        row = _read(path).get(model)
        if row is not None:
            return from_row(row, path)
    settings = shop / "knowledge" / "shop.toml" if shop else Path("shop.toml")
    raise KnowledgeError(
        f"{settings}, field search.model",
        f"no limits are fitted for the model '{model}'",
        "fit them to labelled rows in eval/ with 'python -m assistant.measuring.fit SHOP'",
    )


def _read(path: Path) -> dict[str, Any]:
    try:
        return tomllib.loads(path.read_text(encoding="utf-8"))
    except FileNotFoundError:
        return {}
    except (tomllib.TOMLDecodeError, UnicodeDecodeError, OSError) as error:
        raise KnowledgeError(
            str(path), f"cannot be read ({error})", "fit the limits again"
        ) from error


def limits_rows(path: Path, model: str, limits: Limits) -> str:
    """The text of the file of limits, with those of a model put in."""
    fitted = {**_read(path), model: vars(limits)}
    tables = [
        f'["{name}"]\n' + "".join(f"{key} = {value}\n" for key, value in row.items())
        for name, row in sorted(fitted.items())
    ]
    return "# Written by 'python -m assistant.measuring.fit'.\n\n" + "\n".join(tables)


def from_row(row: Mapping[str, Any], path: Path) -> Limits:
    """The limits in a table of TOML."""
    try:
        return Limits(**{name: float(row[name]) for name in Limits.__dataclass_fields__})
    except (KeyError, TypeError, ValueError) as error:
        raise KnowledgeError(
            str(path), f"the limit {error} is missing or no number", "fit the limits again"
        ) from error
