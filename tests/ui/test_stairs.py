"""Stair bars, textures and the key."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QImage, QPainter
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from tercet.engine.scale import Shade
from tercet.ui import stairs, theme
from tercet.ui.theme import Theme

LOOK = Theme()
HEIGHTS = (9.0, 14.0, 19.0)
BASE = 40


class Picture:
    """A small image with a painter on it."""

    def __init__(self, dpr: float = 1.0) -> None:
        self.image = QImage(round(240 * dpr), round(60 * dpr), QImage.Format.Format_RGB32)
        self.image.setDevicePixelRatio(dpr)
        self.image.fill(LOOK.color("pane"))
        self.painter = QPainter(self.image)

    def at(self, x: float, y: float) -> QColor:
        dpr = self.image.devicePixelRatio()
        return self.image.pixelColor(int(x * dpr), int(y * dpr))

    def top(self, x: float) -> int:
        """Height of what stands on the base line at x."""
        rows = [y for y in range(BASE) if self.at(x, y) != LOOK.color("pane")]
        return BASE - min(rows, default=BASE)


@pytest.fixture
def picture(qapp: QApplication) -> Iterator[Picture]:
    made = Picture()
    yield made
    made.painter.end()


def paint(picture: Picture, seconds: tuple[float, ...], hour: float = 60.0) -> float:
    return stairs.paint_stair(picture.painter, 10, BASE, hour, seconds, HEIGHTS, LOOK)


def test_three_steps_in_order_and_height(picture: Picture) -> None:
    right = paint(picture, (3600.0, 1800.0, 1200.0))
    assert right == 10 + 60 + 30 + 20
    assert [picture.top(x) for x in (20, 85, 110)] == [9, 14, 19]
    assert picture.at(20, BASE - 4) == LOOK.color("easy")
    assert picture.at(20, BASE - 9) == LOOK.color("easy_outline")


def test_steps_are_parted_by_pane_colour(picture: Picture) -> None:
    paint(picture, (3600.0, 1800.0, 1200.0))
    columns = [x for x in range(10, 120) if picture.top(x) == 0]
    assert columns == [69, 99]


def test_what_was_not_run_takes_no_room(picture: Picture) -> None:
    assert paint(picture, (0.0, 0.0, 0.0, 900.0, 0.0)) == 10
    assert all(picture.top(x) == 0 for x in range(240))


def test_seconds_of_a_shade_are_wide_enough_to_see(qapp: QApplication) -> None:
    laid, _ = stairs.steps(10, 60, (3600.0, 2.0, 1200.0))
    shade, left, right = laid[1]
    assert shade == Shade.MODERATE
    assert right - left >= 2.5


@pytest.mark.parametrize("dpr", [1.0, 1.25, 1.5, 2.0])
def test_edges_lie_on_device_pixels(dpr: float) -> None:
    laid, right = stairs.steps(10.37, 47.3, (3500.0, 321.0, 1234.0, 0.0, 77.0), dpr)
    edges = [edge * dpr for _, left, end in laid for edge in (left, end)]
    # A gap is one logical pixel, which is a whole number of device pixels only at 1 and 2.
    whole = edges if dpr in (1.0, 2.0) else [edges[0], right * dpr]
    assert whole == pytest.approx([round(edge) for edge in whole])


def test_one_hour_has_one_length(picture: Picture) -> None:
    assert paint(picture, (7200.0,) + (0.0,) * 2, 50) - 10 == 100
    assert paint(picture, (0.0, 0.0, 7200.0), 50) - 10 == 100


def test_unjudged_is_hollow_after_the_shades(picture: Picture) -> None:
    right = paint(picture, (1800.0, 0.0, 0.0, 0.0, 1800.0))
    assert right == 70
    assert picture.at(55, BASE - 9) == LOOK.color("control")
    assert picture.at(55, BASE - 5) == LOOK.color("pane")
    assert picture.top(55) == 9


def test_estimated_has_a_dashed_outline(picture: Picture) -> None:
    stairs.paint_stair(picture.painter, 10, BASE, 60, (3600.0, 0, 0), HEIGHTS, LOOK, estimated=True)
    line = {picture.at(x, BASE - 9).name() for x in range(14, 60)}
    assert line == {LOOK.color("easy").name(), LOOK.color("easy_outline").name()}


@pytest.mark.parametrize(("shade", "role"), [(Shade.MODERATE, "moderate"), (Shade.HARD, "hard")])
@pytest.mark.parametrize("dpr", [1.0, 1.25, 2.0])
def test_texture_keeps_its_pitch_in_logical_pixels(
    qapp: QApplication, shade: Shade, role: str, dpr: float
) -> None:
    picture = Picture(dpr)
    picture.painter.fillRect(QRectF(0, 0, 96, 48), stairs.shade_brush(shade, LOOK, dpr))
    picture.painter.end()
    row = [picture.image.pixelColor(x, 5) for x in range(int(96 * dpr))]
    line = LOOK.color(f"{role}_texture")
    near = [abs(c.red() - line.red()) + abs(c.green() - line.green()) < 14 for c in row]
    starts = sum(b and not a for a, b in zip([False, *near], near, strict=False))
    assert starts == pytest.approx(96 / (6 if shade == Shade.MODERATE else 4), abs=1)


def test_easy_has_no_texture_and_off_takes_all_away(qapp: QApplication) -> None:
    assert stairs.shade_brush(Shade.EASY, LOOK).color() == LOOK.color("easy")
    plain = stairs.shade_brush(Shade.HARD, Theme(texture="off"))
    assert plain.textureImage().isNull()
    assert plain.color() == LOOK.color("hard")


def test_strong_texture_uses_the_colour_of_text(qapp: QApplication) -> None:
    tile = stairs.shade_brush(Shade.HARD, Theme(texture="strong")).textureImage()
    colours = {tile.pixelColor(x, 3).name() for x in range(tile.width())}
    assert LOOK.color("text_on_hard").name() in colours


def test_key_swatches_rise(picture: Picture) -> None:
    for shade, left in ((Shade.EASY, 0), (Shade.MODERATE, 30), (Shade.HARD, 60)):
        stairs.paint_key(picture.painter, QRectF(left, BASE - 20, 20, 20), shade, LOOK)
    assert [picture.top(x) for x in (10, 40, 70)] == [8, 14, 20]


def test_key_strip_shows_what_is_there(qtbot: QtBot, qapp: QApplication) -> None:
    theme.apply(qapp, False, 1.0)
    strip = stairs.KeyStrip()
    qtbot.addWidget(strip)
    strip.resize(800, 30)
    assert strip.entries() == ["easy", "moderate", "hard", "race", "today"]
    strip.set_present(unjudged=True)
    assert "unjudged" in strip.entries()
    assert "unjudged" in strip.accessibleDescription()
    pixels = strip.grab().toImage()
    found = {pixels.pixelColor(x, 15).name() for x in range(pixels.width())}
    assert LOOK.color("focus").name() in found


def test_key_strip_drops_today_first_then_race(qtbot: QtBot, qapp: QApplication) -> None:
    theme.apply(qapp, False, 1.0)
    strip = stairs.KeyStrip()
    qtbot.addWidget(strip)
    seen = []
    for width in range(800, 200, -10):
        strip.resize(width, 30)
        if not seen or strip.entries() != seen[-1]:
            seen.append(strip.entries())
    assert seen == [
        ["easy", "moderate", "hard", "race", "today"],
        ["easy", "moderate", "hard", "race"],
        ["easy", "moderate", "hard"],
    ]
