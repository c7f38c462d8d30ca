"""The nouns that a year may be said of: the toilet, the house, a part of the toilet."""

# ruff: noqa: E501  (a pattern is easier to read on one line)

from __future__ import annotations

TOILET = r"(?:toilets?|commodes?|toliets?|lavatory|loo|wc|water closet|john|throne|crapper|fixtures?|tank|cistern|unit|bowl)"
HOME = r"(?:house|home|semi|terrace|maisonette|villa|condo|apartment|apt|flat|building|cottage|cabin|farm ?house|bungalow|town ?house|townhome|property|duplex|trailer|ranch|rental|place)"
PART = r"(?:flapp?ers?|flaper|seals?|gaskets?|fill ?valves?|ball ?cock|handle|tank ball|ball|chain|supply(?: line)?|hose|kit|bolts|wax ring|lever|parts?|water heater|faucet|guts|innards|insides|float|shut ?off(?: valve)?|seat)"
