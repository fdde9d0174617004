"""What the thresholds page asks the store: fingerprints with their days, and kept tests."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

from tercet.store.database import Store
from tercet.store.season_queries import among


@dataclass(frozen=True)
class RunPrint:
    """A recorded run with its fingerprint, as text, and what it was judged."""

    id: int
    day: date
    kind: str
    name: str
    moving_s: float
    hr_mean: float | None
    easy_share: float | None
    fingerprint: str
    start_utc: float = 0.0


@dataclass(frozen=True)
class KeptTest:
    """A test as it was typed; ``rows`` holds what its kind needs."""

    id: int
    day: date
    kind: str
    rows: dict[str, Any]
    note: str


def run_prints(store: Store, ids: Sequence[int] | None = None) -> list[RunPrint]:
    """All recorded running with fingerprints, or that of some ids, oldest first."""
    found = store.rows(
        "SELECT r.id, r.day, r.start_utc, r.kind, r.name, r.moving_s, r.hr_mean, r.fingerprint, "
        "j.easy_s, j.moderate_s, j.hard_s FROM run r LEFT JOIN judgement j ON j.run_id = r.id "
        "WHERE r.sport = 'running' AND r.notation = '' AND r.fingerprint != '' "
        f"AND {among(ids)}ORDER BY r.start_utc, r.id",
        tuple(ids or ()),
    )
    out = []
    for row in found:
        judged = sum(row[name] or 0.0 for name in ("easy_s", "moderate_s", "hard_s"))
        out.append(
            RunPrint(
                row["id"],
                date.fromisoformat(row["day"]),
                row["kind"],
                row["name"],
                row["moving_s"],
                row["hr_mean"],
                row["easy_s"] / judged if judged > 0 else None,
                row["fingerprint"],
                row["start_utc"],
            )
        )
    return out


def tests(store: Store) -> list[KeptTest]:
    """The kept tests, latest first."""
    return [
        KeptTest(
            row["id"],
            date.fromisoformat(row["day"]),
            row["kind"],
            json.loads(row["rows"]),
            row["note"],
        )
        for row in store.rows("SELECT * FROM test ORDER BY day DESC, id DESC")
    ]
