"""The report as one HTML page that needs nothing from elsewhere."""

from __future__ import annotations

import html
from collections.abc import Mapping
from typing import Any

from markdown_it import MarkdownIt

from assistant.measuring.report.markdown import markdown
from assistant.measuring.report.plots import plots

_STYLE = """
body { font: 16px/1.5 system-ui, sans-serif; max-width: 60rem; margin: 2rem auto; padding: 0 1rem;
  color: #1b1b1b; background: #fff }
table { border-collapse: collapse; margin: 1rem 0; display: block; overflow-x: auto }
th, td { border-bottom: 1px solid #ccc; padding: .25rem .75rem; text-align: left }
td + td { white-space: nowrap }
figure { margin: 1.5rem 0 }
figure svg { width: 100%; max-width: 44rem; height: auto; background: #fff }
@media (max-width: 40rem) {
  body { padding: 0 .5rem } th, td { padding: .25rem .2rem; font-size: .72rem } }
@media (prefers-color-scheme: dark) {
  body { color: #e8e8e8; background: #1b1b1b } th, td { border-color: #555 } }
"""


def page(figures: Mapping[str, Any]) -> str:
    """The whole page."""
    body = MarkdownIt("commonmark", {"html": False}).enable("table").render(markdown(figures))
    first, rest = body.split("<h2>", 1)
    drawn = "".join(
        f"<figure><figcaption>{html.escape(title)}</figcaption>{svg}</figure>"
        for title, svg in plots(figures).items()
    )
    return (
        '<!doctype html><html lang="en"><head><meta charset="utf-8">'
        '<meta name="viewport" content="width=device-width">'
        f"<title>Evaluation</title><style>{_STYLE}</style></head>"
        f"<body>{first}{drawn}<h2>{rest}</body></html>\n"
    )
