"""Judging stored runs anew, with the runner's corrections over them: what it takes, and one run."""

from __future__ import annotations

import json
from collections.abc import Sequence
from datetime import date
from typing import Any

from tercet.domain import DatedThresholds
from tercet.engine.long_lines import LONGEST_S
from tercet.library.beside import known_of
from tercet.library.dated import in_force
from tercet.store import queries
from tercet.store.correction_queries import belts, corrections
from tercet.store.database import Row, Store


def given(
    store: Store, run_id: int, entries: Sequence[DatedThresholds] | None = None
) -> tuple[Any, ...] | None:
    """What :func:`tercet.library.reading.judge_again` takes of a run; None if the run is gone.

    ``entries`` are thresholds to judge by, those of the store if None.
    """
    from tercet.library.written import said_by

    row = queries.run(store, run_id)
    if row is None:
        return None
    dated = queries.thresholds(store) if entries is None else entries
    return (
        queries.streams(store, row["sha256"], row["part"]),
        row["stops"],
        in_force(dated, date.fromisoformat(row["day"])),
        said_by(row),
        corrections(store, run_id),
        known_of(row["laps"], row["effort"], belts(store, run_id)),
    )


def judge_one(store: Store, run_id: int) -> None:
    """Judge a run anew inside an open step: what is said about it has changed."""
    row = queries.run(store, run_id)
    told = given(store, run_id) if row is not None and row["sport"] == "running" else None
    if told is None:
        return
    from tercet.library import reading

    judged: Row = reading.judge_again(*told)
    changed = judged.pop("run", None)
    if changed is not None:
        store.put("run", {**changed, "id": run_id})
    store.put("judgement", {**judged, "run_id": run_id})


def by_channels(store: Store, run_id: int) -> bool:
    """Whether channels are known to have judged a run, so that its effort changes nothing in it.

    False where that is not plain: a run typed, corrected by hand, or judged in pieces, for each
    piece may have been judged by another evidence.
    """
    row, judged = queries.run(store, run_id), queries.judgement(store, run_id)
    if row is None or judged is None or row["notation"] or corrections(store, run_id):
        return False
    if sum(judged[name] for name in queries.SECONDS) > LONGEST_S:
        return False
    return any(high > 0.0 for _, high in json.loads(judged["intervals"] or "[]"))
