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
    """A run's stretches that were shaded by hand or left out, in the order they were said."""
    return tuple(
        Correction(row["start_s"], row["end_s"], LETTERS[row["shade"]])
        for row in store.rows(
            "SELECT start_s, end_s, shade FROM correction "
            "WHERE run_id = ? AND kind = 'shade' ORDER BY id",
            (run_id,),
        )
    )
