"""What `counterhand eval` does: runs, writes the report, and tells the first figures."""

from __future__ import annotations

import json
from collections.abc import Mapping
from importlib.metadata import version
from pathlib import Path
from typing import Any

from assistant.errors import KnowledgeError
from assistant.measuring.evaluation import Evaluation, Progress, evaluated, folder_of
from assistant.measuring.report.compare import compared
from assistant.measuring.report.figures import FORMAT, figures
from assistant.measuring.report.markdown import FIRST, markdown, shown
from assistant.measuring.report.page import page
from assistant.measuring.retrieval.collection import RELEVANT, measured
from assistant.measuring.retrieval.measures import chance, interval, scores
from assistant.measuring.retrieval.runs import SYSTEMS
from assistant.measuring.retrieval.trec import qrels_lines, run_lines
from assistant.search.model import Model
from assistant.search.searching import Search
from assistant.shop import Shop

Told = tuple[dict[str, Any], list[str]]  # the figures, and lines for people


def reported(shop: Shop, search: Search, older: Path | None, progress: Progress) -> Told:
    """Runs the evaluation set, writes report.json, report.md, report.html and the runs.

    Raises:
        KnowledgeError: a labelled row or the older report cannot be read.
    """
    before = None if older is None else _older(older)
    evaluation = evaluated(shop, search, progress)
    styles = {part_no: seal.style for part_no, seal in shop.tables.seals.items()}
    told = figures(evaluation, styles, version("counterhand"))
    folder = folder_of(shop)
    texts = {
        "report.json": json.dumps(told, ensure_ascii=False, indent=1) + "\n",
        "report.md": markdown(told),
        "report.html": page(told),
        **_runs(evaluation),
    }
    (folder / "runs").mkdir(exist_ok=True)
    for name, text in texts.items():
        (folder / name).write_text(text, encoding="utf-8")
    lines = _first(told)
    if before is not None:
        lines += ["", f"Against {older}:", *compared(told, before)]
    return told, [*lines, "", f"Written: {folder / 'report.md'}, report.html, report.json, runs/."]


def _runs(evaluation: Evaluation) -> dict[str, str]:
    found = {}
    for split, held in evaluation.retrieval.items():
        found[f"runs/{split}.qrels"] = qrels_lines(held.grades)
        for system in SYSTEMS:
            found[f"runs/{split}-{system}.run"] = run_lines(held.runs[system], system)
    return found


def _older(path: Path) -> Mapping[str, Any]:
    mend = "name a report.json that 'eval' wrote"
    try:
        held = json.loads(path.read_text(encoding="utf-8"))
    except OSError as error:
        raise KnowledgeError(str(path), "cannot be read", mend) from error
    except ValueError as error:
        raise KnowledgeError(str(path), "is no report", mend) from error
    if not isinstance(held, dict) or "format" not in held:
        raise KnowledgeError(str(path), "is no report", mend)
    if held["format"] != FORMAT:
        problem = "was written by another version, which counted otherwise"
        raise KnowledgeError(str(path), problem, "run 'eval' to have one to compare with")
    return held


def _first(told: Mapping[str, Any]) -> list[str]:
    """What a shop owner asks first, of both splits."""
    lines = []
    for split, held in told["splits"].items():
        sums = held["messages"]["totals"]
        lines.append(f"{split}: {sums['messages']} messages")
        lines += [f"  {name:26}{shown(sums[name])}" for name in FIRST]
        answers = held["retrieval"]["answers"]
        lines.append(
            f"  {'questions to the notes':26}" + ", ".join(f"{n} {k}" for k, n in answers.items())
        )
        lines.append(
            f"  {'nDCG@10':26}"
            + ", ".join(
                f"{s} {of['nDCG@10']['mean']:.3f}" for s, of in held["retrieval"]["scores"].items()
            )
        )
    return lines


def collected(folder: Path, model: str, progress: Progress) -> Told:
    """The project's own search on a collection.

    Raises:
        KnowledgeError: a file of it is missing or cannot be read.
    """
    runs, grades = measured(folder, Model(model), progress)
    scored = {system: scores(runs[system], grades, RELEVANT) for system in SYSTEMS}
    told: dict[str, Any] = {}
    lines = [f"{folder}: {len(grades)} judged queries"]
    for system, held in scored.items():
        told[system] = {name: round(held.mean(name), 4) for name in held.by_measure}
        low, high = interval(list(held.by_measure["nDCG@10"].values()))
        said = ", ".join(f"{name} {mean:.4f}" for name, mean in told[system].items())
        lines.append(f"  {system:9}{said}  (nDCG@10 95 %: {low:.3f} to {high:.3f})")
    for system in ("lexical", "dense"):
        p = chance(scored["fused"].by_measure["nDCG@10"], scored[system].by_measure["nDCG@10"])
        told[f"p, fused against {system}"] = round(p, 4)
        lines.append(f"  fused against {system}: p = {p:.4f}")
    return told, lines
