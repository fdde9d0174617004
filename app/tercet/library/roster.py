"""The runners of one store: each has a whole store of their own, the others' in ``runners/``."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from tercet.language import mark, tr
from tercet.library import season
from tercet.library.views import BlockView, SeasonView
from tercet.store import queries
from tercet.store.database import Store
from tercet.store.errors import StoreError

FOLDER = "runners"
#: What the first runner is called until a name is given.
NAMELESS = mark("Your season")


@dataclass(frozen=True)
class Runner:
    """A runner and the folder of the record; ``problem`` says why it cannot be read."""

    name: str
    folder: Path
    problem: str = ""


@dataclass(frozen=True)
class SquadRow:
    """A runner's season where it stands today: the current block, and the next race."""

    runner: Runner
    block: BlockView | None = None
    week: int = 0
    weeks: int = 0
    race: str = ""
    race_day: date | None = None
    last_run: date | None = None
    estimated: bool = False
    last: BlockView | None = None  # the block run last, where none holds today


def root_of(folder: Path) -> Path:
    """The folder that holds all runners, from any one runner's."""
    return folder.parent.parent if folder.parent.name == FOLDER else folder


def runners(folder: Path) -> list[Runner]:
    """All runners beside one of them, by name; reads only, whoever has them open."""
    root = root_of(folder)
    places = [root, *sorted(path.parent for path in (root / FOLDER).glob("*/tercet.db"))]
    found = [_named(place) for place in places if (place / "tercet.db").exists()]
    return sorted(found, key=lambda runner: runner.name.casefold())


def _named(folder: Path) -> Runner:
    try:
        store = Store.to_read(folder)
    except StoreError as error:
        return Runner(folder.name, folder, str(error))
    try:
        return Runner(queries.setting(store, "runner") or tr(NAMELESS), folder)
    except StoreError as error:
        return Runner(folder.name, folder, str(error))
    finally:
        store.close()


def add(folder: Path, name: str) -> Path:
    """Make a store for another runner; gives its folder.

    Raises
    ------
    ValueError
        If the name is empty or taken.
    StoreError
        If the folder cannot be written.
    """
    name = " ".join(name.split())
    if not name:
        raise ValueError(tr("A runner needs a name."))
    if name.casefold() in {runner.name.casefold() for runner in runners(folder)}:
        raise ValueError(tr("There is a runner named {name} already.", name=name))
    home = root_of(folder) / FOLDER
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode()
    stem = re.sub(r"[^a-z0-9]+", "-", plain.lower()).strip("-")[:40] or "runner"
    place, number = home / stem, 2
    while place.exists():
        place, number = home / f"{stem}-{number}", number + 1
    store = Store(place)
    try:
        with store.atomic(tr("Add a runner")):
            store.put("setting", {"name": "runner", "value": name})
    finally:
        store.close()
    return place


def squad(folder: Path, today: date) -> list[SquadRow]:
    """Where each runner's season stands, in the order of their next races, then by name."""
    rows = [_row(runner, today) for runner in runners(folder)]
    return sorted(rows, key=lambda row: row.race_day or date.max)


def _row(runner: Runner, today: date) -> SquadRow:
    if runner.problem:
        return SquadRow(runner)
    try:
        store = Store.to_read(runner.folder)
        try:
            view = season.season(store, today)
        finally:
            store.close()
    except StoreError as error:
        return SquadRow(Runner(runner.name, runner.folder, str(error)))
    return squad_row(runner, view)


def squad_row(runner: Runner, view: SeasonView) -> SquadRow:
    """A runner's line from the season."""
    block = _current(view)
    race = next((race for race in view.races if race.day >= view.today), None)
    days = [session.day for session in view.sessions if session.sport == "running"]
    return SquadRow(
        runner,
        block,
        week=0 if block is None else (view.today - block.start).days // 7 + 1,
        weeks=0 if block is None else ((block.end - block.start).days + 7) // 7,
        race=race.name if race is not None else "",
        race_day=race.day if race is not None else None,
        last_run=days[-1] if days else None,
        estimated=block is not None and block.estimated,
        last=None if block is not None else _last(view),
    )


def _last(view: SeasonView) -> BlockView | None:
    ran = [b for b in view.blocks if b.end < view.today and sum(b.seconds[:3]) + b.seconds[4] > 0]
    return ran[-1] if ran else None


def _current(view: SeasonView) -> BlockView | None:
    return next((b for b in view.blocks if b.start <= view.today <= b.end), None)
