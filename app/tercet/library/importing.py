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
from tempfile import TemporaryDirectory
from threading import Event, Thread
from typing import Any, TypeVar

from tercet import language
from tercet.domain import Changes, Failed
from tercet.formats import archive
from tercet.formats.unpack import Counted, Refused
from tercet.language import mark, several, tr
from tercet.library import memory, reading
from tercet.library.intake import Taken
from tercet.library.sources import UNREADABLE, Source, opened_up

T = TypeVar("T")
L = TypeVar("L")
#: Fewer files than this are read in this process: starting workers would take longer.
FEW_FILES = 6
#: A batch is saved when it holds this many files or is this old. [files], [s]
BATCH_FILES = 12
BATCH_S = 0.4
#: The time left is said once so many files are done and so much time is spent. [files], [s]
SAYS_FROM, SAYS_AFTER_S = 5, 2.0
#: Files in flight a worker; few, so that memory stays flat and stopping is quick.
IN_FLIGHT = 3
#: So much is read in this process; more goes to workers, which can be ended at once. [bytes]
FEW_BYTES = 8 * 2**20
#: A file of so much, a day and more of running, is read alone. [bytes]
GIANT_BYTES = 16 * 2**20


@dataclass(frozen=True)
class Progress:
    """How far an import or a judging has come."""

    done: int
    total: int
    current: str = ""
    new: int = 0
    here: int = 0
    refused: int = 0
    runs: int = 0
    left_s: float | None = None  # about how long the rest takes, once that can be said


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
    def runs(self) -> int:
        """How many runs came in."""
        return sum(item.runs for item in self.taken)

    @property
    def words(self) -> str:
        """One line that says it all."""
        here = self.count("already here", "same run")
        new = self.count("new")
        parts = [
            tr("{n} new with {runs} runs", n=new, runs=self.runs)
            if self.runs > new
            else tr("{n} new", n=new)
        ]
        if here:
            parts.append(tr("{n} already here", n=here))
        if self.count("other sport"):
            parts.append(tr("{n} of other sports", n=self.count("other sport")))
        if files := self.count("season file"):
            parts.append(several(files, mark("{n} season file"), mark("{n} season files")))
        if self.count("passed over"):
            parts.append(tr("{n} passed over", n=self.count("passed over")))
        parts.append(tr("{n} not read", n=self.count("refused")))
        return ", ".join(parts)


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
                self._count,
                mp_context=get_context("spawn"),
                initializer=_settle,
                initargs=(language.code(),),
            )
        return self._pool.submit(call, *args)

    def end(self) -> None:
        """Stop the workers at once, whatever they are at."""
        if self._pool is not None:
            for process in list((self._pool._processes or {}).values()):
                process.terminate()
            # One that was stopped while it answered leaves half an answer, whose end the pool
            # would wait for as long as anyone can still write it: that is we alone.
            answers: Any = self._pool._result_queue
            answers._writer.close()
        self.close()

    def renew(self) -> None:
        """Give up a broken pool."""
        self.close()

    def close(self) -> None:
        """Stop the workers."""
        if self._pool is not None:
            self._pool.shutdown(wait=True, cancel_futures=True)
            self._pool = None


def _settle(spoken: str) -> None:
    """Make a worker let the window go first, and end with the program however that ends."""
    language.use(spoken)
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
    workers: Workers, calls: Iterable[tuple[L, Callable[..., T], tuple[Any, ...]]], stop: Event
) -> Iterator[tuple[L, T | None]]:
    """Run calls with few in flight; a call that kills its worker gives None.

    Yields the call's label and its result as they end. When ``stop`` is set nothing new is
    started and what is in flight in worker processes is ended.
    """
    queue = iter(calls)
    flying: dict[Future[T], tuple[L, Callable[..., T], tuple[Any, ...]]] = {}
    more = True
    while True:
        while more and not stop.is_set() and len(flying) < workers.room:
            call = next(queue, None)
            if call is None:
                more = False
                break
            flying[workers.submit(call[1], *call[2])] = call
        if stop.is_set():
            workers.end()
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
    workers: Workers, calls: Iterable[tuple[L, Callable[..., T], tuple[Any, ...]]]
) -> Iterator[tuple[L, T | None]]:
    """Run the calls that were in flight alone, so that the guilty one is known."""
    for label, call, args in calls:
        try:
            yield label, workers.submit(call, *args).result()
        except BrokenProcessPool:
            workers.renew()
            yield label, None


Read = Callable[..., reading.ReadFile]
Call = tuple[Source, Read, tuple[Any, ...]]


def _read_giant(source: Source, terms: reading.Terms) -> reading.ReadFile:
    memory.give_back()
    return reading.read_file(source, terms)


def read_and_take_in(
    paths: Sequence[Path],
    *,
    known: set[str],
    terms: reading.Terms,
    save: Callable[[list[reading.ReadFile]], tuple[list[Taken], Changes]],
    progress: Callable[[Progress], None],
    stop: Event,
) -> Report:
    """Read files and hand them to ``save`` by batches.

    Parameters
    ----------
    paths : sequence of Path
        From :func:`tercet.library.sources.find_files`; archives among them are opened up.
    known : set of str
        Contents already in the store; they are not read again.
    terms : Terms
        As for :func:`tercet.library.reading.read_file`.
    save : callable
        Takes a batch into the store; called from this thread.
    progress : callable
        Told after every file, from this thread.
    stop : Event
        What was read before it is set stays.
    """
    with TemporaryDirectory(prefix="tercet-", ignore_cleanup_errors=True) as folder:
        try:
            job = _Import(known, terms, save, progress, stop)
            return job.run(opened_up(paths, Path(folder)))
        finally:
            archive.let_go()


class _Import:
    """One import: what is known of it while it runs."""

    def __init__(
        self,
        known: set[str],
        terms: reading.Terms,
        save: Callable[[list[reading.ReadFile]], tuple[list[Taken], Changes]],
        progress: Callable[[Progress], None],
        stop: Event,
    ) -> None:
        self._known, self._terms, self._save = known, terms, save
        self._progress, self._stop = progress, stop
        self._report = Report()
        self._batch: list[reading.ReadFile] = []
        self._saved_at = self._began_at = time.monotonic()
        self._total = self._bytes = self._bytes_done = 0

    def run(self, found: Iterable[Source | tuple[Source, Failed]]) -> Report:
        sources: list[Source] = []
        for item in found:
            if self._stop.is_set():
                break
            if isinstance(item, Source):
                sources.append(item)
            else:
                self._report.taken.append(Taken(item[0].shown, "refused", item[1].reason))
        self._total = len(sources) + len(self._report.taken)
        self._began_at = time.monotonic()
        few = len(sources) < FEW_FILES and sum(source.weight for source in sources) < FEW_BYTES
        giants: list[Source] = []
        rest: list[Source] = []
        for source in sources:
            (giants if not few and source.weight >= GIANT_BYTES else rest).append(source)
        self._through(Here() if few else Workers(), rest, reading.read_file)
        # One after the other, so that memory stays bounded however many there are.
        self._through(Workers(1), giants, _read_giant)
        self._report.stopped = self._stop.is_set()
        return self._report

    def _through(self, workers: Workers, sources: Iterable[Source], read: Read) -> None:
        calls = self._calls(sources, read)
        try:
            for source, result in in_order_of_ending(workers, calls, self._stop):
                self._batch.append(
                    result
                    if result is not None
                    else reading.refused(
                        source, tr("Reading it ended the reader; it was left out.")
                    )
                )
                self._keep()
                self._tell(source.name)
            self._keep(final=True)
        finally:
            workers.close()

    def _calls(self, sources: Iterable[Source], read: Read) -> Iterator[Call]:
        for source in sources:
            if self._stop.is_set():
                return
            name = _content(source, self._stop) if self._known else ""
            if name and name in self._known:
                self._report.taken.append(Taken(source.shown, "already here", sha256=name))
                self._tell(source.name)
                continue
            yield source, read, (source, self._terms)

    def _keep(self, final: bool = False) -> None:
        if not self._batch or not (
            final or len(self._batch) >= BATCH_FILES or time.monotonic() - self._saved_at >= BATCH_S
        ):
            return
        taken, changes = self._save(self._batch)
        self._report.taken += taken
        self._report.changes |= changes
        self._batch.clear()
        self._saved_at = time.monotonic()

    def _tell(self, current: str) -> None:
        report = self._report
        done = len(report.taken) + len(self._batch)
        self._progress(
            Progress(
                done,
                self._total,
                current,
                report.count("new"),
                report.count("already here", "same run"),
                report.count("refused"),
                report.runs + sum(len(file.runs) for file in self._batch),
                self._left(done),
            )
        )

    def _left(self, done: int) -> float | None:
        """Seconds that the rest will take, once enough is done to say."""
        spent = time.monotonic() - self._began_at
        if done < SAYS_FROM or spent < SAYS_AFTER_S or done >= self._total:
            return None
        return spent * (self._total - done) / done


def _content(source: Source, stop: Event) -> str:
    """SHA-256 of a file, nothing if it cannot be read or is too large."""
    try:
        with source.open() as opened:
            stream = Counted(opened)
            while not stop.is_set() and stream.read(2**20):
                pass
            return stream.finish() if not stop.is_set() else ""
    except (*UNREADABLE, Refused):
        return ""
