"""Commands that measure: speed, and answers against labelled rows."""

from __future__ import annotations

import json
import sys
from functools import partial
from pathlib import Path

import click
from click.core import ParameterSource

from assistant.commands.options import FOUND, shop_option
from assistant.commands.searching import bar, search_of
from assistant.shop import find_shop, open_shop

in_tenths = partial(bar, aloud=True)  # these take minutes
COUNT, SEED = 10_000, 1911  # false answers checked, and the seed by which they are drawn


@click.command()
@click.argument("names", nargs=-1)
def bench(names: tuple[str, ...]) -> None:
    """Measure speed and memory, as ratios against a baseline in the same run.

    NAMES choose among starting, answering, asking, building, deciding, linting and nearest (all;
    some minutes, and up to 8 GiB of memory).

    \b
    Example:
      counterhand bench answering building
    """
    from assistant.measuring.bench import BENCHES, lines, machine
    from assistant.measuring.bench import bench as run

    for name in names:
        if name not in BENCHES:
            raise click.BadParameter(f"'{name}' is no benchmark; choose among {', '.join(BENCHES)}")
    click.echo(machine())
    for benched in run(names or BENCHES):
        click.echo(f"\n{benched.name}")
        click.echo("\n".join(lines(benched)))


@click.command("eval")
@click.option("--json", "as_object", is_flag=True, help="Print the figures as one JSON object.")
@click.option(
    "--compare",
    "older",
    metavar="REPORT.json",
    type=click.Path(path_type=Path),
    help="Tell what got better and worse since an older report.json.",
)
@click.option(
    "--collection",
    metavar="DIR",
    type=click.Path(path_type=Path),
    help="Measure the search alone on a collection: docs.jsonl, queries.jsonl, qrels.tsv.",
)
@click.option(
    "--check",
    "check",
    is_flag=True,
    help="Make the answers false in every way and count what the check lets through.",
)
@click.option(
    "--interviews",
    "interviews",
    is_flag=True,
    help="Interview simulated customers and hold the labelled conversations.",
)
@click.option(
    "--count",
    type=click.IntRange(min=1),
    default=COUNT,
    show_default=True,
    help="With --check: how many false answers are checked; with --interviews: how many toilets of"
    " each kind; at most.",
)
@click.option(
    "--seed",
    type=int,
    default=SEED,
    show_default=True,
    help="With --check and --interviews: by which seed they are drawn.",
)
@shop_option
def evaluate(
    as_object: bool,
    older: Path | None,
    collection: Path | None,
    check: bool,
    interviews: bool,
    count: int,
    seed: int,
    shop: Path | None,
) -> None:
    """Measure answers and search on the labelled rows in eval/, and write eval/report.*.

    Single cases are told of the split 'tune' alone; of 'measure' nothing but sums is shown. It
    takes some minutes. --compare reads the older report before the new one is written.

    With --check, every good answer is made false, a sentence at a time, in every way that the
    tables show to be false; some are drawn and given to the check. Writes eval/check.md, and ends
    with exit code 1 if one false sentence would have been shown.

    With --interviews, customers who know every listed toilet, toilets not listed and valves
    replaced are asked until the part is certain, in four orders of questions, and the labelled
    conversations are held. Writes eval/interviews.md.

    \b
    Example:
      counterhand eval --compare eval/report-of-june.json
      counterhand eval --collection cranfield
      counterhand eval --check --count 2000
      counterhand eval --interviews --count 50
    """
    from assistant.measuring.report.command import collected, reported

    if check and (older is not None or collection is not None):
        raise click.UsageError("--check goes with neither --compare nor --collection")
    if interviews and (check or older is not None or collection is not None):
        raise click.UsageError("--interviews goes with none of --check, --compare, --collection")
    given = click.get_current_context().get_parameter_source
    drawn = [name for name in ("count", "seed") if given(name) is ParameterSource.COMMANDLINE]
    if drawn and not (check or interviews):
        raise click.UsageError(f"--{drawn[0]} goes with --check or --interviews")
    opened = open_shop(find_shop(shop))
    sound = True
    if collection is not None:
        with bar() as progress:
            told, lines = collected(collection, opened.settings.model, progress)
    elif check:
        from assistant.measuring.campaign.command import checked

        told, lines, sound = checked(opened, search_of(opened), count, seed, in_tenths)
    elif interviews:
        from assistant.measuring.interviews.command import interviewed_all

        told, lines = interviewed_all(opened, count, seed, in_tenths)
    else:
        search = search_of(opened)
        with in_tenths("Answering") as progress:
            told, lines = reported(opened, search, older, progress)
    click.echo(json.dumps(told, ensure_ascii=False, indent=2) if as_object else "\n".join(lines))
    if not sound:
        sys.exit(FOUND)
