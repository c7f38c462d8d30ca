"""One class for each table: a row, its columns, and what each column may hold.

Lengths carry their unit in the column's name. An empty cell is *not known*: `None`, or an
empty tuple where a column holds several items. Every row has an id that survives edits.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date as Day
from decimal import Decimal
from typing import ClassVar, TypeAlias

from assistant.records import cells
from assistant.records.cells import cell, one_of, some_of

Inches: TypeAlias = float
Millimetres: TypeAlias = float
Gallons: TypeAlias = float  # US gallons

MOUNTS = ("pegs", "ring", "clip", "strap", "wire", "canister", "tower", "push", "thread")
POINTING = ("up", "down", "none")
TANK_KINDS = ("gravity", "dual-flush", "pressure", "tipping", "concealed")
VERDICTS = ("fits", "does not fit", "fits with change")
EVIDENCE_KINDS = ("maker's sheet", "tried at the bench", "customer's report")
STATUSES = ("stocked", "to order", "discontinued")
ANSWERED_BY = ("measuring", "looking inside", "number", "memory", "outside", "person")


class Row:
    """A row of a table; `key` is its id within `file`."""

    file: ClassVar[str]
    keys: ClassVar[tuple[str, ...]]

    @property
    def key(self) -> str:
        """The row's id, as checks and reports cite it."""
        return "/".join(str(getattr(self, name)) for name in self.keys)


@dataclass(frozen=True, kw_only=True)
class Brand(Row):
    """A maker and what people call it."""

    file: ClassVar[str] = "brands.csv"
    keys: ClassVar[tuple[str, ...]] = ("brand",)
    brand: str = cell(needed=True)
    aliases: tuple[str, ...] = cell(cells.items)


@dataclass(frozen=True, kw_only=True)
class Style(Row):
    """A style of seal, in plain words."""

    file: ClassVar[str] = "styles.csv"
    keys: ClassVar[tuple[str, ...]] = ("style",)
    style: str = cell(needed=True)
    plain_name: str = cell(needed=True)
    aliases: tuple[str, ...] = cell(cells.items)
    usual_openings_in: tuple[Inches, ...] = cell(cells.numbers)
    usual_from: int | None = cell(cells.year_from)
    usual_to: int | None = cell(cells.year_to)
    drawing: str | None = cell()
    looks: str | None = cell()


@dataclass(frozen=True, kw_only=True)
class Likeness(Row):
    """How customers without the trade's words describe a seal.

    Without a style it describes what is no seal of ours, so that it is not taken for one.
    """

    file: ClassVar[str] = "likenesses.csv"
    keys: ClassVar[tuple[str, ...]] = ("likeness",)
    likeness: str = cell(needed=True)
    style: str | None = cell(to="styles.csv")
    words: str = cell(needed=True)


@dataclass(frozen=True, kw_only=True)
class FlushValve(Row):
    """A kind of flush valve. `mount` lists every way a seal can hold to it."""

    file: ClassVar[str] = "flush_valves.csv"
    keys: ClassVar[tuple[str, ...]] = ("valve",)
    valve: str = cell(needed=True)
    style: str = cell(needed=True, to="styles.csv")
    opening_in: Inches | None = cell(cells.number)
    mount: tuple[str, ...] = cell(some_of(*MOUNTS))
    peg_span_mm: Millimetres | None = cell(cells.number)
    pegs: str | None = cell(one_of(*POINTING))
    overflow: str | None = cell(one_of("round", "square", "none"))
    overflow_mm: Millimetres | None = cell(cells.number)
    note: str | None = cell()


@dataclass(frozen=True, kw_only=True)
class Build(Row):
    """A model over the years in which nothing that matters changed. Year ranges are inclusive."""

    file: ClassVar[str] = "toilets.csv"
    keys: ClassVar[tuple[str, ...]] = ("build",)
    build: str = cell(needed=True)
    brand: str = cell(needed=True, to="brands.csv")
    model: str = cell(needed=True)
    aliases: tuple[str, ...] = cell(cells.items)
    model_no: str | None = cell()
    kind: str | None = cell(one_of(*TANK_KINDS))
    pieces: int | None = cell(cells.count)
    flush_full_gpf: Gallons | None = cell(cells.number)
    flush_reduced_gpf: Gallons | None = cell(cells.number)
    made_from: int | None = cell(cells.year_from)
    made_to: int | None = cell(cells.year_to)
    tank_mark: str | None = cell()
    sold: float | None = cell(cells.number)

    @property
    def full_name(self) -> str:
        """Maker and model, as people say them."""
        return f"{self.brand} {self.model}"


@dataclass(frozen=True, kw_only=True)
class BuildValve(Row):
    """Which flush valve sits where in a build, and how many seals it takes there."""

    file: ClassVar[str] = "build_valves.csv"
    keys: ClassVar[tuple[str, ...]] = ("build", "position")
    build: str = cell(needed=True, to="toilets.csv")
    position: str = cell(needed=True)
    valve: str = cell(needed=True, to="flush_valves.csv")
    seals_needed: int | None = cell(cells.some)


@dataclass(frozen=True, kw_only=True)
class Seal(Row):
    """A part the shop sells or knows. `mount` lists every way it can hold to a valve."""

    file: ClassVar[str] = "seals.csv"
    keys: ClassVar[tuple[str, ...]] = ("part_no",)
    part_no: str = cell(needed=True)
    name: str = cell(needed=True)
    aliases: tuple[str, ...] = cell(cells.items)
    maker: str | None = cell()
    maker_no: tuple[str, ...] = cell(cells.items)
    genuine: bool | None = cell(cells.yes_no)
    style: str = cell(needed=True, to="styles.csv")
    opening_in: Inches | None = cell(cells.number)
    mount: tuple[str, ...] = cell(some_of(*MOUNTS))
    ear_span_mm: Millimetres | None = cell(cells.number)
    ears: str | None = cell(one_of(*POINTING))
    ring_mm: Millimetres | None = cell(cells.number)
    float: bool | None = cell(cells.yes_no)
    adjustable: bool | None = cell(cells.yes_no)
    flush_gpf_min: Gallons | None = cell(cells.number)
    flush_gpf_max: Gallons | None = cell(cells.number)
    material: str | None = cell()
    colour: str | None = cell()
    pack: int | None = cell(cells.count)
    status: str = cell(one_of(*STATUSES), needed=True)
    replaced_by: str | None = cell(to="seals.csv")
    price: Decimal | None = cell(cells.money)
    cost: Decimal | None = cell(cells.money)
    on_hand: int | None = cell(cells.count)
    link: str | None = cell()


@dataclass(frozen=True, kw_only=True)
class Evidence(Row):
    """One piece of evidence that a seal does or does not close a valve, or serve a build.

    Just one of `valve` and `build` is filled. `position` only matters with a build whose
    tank has several valves.
    """

    file: ClassVar[str] = "fitment.csv"
    keys: ClassVar[tuple[str, ...]] = ("evidence",)
    evidence: str = cell(needed=True)
    valve: str | None = cell(to="flush_valves.csv")
    build: str | None = cell(to="toilets.csv")
    position: str | None = cell()
    part_no: str = cell(needed=True, to="seals.csv")
    verdict: str = cell(one_of(*VERDICTS), needed=True)
    change: str | None = cell()
    kind: str | None = cell(one_of(*EVIDENCE_KINDS))
    date: Day | None = cell(cells.day)
    note: str | None = cell()


@dataclass(frozen=True, kw_only=True)
class Cause(Row):
    """What may lie behind a symptom, and what it points at: the seal, another part, a plumber.

    `decides`: whether a sign of it points away from the seal even where a seal is asked for.
    """

    file: ClassVar[str] = "causes.csv"
    keys: ClassVar[tuple[str, ...]] = ("cause",)
    cause: str = cell(needed=True)
    plain_name: str = cell(needed=True)
    points_at: str = cell(one_of("seal", "other part", "plumber"), needed=True)
    signs_for: tuple[str, ...] = cell(cells.items)
    decides: bool | None = cell(cells.yes_no)
    check: str | None = cell()
    remedy: str | None = cell()


@dataclass(frozen=True, kw_only=True)
class Question(Row):
    """A question to a customer: how it is put, why, how to find out, how easily answered.

    `ease` is the share of customers, from 0 to 1, who can answer it, and `ease_staff` that of the
    shop's people who stand at the toilet. `kind` is what answering takes: who cannot answer one
    question of a kind is thought less able to answer the next. `prior` stands in two rows alone:
    at 'brand' how many toilets no table lists there are for one that is listed, at
    'valve_replaced' the share of tanks whose flush valve is no longer the first one.
    """

    file: ClassVar[str] = "questions.csv"
    keys: ClassVar[tuple[str, ...]] = ("question",)
    question: str = cell(needed=True)
    text: str = cell(needed=True)
    why: str = cell(needed=True)
    how: str | None = cell()
    choices: tuple[str, ...] = cell(cells.items)
    ease: float | None = cell(cells.share)
    drawing: str | None = cell()
    kind: str | None = cell(one_of(*ANSWERED_BY))
    ease_staff: float | None = cell(cells.share)
    prior: float | None = cell(cells.share)


TABLES: tuple[type[Row], ...] = (
    Brand,
    Style,
    Likeness,
    FlushValve,
    Build,
    BuildValve,
    Seal,
    Evidence,
    Cause,
    Question,
)
