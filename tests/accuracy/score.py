"""Sums over runs, and the figures made of them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

import numpy as np

from tests.accuracy.methods import EASY, HARD, MODERATE, NOT_RUNNING, Judged
from tests.simulator import Simulated

#: Kinds whose repetitions last 10 s to 3 min.
SHORT = (
    "easy_strides", "reps_100", "reps_200", "reps_300", "reps_400", "thirty_thirty",
    "three_minutes", "hill_sprints", "treadmill_reps",
)  # fmt: skip
#: Kinds that are easy from end to end.
EASY_KINDS = ("easy", "recovery", "long", "treadmill_easy")
LETTERS = "EMHRU"
#: Nobody's threshold speed is known to better than this (natural log) [guess].
NEAR_LINE = 0.02


@dataclass(eq=False)
class Score:
    """Confusion of seconds by kind (truth by judged), and repetitions; figures as methods."""

    confusion: dict[str, np.ndarray] = field(default_factory=dict)  # (5, 5) seconds
    counts: dict[str, list[bool]] = field(default_factory=dict)  # exact, a repetition session
    false_finds: int = 0
    without: int = 0  # sessions without repetitions
    length_errors: list[float] = field(default_factory=list)  # of sessions counted right
    duration_errors: list[float] = field(default_factory=list)
    covered: list[bool] = field(default_factory=list)
    per_run: list[float] = field(default_factory=list)
    clear: list[tuple[int, int]] = field(default_factory=list)  # right, of, away from a line

    def add(self, run: Simulated, judged: Judged) -> None:
        """Count one run."""
        truth = np.array([LETTERS.index(c) for c in run.truth])
        pairs = np.bincount(5 * truth + judged.shades, minlength=25).reshape(5, 5)
        self.confusion[run.kind] = self.confusion.get(run.kind, np.zeros((5, 5))) + pairs
        away = _away(run)
        self.clear.append((int((truth == judged.shades)[away].sum()), int(away.sum())))
        self.per_run.append(float(np.trace(pairs) / pairs.sum()))
        if len(run.repetitions) >= 3:
            same = len(judged.repetitions) == len(run.repetitions)
            self.counts.setdefault(run.kind, []).append(same)
            if same:
                for found, (_, seconds, metres) in zip(
                    judged.repetitions, run.repetitions, strict=True
                ):
                    self.length_errors.append(found.distance_m / metres - 1)
                    self.duration_errors.append(found.duration_s / seconds - 1)
        else:
            self.without += 1
            self.false_finds += bool(judged.repetitions)
        true_seconds = pairs.sum(axis=1)
        for shade, (low, high) in enumerate(judged.intervals):
            self.covered.append(bool(low <= true_seconds[shade] <= high))

    def total(self, kinds: Iterable[str] | None = None) -> np.ndarray:
        """Confusion summed over kinds."""
        names = [k for k in (kinds or self.confusion) if k in self.confusion]
        return np.sum([self.confusion[k] for k in names], axis=0) if names else np.zeros((5, 5))

    def right(self, kinds: Iterable[str] | None = None) -> float:
        """Share of seconds with the right shade [%]."""
        t = self.total(kinds)
        return float(100 * np.trace(t) / t.sum()) if t.sum() else float("nan")

    def clearly_right(self) -> float:
        """Share of seconds with the right shade where demand is no coin toss [%]."""
        right, of = np.sum(self.clear, axis=0)
        return float(100 * right / of)

    def share_errors(self, kinds: Iterable[str] | None = None) -> np.ndarray:
        """Judged less true share of easy, moderate, hard running [percentage points]."""
        t = self.total(kinds)
        true, found = t.sum(axis=1)[:3], t.sum(axis=0)[:3]
        return 100 * (found / max(found.sum(), 1.0) - true / max(true.sum(), 1.0))

    def hard_ratio(self, kinds: Iterable[str] = SHORT) -> float:
        """Judged over true hard seconds, less one [%]."""
        t = self.total(kinds)
        true = t[HARD].sum()
        return float(100 * (t[:, HARD].sum() / true - 1)) if true else float("nan")

    def wrongly_moderate(self, kinds: Iterable[str] = EASY_KINDS) -> float:
        """Truly easy seconds judged moderate, of the running seconds of easy runs [%]."""
        t = self.total(kinds)
        running = t.sum() - t[NOT_RUNNING].sum()
        return float(100 * t[EASY, MODERATE] / running) if running else float("nan")

    def exact(self, kind: str | None = None) -> tuple[int, int]:
        """Repetition sessions with the exact count, of how many."""
        lists = [self.counts.get(kind, [])] if kind else list(self.counts.values())
        return sum(map(sum, lists)), sum(map(len, lists))


def _away(run: Simulated) -> np.ndarray:
    """Seconds whose true demand lies more than :data:`NEAR_LINE` from both lines, shape (n,)."""
    demand = np.log(np.maximum(run.demand, 0.1))
    lines = np.log([run.runner.lt1_speed, run.runner.lt2_speed])
    away: np.ndarray = (np.abs(demand[:, None] - lines) > NEAR_LINE).all(axis=1)
    return away


def score(pairs: Iterable[tuple[Simulated, Judged]]) -> Score:
    """Score many runs."""
    out = Score()
    for run, judged in pairs:
        out.add(run, judged)
    return out
