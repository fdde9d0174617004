"""Sums of judged time and metres: by run, day, ISO week, block and season."""

from __future__ import annotations

from collections.abc import Hashable, Sequence
from datetime import date
from itertools import pairwise
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike

from tercet.engine.scale import Floats, Shade
from tercet.engine.shades import easy_share as easy_share

Key = Literal["run", "day", "week", "season"]


def week_key(day: date) -> tuple[int, int]:
    """ISO year and week of a local day."""
    iso = day.isocalendar()
    return iso.year, iso.week


def sums_by(keys: Sequence[Hashable], amounts: ArrayLike) -> dict[Hashable, Floats]:
    """Add up rows that share a key.

    Parameters
    ----------
    keys : sequence, length n
        One hashable key a row; order of first appearance is kept.
    amounts : array_like, shape (n, m)
        Seconds or metres by shade.

    Returns
    -------
    dict of key to ndarray of float64, shape (m,)
        The sums do not depend on the order of the rows.
    """
    table = np.asarray(amounts, dtype=np.float64)
    rows: dict[Hashable, list[int]] = {}
    for k, key in enumerate(keys):
        rows.setdefault(key, []).append(k)
    # Sorting before adding makes the last digit independent of the order of files.
    return {key: np.sort(table[at], axis=0).sum(axis=0) for key, at in rows.items()}


def season_sums(days: Sequence[date], amounts: ArrayLike, by: Key) -> dict[Hashable, Floats]:
    """Sum a season's runs by run, day, ISO week or as a whole.

    Parameters
    ----------
    days : sequence of date, length n
        Local day of each run.
    amounts : array_like, shape (n, m)
        Seconds or metres by shade, one row a run.
    by : {"run", "day", "week", "season"}

    Returns
    -------
    dict
        Keys: row number, date, (ISO year, ISO week), or "season".
    """
    keys: list[Hashable]
    if by == "run":
        keys = list(range(len(days)))
    elif by == "day":
        keys = list(days)
    elif by == "week":
        keys = [week_key(day) for day in days]
    else:
        keys = ["season"] * len(days)
    return sums_by(keys, amounts)


def _rows(amounts: ArrayLike, count: int) -> Floats:
    """One row a run, also where there is none."""
    table = np.asarray(amounts, dtype=np.float64)
    if table.ndim == 2 and len(table) == count:
        return table
    if count == 0 and table.size == 0:
        return np.zeros((0, len(Shade)))
    raise ValueError(f"give one row of amounts a run: {count} days, shape {table.shape}")


def block_sums(
    days: Sequence[date], amounts: ArrayLike, blocks: Sequence[tuple[date, date]]
) -> Floats:
    """Sum a season's runs by block.

    Parameters
    ----------
    days : sequence of date, length n
        Local day of each run.
    amounts : array_like, shape (n, m)
        Seconds or metres by shade.
    blocks : sequence of (first day, last day)
        Both included; must not overlap.

    Returns
    -------
    ndarray of float64, shape (len(blocks) + 1, m)
        One row a block; the last row holds what lies in no block.

    Raises
    ------
    ValueError
        If two blocks overlap.
    """
    ordered = sorted(blocks)
    for (_, end), (begin, _) in pairwise(ordered):
        if begin <= end:
            raise ValueError(f"blocks overlap on {begin.isoformat()}")
    table = _rows(amounts, len(days))
    at = np.full(len(days), len(blocks))
    ordinal = np.array([day.toordinal() for day in days])
    for k, (begin, end) in enumerate(blocks):
        at[(ordinal >= begin.toordinal()) & (ordinal <= end.toordinal())] = k
    out = np.zeros((len(blocks) + 1, table.shape[1]))
    for k in range(len(blocks) + 1):
        out[k] = np.sort(table[at == k], axis=0).sum(axis=0)
    return out


def cumulative_by_day(days: Sequence[date], amounts: ArrayLike, first: date, last: date) -> Floats:
    """Running totals over the days of one block, starting from zero.

    Parameters
    ----------
    days : sequence of date, length n
        Local day of each run; days outside the block are left out.
    amounts : array_like, shape (n, m)
        Seconds or metres by shade.
    first, last : date
        The block's days, both included.

    Returns
    -------
    ndarray of float64, shape ((last - first).days + 2, m)
        Row 0 is the start of the first day (zeros), row k the end of day k.
    """
    table = _rows(amounts, len(days))
    count = (last - first).days + 1
    columns = table.shape[1]
    per_day = np.zeros((count, columns))
    offset = np.array([day.toordinal() - first.toordinal() for day in days], dtype=int)
    inside = (offset >= 0) & (offset < count)
    np.add.at(per_day, offset[inside], table[inside])
    return np.vstack((np.zeros((1, columns)), np.cumsum(per_day, axis=0)))
