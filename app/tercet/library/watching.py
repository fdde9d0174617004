"""A folder that is watched: which of its files are new and have stopped growing."""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path

from tercet.domain import Changes
from tercet.library import operations
from tercet.store import queries
from tercet.store.database import Store

_SETTING = "watched folder"

#: Size [bytes] and time of change [ns] of a file.
State = tuple[int, int]


@dataclass
class Watch:
    """What is known of a watched folder between two looks at it."""

    folder: Path
    #: Folder, name and size of what the store knows.
    known: frozenset[tuple[str, str, int]] = frozenset()
    #: Archives whose members the store knows.
    opened: frozenset[str] = frozenset()
    seen: dict[Path, State] = field(default_factory=dict)
    taken: dict[Path, State] = field(default_factory=dict)


def folder(store: Store) -> str:
    """The watched folder, or nothing."""
    return queries.setting(store, _SETTING)


def set_folder(store: Store, name: str) -> Changes:
    """Watch a folder from now on; an empty name ends it."""
    return operations.set_setting(store, _SETTING, name)


def begin(store: Store) -> Watch | None:
    """Begin to watch the folder that is set; None without one."""
    name = folder(store)
    if not name:
        return None
    places = queries.places_of_files(store)
    archives = frozenset(folder for folder, _, _ in places if ".zip" in folder.lower())
    return Watch(Path(name), frozenset(places), archives)


def look(watch: Watch) -> list[Path]:
    """Files to take in: not known, not offered before, and alike at two looks one after another.

    A folder that is not there, such as a watch that is not plugged in, has none.
    """
    now = _states(watch.folder)
    ready = [
        place
        for place, state in now.items()
        if watch.seen.get(place) == state
        and watch.taken.get(place) != state
        and not _is_known(watch, place, state)
    ]
    watch.seen = now
    watch.taken.update({place: now[place] for place in ready})
    return ready


def _states(place: Path) -> dict[Path, State]:
    # It brings all readers of files: not before there is a folder to look at.
    from tercet.library.sources import find_files

    states = {}
    for file in find_files([place]) if place.is_dir() else ():
        try:
            status = file.stat()
        except OSError:  # gone since the folder was listed
            continue
        if status.st_size:
            states[file] = (status.st_size, status.st_mtime_ns)
    return states


def _is_known(watch: Watch, place: Path, state: State) -> bool:
    if (str(place.parent), place.name, state[0]) in watch.known:
        return True
    return any(opened.startswith(str(place)) for opened in watch.opened)
