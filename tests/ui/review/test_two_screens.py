"""With two screens the room sees the page and never the notes."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
from pathlib import Path

SCREENS = [
    {"name": "laptop", "x": 0, "y": 0, "width": 1366, "height": 768},
    {"name": "wall", "x": 1366, "y": 0, "width": 1280, "height": 720},
]
PROGRAM = """
import json, sys, time
from pathlib import Path
from types import SimpleNamespace
from PySide6.QtCore import QEventLoop, QPointF
from tercet.ui.review import show as showing
from tercet.library.library import Library
from tercet.library.review.choices import Choices, keep
from tercet.library.review.build import review
from tercet.ui import theme
from tercet.ui.application import application
from tercet.ui.window import MainWindow

def until(ready):
    deadline = time.monotonic() + 30
    while not ready() and time.monotonic() < deadline:
        app.processEvents(QEventLoop.ProcessEventsFlag.AllEvents, 50)
    assert ready()

app = application()
theme.apply(app, False)
library = Library(Path(sys.argv[1]))
scope = library.call(review)[0].scope
library.call(keep, scope, Choices(notes={"blocks": "Ask about Saturdays"}))
window = MainWindow(library)
window.show()
until(lambda: window.view is not None)
window.show_view("review")
page = window.further.current
until(lambda: page.review is not None)
page.choose_in_list("blocks")
page.present()
show = page.show_
until(lambda: show.presenter.notes.accessibleName() == "Ask about Saturdays")
found = {
    "wall": [show.wall.screen().name(), show.wall.width(), show.wall.height()],
    "presenter": show.presenter.screen().name(),
    "on the wall": [mark.words for mark in show.wall.view.marks],
}
show.presenter.keys.jumped.emit(0)
found["turned"] = show.wall.view.page.key
# The wall's screen is pulled out: the page goes to the laptop, and notes are put away.
show.presenter.pointed.emit(QPointF(0.5, 0.5))
laptop = show.presenter.screen()
showing.QGuiApplication = SimpleNamespace(screens=lambda: [laptop])
app.screenRemoved.emit(show.wall.screen())
until(lambda: show.presenter is None)
found["alone"] = [show.wall.screen().name(), show.wall.view.page.key, show.wall.view.pointed_at]
show.escape()
window.close()
library.close()
print(json.dumps(found))
"""


def test_notes_stay_on_the_laptop(tmp_path: Path, reviewed_store: Path) -> None:
    shutil.copytree(reviewed_store, tmp_path / "store")
    usual = {"logicalDpi": 96, "logicalBaseDpi": 96, "dpr": 1}
    screens = tmp_path / "screens.json"
    screens.write_text(json.dumps({"screens": [{**screen, **usual} for screen in SCREENS]}))
    app = Path(__file__).parents[3] / "app"
    done = subprocess.run(
        [sys.executable, "-c", PROGRAM, str(tmp_path / "store")],
        env={
            **os.environ,
            "QT_QPA_PLATFORM": f"offscreen:configfile={screens}",
            "PYTHONPATH": str(app),
        },
        capture_output=True, text=True, timeout=120, check=False,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    found = json.loads(done.stdout.splitlines()[-1])
    assert found["wall"] == ["wall", 1280, 720]
    assert found["presenter"] == "laptop"
    assert found["on the wall"]
    assert not any("Saturdays" in words for words in found["on the wall"])
    assert found["turned"] == "line"
    assert found["alone"] == ["laptop", "line", None]
