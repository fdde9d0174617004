"""The runner's word wins: stretches shaded by hand, left out, made a repetition, run on a belt."""

from __future__ import annotations

from datetime import UTC, datetime

from tercet.domain import Changes
from tercet.engine.corrections import Correction, check_correction
from tercet.language import tr
from tercet.library.rejudge import judge_one
from tercet.store.correction_queries import LETTERS, correction_ids
from tercet.store.database import Store

#: What may be said of a stretch, by letter, as the screens name it.
SAID = {"E": "easy", "M": "moderate", "H": "hard", "X": "left out"}
#: Speeds that a belt runs at. [m/s]
BELT_SPEEDS = (0.3, 9.0)


def shade_stretch(
    store: Store, run_id: int, start_s: float, end_s: float, letter: str, where: str = ""
) -> Changes:
    """Say how hard a stretch was, or leave it out; the run is judged anew with it.

    Parameters
    ----------
    store : Store
    run_id : int
    start_s, end_s : float
        From the recording's start. [s]
    letter : str
        One of :data:`SAID`.
    where : str
        The stretch in words, for the step's name.

    Raises
    ------
    ValueError
        If the stretch ends before it begins, or the letter is unknown.
    """
    if letter not in SAID:
        raise ValueError(
            tr(
                "a stretch is one of {letters}, not {letter}",
                letters=", ".join(SAID.values()),
                letter=letter,
            )
        )
    check_correction(Correction(start_s, end_s, LETTERS[letter]))
    name = SAID[letter]
    if letter == "X":
        step = tr("Leave out {stretch}", stretch=where) if where else tr("Leave out the run")
    elif where:
        step = tr("Count {stretch} as {shade}", stretch=where, shade=tr(name))
    else:
        step = tr("Count the run as {shade}", shade=tr(name))
    return _say(
        store, run_id, step, {"kind": "shade", "start_s": start_s, "end_s": end_s, "shade": letter}
    )


def make_repetition(
    store: Store, run_id: int, start_s: float, end_s: float, where: str = ""
) -> Changes:
    """Make a stretch a repetition, in place of those found in it.

    Raises
    ------
    ValueError
        If the stretch ends before it begins.
    """
    check_correction(Correction(start_s, end_s, None, repetition=True))
    step = (
        tr("Make {stretch} a repetition", stretch=where)
        if where
        else tr("Make a stretch a repetition")
    )
    row = {"kind": "repetition", "start_s": start_s, "end_s": end_s}
    return _say(store, run_id, step, row)


def set_belt_speed(
    store: Store, run_id: int, speed: float, start_s: float, end_s: float
) -> Changes:
    """Say how fast a treadmill's belt ran over a stretch [m/s]; that speed is judged.

    Raises
    ------
    ValueError
        For a speed that no belt runs at.
    """
    low, high = BELT_SPEEDS
    if not low <= speed <= high:
        raise ValueError(
            tr(
                "a belt runs at {low} to {high} m/s: {speed}",
                low=f"{low:g}",
                high=f"{high:g}",
                speed=f"{speed:g}",
            )
        )
    check_correction(Correction(start_s, end_s, None))
    row = {"kind": "belt speed", "start_s": start_s, "end_s": end_s, "value": speed}
    return _say(store, run_id, tr("Set the belt speed"), row)


def take_back(store: Store, run_id: int) -> Changes:
    """Let the judging stand again: forget all that was said about a run's stretches."""
    step = tr("Take back what was said about the shades")
    with store.atomic(step):
        for number in correction_ids(store, run_id):
            store.remove("correction", number)
        judge_one(store, run_id)
    return Changes(runs=True, step=step)


def _say(store: Store, run_id: int, step: str, row: dict[str, object]) -> Changes:
    said = datetime.now(UTC).isoformat(timespec="seconds")
    with store.atomic(step):
        store.put("correction", {"run_id": run_id, "said_at": said, **row})
        judge_one(store, run_id)
    return Changes(runs=True, step=step)
