"""Many files at once: found, read in worker processes, taken in by batches, with progress."""

from __future__ import annotations

import os
import time
from collections.abc import Callable, Iterable, Iterator, Sequence
from concurrent.futures import (
    FIRST_COMPLETED,
    Future,
    ProcessPoolExecutor,
    ThreadPoolExecutor,
    wait,
)
from concurrent.futures.process import BrokenProcessPool
from dataclasses import dataclass, field
from multiprocessing import get_context, parent_process
from pathlib import Path
from threading import Event, Thread
from typing import Any, TypeVar

from tercet.domain import Changes, DatedThresholds
from tercet.library import reading
from tercet.library.operations import Taken
from tercet.store.originals import sha256

T = TypeVar("T")
#: Fewer files than this are read in this process: starting workers would take longer.
FEW_FILES = 6
#: A batch is saved when it holds this many files or is this old. [files], [s]
BATCH_FILES = 12
BATCH_S = 0.4
#: Files in flight a worker; few, so that memory stays flat and stopping is quick.
IN_FLIGHT = 3
#: Folders are searched this deep.
DEPTH = 32


@dataclass(frozen=True)
class Progress:
    """How far an import or a judging has come."""

    done: int
    total: int
    current: str = ""
    new: int = 0
    here: int = 0
    refused: int = 0


@dataclass
class Report:
    """What an import did, one entry a file, in the order in which they ended."""

    taken: list[Taken] = field(default_factory=list)
    changes: Changes = field(default_factory=Changes)
    stopped: bool = False

    def count(self, *outcomes: str) -> int:
        """How many files ended in one of these ways."""
        return sum(item.outcome in outcomes for item in self.taken)

    @property
    def words(self) -> str:
        """One line that says it all."""
        here = self.count("already here", "same run")
        parts = [f"{self.count('new')} new"]
        if here:
            parts.append(f"{here} already here")
        if self.count("other sport"):
            parts.append(f"{self.count('other sport')} of other sports")
        if self.count("season file"):
            parts.append(f"{self.count('season file')} season file")
        if self.count("passed over"):
            parts.append(f"{self.count('passed over')} passed over")
        parts.append(f"{self.count('refused')} not read")
        return ", ".join(parts)


def find_files(paths: Iterable[str | Path]) -> list[Path]:
    """Files among the paths and in folders below them, sorted; no hidden ones, no links."""
    found: dict[Path, None] = {}
    for given in paths:
        place = Path(given)
        if place.is_dir():
            for file in _below(place, DEPTH):
                found[file] = None
        else:
            found[place] = None
    return list(found)


def _below(folder: Path, depth: int) -> Iterator[Path]:
    try:
        entries = sorted(os.scandir(folder), key=lambda entry: entry.name)
    except OSError:
        return
    for entry in entries:
        if entry.name.startswith(".") or entry.is_symlink():
            continue
        if entry.is_dir() and depth > 0:
            yield from _below(Path(entry.path), depth - 1)
        elif entry.is_file():
            yield Path(entry.path)


class Workers:
    """Worker processes that are started when first needed and mended when one dies."""

    def __init__(self, count: int | None = None) -> None:
        self._count = count or max(1, min(4, os.cpu_count() or 1))
        self._pool: ProcessPoolExecutor | None = None

    @property
    def room(self) -> int:
        """How many calls may be in flight."""
        return self._count * IN_FLIGHT

    def submit(self, call: Callable[..., T], *args: Any) -> Future[T]:
        """Run a module-level function in a worker."""
        if self._pool is None:
            self._pool = ProcessPoolExecutor(
                self._count, mp_context=get_context("spawn"), initializer=_settle
            )
        return self._pool.submit(call, *args)

    def renew(self) -> None:
        """Give up a broken pool."""
        self.close()

    def close(self) -> None:
        """Stop the workers."""
        if self._pool is not None:
            self._pool.shutdown(wait=True, cancel_futures=True)
            self._pool = None


def _settle() -> None:
    """Make a worker let the window go first, and end with the program however that ends."""
    if hasattr(os, "nice"):
        os.nice(10)
    Thread(target=_end_with_parent, daemon=True).start()


def _end_with_parent() -> None:
    """A program that was killed cannot stop its workers, and they would wait for ever."""
    parent = parent_process()
    if parent is not None:
        parent.join()
        os._exit(1)


class Here(Workers):
    """The same door for few calls: they run one after the other in a thread of this process."""

    def __init__(self) -> None:
        super().__init__(1)
        self._thread: ThreadPoolExecutor | None = None

    def submit(self, call: Callable[..., T], *args: Any) -> Future[T]:
        """Run in the thread."""
        if self._thread is None:
            self._thread = ThreadPoolExecutor(1, thread_name_prefix="tercet-read")
        return self._thread.submit(call, *args)

    def close(self) -> None:
        """Stop the thread."""
        if self._thread is not None:
            self._thread.shutdown(wait=True, cancel_futures=True)
            self._thread = None


def in_order_of_ending(
    workers: Workers, calls: Iterable[tuple[str, Callable[..., T], tuple[Any, ...]]], stop: Event
) -> Iterator[tuple[str, T | None]]:
    """Run calls with few in flight; a call that kills its worker gives None.

    Yields the call's label and its result as they end. When ``stop`` is set nothing new is
    started and what is in flight is dropped.
    """
    queue = iter(calls)
    flying: dict[Future[T], tuple[str, Callable[..., T], tuple[Any, ...]]] = {}
    more = True
    while True:
        while more and not stop.is_set() and len(flying) < workers.room:
            call = next(queue, None)
            if call is None:
                more = False
                break
            flying[workers.submit(call[1], *call[2])] = call
        if stop.is_set():
            for future in flying:
                future.cancel()
            return
        if not flying:
            return
        ended, _ = wait(flying, timeout=0.1, return_when=FIRST_COMPLETED)
        broken = []
        for future in ended:
            call = flying.pop(future)
            try:
                yield call[0], future.result()
            except BrokenProcessPool:
                broken.append(call)
        if broken:
            broken += flying.values()
            flying.clear()
            workers.renew()
            yield from _one_by_one(workers, broken)


def _one_by_one(
    workers: Workers, calls: Iterable[tuple[str, Callable[..., T], tuple[Any, ...]]]
) -> Iterator[tuple[str, T | None]]:
    """Run the calls that were in flight alone, so that the guilty one is known."""
    for label, call, args in calls:
        try:
            yield label, workers.submit(call, *args).result()
        except BrokenProcessPool:
            workers.renew()
            yield label, None


def read_and_take_in(
    paths: Sequence[Path],
    *,
    known: set[str],
    thresholds: Sequence[DatedThresholds],
    zone: str,
    save: Callable[[list[reading.ReadFile]], tuple[list[Taken], Changes]],
    progress: Callable[[Progress], None],
    stop: Event,
) -> Report:
    """Read files and hand them to ``save`` by batches.

    Parameters
    ----------
    paths : sequence of Path
        From :func:`find_files`.
    known : set of str
        Contents already in the store; they are not read again.
    thresholds, zone
        As for :func:`tercet.library.reading.read_file`.
    save : callable
        Takes a batch into the store; called from this thread.
    progress : callable
        Told after every file, from this thread.
    stop : Event
        What was read before it is set stays.
    """
    report = Report()
    total = len(paths)
    workers: Workers = Workers() if total >= FEW_FILES else Here()
    batch: list[reading.ReadFile] = []
    saved_at = time.monotonic()

    def keep(final: bool = False) -> None:
        nonlocal saved_at
        if not batch or not (
            final or len(batch) >= BATCH_FILES or time.monotonic() - saved_at >= BATCH_S
        ):
            return
        taken, changes = save(batch)
        report.taken += taken
        report.changes |= changes
        batch.clear()
        saved_at = time.monotonic()

    def calls() -> Iterator[tuple[str, Callable[..., reading.ReadFile], tuple[Any, ...]]]:
        for place in paths:
            if stop.is_set():
                return
            name = _content(place) if known else ""
            if name and name in known:
                report.taken.append(Taken(str(place), "already here", sha256=name))
                tell(place.name)
                continue
            yield str(place), reading.read_file, (str(place), tuple(thresholds), zone)

    def tell(current: str) -> None:
        progress(
            Progress(
                len(report.taken) + len(batch),
                total,
                current,
                report.count("new"),
                report.count("already here", "same run"),
                report.count("refused"),
            )
        )

    try:
        for label, result in in_order_of_ending(workers, calls(), stop):
            batch.append(
                result
                if result is not None
                else reading.ReadFile(
                    label,
                    "",
                    b"",
                    "refused",
                    problem="Reading it ended the reader; it was left out.",
                )
            )
            keep()
            tell(Path(label).name)
        keep(final=True)
    finally:
        workers.close()
    report.stopped = stop.is_set()
    return report


def _content(place: Path) -> str:
    try:
        if place.stat().st_size > reading.LARGEST_FILE:
            return ""
        return sha256(place.read_bytes())
    except OSError:
        return ""
