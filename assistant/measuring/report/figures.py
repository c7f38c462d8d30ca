"""An evaluation as one plain object: what `--json` prints, what reports show and compare."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from assistant.answers.answer import answer_as_json
from assistant.measuring.evaluation import Evaluation, Retrieval
from assistant.measuring.judged import Case, Judged
from assistant.measuring.retrieval.measures import chance, interval
from assistant.measuring.retrieval.runs import SYSTEMS
from assistant.measuring.totals import (
    Share,
    Totals,
    breakdown,
    by_kind,
    by_length,
    facts_read,
    milliseconds,
    totals,
)

FORMAT = 2
SINGLE = ("lexical", "dense")  # what the fusion has to beat
MEASURE = "nDCG@10"
Styles = Mapping[str, str]  # the style of each seal


def figures(evaluation: Evaluation, styles: Styles, version: str) -> dict[str, Any]:
    """Totals and breakdowns of both splits, and single cases of 'tune' alone."""
    return {
        "format": FORMAT,
        "version": version,
        "splits": {
            split: {
                "messages": _messages(cases, styles),
                "retrieval": _retrieval(evaluation.retrieval[split]),
            }
            for split, cases in evaluation.cases.items()
        },
        "cases": [_case(case) for case in evaluation.cases["tune"]],
    }


def _messages(cases: Sequence[Case], styles: Styles) -> dict[str, Any]:
    def by_style(case: Case) -> Iterable[str]:
        return {
            styles[part]
            for answer in case.answers
            if answer.expected
            for part in answer.expected.may_name
            if part in styles
        }

    median, late = milliseconds(cases)
    return {
        "totals": _totals(totals(cases)),
        "by kind": {name: _totals(t) for name, t in breakdown(cases, by_kind).items()},
        "by style": {name: _totals(t) for name, t in breakdown(cases, by_style).items()},
        "by length": {name: _totals(t) for name, t in breakdown(cases, by_length).items()},
        "facts": {
            read.name: {"precision": _share(read.precision), "recall": _share(read.recall)}
            for read in facts_read(cases)
        },
        "milliseconds": {"median": round(median, 1), "95th percentile": round(late, 1)},
    }


def _totals(found: Totals) -> dict[str, Any]:
    return {
        "messages": found.messages,
        "wrong parts shown": _share(found.wrong),
        "answered when answerable": _share(found.answered),
        "silent when it must be": _share(found.silent),
        "outcome right": _share(found.outcome),
        "exact set": _share(found.exact),
        "conditions right": _share(found.conditions),
        "question right": _share(found.asked),
    }


def _share(share: Share) -> list[int]:
    return [share.count, share.of]


def _retrieval(found: Retrieval) -> dict[str, Any]:
    fused = found.scores["fused"].by_measure
    return {
        "questions": len(found.grades),
        "scores": {
            system: {
                name: {
                    "mean": round(found.scores[system].mean(name), 4),
                    "interval": [round(end, 4) for end in interval(list(values.values()))],
                }
                for name, values in found.scores[system].by_measure.items()
            }
            for system in SYSTEMS
        },
        "fused against": {
            system: {
                "difference": round(
                    found.scores["fused"].mean(MEASURE) - found.scores[system].mean(MEASURE), 4
                ),
                "p": round(chance(fused[MEASURE], found.scores[system].by_measure[MEASURE]), 4),
            }
            for system in SINGLE
        },
        "answers": {
            "right": found.right,
            "wrong": found.wrong,
            "silent though answerable": found.silent,
            "answered though not answerable": found.false,
            "silent and rightly so": found.quiet,
        },
    }


def _case(case: Case) -> dict[str, Any]:
    return {
        "id": case.message.id,
        "kind": list(case.message.kind),
        "text": case.message.text,
        "answers": [_judged(answer) for answer in case.answers],
    }


def _judged(answer: Judged) -> dict[str, Any]:
    expected = answer.expected
    return {
        "expected": list(expected.outcomes) if expected else [],
        "reason": expected.reason if expected else "",
        "outcome": answer.outcome,
        "named": sorted(answer.named),
        "wrong": sorted(answer.wrong),
        "missing": sorted(expected.may_name - answer.named) if expected else [],
        "wanted": list(expected.question) if expected else [],
        "off": list(answer.off),
        "given": answer_as_json(answer.answer, staff=True) if answer.answer else None,
    }
