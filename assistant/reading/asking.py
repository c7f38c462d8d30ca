"""A question mark that asks for a part does not doubt what the question says.

'Will it fit my Brand Model 1990?' is as sure of the year as the same words without a mark;
'Brand Model, 1990?' is not.
"""

from __future__ import annotations

import re

from assistant.reading.text import Text

_REQUEST = re.compile(
    r"\b(?:which|what|will|would|does|do|can|could|is there|are there|have you|need|needs|fits?"
    r"|looking for|where|how|any chance|after|want|please|flapper|seal|gasket|part"
    r"|better|any good|right one|do you|okay|ok|for (?:a|an|my|our|the))\b"
)


def without_request_marks(text: Text) -> Text:
    """The same message, of the same length, with the marks of requests turned to full stops."""
    if "?" not in text.raw:
        return text
    raw = list(text.raw)
    for start, end in text.sentences:
        if _REQUEST.search(text.said, start, end):
            for place in range(start, end):
                if raw[place] == "?":
                    raw[place] = "."
    return Text("".join(raw), text.masked)
