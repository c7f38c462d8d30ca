"""What came of a campaign, as one object: the same figures for people and for programs."""

from __future__ import annotations

from typing import Any

from assistant.measuring.campaign.run import Campaign, Missed, Tally

FORMAT = 1


def figures(campaign: Campaign, count: int) -> dict[str, Any]:
    """All figures of a campaign in which `count` false answers were asked for."""
    missed = len(campaign.missed)
    return {
        "format": FORMAT,
        "seed": campaign.seed,
        "messages": campaign.gathered.messages,
        "good answers": len(campaign.gathered.good),
        "left out": dict(sorted(campaign.gathered.left_out.items())),
        "false answers": {
            "asked for": count,
            "could be made": campaign.made,
            "checked": campaign.checked,
            "caught": campaign.checked - missed,
            "missed": missed,
        },
        "true sentences lost": {
            "of good answers": [campaign.again.count, campaign.again.of],
            "beside a false one": [campaign.beside.count, campaign.beside.of],
        },
        "kinds": {name: _tally(tally) for name, tally in campaign.kinds.items()},
        "missed": [_missed(one) for one in campaign.missed],
        "lost of good answers": [
            {"message": told.source, "audience": told.audience, "sentence": sentence}
            for told, sentence in campaign.again_lost
        ],
    }


def _tally(tally: Tally) -> dict[str, Any]:
    return {
        "could be made": tally.made,
        "checked": tally.checked,
        "caught": tally.checked - tally.missed,
        "missed": tally.missed,
        "lost beside": [tally.lost, tally.beside],
    }


def _missed(missed: Missed) -> dict[str, Any]:
    """One false sentence let through; letters of the split 'measure' are not shown."""
    told, false = missed.told, missed.false
    return {
        "kind": false.kind,
        "message": told.source,
        "audience": told.audience,
        "sentence": false.sentence,
        "instead of": false.was.removeprefix("- ") or None,
        "builds": list(told.builds),
        "letter": told.letter if told.source.startswith("tune ") else None,
        "shown": missed.shown,
    }
