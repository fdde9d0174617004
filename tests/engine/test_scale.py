"""The one scale: it rises, it has no jumps, and what lies on a line belongs above it."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tercet.engine import LETTERS, Shade, Thresholds, check_thresholds, intensity, shade_of

GOOD = Thresholds(lt1_hr=146, lt2_hr=167, lt1_speed=2.95, lt2_speed=3.60, hr_rest=48, hr_max=186)
heart_rates = st.floats(20, 240)


def scale(values: object) -> np.ndarray:
    return intensity(values, rest=48, lt1=146, lt2=167)


def test_the_three_marks_lie_at_zero_one_and_two() -> None:
    assert scale([48, 146, 167]).tolist() == [0.0, 1.0, 2.0]


def test_it_goes_straight_on_above_and_below() -> None:
    # as far above LT2 as LT2 is above LT1, and as far below rest as LT1 is above it
    assert scale([188, -50]).tolist() == pytest.approx([3.0, -1.0])


@given(heart_rates, heart_rates)
def test_more_is_never_less_on_the_scale(a: float, b: float) -> None:
    low, high = sorted((a, b))
    below, above = scale([low, high])
    assert below <= above
    assert below < above or high - low < 1e-9


@pytest.mark.parametrize("mark", [48.0, 146.0, 167.0])
def test_it_has_no_jump_at_a_mark(mark: float) -> None:
    # 1e-6 beats/min can move the scale by no more than 1e-6 over the narrower span of 21
    either_side = scale([mark - 1e-6, mark, mark + 1e-6])
    assert np.abs(np.diff(either_side)).max() < 1e-7


@pytest.mark.parametrize(("rest", "lt1", "lt2"), [(150, 146, 167), (48, 167, 146), (48, 146, 146)])
def test_marks_that_do_not_rise_are_refused(rest: float, lt1: float, lt2: float) -> None:
    with pytest.raises(ValueError, match="must rise"):
        intensity([100.0], rest=rest, lt1=lt1, lt2=lt2)


def test_a_value_on_a_line_belongs_to_the_shade_above_it() -> None:
    # this program's rule; lactate practice puts exactly 2.0 mmol/L below (Seiler & Kjerland 2006)
    shades = shade_of(scale([145.999, 146, 166.999, 167]))
    assert shades.tolist() == [Shade.EASY, Shade.MODERATE, Shade.MODERATE, Shade.HARD]


@given(st.lists(st.floats(-5, 9) | st.just(float("nan")), max_size=40))
def test_every_point_gets_exactly_one_shade_and_only_nan_none(points: list[float]) -> None:
    shades = shade_of(points)
    assert len(shades) == len(points)
    for point, shade in zip(points, shades.tolist(), strict=True):
        assert (shade == Shade.UNJUDGED) == (point != point)
        assert shade in (Shade.EASY, Shade.MODERATE, Shade.HARD, Shade.UNJUDGED)


def test_nan_stays_nan() -> None:
    assert np.isnan(scale([float("nan")])[0])


def test_letters_are_in_the_order_of_the_shades() -> None:
    assert [LETTERS[shade] for shade in Shade] == ["E", "M", "H", "R", "U"]


def test_a_whole_set_passes_and_either_pair_alone_does() -> None:
    check_thresholds(GOOD)
    check_thresholds(Thresholds(lt1_hr=140, lt2_hr=160))
    check_thresholds(Thresholds(lt1_speed=3.0, lt2_speed=3.6))
    check_thresholds(replace(GOOD, lt2_hr=186))  # LT2 may lie at the maximum, not above


@pytest.mark.parametrize(
    ("change", "first", "second"),
    [
        ({"lt1_hr": 170}, "lt1_hr", "lt2_hr"),
        ({"lt1_hr": 167}, "lt1_hr", "lt2_hr"),
        ({"lt1_speed": 3.7}, "lt1_speed", "lt2_speed"),
        ({"hr_rest": 150}, "hr_rest", "lt1_hr"),
        ({"lt2_hr": 187}, "lt2_hr", "hr_max"),
        ({"lt1_hr": None, "hr_rest": 170}, "hr_rest", "lt2_hr"),
        ({"lt1_hr": None}, "lt1_hr", "lt2_hr"),
        ({"lt2_speed": None}, "lt1_speed", "lt2_speed"),
    ],
)
def test_the_pair_that_cannot_be_is_named(
    change: dict[str, float | None], first: str, second: str
) -> None:
    with pytest.raises(ValueError, match=rf"{first}\b.*\b{second}"):
        check_thresholds(replace(GOOD, **change))


@pytest.mark.parametrize(
    ("change", "name"),
    [
        ({"lt2_speed": 36.0}, "lt2_speed"),
        ({"lt1_speed": 0.0}, "lt1_speed"),
        ({"hr_max": 400.0}, "hr_max"),
        ({"hr_rest": float("nan")}, "hr_rest"),
        ({"lt2_hr": float("inf")}, "lt2_hr"),
    ],
)
def test_a_value_that_nobody_has_is_named(change: dict[str, float], name: str) -> None:
    with pytest.raises(ValueError, match=name):
        check_thresholds(replace(GOOD, **change))


def test_rest_and_maximum_alone_judge_nothing_and_are_refused() -> None:
    with pytest.raises(ValueError, match="LT1 and LT2"):
        check_thresholds(Thresholds(hr_rest=50, hr_max=190))
