"""Shares, structure and polarization index against published distributions.

Index and structure: Treff et al. 2019, Front Physiol 10:707; the worked values were computed
from its formula apart from this program, to 0.0005.
"""

from __future__ import annotations

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from tercet.engine.distribution import is_polarised, polarization_index, shares, structure

#: Amounts, index, structure, whether polarised.
WORKED = [
    # Seiler & Kjerland 2006, Scand J Med Sci Sports 16:49-56: by heart rate, RPE, lactate
    ((75, 8, 17), 2.2024, "polarised", True),
    ((76, 6, 18), 2.3579, "polarised", True),
    ((71, 7, 22), 2.3486, "polarised", True),
    # Munoz et al. 2014, Int J Sports Physiol Perform 9:265-272: both groups
    ((77, 3, 20), 2.7104, "polarised", True),
    ((46, 35, 19), 1.3974, "pyramidal", False),
    ((68, 6, 26), 2.4693, "polarised", True),
    ((80, 5, 15), 2.3802, "polarised", True),
    ((74, 11, 15), 2.0039, "polarised", True),
    ((60, 19, 21), 1.8216, "polarised", False),  # the structure alone is not enough
    # Esteve-Lanao et al. 2005, Med Sci Sports Exerc 37:496-504: minutes
    ((4581, 1354, 487), 1.4092, "pyramidal", False),
    ((80, 15, 5), 1.4260, "pyramidal", False),
    # Sylta, Tonnessen & Seiler 2014, Int J Sports Physiol Perform 9:100-107: time, session goal
    ((96.1, 2.9, 1.1), 1.5617, "pyramidal", False),
    ((86.6, 11.1, 2.4), 1.2724, "pyramidal", False),
    # no moderate at all: the paper's rule, known from memory
    ((80, 0, 20), 3.1818, "polarised", True),
]

amounts = st.tuples(*[st.floats(0.01, 1e6)] * 3)


@pytest.mark.parametrize(("three", "index", "name", "polarised"), WORKED)
def test_worked_values(three: tuple[float, ...], index: float, name: str, polarised: bool) -> None:
    assert polarization_index(three) == pytest.approx(index, abs=0.0005)
    assert structure(three) == name
    assert is_polarised(three) is polarised


def test_shares_of_minutes() -> None:
    # Esteve-Lanao 2005: 4581 / 1354 / 487 min are 71.33 / 21.08 / 7.58 %
    assert 100 * shares([4581, 1354, 487]) == pytest.approx([71.33, 21.08, 7.58], abs=0.005)


def test_more_hard_than_easy_has_no_index() -> None:
    # the bare formula gives 40/1/59 a 3.37, which must not be called polarised
    assert polarization_index([40, 1, 59]) is None
    assert structure([40, 1, 59]) == "high-intensity"
    assert not is_polarised([40, 1, 59])


def test_nothing_hard_has_index_zero() -> None:
    # from memory: zero by definition instead of minus infinity
    assert polarization_index([90, 10, 0]) == 0.0
    assert not is_polarised([90, 10, 0])
    assert polarization_index([100, 0, 0]) == 0.0


def test_no_moderate_and_next_to_nothing_hard_has_index_zero() -> None:
    assert polarization_index([99.5, 0, 0.5]) == 0.0


@pytest.mark.parametrize(
    ("three", "name"),
    [
        ((40, 45, 15), "threshold"),
        ((54, 46, 0), "pyramidal"),
        ((20, 20, 60), "high-intensity"),
        ((50, 25, 25), "none"),
        ((40, 40, 20), "none"),
    ],
)
def test_the_other_structures(three: tuple[float, ...], name: str) -> None:
    assert structure(three) == name


@given(amounts, st.floats(1e-3, 1e3))
def test_the_unit_does_not_matter(three: tuple[float, ...], factor: float) -> None:
    # percents, shares, minutes and seconds must give the same index
    assume(abs(three[0] - three[2]) > 1e-6 * three[0])
    other = [factor * amount for amount in three]
    index = polarization_index(three)
    assert polarization_index(other) == (None if index is None else pytest.approx(index, abs=1e-9))
    assert shares(other) == pytest.approx(shares(three))


@given(amounts)
def test_no_pyramidal_or_threshold_distribution_exceeds_two(three: tuple[float, ...]) -> None:
    # provable: with z3 <= z2 the index is at most log10(100 z1) < 2
    index = polarization_index(three)
    if three[2] <= three[1] and index is not None:
        assert index < 2.0
    if is_polarised(three):
        assert structure(three) == "polarised"


@given(amounts)
def test_shares_add_up_to_one(three: tuple[float, ...]) -> None:
    assert shares(three).sum() == pytest.approx(1.0)


@pytest.mark.parametrize(
    "bad", [(0, 0, 0), (1, -1, 2), (1, float("nan"), 2), (1, 2), (1, 2, 3, 4), (1, float("inf"), 0)]
)
def test_what_is_no_distribution_is_refused(bad: tuple[float, ...]) -> None:
    with pytest.raises(ValueError, match="three amounts"):
        shares(bad)
