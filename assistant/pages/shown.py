"""Markdown as a page may show it: no HTML of its own, no link but to the web or within."""

from __future__ import annotations

from functools import cache

import nh3
from markdown_it import MarkdownIt
from markupsafe import Markup

TAGS = {"p", "strong", "em", "ul", "ol", "li", "blockquote", "code", "h3", "h4", "br", "hr", "a"}
TAGS |= {"table", "thead", "tbody", "tr", "th", "td"}


@cache
def _reader() -> MarkdownIt:
    return MarkdownIt("commonmark", {"html": False}).enable("table").disable("image")


def shown(markdown: str) -> Markup:
    """HTML of an answer or a note, read without HTML and then cleaned."""
    made = _reader().render(markdown)
    return Markup(
        nh3.clean(
            made,
            tags=TAGS,
            attributes={"a": {"href"}},
            url_schemes={"https", "mailto"},
            link_rel="noopener noreferrer nofollow",
        )
    )
