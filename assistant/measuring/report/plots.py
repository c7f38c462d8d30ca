"""The plots of a report, as SVG texts that stand in the page."""

from __future__ import annotations

import io
from collections.abc import Mapping
from typing import Any

import matplotlib

matplotlib.use("svg")  # no screen is needed

from matplotlib.figure import Figure

DARK, LIGHT = "#1f4e79", "#9db8d2"


def plots(figures: Mapping[str, Any]) -> dict[str, str]:
    """Each plot by its title."""
    return {
        "How well passages are found (nDCG@10, 95 % intervals)": _retrieval(figures),
        "Answered when answerable, by kind of message": _kinds(figures),
        "Facts read: precision and recall ('measure')": _facts(figures),
    }


def _retrieval(figures: Mapping[str, Any]) -> str:
    figure = Figure(figsize=(6, 2.8))
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


def _kinds(figures: Mapping[str, Any]) -> str:
    held = figures["splits"]["measure"]["messages"]["by kind"]
    shares = {
        kind: sums["answered when answerable"]
        for kind, sums in held.items()
        if sums["answered when answerable"][1]
    }
    figure = Figure(figsize=(6, 0.28 * max(len(shares), 3) + 0.8))
    axes = figure.add_subplot()
    for row, (_, (count, of)) in enumerate(sorted(shares.items(), reverse=True)):
        axes.barh(row, count / of, color=DARK)
        axes.text(1.01, row, f"{count}/{of}", va="center", fontsize=8)
    axes.set_yticks(range(len(shares)), sorted(shares, reverse=True), fontsize=8)
    axes.set_xlim(0, 1)
    return _svg(figure)


def _facts(figures: Mapping[str, Any]) -> str:
    held = figures["splits"]["measure"]["messages"]["facts"]
    figure = Figure(figsize=(6, 0.32 * max(len(held), 3) + 0.8))
    axes = figure.add_subplot()
    for row, read in enumerate(held.values()):
        for shift, (name, colour) in enumerate((("precision", LIGHT), ("recall", DARK))):
            count, of = read[name]
            if of:
                axes.barh(
                    row + (shift - 0.5) * 0.38,
                    count / of,
                    height=0.36,
                    color=colour,
                    label=name if row == 0 else None,
                )
    axes.set_yticks(range(len(held)), list(held), fontsize=8)
    axes.set_xlim(0, 1)
    axes.legend(frameon=False, fontsize=8, loc="lower left")
    return _svg(figure)


def _svg(figure: Figure) -> str:
    figure.tight_layout()
    held = io.StringIO()
    with matplotlib.rc_context({"svg.hashsalt": "counterhand"}):  # the same text every time
        figure.savefig(held, format="svg", metadata={"Date": None})
    text = held.getvalue()
    return text[text.index("<svg") :]
