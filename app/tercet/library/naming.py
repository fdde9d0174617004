"""How tables are read: namings of columns that a runner gave, kept and used again."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import datetime

from tercet import formats, units
from tercet.domain import Changes, Failed
from tercet.formats.paper import Shorthand
from tercet.formats.table import Naming, Question, Sheet, Table, naming_of, sheet_of
from tercet.formats.table.columns import headings
from tercet.formats.unpack import Refused
from tercet.language import tr
from tercet.library import intake, localtime, reading, unset_clock
from tercet.library.reading import Terms
from tercet.library.sources import Source
from tercet.store import paper_queries, queries
from tercet.store.database import Store

_SETTING = "columns "
#: So many rows of a table are shown.
SHOWN = 8


def namings(store: Store) -> Mapping[str, Naming]:
    """The namings kept, by the shape of their tables."""
    kept = queries.settings_like(store, _SETTING)
    return {name.removeprefix(_SETTING): Naming.of_text(text) for name, text in kept.items()}


def terms(store: Store) -> Terms:
    """What files are read by now."""
    return Terms(
        tuple(queries.thresholds(store)),
        queries.setting(store, "zone"),
        namings(store),
        results=tuple(paper_queries.race_results(store)),
        shorthand=Shorthand(*paper_queries.shorthand(store)),
    )


def known_and_terms(store: Store) -> tuple[set[str], Terms]:
    """Contents taken in before, and what files are read by now."""
    return queries.known_files(store), terms(store)


def sheet(store: Store, sha256: str) -> Sheet | None:
    """The table in a file that was taken in or refused."""
    try:
        return sheet_of(store.originals.read(sha256))
    except Refused:
        return None  # a spreadsheet that was refused for what it is


@dataclass(frozen=True)
class Waiting:
    """A table that waits for its columns to be named: what to show of it and what is known."""

    sha256: str
    file_name: str
    header: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]  # the first few
    question: str
    guess: Naming


def waiting(store: Store, sha256: str) -> Waiting | None:
    """What the naming of a table's columns begins with; None if the file is no table."""
    table, file = sheet(store, sha256), queries.file(store, sha256)
    if table is None or file is None:
        return None
    width = table.width
    cells = [[*row[:width], *[""] * (width - len(row))] for row in table.rows[:SHOWN]]
    question, guess = file.problem, Naming("runs", tuple(headings(table)))
    try:
        guess = namings(store).get(table.shape) or naming_of(table)
    except Question as asked:
        guess = asked.naming or guess
    rows = tuple(tuple(row) for row in cells)
    return Waiting(sha256, file.name, table.header or ("",) * width, rows, question, guess)


def would_give(
    store: Store, sha256: str, naming: Naming, start: datetime | None = None
) -> tuple[str, bool]:
    """What a naming would give, in one sentence, and whether that is anything."""
    found = formats.read_path(
        store.originals.path(sha256),
        formats.Told(
            namings={table.shape: naming} if (table := sheet(store, sha256)) else {},
            start=start,
            zone=localtime.zone_named(queries.setting(store, "zone")),
        ),
    )
    if isinstance(found, Failed):
        return found.reason, False
    if isinstance(found, Table):
        days = [run.start.date() for run in found.runs]
        metres = sum(run.metres or 0.0 for run in found.runs)
        minutes = round(sum(run.seconds or 0.0 for run in found.runs) / 60)
        said = tr(
            "{n} runs from {first} to {last}, {distance} in {time}.",
            n=f"{len(days):,}",
            first=min(days),
            last=max(days),
            distance=units.distance(metres, 0),
            time=f"{minutes // 60}:{minutes % 60:02d}",
        )
        return f"{said} {found.problem}".strip(), True
    if isinstance(found, list):
        run = found[0]
        channels = ", ".join(tr(name.replace("_", " ")) for name in run.streams)
        said = tr(
            "One run of {minutes} min, {n} samples: {channels}.",
            minutes=f"{run.elapsed_s / 60:,.0f}",
            n=f"{run.records:,}",
            channels=channels or tr("no channel"),
        )
        return said, True
    return tr("That reads as a typed log."), False


def name_columns(
    store: Store, sha256: str, naming: Naming, start: datetime | None = None
) -> Changes:
    """Keep a naming of columns and read the refused tables that it fits with it.

    A start is for samples that count from it; it belongs to the one file.
    """
    table = sheet(store, sha256)
    if table is None:
        return Changes()
    shape = table.shape
    known = replace(terms(store), namings={**namings(store), shape: naming}, start=start)
    step = tr("Name the columns")
    read = []
    for file in queries.files_to_look_at(store):
        alike = file.sha256 == sha256
        if not alike and start is None and file.status == "refused" and file.format == "CSV":
            other = sheet(store, file.sha256)
            alike = other is not None and other.shape == shape
        if alike:
            found = reading.read_file(Source(str(store.originals.path(file.sha256))), known)
            read.append(replace(found, source=Source("", label=f"{file.folder}/{file.name}")))
    with store.atomic(step):
        store.put("setting", {"name": f"{_SETTING}{shape}", "value": naming.text()})
        for one in read:
            intake.take_again(store, one)
    return Changes(runs=True, files=True, settings=True, step=step)


def tell_start(store: Store, sha256: str, start: datetime, *, alike: bool = False) -> Changes:
    """Read a file of a watch without a clock by the start that its runner tells.

    With ``alike`` every other such file that waits is moved by the same difference: the watch
    counted on from one run to the next.

    Raises
    ------
    ValueError
        If the file cannot be read any more.
    """
    now = terms(store)
    told = _clock(store, sha256)
    if told is None:
        raise ValueError(tr("the file cannot be read any more"))
    zone = localtime.zone_named(now.zone)
    begun = start.astimezone() if zone is None else start.replace(tzinfo=zone)
    step = tr("Say when a run started")
    read = []
    for file in queries.files_to_look_at(store):
        if file.sha256 != sha256 and not (alike and unset_clock.asks_for_start(file.problem)):
            continue
        own = _clock(store, file.sha256)
        if own is not None:
            place = Source(str(store.originals.path(file.sha256)))
            found = reading.read_file(place, replace(now, start=begun + (own - told)))
            read.append(replace(found, source=Source("", label=f"{file.folder}/{file.name}")))
    with store.atomic(step):
        for one in read:
            intake.take_again(store, one)
    return Changes(runs=True, files=True, step=step)


def _clock(store: Store, sha256: str) -> datetime | None:
    """What the first recording of a file says of its start."""
    found = formats.read_path(store.originals.path(sha256))
    return min(item.start for item in found) if isinstance(found, list) else None
