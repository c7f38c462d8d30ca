"""The closed world of language: words that claim nothing, and pieces that frames are made of.

A sentence is shown only if every word of it is read by a frame (see `frames.py`) or stands
here. A new wording is added here or as a frame; nothing is ever skipped.
"""

from __future__ import annotations

from assistant.answers.check.patterns import PIECES

# What may stand between two clauses, or before the first.
CONNECTORS = (
    ", and also", ", and", ", but", ", or", ", so", ", as", ", because", ", since", ", for",
    ", while", ", whereas", ", then", "and also", "and", "but", "or", "so", "because", "since",
    "as", "while", "whereas", "then", "also", "too", "as well", "in addition", "however",
    "therefore", "instead", "hence", "that is", "in our table", "in our tables", "in the table",
    ",", ";", ":", "—", "-", "by the way", "likewise", "here", "yes", "otherwise", "though",
)  # fmt: skip

# Of these, what may also close a sentence.
CLOSING = frozenset(
    {"also", "too", "as well", "in addition", "however", "therefore", "instead", "likewise"}
    | {"here", "in our table", "in our tables", "in the table", "though", ")"}
)

# Whole sentences that say nothing about any named thing.
CONNECTING = (
    "hello", "good (morning|day|afternoon)",
    "thank you (for (writing|your (letter|message|question)))?",
    "kind regards", "best regards",
    "(a person|somebody|someone) (at|from|in) the shop will (answer|look at (it|this|your letter))"
    "( you)?",
    "which (one )?(it is|of them|one) depends on {hangs}",
    "that agrees with what you wrote",
    "they do not go together",
    "(please )?(tell|send) us {hangs}",
    "(all of this|all this|this) (holds|is so|stands)",
    "we do not guess",
    "here is what (our|the) tables say",
    "for the counter",
    "there (are|is) (a few|more than one|several) possibilities",
    "(we|i) cannot say more( from here)?",
)  # fmt: skip

PIECES.update(
    {
        "tables": "(table|tables)",
        "joined": "(,|and|or|, and|, or)",
        "adv": "(also|too|then|both|likewise|either|as well|here|just)",
        "and": "(and|, and)",
        # parts
        "one_part": "(both|either|the|our|seal|part|number)* {F}? {P}",
        "parts": "(both|either)? {one_part} ({joined} {one_part})*",
        "counted_part": "(one|a|an|{I} x?)? {one_part}",
        "counted_parts": "{counted_part} ({joined} {counted_part})*",
        "part_word": "(it|this|they|these|both|each|which|that|this (seal|part|one)|both of them"
        "|(these|the|all) {I}|the seal|the part)",
        "part": "({parts}|{part_word})",
        "ears": "((its|their|whose|the|{P} 's) ears|the ears of {P})",
        # toilets and their valves
        "scopes": "{X} ({joined} {X})*",
        "toilet": "({scopes}|it|which|that|they|this one|both)",
        "valve": "((the|its|your|this|that|whose|{X} 's|one) {Z}? flush? valve"
        " ((of|in|on) ({scopes}|it))?"
        "|the flush? valve {X}|{scopes}|it|which|this one)",
        "of_valve": "((of|on|in) ({X}|it|{valve}))",
        "pegs": "((the|its|whose) pegs {of_valve}?|(the valve|{X}|its valve|{valve}) 's pegs"
        "|{X} pegs)",
        "tube": "((the|its|whose) overflow? tube {of_valve}?|{valve} 's overflow? tube)",
        "opening": "((the|its|whose) {Z}? opening {of_valve}?|{valve} 's opening)",
        "target": "({scopes} ('s {Z}? flush? valve)?|it|them|there|yours|{valve})",
        "pos": "((at|in|on|for|over) (the|its) {Z} (flush valve|valve|position|side|seal)?"
        " (of ({scopes}|it))?)",
        "is": "(is|are|was|were)",
        "hangs": "(when it was made|the year|its age|the date|which of them it is|which model it is"
        "|whether it is (one piece|a one-piece|in one piece|one-piece or two-piece)"
        "|the number in ({X}|the tank)|the (tank|model) number|how much it flushes|the flush volume"
        "|the (size of the)? opening|the pegs|which way the pegs point"
        "|how far apart the pegs (are|stand)"
        "|the overflow tube|the hinge width|how the seal holds|the kind of tank|the flush valve"
        "|which valve it has|the valve)",
        "geo": "((going|judging) (by|from) (the|its|their) measurements (alone|only)?"
        "|(by|on|from) (the|its|their)? measurements (alone|only)?"
        "|as far as (the|its)? measurements go)",
        "original": "((if|as long as|provided that?|so long as|when|assuming that?|only if)"
        " ((the|its|your) flush? valve ({is}|is still) (the original one?|original|the one it"
        " (was made|was sold|came) with)|(the|its|your) flush? valve has (not|never)"
        " been (replaced|changed)|(nobody|no one) has (replaced|changed) the flush? valve"
        "|(the|its|your) flush? valves are (the original ones|original)"
        "|the flush? valve of {X} {is} the original one?"
        "|it still has (the|its) original flush? valve)"
        "|(with|on) (the|its) original flush? valve)",
    }
)
