"""The figures in lines for people, and as the page that is kept, eval/interviews.md."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from assistant.measuring.interviews.customer import ONLY_OMITS
from assistant.measuring.interviews.toilets import LISTED
from assistant.measuring.totals import Share

Told = Mapping[str, Any]


def lines(told: Told) -> list[str]:
    """What is asked first: questions by policy, wrong parts, lies caught, conversations."""
    held = []
    for one in told["series"]:
        held.append(_title(one))
        held.append(f"  {'questions':28}{_mean(one['questions'])}")
        for name in ("certain", "right part named", "wrong part named"):
            held.append(f"  {name:28}{Share(*one[name])}")
        if one["told something false"][0]:
            held.append(f"  {'false answers caught':28}{Share(*one['of those, caught'])}")
    least = told["bound"]["each build once"]
    held.append(f"no order of questions needs fewer than {least['questions']:.2f} on average")
    for split, of in told["conversations"].items():
        held.append(f"conversations of '{split}'")
        held += [f"  {name:52}{said}" for name, said in _conversation(of)]
    return held


def markdown(told: Told, version: str) -> str:
    """The whole page."""
    return "\n".join(_page(told, version)) + "\n"


def _page(told: Told, version: str) -> Iterator[str]:
    yield "# Interviews with simulated customers"
    yield ""
    yield f"`counterhand eval --interviews`, version {version}, seed {told['seed']}."
    yield ""
    yield "Each customer knows one toilet. A question is not known as often as its ease in"
    yield "`questions.csv` says; which ones a customer does not know is the same for every order of"
    yield "questions. The end is decided by the facts alone. A part is *wrong* if the CSV files say"
    yield "that it does not fit the valve that truly sits there, *unproven* if they do not say."
    yield ""
    series = told["series"]
    yield "## Questions to certainty: every listed build once, customers who only omit"
    yield ""
    counted = [one for one in series if one["customers"] == LISTED]
    counted = [one for one in counted if one["memory"] == ONLY_OMITS.name]
    for letter in dict.fromkeys(tuple(one["letter"]) for one in counted):
        yield f"The letter tells {_letter(letter)}:"
        yield ""
        yield from _policies([one for one in counted if tuple(one["letter"]) == letter])
    yield from _bound(told["bound"])
    yield from _false([one for one in series if one["told something false"][0]])
    yield from _open([one for one in series if one["customers"] != LISTED])
    yield from _ends(series)
    yield from _conversations(told["conversations"])


def _title(one: Told) -> str:
    who = f"{one['customers']}, {one['memory']}"
    return f"{who}, the letter tells {_letter(one['letter'])}, {one['policy']}"


def _letter(told: Sequence[str]) -> str:
    return ", ".join(told) or "nothing"


def _policies(series: Sequence[Told]) -> Iterator[str]:
    counts = ("questions", "of those certain", "by sales", "until a part could be named")
    shares = ("certain", "right part named", "wrong parts", "more than ours")
    yield from _table(
        ("order of questions", *counts, *shares),
        [
            (
                *(one["policy"], _mean(one["questions"]), _mean(one["questions to certainty"])),
                _number(one["questions by sales"]),
                _mean(one["questions until a part could be named"]),
                str(Share(*one["certain"])),
                *(str(Share(*one["right part named"])), str(one["wrong part named"][0])),
                _more(one.get("more than ours")),
            )
            for one in series
        ],
    )


def _bound(bound: Told) -> Iterator[str]:
    once, sold = bound["each build once"], bound["by sales"]
    yield f"What would be sold holds {once['bits']:.2f} bits over the builds, {sold['bits']:.2f} by"
    yield "sales. An answer brings log₂ of the number of answers at most, and only to those who"
    yield "know it: told nothing, no order of questions settles all with fewer than"
    yield f"{once['questions']:.2f} questions on average ({sold['questions']:.2f} by sales). The"
    yield "bound is loose: a number in the tank could tell all at once, yet whether the valve is"
    yield "the first one, and whether the toilet is in the table at all, must be learned too."
    yield ""


def _false(series: Sequence[Told]) -> Iterator[str]:
    yield "## Customers who tell something false"
    yield ""
    columns = ("of those, caught", "of those, wrong part named", "of those, right part named")
    yield from _table(
        ("memory", "letter", "interviews", "questions", "told something false", *columns),
        [
            (
                *(one["memory"], _letter(one["letter"]), str(one["interviews"])),
                _mean(one["questions"]),
                str(one["told something false"][0]),
                *(str(Share(*one[column])) for column in columns),
            )
            for one in series
        ],
    )
    yield "*Caught*: it ended in saying which two things cannot both be so."
    yield ""


def _open(series: Sequence[Told]) -> Iterator[str]:
    yield "## Toilets not listed, valves replaced"
    yield ""
    columns = (
        "certain",
        "right part named",
        "wrong part named",
        "wrong part named, though certain",
        "unproven part named",
        "named for the first valve, which is gone",
        "'could fit' that cannot",
    )
    yield from _table(
        ("customers", "interviews", "questions", *columns),
        [
            (
                *(one["customers"], str(one["interviews"]), _mean(one["questions"])),
                *(str(Share(*one[column])) for column in columns),
            )
            for one in series
        ],
    )


def _ends(series: Sequence[Told]) -> Iterator[str]:
    yield "## How they ended, and what was asked"
    yield ""
    for one in series:
        yield f"- **{_title(one)}**"
        for name in ("ended", "outcomes", "of those certain", "asked first", "asked"):
            yield f"  - {name}: " + "; ".join(f"{key} {n}" for key, n in one[name].items())
    yield ""


def _conversations(splits: Told) -> Iterator[str]:
    yield "## Labelled conversations"
    yield ""
    yield "Answers are read as they were written; no photograph is asked for."
    yield ""
    names = [name for name, _ in _conversation(next(iter(splits.values())))]
    yield from _table(
        ("", *splits),
        [(name, *(dict(_conversation(of))[name] for of in splits.values())) for name in names],
    )
    for of in splits.values():
        for case in of.get("cases", ()):
            asked = ", ".join(
                f"{q} (not known)" if q in case["not known"] else q for q in case["asked"]
            )
            wrong = f"; wrong: {', '.join(case['wrong'])}" if case["wrong"] else ""
            meant = "as labelled" if case["settled"] else f"not {' or '.join(case['labelled'])}"
            yield (
                f"- **{case['id']}** ({', '.join(case['kind'])}): {case['outcome']}, {meant}"
                f"{wrong}; {len(case['asked'])} asked, {case['fewest']} do: {asked or 'none'}"
            )


def _conversation(of: Told) -> Iterator[tuple[str, str]]:
    yield "conversations", str(of["conversations"])
    for name in ("settled as labelled", "wrong part named"):
        yield name, str(Share(*of[name]))
    for name in ("", ", of those settled"):
        asked, fewest = of[f"questions asked{name}"], of[f"fewest that do{name}"]
        yield f"questions asked / fewest that do{name}", f"{asked} / {fewest}"
    yield "of them, asked after it was settled", str(of["of them, after it was settled"])
    yield "answers not known", str(of["not known"])


def _mean(told: Told) -> str:
    if told["mean"] is None:
        return "–"
    low, high = told["interval"]
    return f"{told['mean']:.2f} [{low:.2f}, {high:.2f}]"


def _number(value: float | None) -> str:
    return "–" if value is None else f"{value:.2f}"


def _more(told: Told | None) -> str:
    return "" if told is None else f"{told['mean']:+.2f} (p = {told['p']:.4f})"


def _table(head: Sequence[str], rows: Sequence[Sequence[str]]) -> Iterator[str]:
    yield "| " + " | ".join(head) + " |"
    yield "| " + " | ".join("---" for _ in head) + " |"
    for row in rows:
        yield "| " + " | ".join(row) + " |"
    yield ""
