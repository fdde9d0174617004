"""Steps on the ellipsoid against geographiclib (Karney 2013, J. Geodesy 87:43-55)."""

from __future__ import annotations

import math

import numpy as np
import pytest
from geographiclib.geodesic import Geodesic
from hypothesis import given, settings
from hypothesis import strategies as st

from tercet.engine.geodesy import FLATTENING, SEMI_MAJOR_M, plane, step_lengths

#: (2a + b) / 3 of WGS84: Moritz 2000, J. Geodesy 74:128-133. [m]
MEAN_RADIUS_M = 6371008.7714


def length(lat1: float, lon1: float, lat2: float, lon2: float) -> float:
    return float(step_lengths([lat1, lat2], [lon1, lon2])[0])


def haversine(lat1: float, lon1: float, lat2: float, lon2: float) -> float:
    a, b = math.radians(lat1), math.radians(lat2)
    h = (
        math.sin((b - a) / 2) ** 2
        + math.cos(a) * math.cos(b) * math.sin(math.radians(lon2 - lon1) / 2) ** 2
    )
    return 2 * MEAN_RADIUS_M * math.asin(min(1.0, math.sqrt(h)))


def test_the_ellipsoid_is_the_one_that_geographiclib_calls_wgs84() -> None:
    assert Geodesic.WGS84.a == SEMI_MAJOR_M
    assert Geodesic.WGS84.f == pytest.approx(FLATTENING, rel=1e-15)


@pytest.mark.parametrize(
    ("leg", "metres"),
    [
        # computed with geographiclib 2.1; 0.001 m
        ((45, 7, 45.009, 7), 1000.187),
        ((45, 7, 45, 7.0127), 1001.355),
        ((60, 25, 60, 25.0018), 100.440),
        ((0, 0, 0, 1), 111_319.491),  # along the equator the middle latitude is exact
    ],
)
def test_worked_legs(leg: tuple[float, ...], metres: float) -> None:
    assert length(*leg) == pytest.approx(metres, abs=0.001)


def test_the_sphere_is_wrong_by_half_a_percent_and_the_ellipsoid_is_not() -> None:
    # +0.561 % north-south at the equator, -0.447 % near a pole, the largest found
    for leg, error in (((0, 0, 1, 0), 0.00561), ((89, 0, 90, 0), -0.00447)):
        truth = Geodesic.WGS84.Inverse(*leg)["s12"]
        assert haversine(*leg) / truth - 1 == pytest.approx(error, abs=5e-6)
        assert length(*leg) == pytest.approx(truth, rel=1e-6)


places = st.tuples(st.floats(-80, 80), st.floats(-180, 180), st.floats(0, 360))


@settings(deadline=None)
@given(places, st.floats(0.1, 200))
def test_steps_of_a_second_agree_with_geographiclib(
    place: tuple[float, float, float], metres: float
) -> None:
    lat, lon, heading = place
    end = Geodesic.WGS84.Direct(lat, lon, heading, metres)
    # 1e-8 of 200 m is 2 micrometres; degrees as doubles give about 2 nanometres
    assert length(lat, lon, end["lat2"], end["lon2"]) == pytest.approx(metres, rel=1e-8, abs=5e-9)


@settings(deadline=None)
@given(places, st.floats(5_000, 20_000))
def test_long_steps_agree_with_geographiclib(
    place: tuple[float, float, float], metres: float
) -> None:
    lat, lon, heading = place
    end = Geodesic.WGS84.Direct(lat, lon, heading, metres)
    # the docstring's claim, grown with the square of the step beyond 10 km
    allowed = (1e-6 if abs(lat) < 59.8 else 5e-6) * max(1.0, (metres / 10_000) ** 2)
    assert length(lat, lon, end["lat2"], end["lon2"]) == pytest.approx(metres, rel=allowed)


def test_a_step_across_the_date_line_is_short() -> None:
    truth = Geodesic.WGS84.Inverse(-17.0, 179.9995, -17.0, -179.9995)["s12"]
    assert length(-17.0, 179.9995, -17.0, -179.9995) == pytest.approx(truth, rel=1e-8)


def test_there_is_one_step_fewer_than_fixes() -> None:
    assert [len(step_lengths([45.0] * n, [7.0] * n)) for n in (0, 1, 2, 5)] == [0, 0, 1, 4]


def test_a_missing_fix_spoils_only_its_own_steps() -> None:
    steps = step_lengths([45, float("nan"), 45.002, 45.003], [7, 7, 7, 7])
    assert np.isnan(steps).tolist() == [True, True, False]


@pytest.mark.parametrize("latitude", [0.0, 45.0, -60.0])
def test_the_plane_keeps_lengths_near_its_middle_also_where_the_day_changes(
    latitude: float,
) -> None:
    lats, lons = [latitude, latitude + 0.004, latitude - 0.004], [179.999, -179.999, 179.995]
    north, east = plane([*lats, np.nan], [*lons, 0.0])
    assert np.isnan(north[3])
    for a, b in ((0, 1), (1, 2), (0, 2)):
        truth = Geodesic.WGS84.Inverse(lats[a], lons[a], lats[b], lons[b])["s12"]
        found = math.hypot(north[b] - north[a], east[b] - east[a])
        assert found == pytest.approx(truth, rel=2e-4)


def test_a_plane_about_a_place_tells_how_far_fixes_lie_from_it() -> None:
    home = (64.0, 179.999)
    lats, lons = [64.0, 64.004, 63.998], [-179.999, 179.999, 179.99]
    far = np.hypot(*plane(lats, lons, home))
    for k, (lat, lon) in enumerate(zip(lats, lons, strict=True)):
        truth = Geodesic.WGS84.Inverse(*home, lat, lon)["s12"]
        assert far[k] == pytest.approx(truth, rel=2e-4)
