"""Runs judged by an older method or other thresholds, judged anew while the window is used.

Undo does not know it: what it takes back is judged anew in its turn.
"""

from __future__ import annotations

import logging
from collections.abc import Callable, Iterator
from threading import Event
from typing import TYPE_CHECKING, Any

from tercet.engine import judging
from tercet.language import tr
from tercet.library import operations, rejudge
from tercet.library.library import Library
from tercet.store import queries

if TYPE_CHECKING:
    from tercet.library import importing
    from tercet.store.database import Row, Store

#: So many runs are kept in one transaction: more hold the store up, fewer cost time.
BATCH = 24

log = logging.getLogger(__name__)
Mark = tuple[int, int]
Call = tuple[tuple[int, Mark], Callable[..., "Row | None"], tuple[Any, ...]]


def waiting(store: Store) -> int:
    """How many runs an older method has judged, or thresholds not of their day."""
    return len(queries.judged_otherwise(store, judging.METHOD))


def judge_anew(
    library: Library, progress: Callable[[importing.Progress], None], stop: Event
) -> int:
    """Judge them by the method and the thresholds of today; gives how many. Blocks.

    Each batch is kept at once, so that what was stopped goes on where it ended. What a user
    changes meanwhile holds: a run that was touched since it was read is read again.
    """
    from tercet.library import importing

    done = 0
    tried: dict[int, int] = {}
    while not stop.is_set():
        found = library.call(queries.judged_otherwise, judging.METHOD)
        ids = [run_id for run_id in found if tried.get(run_id, 0) < 2]
        if not ids:
            break
        workers = library.workers_for(ids)
        batch: list[tuple[int, Mark, Row]] = []
        whole = done + len(ids)
        try:
            ended = importing.in_order_of_ending(workers, _calls(library, ids), stop)
            for (run_id, mark), row in ended:
                tried[run_id] = tried.get(run_id, 0) + 1
                if row is not None:
                    batch.append((run_id, mark, row))
                if len(batch) >= BATCH:
                    done += library.call(_keep, batch)
                    batch = []
                    progress(importing.Progress(done, whole, "judging"))
        finally:
            workers.close()
            done += library.call(_keep, batch)
    return done


def _calls(library: Library, ids: list[int]) -> Iterator[Call]:
    for run_id in ids:
        given = library.call(_given, run_id)
        if given is not None:
            yield (run_id, given[0]), tried_again, given[1]


def _given(store: Store, run_id: int) -> tuple[Mark, tuple[Any, ...]] | None:
    """What judging a run takes, and how the store stood when it was read; None if it is gone."""
    mark, _ = store.touched_since(None)
    given = rejudge.given(store, run_id)
    return (mark, given) if given is not None else None


def tried_again(*given: Any) -> Row | None:
    """Judge a run again in a worker; one that cannot be judged keeps what it had."""
    from tercet.library import reading

    try:
        return reading.judge_again(*given)
    except Exception:  # one run must not end the judging of all others
        log.exception("a stored run could not be judged anew")
        return None


def _keep(store: Store, batch: list[tuple[int, Mark, Row]]) -> int:
    kept = 0
    with store.atomic(tr("Judge anew"), kept=False):
        for run_id, mark, row in batch:
            _, touched = store.touched_since(mark)
            changed = {("run", run_id), ("judgement", run_id)}
            if touched is None or any(
                table == "threshold" or (table, key) in changed for table, key in touched
            ):
                continue
            operations.put_judgement(store, run_id, row)
            kept += 1
    return kept
