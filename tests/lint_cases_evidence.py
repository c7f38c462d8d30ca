"""Rows of evidence at fault, what lint tells of each, and the rows mended.

What is said of the trade is common practice, no source; makers and parts are invented.
"""

from __future__ import annotations

from datetime import date

from tests.linting import Case
from tests.trade import build, says, seal, sits, valve

OLD = (date(2014, 5, 2), date(2020, 1, 7))

CASES = [
    Case(
        "unknown-name",
        "a valve that nobody lists",
        (valve("gate-2"), seal(), says("fits", valve="gate-3")),
        "fitment.csv:2: error: valve 'gate-3' is not in flush_valves.csv; "
        "perhaps 'gate-2' is meant.",
        (valve("gate-2"), seal(), says("fits", valve="gate-2")),
    ),
    Case(
        "unknown-name",
        "a successor that nobody lists, nor anything like it",
        (seal("UQ-10", replaced_by="XX-999999"),),
        "seals.csv:2: error: replaced_by 'XX-999999' is not in seals.csv; "
        "add it there or correct it.",
        (seal("UQ-10"),),
    ),
    Case(
        "valve-or-build",
        "a seal was tried on one thing",
        (valve(), build(), seal(), says("fits", valve="gate-2", build="tovelin-a")),
        "fitment.csv:2: error: the row names both a valve and a build; "
        "keep the one that was tried and empty the other.",
        (valve(), build(), sits(), seal(), says("fits", build="tovelin-a")),
    ),
    Case(
        "valve-or-build",
        "a seal was tried on something",
        (seal(), says("fits", valve=None)),
        "fitment.csv:2: error: the row names neither a valve nor a build; "
        "fill in the one that was tried.",
        (valve(), seal(), says("fits")),
    ),
    Case(
        "geometry-against",
        "a disc of 3 inches does not seat in an opening of 2",
        (valve(), seal(opening_in=3.0), says("fits")),
        "fitment.csv:2: error: 'UQ-10' is said to fit valve 'gate-2', but it closes a 3 in "
        "opening, and the valve's opening is 2 in; correct the measure or the verdict.",
        (valve(), seal(opening_in=3.0), says("does not fit")),
    ),
    Case(
        "geometry-against",
        "a toilet flushes what it was made to flush",
        (
            valve(),
            build(flush_full_gpf=1.6),
            sits(),
            seal(flush_gpf_min=3.5),
            says("fits", build="tovelin-a"),
        ),
        "fitment.csv:2: error: 'UQ-10' is said to fit build 'tovelin-a', but it is made for "
        "toilets that flush 3.5 gallons or more, and this one flushes 1.6 gallons; "
        "correct the measure or the verdict.",
        (
            valve(),
            build(flush_full_gpf=1.6),
            sits(),
            seal(flush_gpf_min=3.5),
            says("fits", valve="gate-2"),
        ),
    ),
    Case(
        "geometry-against",
        "one build flushes what the seal is made for, and the next, on the same valve, does not",
        (
            valve(),
            build("tovelin-a", flush_full_gpf=3.5),
            build("tovelin-b", flush_full_gpf=1.6),
            sits(build="tovelin-a"),
            sits(build="tovelin-b"),
            seal(flush_gpf_min=3.5),
            says("fits", build="tovelin-a"),
            says("fits", build="tovelin-b"),
        ),
        "fitment.csv:3: error: 'UQ-10' is said to fit build 'tovelin-b', but it is made for "
        "toilets that flush 3.5 gallons or more, and this one flushes 1.6 gallons; "
        "correct the measure or the verdict.",
        (
            valve(),
            build(flush_full_gpf=1.6),
            sits(),
            sits(position="rinse"),
            seal(flush_gpf_min=3.5),
            seal("UQ-11"),
            says("fits", "UQ-11", build="tovelin-a", position="main"),
            says("fits", build="tovelin-a", position="rinse"),  # no volume is asked of a rinse
        ),
    ),
    Case(
        "change-overruled",
        "answers go by the measures, whatever is trimmed",
        (valve(), seal(ear_span_mm=90.0), says("fits with change", change="trim the ears")),
        "fitment.csv:2: warning: 'UQ-10' is said to fit valve 'gate-2', but its ears stand 90 mm "
        "apart, and the valve's pegs 80 mm; "
        "measure again, or answer by hand if the change does cure it.",
        (
            valve(overflow="square"),
            seal(mount=("pegs", "ring"), ring_mm=28.0),
            says("fits with change", change="cut off the ring"),
        ),
    ),
    Case(
        "change-missing",
        "something must be cut, and nobody says what",
        (valve(), seal(), says("fits with change")),
        "fitment.csv:2: warning: the row says 'fits with change' and not which change; "
        "write the change, such as 'cut off the ring'.",
        (valve(), seal(), says("fits with change", change="cut off the ring")),
    ),
    Case(
        "change-not-told",
        "a seal that needs cutting is sent as it comes",
        (valve(), seal(), says("fits", change="cut off the ring")),
        "fitment.csv:2: warning: the row says 'fits' and yet gives a change, which answers do not "
        "tell; write 'fits with change', or move the words to the note.",
        (valve(), seal(), says("fits", note="We cut off the ring to be sure.")),
    ),
    Case(
        "no-such-valve",
        "this tank has no rinse valve",
        (valve(), build(), sits(), seal(), says("fits", build="tovelin-a", position="rinse")),
        "fitment.csv:2: warning: build 'tovelin-a' has no valve in the position 'rinse'; "
        "write one of: main.",
        (valve(), build(), sits(), seal(), says("fits", build="tovelin-a")),
    ),
    Case(
        "no-such-valve",
        "of a tank with two valves the row must say which",
        (
            valve(),
            build(),
            sits(),
            sits(position="rinse"),
            seal(),
            says("fits", build="tovelin-a"),
            says("does not fit", build="tovelin-a"),
        ),
        "fitment.csv:2: warning: build 'tovelin-a' has several valves, and the row does not say "
        "which; fill in the position, one of: main, rinse.",
        (
            valve(),
            build(),
            sits(),
            sits(position="rinse"),
            seal(),
            says("fits", build="tovelin-a", position="rinse"),
            says("does not fit", build="tovelin-a"),
        ),
    ),
    Case(
        "no-such-valve",
        "a tank of which no valve is listed",
        (build(), seal(), says("fits", build="tovelin-a")),
        "fitment.csv:2: warning: build 'tovelin-a' has no valve in build_valves.csv; "
        "list its valve there, or name the valve here.",
        (valve(), build(), sits(), seal(), says("fits", build="tovelin-a")),
    ),
    Case(
        "conflicting-evidence",
        "it held at the bench and leaked at a customer's",
        (valve(), seal(), says("fits"), says("fits"), says("does not fit")),
        "fitment.csv:4: warning: E001 and E002 say that 'UQ-10' fits valve 'gate-2', and E003 says "
        "that it does not; find out which is right, as until then no answer names it there.",
        (valve(), valve("gate-3"), seal(), says("fits"), says("does not fit", valve="gate-3")),
    ),
    Case(
        "conflicting-evidence",
        "a 'no' for the whole tank speaks against each of its valves",
        (
            valve(),
            build(),
            sits(),
            sits(position="rinse"),
            seal(),
            says("fits", build="tovelin-a", position="rinse"),
            says("does not fit", build="tovelin-a"),
        ),
        "fitment.csv:3: warning: E001 says that 'UQ-10' fits build 'tovelin-a', position 'rinse', "
        "and E002 says that it does not; "
        "find out which is right, as until then no answer names it there.",
        (
            valve(),
            build(),
            sits(),
            sits(position="rinse"),
            seal(),
            says("fits", build="tovelin-a", position="rinse"),
            says("does not fit", build="tovelin-a", position="main"),
        ),
    ),
    Case(
        "never-fitted",
        "measures alone never say 'fits'",
        (valve(), seal(), says("does not fit")),
        "seals.csv:2: warning: nothing in fitment.csv says that 'UQ-10' fits anything; "
        "enter the maker's sheet or a trial, as until then no answer names it.",
        (
            valve(),
            seal("UQ-09", status="discontinued", replaced_by="UQ-10"),
            seal("UQ-10"),
            says("fits", "UQ-09"),
        ),
    ),
    Case(
        "future-date",
        "nobody has tried a seal tomorrow",
        (valve(), seal(), says("fits", date=date(2026, 11, 26))),
        "fitment.csv:2: warning: the date 2026-11-26 is still to come; "
        "correct the date, or the clock of this computer.",
        (valve(), seal(), says("fits", date=date(2026, 11, 25))),
    ),
    Case(
        "old-evidence",
        "makers change a part and keep its number",
        (valve(), seal(), says("fits"), *(says("fits", date=day) for day in OLD)),
        "fitment.csv:3: warning: from this line on 2 of 3 rows are more than 1,095 days old, and "
        "no younger row speaks of the same seal and place; try those again that sell most.",
        (valve(), seal(), *(says("fits", date=day) for day in (*OLD, date(2024, 3, 3)))),
    ),
]
