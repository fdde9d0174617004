"""Colours against the visual language's figures, fonts, and putting a look on.

Outside checks: distances and simulated views by coloraide (CAM02-UCS; CIEDE2000; Machado,
Oliveira and Fernandes 2009 at severity 100; WCAG 2.1 contrast), compared with the figures in
shades.toml, which were measured for the visual language.
"""

from __future__ import annotations

import tomllib
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from coloraide import Color as BaseColor
from coloraide.distance.delta_e_cam02 import DECAM02
from coloraide.spaces.cam02 import CAM02JMh
from coloraide.spaces.cam02_ucs import CAM02UCS
from PySide6.QtCore import Qt
from PySide6.QtGui import QFont, QFontInfo, QFontMetricsF, QPalette
from PySide6.QtWidgets import QApplication, QPushButton, QWidget
from pytestqt.qtbot import QtBot

from tercet import resources
from tercet.ui import theme

FIGURES: dict[str, Any] = tomllib.loads(
    (Path(__file__).parent / "shades.toml").read_text(encoding="utf-8")
)
THEMES = ("light", "dark")
SHADES = ("easy", "moderate", "hard")
VIEWS = ("normal", "deutan", "protan", "tritan")


class Color(BaseColor):
    """coloraide's colour with the space that the figures were measured in."""


Color.register([CAM02JMh(), CAM02UCS(), DECAM02()])


def role(name: str, look: str) -> Color:
    return Color(getattr(resources.palette(), look)[name])


def seen(color: Color, view: str) -> Color:
    """The colour as another eye sees it, as an 8-bit colour."""
    if view == "normal":
        return color
    found = color.filter(view, 1, method="machado").convert("srgb").clip()
    return Color(found.to_string(hex=True))


@pytest.mark.parametrize("look", THEMES)
@pytest.mark.parametrize("pair", ["easy-moderate", "moderate-hard", "easy-hard"])
def test_distances_of_the_shades(look: str, pair: str) -> None:
    first, second = (role(name, look) for name in pair.split("-"))
    wanted = FIGURES["distance"][look][pair]
    for column, view in enumerate(VIEWS):
        a, b = seen(first, view), seen(second, view)
        cam02 = a.delta_e(b, method="cam02", space="cam02-ucs")
        assert cam02 >= 20.0, f"{view}: too near"
        assert cam02 == pytest.approx(wanted[column], abs=0.4), view
        assert a.delta_e(b, method="2000") == pytest.approx(wanted[4 + column], abs=0.4), view
    step = abs(first.convert("lab-d65")["l"] - second.convert("lab-d65")["l"])
    assert step >= 18.0
    assert step == pytest.approx(wanted[8], abs=0.2)


@pytest.mark.parametrize("look", THEMES)
@pytest.mark.parametrize("view", VIEWS[1:])
def test_shades_as_others_see_them(look: str, view: str) -> None:
    for name, wanted in zip(SHADES, FIGURES["seen"][look][view], strict=True):
        found = seen(role(name, look), view).to_dict()["coords"]
        expected = Color(wanted).to_dict()["coords"]
        assert found == pytest.approx(expected, abs=1.5 / 255), name


@pytest.mark.parametrize("look", THEMES)
def test_harder_stands_further_from_the_pane(look: str) -> None:
    pane = role("pane", look)
    contrasts = [role(name, look).contrast(pane, method="wcag21") for name in SHADES]
    assert all(a < b for a, b in pairwise(contrasts))
    for name in SHADES:
        lch = role(name, look).convert("lch-d65")
        light, chroma, hue = FIGURES["lightness"][look][name]
        assert lch["l"] == pytest.approx(light, abs=0.1)
        assert lch["c"] == pytest.approx(chroma, abs=0.2)
        assert lch["h"] == pytest.approx(hue, abs=1.0)


@pytest.mark.parametrize("pair", FIGURES["contrast"])
def test_contrasts(pair: str) -> None:
    light, dark, least = FIGURES["contrast"][pair]
    first, second = pair.split()
    for look, wanted in (("light", light), ("dark", dark)):
        found = role(first, look).contrast(role(second, look), method="wcag21")
        assert found == pytest.approx(wanted, abs=0.02), look
        assert found >= least, look


@pytest.mark.parametrize("look", THEMES)
def test_textures_are_quiet_but_there(look: str) -> None:
    for name in ("moderate", "hard"):
        found = role(f"{name}_texture", look).contrast(role(name, look), method="wcag21")
        assert 1.2 <= found <= 1.6, name


@pytest.mark.parametrize("dark", [False, True])
def test_applying_sets_palette_font_and_signal(
    qtbot: QtBot, qapp: QApplication, dark: bool
) -> None:
    with qtbot.waitSignal(theme.changed) as signal:
        look = theme.apply(qapp, dark, 1.0)
    assert signal.args == [look]
    assert theme.current() == look
    assert qapp.palette().color(QPalette.ColorRole.Base) == look.color("pane")
    assert QFontInfo(qapp.font()).family() == theme.SANS


def test_following_the_system_takes_its_scheme(qapp: QApplication) -> None:
    look = theme.apply(qapp, None, 1.0)
    assert look.dark == (qapp.styleHints().colorScheme() == Qt.ColorScheme.Dark)


@pytest.mark.parametrize(("scale", "texture"), [(0.9, "quiet"), (2.1, "quiet"), (1.0, "loud")])
def test_looks_that_cannot_be(qapp: QApplication, scale: float, texture: str) -> None:
    with pytest.raises(ValueError, match="must"):
        theme.apply(qapp, False, scale, texture)


def test_fonts_have_their_weights_and_equal_figures(qapp: QApplication) -> None:
    look = theme.apply(qapp, False, 1.0)
    widths = {name: QFontMetricsF(look.font(name)) for name in ("small", "small_bold")}
    assert widths["small_bold"].horizontalAdvance("Hills") > widths["small"].horizontalAdvance(
        "Hills"
    )
    assert len({widths["small"].horizontalAdvance(figure) for figure in "0123456789"}) == 1
    assert look.font("block").variableAxisValue(QFont.Tag("wght")) == 600.0
    assert QFontInfo(look.font("block")).family() == theme.SERIF
    assert look.font("small_italic").italic()


def test_text_size_scales_type_and_lengths(qapp: QApplication) -> None:
    look = theme.apply(qapp, False, 1.5)
    assert look.font("small").pixelSize() == 20
    assert look.px(28) == 42
    theme.apply(qapp, False, 1.0)


@pytest.mark.parametrize("scale", [1.0, 1.3, 2.0])
def test_style_sheet_is_whole(qtbot: QtBot, qapp: QApplication, scale: float) -> None:
    look = theme.apply(qapp, True, scale)
    assert "$" not in look.style_sheet()
    assert "gradient" not in look.style_sheet()
    button = QPushButton("Add recordings")
    button.setProperty("primary", "true")
    qtbot.addWidget(button)
    # Hit size of the visual language: 32, and 40 at 130 % and over.
    assert button.sizeHint().height() >= (32 if scale < 1.3 else 40)
    button.resize(button.sizeHint())
    assert button.grab().toImage().pixelColor(12, 8) == look.color("accent")
    theme.apply(qapp, False, 1.0)


def test_what_is_in_view_follows_another_look(qtbot: QtBot, qapp: QApplication) -> None:
    theme.apply(qapp, False)
    whole = QWidget()
    qtbot.addWidget(whole)
    button = QPushButton("Add recordings", whole)
    button.setProperty("primary", "true")
    whole.show()
    for dark, scale in ((True, 1.3), (True, 1.0), (False, 1.0)):
        look = theme.apply(qapp, dark, scale)
        assert button.font().weight() == 600
        assert button.font().pixelSize() == look.font("body_bold").pixelSize()
        assert button.minimumHeight() == button.minimumSizeHint().height() >= look.px(32)
        button.resize(button.sizeHint())
        assert button.grab().toImage().pixelColor(12, 8) == look.color("accent")
        assert whole.palette().color(QPalette.ColorRole.Window) == look.color("window")


def test_a_role_that_is_not_there(qapp: QApplication) -> None:
    with pytest.raises(KeyError):
        theme.Theme().color("pink")
