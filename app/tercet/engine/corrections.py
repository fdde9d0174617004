"""The runner's word over a judgement: stretches shaded by hand, or left out, sums still exact."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from tercet.engine.judgement import Evidence, Judgement, Repetition
from tercet.engine.scale import MIDDLE, Floats, Shade

#: What may be said of a stretch; ``None`` leaves it out.
SAYABLE = (Shade.EASY, Shade.MODERATE, Shade.HARD)
_LOWEST = (-np.inf, 1.0, 2.0)
_HIGHEST = (1.0 - 1e-9, 2.0 - 1e-9, np.inf)


@dataclass(frozen=True)
class Correction:
    """A stretch that the runner knows better; ``shade`` ``None`` leaves it out.

    Times in seconds from the recording's start; ``end_s`` may be infinite: to the end. A stretch
    that is said to be a ``repetition`` keeps the shade it was judged to have.
    """

    start_s: float
    end_s: float
    shade: Shade | None
    repetition: bool = False


def whole_run(shade: Shade | None) -> Correction:
    """Give the correction of every second of a run: one shade, or (``None``) left out."""
    return Correction(0.0, math.inf, shade)


def check_correction(correction: Correction) -> None:
    """Raise ``ValueError`` for a correction that cannot be.

    Parameters
    ----------
    correction : Correction

    Raises
    ------
    ValueError
        Unless 0 <= start < end, and the shade is easy, moderate, hard or None.
    """
    if not 0 <= correction.start_s < correction.end_s:
        raise ValueError(
            f"a stretch must end after it begins: {correction.start_s:g} to {correction.end_s:g} s"
        )
    if correction.shade is not None and correction.shade not in SAYABLE:
        raise ValueError(f"a stretch is easy, moderate, hard or left out, not {correction.shade!r}")


def apply_corrections(judged: Judgement, corrections: Sequence[Correction]) -> Judgement:
    """Put the runner's word over a judgement; later corrections win over earlier ones.

    Parameters
    ----------
    judged : Judgement
    corrections : sequence of Correction

    Returns
    -------
    Judgement
        Seconds whose middle lies in a stretch that counted as running or were unjudged get its
        shade, with the runner's word as evidence; where none of them did, all do, since then it
        was the judging that saw no running. What is left out is not running. Seconds and metres
        themselves never change, so the sums still add up to elapsed time and distance.

    Raises
    ------
    ValueError
        As :func:`check_correction` does.
    """
    for correction in corrections:
        check_correction(correction)
    if not corrections or not len(judged.shades):
        return judged
    shades, said = judged.shades.copy(), np.zeros(len(judged.shades), dtype=bool)
    middle = np.arange(len(shades)) + 0.5
    middle[-1] = len(shades) - 1 + 0.5 * judged.last_second_s
    for correction in corrections:
        if correction.repetition:
            continue
        inside = (middle >= correction.start_s) & (middle < correction.end_s)
        if correction.shade is None:
            shades[inside] = Shade.NOT_RUNNING
        else:
            ran = inside & (judged.shades != Shade.NOT_RUNNING)
            inside = ran if ran.any() else inside
            shades[inside] = correction.shade
        said |= inside
    evidence = np.where(said, np.uint8(Evidence.WORD), judged.evidence).astype(np.uint8)
    probability = judged.probability
    if len(probability):
        probability = np.where(said, 1.0, probability)
    corrected = replace(
        judged,
        shades=shades,
        evidence=evidence,
        scale=_scale(judged.scale, shades, said),
        probability=probability,
        repetitions=_repetitions(
            _with_said(judged, [c for c in corrections if c.repetition], shades), shades, said
        ),
    )
    return replace(corrected, intervals=_intervals(judged, corrected, said))


def _scale(scale: Floats, shades: NDArray[np.uint8], said: NDArray[np.bool_]) -> Floats:
    """Keep the scale in step with the shades."""
    out = scale.copy()
    for shade in SAYABLE:
        at = said & (shades == shade)
        kept = np.where(np.isfinite(scale[at]), scale[at], MIDDLE[shade])
        out[at] = np.clip(kept, _LOWEST[shade], _HIGHEST[shade])
    out[said & (shades == Shade.NOT_RUNNING)] = np.nan
    return out


def _with_said(
    judged: Judgement, corrections: Sequence[Correction], shades: NDArray[np.uint8]
) -> list[Repetition]:
    """Put stretches said to be repetitions in place of those found that lie in them."""
    reps = list(judged.repetitions)
    for correction in corrections:
        begin, end = correction.start_s, min(correction.end_s, judged.elapsed_s)
        inside = slice(int(begin), max(math.ceil(end), int(begin) + 1))
        if not shades[inside].size:
            continue
        level = judged.level_speed[inside]
        level = level[np.isfinite(level)]
        reps = [r for r in reps if r.start_s + r.duration_s <= begin or r.start_s >= end]
        reps.append(
            Repetition(
                begin,
                end - begin,
                float(judged.metres[inside].sum()),
                float(level.mean()) if len(level) else math.nan,
                Shade(int(np.bincount(shades[inside], minlength=5).argmax())),
            )
        )
    reps.sort(key=lambda rep: rep.start_s)
    if not corrections:
        return reps
    nexts = [*reps[1:], None]
    return [
        replace(rep, recovery_s=max(0.0, after.start_s - rep.start_s - rep.duration_s))
        if after is not None
        else replace(rep, recovery_s=None)
        for rep, after in zip(reps, nexts, strict=True)
    ]


def _repetitions(
    repetitions: Sequence[Repetition], shades: NDArray[np.uint8], said: NDArray[np.bool_]
) -> tuple[Repetition, ...]:
    """Shade repetitions anew where something was said; those left out are none."""
    kept = []
    for rep in repetitions:
        begin, end = int(rep.start_s), max(int(rep.start_s + rep.duration_s), int(rep.start_s) + 1)
        if not said[begin:end].any():
            kept.append(rep)
            continue
        shade = Shade(int(np.bincount(shades[begin:end], minlength=5).argmax()))
        if shade != Shade.NOT_RUNNING:
            kept.append(replace(rep, shade=shade))
    return tuple(
        rep
        if rep.recovery_s is None
        else replace(
            rep,
            recovery_s=kept[k + 1].start_s - rep.start_s - rep.duration_s
            if k + 1 < len(kept)
            else None,
        )
        for k, rep in enumerate(kept)
    )


def _intervals(
    before: Judgement, after: Judgement, said: NDArray[np.bool_]
) -> tuple[tuple[float, float], ...]:
    """Move the intervals with the sums; what was said is not in doubt, so they narrow."""
    ran = before.shades <= Shade.HARD
    left = int(np.count_nonzero(ran & ~said)) / max(int(np.count_nonzero(ran)), 1)
    old, new = before.seconds_by_shade(), after.seconds_by_shade()
    told = np.bincount(after.shades[said], minlength=5)
    return tuple(
        (
            max(new[k] - left * (old[k] - low), float(told[k]) if told[k] <= new[k] else 0.0),
            new[k] + left * (high - old[k]),
        )
        for k, (low, high) in enumerate(before.intervals)
    )
