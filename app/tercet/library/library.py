"""The one door for screens and the command line: a store, its thread, and the long jobs over it."""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping, Sequence
from concurrent.futures import Future, ThreadPoolExecutor
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path
from threading import Event
from typing import TYPE_CHECKING, Any, Concatenate, ParamSpec, TypeVar

from tercet.language import tr
from tercet.store.database import Row, Store

if TYPE_CHECKING:
    from tercet.domain import Changes, DatedThresholds
    from tercet.engine import estimate
    from tercet.engine.fingerprint import Fingerprint
    from tercet.library.importing import Progress, Report, Workers

P = ParamSpec("P")
T = TypeVar("T")
#: Fewer runs than this, and shorter in all, are judged again in this process. [runs], [s]
FEW_RUNS, FEW_S = 12, 24 * 3600.0


def _ignore(_: Progress) -> None:
    return None


@dataclass(frozen=True)
class Preview:
    """What other thresholds would change: sums before and after by shade, and how many runs."""

    entries: tuple[DatedThresholds, ...]
    judgements: dict[int, Row]
    before: tuple[float, ...]
    after: tuple[float, ...]
    changed: int


class Library:
    """A runner's record. Every call to the store goes through one thread of its own."""

    def __init__(self, folder: Path) -> None:
        self._store = Store(folder)
        try:
            self._store.purge()
        except BaseException:
            self._store.close()
            raise
        self.folder = folder
        self._thread = ThreadPoolExecutor(1, thread_name_prefix="tercet-store")

    def submit(
        self, call: Callable[Concatenate[Store, P], T], *args: P.args, **kwargs: P.kwargs
    ) -> Future[T]:
        """Run a function of the store in its thread."""
        return self._thread.submit(call, self._store, *args, **kwargs)

    def call(
        self, call: Callable[Concatenate[Store, P], T], *args: P.args, **kwargs: P.kwargs
    ) -> T:
        """Run a function of the store in its thread and wait for it."""
        return self.submit(call, *args, **kwargs).result()

    def close(self) -> None:
        """Wait for what runs, then close the store."""
        self._thread.shutdown(wait=True)
        self._store.close()

    def original(self, name: str) -> Path:
        """Where the original with this SHA-256 lies."""
        return self._store.originals.path(name)

    def undo_names(self) -> tuple[str | None, str | None]:
        """Names of the steps that undo and redo would act on."""
        return self._store.undo_name, self._store.redo_name

    # Importing ---------------------------------------------------------------------------

    def take_in(
        self,
        paths: Sequence[str | Path],
        progress: Callable[[Progress], None] = _ignore,
        stop: Event | None = None,
        *,
        token: object = None,
        step: str = "",
    ) -> Report:
        """Take in files and folders; estimate thresholds if there are none yet. Blocks.

        All of it is one undo step, together with what else bears its token. What a stop leaves
        judged by other thresholds than those of its day waits for ``judging_anew``.
        """
        from tercet.library import importing, intake, naming
        from tercet.library.sources import find_files
        from tercet.store import queries

        stop = stop or Event()
        token, named = token or object(), step
        found = find_files(paths)
        # A season file among them comes first, so that runs are judged once.
        found.sort(key=lambda place: place.suffix.lower() != ".toml")
        seasons = [place for place in found if place.suffix.lower() == ".toml"]
        rest = found[len(seasons) :]
        report = importing.Report()
        for part in (seasons, rest):
            if not part:
                continue
            done, after = len(report.taken), len(rest) if part is not rest else 0
            step = named or report_step(report)
            known, terms = self.call(naming.known_and_terms)
            more = importing.read_and_take_in(
                part,
                known=known,
                terms=terms,
                save=lambda batch, step=step: self.call(intake.take_in, batch, token, step),  # type: ignore[misc]
                progress=lambda p, done=done, after=after: progress(  # type: ignore[misc]
                    replace(p, done=p.done + done, total=p.total + done + after)
                ),
                stop=stop,
            )
            report.taken += more.taken
            report.changes |= more.changes
            report.stopped |= more.stopped
        # Also after a season file whose import ended before its runs were judged by it.
        # What an older method judged is judged anew aside, behind the open window.
        if self.call(queries.judged_by_others):
            report.changes |= self.judge_all_again(
                token=token, stop=stop, step=named or report_step(report)
            )
        report.changes |= self._estimate_if_needed(token, progress, stop)
        report.stopped |= stop.is_set()
        if any(item.sha256 and item.outcome != "already here" for item in report.taken):
            self.call(intake.remember, report.taken, token, named or report_step(report))
        return report

    def _estimate_if_needed(
        self, token: object, progress: Callable[[Progress], None], stop: Event
    ) -> Changes:
        from tercet.domain import Changes
        from tercet.store import queries

        entries, ids = self.call(lambda store: (queries.thresholds(store), queries.run_ids(store)))
        if entries or not ids:
            return Changes()
        guess = self.estimate()
        if guess is None:
            return Changes()
        preview = self.preview([guess], progress, stop)
        return self.use(preview, tr("Add recordings"), token)

    # Thresholds --------------------------------------------------------------------------

    def estimate(
        self, *, maximum: float | None = None, race: estimate.Estimate | None = None
    ) -> DatedThresholds | None:
        """Estimate thresholds from all runs and what else is known; in force from the first run."""
        from tercet.domain import DatedThresholds
        from tercet.engine import estimate
        from tercet.store import queries

        texts, first = self.call(
            lambda store: (queries.fingerprints(store), queries.first_day(store))
        )
        runs = [fingerprint_of(text) for text in texts]
        found = estimate.from_runs(runs, maximum=maximum, race=race)
        if found is None:
            return None
        return DatedThresholds(
            first or date.today(), found.values, found.source, True, dict(found.interval)
        )

    def preview(
        self,
        entries: Sequence[DatedThresholds],
        progress: Callable[[Progress], None] = _ignore,
        stop: Event | None = None,
    ) -> Preview:
        """Judge all running by other thresholds without changing anything. Blocks."""
        from tercet.store import queries

        ordered = sorted(entries, key=lambda entry: entry.start)
        numbered = [replace(entry, id=k) for k, entry in enumerate(ordered)]
        judgements = self._judge(numbered, progress, stop or Event())
        rows = self.call(queries.sessions)
        before, after, changed = [0.0] * 5, [0.0] * 5, 0
        for row in rows:
            new = judgements.get(row["id"])
            if new is None:
                continue
            old = [row[name] or 0.0 for name in queries.SECONDS]
            now = [new[name] for name in queries.SECONDS]
            before = [a + b for a, b in zip(before, old, strict=True)]
            after = [a + b for a, b in zip(after, now, strict=True)]
            changed += max(abs(a - b) for a, b in zip(old, now, strict=True)) >= 1.0
        return Preview(tuple(ordered), judgements, tuple(before), tuple(after), changed)

    def use(self, preview: Preview, step: str, token: object = None) -> Changes:
        """Apply what was previewed, as one undo step."""
        from tercet.library import operations

        return self.call(
            operations.set_thresholds,
            preview.entries,
            preview.judgements,
            step=step,
            token=token,
        )

    def judge_all_again(
        self,
        progress: Callable[[Progress], None] = _ignore,
        *,
        token: object = None,
        stop: Event | None = None,
        step: str = "",
    ) -> Changes:
        """Judge every stored run by the stored thresholds. Blocks."""
        from tercet.domain import Changes
        from tercet.library import operations
        from tercet.store import queries

        entries = self.call(queries.thresholds)
        rows = self._judge(entries, progress, stop or Event())
        if not rows:
            return Changes()
        named = step or tr("Judge all runs again")
        return self.call(operations.judge_again, rows, step=named, token=token)

    def workers_for(self, ids: Sequence[int]) -> Workers:
        """Where so many runs are judged again: what would take long can be ended at once."""
        from tercet.library import importing
        from tercet.store import queries

        if len(ids) >= FEW_RUNS:
            return importing.Workers()
        long = self.call(queries.elapsed, ids) >= FEW_S
        return importing.Workers(1) if long else importing.Here()

    def _judge(
        self,
        entries: Sequence[DatedThresholds],
        progress: Callable[[Progress], None],
        stop: Event,
    ) -> dict[int, Row]:
        from tercet.library import importing, reading, rejudge
        from tercet.store import queries

        ids = self.call(queries.run_ids)
        workers = self.workers_for(ids)

        def calls() -> Any:
            for run_id in ids:
                given = self.call(rejudge.given, run_id, entries)
                if given is not None:
                    yield str(run_id), reading.judge_again, given

        judged: dict[int, Row] = {}
        try:
            for label, result in importing.in_order_of_ending(workers, calls(), stop):
                if result is not None:
                    judged[int(label)] = result
                progress(importing.Progress(len(judged), len(ids), "judging"))
        finally:
            workers.close()
        return {} if stop.is_set() else judged


def report_step(report: Report) -> str:
    """Name of an import's undo step."""
    return report.changes.step or tr("Add recordings")


def fingerprint_of(text: str) -> Fingerprint:
    """A stored fingerprint; those kept by earlier versions lack what was added since."""
    from tercet.engine.efforts import Effort
    from tercet.engine.fingerprint import Fingerprint

    table: Mapping[str, Any] = json.loads(text)
    values: dict[str, Any] = {
        name: tuple(value) if isinstance(value, list) else value for name, value in table.items()
    }
    if values.get("efforts") is not None:
        values["efforts"] = tuple(Effort(*effort) for effort in values["efforts"])
    return Fingerprint(**values)


def of_earlier(text: str) -> bool:
    """Whether an earlier version kept this fingerprint, seen without reading it as a whole."""
    return '"efforts": [' not in text
