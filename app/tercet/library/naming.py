"""How tables are read: namings of columns that a runner gave, kept and used again."""

from __future__ import annotations

from collections.abc import Mapping
from contextlib import ExitStack
from dataclasses import replace
from datetime import datetime

from tercet.domain import Changes
from tercet.formats.table import Naming, Sheet, sheet_of
from tercet.library import intake, reading
from tercet.library.reading import Terms
from tercet.library.sources import Source
from tercet.store import queries
from tercet.store.database import Store

_SETTING = "columns "


def namings(store: Store) -> Mapping[str, Naming]:
    """The namings kept, by the shape of their tables."""
    kept = queries.settings_like(store, _SETTING)
    return {name.removeprefix(_SETTING): Naming.of_text(text) for name, text in kept.items()}


def terms(store: Store) -> Terms:
    """What files are read by now."""
    return Terms(tuple(queries.thresholds(store)), queries.setting(store, "zone"), namings(store))


def known_and_terms(store: Store) -> tuple[set[str], Terms]:
    """Contents taken in before, and what files are read by now."""
    return queries.known_files(store), terms(store)


def sheet(store: Store, sha256: str) -> Sheet | None:
    """The table in a file that was taken in or refused."""
    return sheet_of(store.originals.read(sha256))


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
    step = "Name the columns"
    read = []
    for file in queries.files_to_look_at(store):
        alike = file.sha256 == sha256
        if not alike and start is None and file.status == "refused" and file.format == "CSV":
            other = sheet(store, file.sha256)
            alike = other is not None and other.shape == shape
        if alike:
            found = reading.read_file(Source(str(store.originals.path(file.sha256))), known)
            read.append(replace(found, source=Source("", label=f"{file.folder}/{file.name}")))
    with ExitStack() as stack:
        stack.enter_context(store.atomic(step))
        store.put("setting", {"name": f"{_SETTING}{shape}", "value": naming.text()})
        for one in read:
            intake.take_again(store, one)
    return Changes(runs=True, files=True, settings=True, step=step)
