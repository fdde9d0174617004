"""What runners said about stretches of their runs, as the engine takes it."""

from __future__ import annotations

from tercet.engine.corrections import Correction
from tercet.engine.scale import Shade
from tercet.store.database import Store

#: How a shade is written; X for left out.
LETTERS: dict[str, Shade | None] = {
    "E": Shade.EASY,
    "M": Shade.MODERATE,
    "H": Shade.HARD,
    "X": None,
}


def belts(store: Store, run_id: int) -> tuple[tuple[float, float, float], ...]:
    """A run's stretches on a belt whose speed its runner read off: begin, end [s], speed [m/s]."""
    return tuple(
        (row["start_s"], row["end_s"], row["value"])
        for row in store.rows(
            "SELECT start_s, end_s, value FROM correction "
            "WHERE run_id = ? AND kind = 'belt speed' AND value IS NOT NULL ORDER BY id",
            (run_id,),
        )
    )


def corrections(store: Store, run_id: int) -> tuple[Correction, ...]:
    """A run's stretches shaded by hand, left out or made a repetition, in the order said."""
    return tuple(
        Correction(
            row["start_s"], row["end_s"], LETTERS.get(row["shade"]), row["kind"] == "repetition"
        )
        for row in store.rows(
            "SELECT start_s, end_s, shade, kind FROM correction "
            "WHERE run_id = ? AND kind IN ('shade', 'repetition') ORDER BY id",
            (run_id,),
        )
    )


def correction_ids(store: Store, run_id: int) -> list[int]:
    """Ids of all that was said about a run's stretches."""
    found = store.rows("SELECT id FROM correction WHERE run_id = ? ORDER BY id", (run_id,))
    return [row["id"] for row in found]
