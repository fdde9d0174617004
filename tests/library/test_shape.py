"""The shape of a stretch: classes three ways, published distributions, curves."""

from __future__ import annotations

import pytest
from tests.library.spans import figures, run, span

from tercet.library import shape


@pytest.mark.parametrize(
    ("minutes", "words", "index"),
    [
        # Index and structure: Treff et al. 2019. Shares as published:
        ((75, 8, 17), "polarised", 2.2024),  # Seiler & Kjerland 2006
        ((4581, 1354, 487), "pyramidal", 1.4092),  # Esteve-Lanao et al. 2005, minutes
        ((77, 3, 20), "polarised", 2.7104),  # Munoz et al. 2014; Festa et al. 2020
        ((46, 35, 19), "pyramidal", 1.3974),  # Munoz et al. 2014, second group
        ((96.1, 2.9, 1.1), "pyramidal", 1.5617),  # Sylta et al. 2014, time in zone
        ((79.9, 5.3, 14.7), "polarised", 2.3459),  # Bellinger et al. 2020, by speed; worked here
        ((60, 19, 21), "between polarised and pyramidal", 1.8216),  # order right, index not
        ((20, 60, 20), "threshold", None),
    ],
)
def test_published_distributions_keep_their_class(
    minutes: tuple[float, float, float], words: str, index: float | None
) -> None:
    runs = [run(1, 0, *minutes)]
    by_time, by_distance, _ = shape.shapes(span(runs))
    assert by_time.words == by_distance.words == words
    if index is not None:
        assert by_time.index == pytest.approx(index, abs=5e-4)
    assert by_time.shares == pytest.approx([m / sum(minutes) for m in minutes])


def test_hard_above_easy_has_no_index() -> None:
    by_time = shape.shapes(span([run(1, 0, 40, 1, 59)]))[0]
    assert (by_time.words, by_time.index) == ("high-intensity", None)


def test_sessions_count_by_their_work() -> None:
    runs = [run(k, k, 50) for k in range(8)] + [run(8, 8, 40, 15), run(9, 9, 30, 2, 12)]
    assert shape.shapes(span(runs))[2].amounts == (8, 1, 1)


def test_nothing_judged() -> None:
    assert shape.shapes(span([]))[0].words == "nothing judged"


def test_a_curve_needs_three_hours() -> None:
    few, many = [run(1, 0, 60, 5, 5)], [run(k, k, 60, 5, 5) for k in range(4)]
    short = shape.drawn(span(few), figures(few, {}), 1.25)
    assert short is not None
    assert short.run is None
    long = shape.drawn(span(many), figures(many, {}), 1.25)
    assert long is not None and long.run is not None
    assert long.shares == pytest.approx((60 / 70, 5 / 70, 5 / 70))
    assert shape.drawn(span([]), figures([], {}), 1.25) is None
