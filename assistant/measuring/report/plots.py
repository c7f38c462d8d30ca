"""The plots of a report, as SVG texts that stand in the page."""

from __future__ import annotations

import html
import io
from collections.abc import Mapping
from typing import Any

import matplotlib

matplotlib.use("svg")  # no screen is needed

from matplotlib.figure import Figure

WIDE = 5.5  # inches: its letters can be read on a phone
DARK, LIGHT = "#1f4e79", "#9db8d2"


FACT_BARS = (
    ("precision", "of what was read, stated", LIGHT),
    ("recall", "of what was stated, read", DARK),
)


def plots(figures: Mapping[str, Any]) -> dict[str, str]:
    """Each plot by its title."""
    drawn = {
        "Answers that show a wrong part, by kind of message ('measure'; goal: none)": _kinds(
            figures, "wrong parts shown", most_first=True
        ),
        "Answered when answerable, by kind of message ('measure'; goal: the line)": _kinds(
            figures, "answered when answerable", goal=0.9
        ),
        "Facts read ('measure')": _facts(figures),
        "How well passages are found (nDCG@10, 95 % intervals)": _retrieval(figures),
    }
    return {title: _named(title, svg) for title, svg in drawn.items()}


def _named(title: str, svg: str) -> str:
    """The drawing with a name for those who cannot see it; its figures stand in the tables."""
    return svg.replace("<svg ", f'<svg role="img" aria-label="{html.escape(title)}" ', 1)


def _retrieval(figures: Mapping[str, Any]) -> str:
    figure = Figure(figsize=(WIDE, 2.8))
    axes = figure.add_subplot()
    for at, (split, held) in enumerate(figures["splits"].items()):
        scores = held["retrieval"]["scores"]
        for row, of in enumerate(scores.values()):
            mean, (low, high) = of["nDCG@10"]["mean"], of["nDCG@10"]["interval"]
            axes.errorbar(
                mean,
                row + (at - 0.5) * 0.25,
                xerr=[[max(mean - low, 0)], [max(high - mean, 0)]],
                fmt="o",
                color=(LIGHT, DARK)[at],
                label=split if row == 0 else None,
            )
        axes.set_yticks(range(len(scores)), list(scores))
    axes.set_xlim(0, 1)
    axes.legend(frameon=False)
    return _svg(figure)


def _kinds(
    figures: Mapping[str, Any], name: str, *, most_first: bool = False, goal: float | None = None
) -> str:
    """One bar a kind, the worst at the top; kinds without a case, or without a wrong one, not."""
    held = figures["splits"]["measure"]["messages"]["by kind"]
    shares = [(sums[name][0], sums[name][1], kind) for kind, sums in held.items() if sums[name][1]]
    if most_first:
        shares = [share for share in shares if share[0]]
    worst_last = sorted(shares, key=lambda s: (s[0] / s[1], s[2]), reverse=not most_first)
    figure = Figure(figsize=(WIDE, 0.28 * max(len(shares), 3) + 0.8))
    axes = figure.add_subplot()
    for row, (count, of, _) in enumerate(worst_last):
        axes.barh(row, count / of, color=DARK)
        axes.text(1.01, row, f"{count} of {of}", va="center", fontsize=9)
    axes.set_yticks(range(len(worst_last)), [kind for _, _, kind in worst_last], fontsize=9)
    axes.set_ylim(-0.6, max(len(worst_last), 1) - 0.4)
    axes.set_xlim(0, 1)
    if goal is not None:
        axes.axvline(goal, color="#1b1b1b", linewidth=1, linestyle="--")
    return _svg(figure)


def _facts(figures: Mapping[str, Any]) -> str:
    held = figures["splits"]["measure"]["messages"]["facts"]
    figure = Figure(figsize=(WIDE, 0.32 * max(len(held), 3) + 0.8))
    axes = figure.add_subplot()
    for row, read in enumerate(held.values()):
        for shift, (name, told, colour) in enumerate(FACT_BARS):
            count, of = read[name]
            if of:
                axes.barh(
                    row + (shift - 0.5) * 0.38,
                    count / of,
                    height=0.36,
                    color=colour,
                    label=told if row == 0 else None,
                )
    names = [name.replace("_", " ") for name in held]
    axes.set_yticks(range(len(held)), names, fontsize=9)
    axes.set_ylim(-0.6, max(len(held), 1) - 0.4)
    axes.set_xlim(0, 1)
    axes.legend(frameon=False, fontsize=9, loc="lower left", bbox_to_anchor=(0, 1), ncols=2)
    return _svg(figure)


def _svg(figure: Figure) -> str:
    figure.tight_layout()
    held = io.StringIO()
    with matplotlib.rc_context({"svg.hashsalt": "counterhand"}):  # the same text every time
        figure.savefig(held, format="svg", metadata={"Date": None, "Creator": None})
    text = held.getvalue()
    return text[text.index("<svg") :]
