"""A second start on the same store hands its files over and brings the first window forward."""

from __future__ import annotations

import os
import subprocess
import sys
from configparser import ConfigParser
from pathlib import Path
from xml.etree import ElementTree

import pytest
from PySide6.QtCore import QCoreApplication

from tercet import resources
from tercet.ui.door import Door, hand_over, name_of
from tercet.ui.icon import SIZES, icon

APP = Path(__file__).resolve().parents[2] / "app"


@pytest.fixture
def door(qtbot, tmp_path):
    made = Door(tmp_path, QCoreApplication.instance())
    made.open()
    yield made
    made.close()


def test_files_go_from_another_process_to_the_door(qtbot, door, tmp_path) -> None:
    code = (
        "import sys; from pathlib import Path; from PySide6.QtCore import QCoreApplication; "
        "app = QCoreApplication([]); from tercet.ui.door import hand_over; "
        "sys.exit(not hand_over(Path(sys.argv[1]), [Path(p) for p in sys.argv[2:]]))"
    )
    with qtbot.waitSignal(door.asked, timeout=20_000) as asked:
        second = subprocess.Popen(
            [sys.executable, "-c", code, str(tmp_path), "/runs/a b.fit", "/runs/ü.gpx"],
            env={**os.environ, "PYTHONPATH": str(APP)},
        )
    assert asked.args[0] == [Path("/runs/a b.fit"), Path("/runs/ü.gpx")]
    qtbot.waitUntil(lambda: second.poll() is not None, timeout=20_000)
    assert second.returncode == 0


def test_nobody_at_the_door_is_told(tmp_path) -> None:
    assert hand_over(tmp_path / "nowhere", []) is False
    assert name_of(tmp_path) != name_of(tmp_path / "other")


def test_the_icon_is_drawn_in_every_size_and_holds_the_three_shades(qtbot) -> None:
    made = icon()
    palette = resources.palette().light
    assert {size.width() for size in made.availableSizes()} == set(SIZES)
    for size in SIZES:
        image = made.pixmap(size, size).toImage()
        seen = {image.pixelColor(x, y).name() for x in range(size) for y in range(size)}
        assert {palette[role].lower() for role in ("easy", "moderate", "hard")} <= seen


def test_the_desktop_entry_names_what_is_there() -> None:
    folder = resources.root() / "desktop"
    entry = ConfigParser(interpolation=None, strict=True)
    entry.optionxform = str  # type: ignore[assignment,method-assign]
    entry.read(folder / "tercet.desktop", "utf-8")
    held = entry["Desktop Entry"]
    assert held["Exec"].split() == ["tercet-window", "%F"]
    assert (folder / f"{held['Icon']}.svg").exists()
    assert ElementTree.parse(folder / "tercet.svg").getroot().tag.endswith("svg")
