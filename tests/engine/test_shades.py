"""Shares in whole per cents: they add up to 100, and easy is what it is where it stands alone."""

from __future__ import annotations

import math

from hypothesis import given
from hypothesis import strategies as st

from tercet.engine.shades import whole_shares

AMOUNTS = st.floats(0.0, 1e6, allow_nan=False)


@given(st.tuples(AMOUNTS, AMOUNTS, AMOUNTS))
def test_whole_shares_add_up_and_lie_near_the_exact_ones(amounts: tuple[float, ...]) -> None:
    total = sum(amounts)
    if total == 0.0:
        assert whole_shares(amounts) == (0, 0, 0)
        return
    shares = [amount / total for amount in amounts]
    whole = whole_shares(shares)
    assert sum(whole) == 100
    assert whole[0] == math.floor(100.0 * shares[0] + 0.5)
    assert all(part >= 0 for part in whole)
    assert all(abs(part - 100.0 * share) <= 1.5 for part, share in zip(whole, shares, strict=True))
