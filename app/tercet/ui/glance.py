"""The weeks of the sheet last in view, kept in a small file: a first picture without the database.

It is shown only if the database is byte for byte the one it was made from, and replaced by the
whole season as soon as that was read.
"""

from __future__ import annotations

import json
from contextlib import suppress
from dataclasses import dataclass, fields, is_dataclass, replace
from datetime import date, datetime
from pathlib import Path
from typing import Any

from tercet import __version__, language, week_days
from tercet.library import views
from tercet.library.views import SeasonView
from tercet.ui.sheet_layout import Layout

NAME = "glance.json"
#: Weeks kept before and after the first one in view.
ABOVE, BELOW = 4, 40


@dataclass(frozen=True)
class Glance:
    """Part of a season with what the sheet needs to draw it as it will be drawn in the whole."""

    season: SeasonView
    runner: str
    cap_s: float
    room: float  # width and text size that the layout was made for
    scale: float
    layout: Layout
    anchor: tuple[date, int] | None  # Monday of the first row in view, and where it stood [px]
    selected: int | None


def _names(kind: Any) -> list[str]:
    """Fields of a dataclass or a named tuple, in order; none of anything else."""
    if is_dataclass(kind):
        return [field.name for field in fields(kind)]
    return list(getattr(kind, "_fields", ()))


_CLASSES: dict[str, Any] = {
    kind.__name__: kind
    for kind in (Glance, Layout, *vars(views).values())
    if isinstance(kind, type) and _names(kind)
}
_FIELDS = {name: _names(kind) for name, kind in _CLASSES.items()}


def keep(folder: Path, glance: Glance) -> None:
    """Write it beside the database; a disk that refuses it costs only time at the next start."""
    table = {"stamp": _stamp(folder), "glance": _packed(_around(glance))}
    with suppress(OSError):
        (folder / NAME).write_text(json.dumps(table, separators=(",", ":")), "utf-8")


def read(folder: Path, today: date) -> Glance | None:
    """What was kept, if it still holds; None otherwise."""
    try:
        text = (folder / NAME).read_text("utf-8")
        if not text.startswith(f'{{"stamp":{json.dumps(_stamp(folder))}'):
            return None
        glance: Glance = json.loads(text, object_hook=_unpacked)["glance"]
        return replace(glance, season=replace(glance.season, today=today))
    except (OSError, ValueError, KeyError, TypeError):
        return None


def _stamp(folder: Path) -> str:
    """What changes with the database and the program: SQLite's change counter, the fields."""
    place = folder / "tercet.db"
    with place.open("rb") as file:
        head = file.read(28)
    shape = " ".join(",".join(names) for names in _FIELDS.values())
    shown = f"{language.code()} {week_days.first_weekday()}"
    return f"{__version__} {shown} {place.stat().st_size} {head[24:28].hex()} {shape}"


def _around(glance: Glance) -> Glance:
    """Leave out the weeks that are far from the first one in view."""
    season = glance.season
    last = season.blocks[-1].end if season.blocks else season.today
    first = glance.anchor[0] if glance.anchor else min(season.today, last)
    low, high = first.toordinal() - 7 * ABOVE, first.toordinal() + 7 * BELOW
    blocks = []
    for block in season.blocks:
        weeks = tuple(week for week in block.weeks if low <= week.first_day.toordinal() <= high)
        if weeks:
            blocks.append(replace(block, weeks=weeks))
    return replace(glance, season=replace(season, blocks=tuple(blocks)))


def _packed(value: Any) -> Any:
    name = type(value).__name__
    if name in _FIELDS:
        return {"c": name, "v": [_packed(getattr(value, field)) for field in _FIELDS[name]]}
    if isinstance(value, datetime):
        return {"t": value.isoformat()}
    if isinstance(value, date):
        return {"d": value.toordinal()}
    return list(map(_packed, value)) if isinstance(value, tuple) else value


def _unpacked(table: dict[str, Any]) -> Any:
    if "c" in table:
        return _CLASSES[table["c"]](*map(_tuples, table["v"]))
    if "d" in table:
        return date.fromordinal(table["d"])
    return datetime.fromisoformat(table["t"]) if "t" in table else table


def _tuples(value: Any) -> Any:
    return tuple(map(_tuples, value)) if isinstance(value, list) else value
