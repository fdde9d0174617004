"""What a week still allows: wanted running time by shade, less what was run."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

Three = tuple[float, float, float]


@dataclass(frozen=True)
class Allowance:
    """A week's easy, moderate and hard: wanted and run, in one unit (seconds or metres)."""

    wanted: Three
    run: Three

    @property
    def left(self) -> Three:
        """What is left; negative where more was run than wanted."""
        a, b, c = (want - done for want, done in zip(self.wanted, self.run, strict=True))
        return a, b, c


def allowance(volume: float, shares: Three, run: Sequence[float]) -> Allowance:
    """Lay a week's running beside what its block wants.

    Parameters
    ----------
    volume : float
        Wanted in the week. [s or m]
    shares : (float, float, float)
        Wanted easy, moderate and hard; they add up to 1.
    run : sequence of float
        Run in the week by shade, in the order of Shade; only the first three count. [s or m]

    Returns
    -------
    Allowance
    """
    easy, moderate, hard = (volume * share for share in shares)
    return Allowance((easy, moderate, hard), (float(run[0]), float(run[1]), float(run[2])))


def share_out(edited: int, value: int, before: tuple[int, int, int]) -> tuple[int, int, int]:
    """Make three whole shares add up to 100 again after one was edited.

    Parameters
    ----------
    edited : int
        Which of the three was edited; it stays.
    value : int
        Its new share, 0 to 100. [%]
    before : (int, int, int)
        The shares before. [%]

    Returns
    -------
    (int, int, int)
        The other two share the rest in their old proportion, or evenly if both were 0.
    """
    rest = 100 - value
    others = [k for k in range(3) if k != edited]
    sum_before = sum(before[k] for k in others)
    first = round(rest * before[others[0]] / sum_before) if sum_before else rest // 2
    made = {edited: value, others[0]: first, others[1]: rest - first}
    return made[0], made[1], made[2]
