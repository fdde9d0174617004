"""Named questions: what is put comes back as the domain's own objects."""

from __future__ import annotations

from datetime import date

import pytest

from tercet.domain import Block, DatedThresholds, Race
from tercet.engine import Thresholds
from tercet.store import queries
from tercet.store.database import Store
from tercet.store.errors import StoreError

FULL = DatedThresholds(
    date(2026, 7, 6),
    Thresholds(147, 168, 3.02, 3.7, 47, 186, None, 236.0, 289.0),
    "a race",
    True,
    {"lt2_speed": 0.11, "lt2_hr": 6.0},
)
FIRST = DatedThresholds(date(2026, 4, 13), Thresholds(lt1_speed=2.95, lt2_speed=3.6))


def test_thresholds_come_back_oldest_first(store: Store) -> None:
    with store.atomic("put"):
        for entry in (FULL, FIRST):
            store.put("threshold", queries.threshold_row(entry))
    first, full = queries.thresholds(store)
    assert (first.start, first.values, first.source, first.estimated, dict(first.interval)) == (
        FIRST.start, FIRST.values, "typed", False, {},
    )  # fmt: skip
    assert full.values == FULL.values and full.interval == FULL.interval
    assert (full.source, full.estimated) == ("a race", True)
    assert {first.id, full.id} == {1, 2}


def test_blocks_and_races_come_back_in_order(store: Store) -> None:
    blocks = [
        Block(date(2026, 7, 6), date(2026, 8, 9), "Support", "support", 0.82),
        Block(date(2026, 4, 13), date(2026, 7, 5), "Groundwork", "base", 0.9),
    ]
    races = [Race(date(2026, 9, 27), "Half", 21_097.5), Race(date(2026, 7, 26), "Harbour 10")]
    with store.atomic("put"):
        for row in queries.block_rows(blocks):
            store.put("block", row)
        for row in queries.race_rows(races):
            store.put("race", row)
    assert [(b.name, b.start, b.end, b.kind, b.easy_target) for b in queries.blocks(store)] == [
        ("Groundwork", date(2026, 4, 13), date(2026, 7, 5), "base", 0.9),
        ("Support", date(2026, 7, 6), date(2026, 8, 9), "support", 0.82),
    ]
    assert [(r.name, r.distance_m) for r in queries.races(store)] == [
        ("Harbour 10", None), ("Half", 21_097.5),
    ]  # fmt: skip


def test_a_setting_or_its_default(store: Store) -> None:
    assert queries.setting(store, "zone", "Europe/Madrid") == "Europe/Madrid"
    with store.atomic("put"):
        store.put("setting", {"name": "zone", "value": "Asia/Kathmandu"})
    assert queries.setting(store, "zone", "Europe/Madrid") == "Asia/Kathmandu"


def test_an_empty_store_answers_every_question(store: Store) -> None:
    assert queries.sessions(store) == queries.run_ids(store) == queries.fingerprints(store) == []
    assert queries.session(store, 1) is queries.run(store, 1) is queries.judgement(store, 1) is None
    assert queries.first_day(store) is None and queries.last_taken_in(store) == ""
    assert queries.known_files(store) == set() and queries.counts(store) == {}
    assert queries.streams(store, "ab", 0) == {} and not queries.is_used(store, "ab")


def test_a_question_that_cannot_be_answered_is_told(store: Store) -> None:
    with pytest.raises(StoreError, match="could not be read"):
        store.rows("SELECT * FROM nowhere")


def test_what_needs_a_look_is_refused_or_read_in_part_and_not_put_away(store: Store) -> None:
    common = {"folder": "", "size": 1, "format": "FIT", "taken_in": "2026-05-01T08:00:00+00:00"}
    files = [
        ("whole.fit", "run", ""),
        ("part.fit", "run", "It ends early."),
        ("refused.fit", "refused", "It is too damaged."),
        ("seen.fit", "refused", "It is too damaged."),
        ("settings.fit", "passed over", "It holds settings."),
    ]
    with store.atomic("put"):
        for name, status, problem in files:
            row = {"sha256": name, "name": name, "status": status, "problem": problem, **common}
            store.put("file", row)
        store.put("file", {"sha256": "seen.fit", "put_away": 1})
    assert [file.name for file in queries.files_to_look_at(store)] == ["refused.fit", "part.fit"]
    assert queries.counts(store) == {"run": 2, "refused": 2, "passed over": 1}
    assert queries.last_taken_in(store) == "2026-05-01T08:00:00+00:00"
    known = queries.file(store, "seen.fit")
    assert known is not None and known.put_away and known.problem == "It is too damaged."
