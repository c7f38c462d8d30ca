"""Builds, seals, styles and questions at fault, what lint tells of each, and the rows mended.

What is said of the trade is common practice, no source; makers and parts are invented.
"""

from __future__ import annotations

from datetime import date
from decimal import Decimal

from assistant.records.cells import OPEN_TO
from assistant.records.rows import Question, Style
from tests.linting import Case
from tests.trade import CLIP, RING, build, row, says, seal, sits, valve

OLD = (date(2014, 5, 2), date(2020, 1, 7))

CASES = [
    Case(
        "reversed-range",
        "no toilet was made from 1990 to 1980",
        (build(made_from=1990, made_to=1980),),
        "toilets.csv:2: error: made_from 1990 is above made_to 1980; swap the two or correct one.",
        (build(made_from=1980, made_to=OPEN_TO),),
    ),
    Case(
        "reversed-range",
        "no flush lies between 1.6 and 1.28 gallons",
        (seal(flush_gpf_min=1.6, flush_gpf_max=1.28),),
        "seals.csv:2: error: flush_gpf_min 1.6 is above flush_gpf_max 1.28; "
        "swap the two or correct one.",
        (seal(flush_gpf_min=1.6, flush_gpf_max=1.6),),
    ),
    Case(
        "doubled-build",
        "the same toilet by two names",
        (
            build("tovelin-a", model_no="T1", made_from=1980, made_to=1989, pieces=2),
            build("tovelin-b", model_no="T1", made_from=1980, made_to=1989, pieces=2),
        ),
        "toilets.csv:3: error: 'tovelin-b' is 'tovelin-a' again: the same maker, model, kind, "
        "pieces, number and years; keep one row, or fill in what tells the two apart.",
        (
            build("tovelin-a", model_no="T1", made_from=1980, made_to=1989, pieces=2),
            build("tovelin-b", model_no="T1", made_from=1980, made_to=1989, pieces=1),
        ),
    ),
    Case(
        "doubled-build",
        "a number of one year flushes one volume",
        (
            build("tovelin-a", model_no="T1", made_from=1994, made_to=1999, flush_full_gpf=1.6),
            build("tovelin-b", model_no="T1", made_from=1994, made_to=1999, flush_full_gpf=3.5),
        ),
        "toilets.csv:3: error: 'tovelin-b' is 'tovelin-a' again: the same maker, model, kind, "
        "pieces, number and years; keep one row, or fill in what tells the two apart.",
        (
            build("tovelin-a", model_no="T1", made_from=1994, made_to=1999, flush_full_gpf=1.6),
            build("tovelin-b", model_no="T1", made_from=1990, made_to=1993, flush_full_gpf=3.5),
        ),
    ),
    Case(
        "doubled-build",
        "two rows of which nothing is known that differs",
        (build("tovelin-a"), build("tovelin-b")),
        "toilets.csv:3: error: 'tovelin-b' is 'tovelin-a' again: the same maker, model, kind, "
        "pieces, number and years; keep one row, or fill in what tells the two apart.",
        (build("tovelin-a", tank_mark="T 1"), build("tovelin-b", tank_mark="T 2")),
    ),
    Case(
        "overlapping-builds",
        "a tank of 1988 may be either",
        (
            build("tovelin-a", made_from=1980, made_to=1989),
            build("tovelin-b", made_from=1986, made_to=OPEN_TO),
        ),
        "toilets.csv:3: warning: 'tovelin-b' (made since 1986) shares years with 'tovelin-a' "
        "(made from 1980 to 1989), and nothing else tells them apart; "
        "correct the years, or fill in number, mark, kind, pieces or volume.",
        (
            build("tovelin-a", made_from=1980, made_to=1989),
            build("tovelin-b", made_from=1990, made_to=OPEN_TO),
        ),
    ),
    Case(
        "overlapping-builds",
        "one year shared is a year too many",
        (
            build("tovelin-a", made_from=1980, made_to=1989, flush_full_gpf=3.5),
            build("tovelin-b", made_from=1989, made_to=1999, flush_full_gpf=3.5),
        ),
        "toilets.csv:3: warning: 'tovelin-b' (made from 1989 to 1999) shares years with "
        "'tovelin-a' (made from 1980 to 1989), and nothing else tells them apart; "
        "correct the years, or fill in number, mark, kind, pieces or volume.",
        (
            build("tovelin-p", kind="pressure", made_from=1980, made_to=1989),
            build("tovelin-g", kind="gravity", made_from=1980, made_to=1995),
        ),
    ),
    Case(
        "replacement-cycle",
        "no number leads back to itself",
        (
            seal("UQ-10", replaced_by="UQ-11"),
            seal("UQ-11", replaced_by="UQ-12"),
            seal("UQ-12", replaced_by="UQ-10"),
        ),
        "seals.csv:2: error: the replacements lead in a circle: 'UQ-10', 'UQ-11', 'UQ-12', "
        "'UQ-10'; empty replaced_by in the newest of them.",
        (seal("UQ-10", replaced_by="UQ-11"), seal("UQ-11", replaced_by="UQ-12"), seal("UQ-12")),
    ),
    Case(
        "replacement-cycle",
        "no part takes its own place",
        (seal("UQ-10", replaced_by="UQ-10"),),
        "seals.csv:2: error: 'UQ-10' is replaced by itself; "
        "name the part that took its place, or empty replaced_by.",
        (seal("UQ-10"),),
    ),
    Case(
        "dead-end",
        "who holds the old number is told that nothing follows",
        (seal("UQ-10", status="discontinued"),),
        "seals.csv:2: warning: 'UQ-10' is discontinued and nothing is named in its place; "
        "fill in replaced_by, or leave it if nothing follows.",
        (seal("UQ-10", status="discontinued", replaced_by="UQ-11"), seal("UQ-11")),
    ),
    Case(
        "no-valve",
        "a toilet that can be recognised and never answered",
        (build(),),
        "toilets.csv:2: warning: no flush valve is listed for 'tovelin-a'; "
        "list it in build_valves.csv, or write 'pressure' as its kind if it is so.",
        (build(kind="pressure"),),  # common practice: its cartridge is no seal of ours
    ),
    Case(
        "no-seal",
        "the only seal that fits is sold no more",
        (valve(), build(), sits(), seal(status="discontinued"), says("fits")),
        "toilets.csv:2: warning: no seal that is still sold fits the valve of 'tovelin-a'; "
        "try seals on valve 'gate-2' and enter what fits.",
        (
            valve(),
            build(),
            sits(),
            seal(status="discontinued", replaced_by="UQ-11"),
            seal("UQ-11"),
            says("fits"),
        ),
    ),
    Case(
        "no-seal",
        "what fits the valve leaks in this build",
        (
            valve(),
            build("tovelin-a"),
            build("tovelin-b"),
            sits(build="tovelin-a"),
            sits(build="tovelin-b"),
            seal(),
            says("fits"),
            says("does not fit", build="tovelin-b"),
        ),
        "toilets.csv:3: warning: no seal that is still sold fits the valve of 'tovelin-b'; "
        "try seals on valve 'gate-2' and enter what fits.",
        (
            valve(),
            build("tovelin-a"),
            build("tovelin-b"),
            sits(build="tovelin-a"),
            sits(build="tovelin-b"),
            seal(),
            seal("UQ-11"),
            says("fits"),
            says("fits", "UQ-11"),
            says("does not fit", build="tovelin-b"),
        ),
    ),
    Case(
        "no-seal",
        "a seal for the one valve of the tank is none for the other",
        (
            valve(),
            valve("gate-3", CLIP),
            build(),
            sits(),
            sits("gate-3", position="rinse"),
            seal(),
            says("fits"),
        ),
        "toilets.csv:2: warning: no seal that is still sold fits the rinse valve of 'tovelin-a'; "
        "try seals on valve 'gate-3' and enter what fits.",
        (
            valve(),
            build(),
            sits(),
            sits(position="rinse"),
            seal(),
            says("fits"),
        ),
    ),
    Case(
        "drawing-missing",
        "an empty frame where an answer shows how to measure",
        (row(Question, question="ears", text="Which way?", why="It decides.", drawing="ears.svg"),),
        "questions.csv:2: error: the drawing 'ears.svg' is not in knowledge/pictures; "
        "put it there or correct the name.",
        (row(Question, question="ears", text="Which way?", why="It decides.", drawing="ring.svg"),),
    ),
    Case(
        "no-drawing",
        "most customers do not know the trade's words",
        (
            row(Style, style="ring", plain_name="ring", drawing="ring.svg"),
            row(Style, style="ball", plain_name="ball"),
        ),
        "styles.csv:3: warning: the style 'ball' has no drawing; "
        "draw it for knowledge/pictures and fill in 'drawing'.",
        (row(Style, style="ring", plain_name="ring", drawing="ring.svg"),),
    ),
    Case(
        "no-drawing",
        "a shop that draws nothing hears it once",
        (valve(style=CLIP), valve("gate-3", RING)),
        "styles.csv:2: warning: none of the 2 rows names a drawing; "
        "draw them for knowledge/pictures and fill in 'drawing'.",
        (row(Style, style="ring", plain_name="ring", drawing="ring.svg"),),
    ),
    Case(
        "below-cost",
        "a slip of a digit sells at a loss",
        (seal(price=Decimal("0.75"), cost=Decimal("3.10")),),
        "seals.csv:2: warning: the price 0.75 of 'UQ-10' is below its cost 3.10; "
        "correct one of them, or leave it if it is a clearance.",
        (seal(price=Decimal("3.10"), cost=Decimal("3.10")),),
    ),
    Case(
        "no-price",
        "a seal on the shelf that nobody can sell",
        (seal(),),
        "seals.csv:2: warning: 'UQ-10' is stocked and has no price; fill in its price.",
        (seal(status="to order"),),
    ),
]
