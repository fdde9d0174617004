"""Starting the program: where it keeps things, what it answers, and the demo without a display."""

from __future__ import annotations

import os
import re
import shutil
import struct
import subprocess
import sys
from pathlib import Path

import platformdirs
import pytest

from tercet import __version__, resources
from tercet.__main__ import main, no_display, store_folder
from tercet.library.library import Library
from tercet.store.database import Store
from tercet.ui.pages import PAGES

APP = str(Path(__file__).parents[1] / "app")
#: Of the sample season.
BLOCKS = ["Groundwork", "Support", "Specific", "Taper"]


# Where it keeps things -------------------------------------------------------------------


def test_the_folder_asked_for_comes_first(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("TERCET_STORE", str(tmp_path / "named"))
    assert store_folder(tmp_path / "asked", demo=False) == tmp_path / "asked"
    assert store_folder(tmp_path / "asked", demo=True) == tmp_path / "asked"
    assert store_folder(None, demo=False) == tmp_path / "named"


def test_else_it_is_a_folder_of_the_user(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("TERCET_STORE")
    data = Path(platformdirs.user_data_dir("Tercet", appauthor=False))
    assert store_folder(None, demo=False) == data / "store"


def test_the_demo_never_touches_the_users_store(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("TERCET_STORE", str(tmp_path / "users"))
    demo = store_folder(None, demo=True)
    assert demo not in (tmp_path / "users", store_folder(None, demo=False))
    monkeypatch.delenv("TERCET_STORE")
    assert demo == store_folder(None, demo=True) != store_folder(None, demo=False)


def test_a_home_and_a_relative_folder_are_made_whole(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    assert store_folder(Path("here"), demo=False) == tmp_path.resolve() / "here"
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.setenv("USERPROFILE", str(tmp_path))
    assert store_folder(Path("~/runs"), demo=False) == tmp_path.resolve() / "runs"


# What it answers -------------------------------------------------------------------------


def said(capsys: pytest.CaptureFixture[str], *arguments: object) -> str:
    assert main(list(map(str, arguments))) == 2
    out, err = capsys.readouterr()
    assert out == "" and err.startswith("tercet: ") and err.count("\n") == 1
    return err


def test_bad_arguments_are_answered_in_one_line(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    assert "there is no " in said(capsys, tmp_path / "gone.fit", "--store", tmp_path / "store")
    assert not (tmp_path / "store").exists()
    assert "--stroe" in said(capsys, "--stroe", tmp_path)


def test_a_store_that_is_open_elsewhere_is_answered_in_one_line(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    store = Store(tmp_path)
    try:
        assert "already open in another window" in said(capsys, "--store", tmp_path)
    finally:
        store.close()


def test_a_store_that_cannot_be_is_answered_in_one_line(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    (tmp_path / "tercet.db").write_text("not a database, whatever its name says " * 50)
    assert "damaged or not a store" in said(capsys, "--store", tmp_path)
    (tmp_path / "file").write_text("in the way")
    assert "cannot be made" in said(capsys, "--store", tmp_path / "file")


def test_version_and_help(capsys: pytest.CaptureFixture[str]) -> None:
    for option, words in (("--version", f"Tercet {__version__}"), ("--help", "--demo")):
        with pytest.raises(SystemExit) as left:
            main([option])
        assert left.value.code == 0
        assert words in capsys.readouterr().out


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="elsewhere there is a display")
def test_why_no_window_can_open(monkeypatch: pytest.MonkeyPatch) -> None:
    for name in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"):
        monkeypatch.delenv(name, raising=False)
    assert no_display() == "there is no display on this machine"
    monkeypatch.setenv("WAYLAND_DISPLAY", "wayland-0")
    assert no_display() is None
    monkeypatch.delenv("WAYLAND_DISPLAY")
    monkeypatch.setenv("QT_QPA_PLATFORM", "offscreen")
    assert no_display() is None


# The demo --------------------------------------------------------------------------------


def run(folder: Path, *arguments: object, **environment: str) -> list[str]:
    """Start the program as a machine without a display would; gives the lines it printed."""
    kept = {
        name: value
        for name, value in os.environ.items()
        if name not in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM")
    }
    done = subprocess.run(
        [sys.executable, "-m", "tercet", *map(str, arguments)],
        cwd=folder, env={**kept, "PYTHONPATH": APP, **environment},
        capture_output=True, text=True, timeout=240, check=False,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    assert "Traceback" not in done.stderr
    return done.stdout.splitlines()


def check_picture(path: Path) -> None:
    data = path.read_bytes()
    # PNG: signature, then the first chunk's width and height
    assert data[:8] == b"\x89PNG\r\n\x1a\n"
    width, height = struct.unpack(">II", data[16:24])
    assert (width, height) == (1366, 768)
    assert len(data) > 10_000  # an empty window is far smaller


@pytest.mark.slow
@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="elsewhere there is a display")
def test_the_demo_does_the_main_job_without_a_display(tmp_path: Path) -> None:
    lines = run(
        tmp_path, "--demo", "--store", tmp_path / "store", "--pictures", tmp_path / "pictures",
        QT_QPA_PLATFORM="offscreen",
    )  # fmt: skip
    assert re.match(r"12\d new with 12\d runs, .* 2 not read$", lines[0])
    assert sum(line.startswith("not read: ") for line in lines) == 2
    table = lines[lines.index(next(line for line in lines if line.startswith("block"))) :]
    assert [line.split()[0] for line in table[1:5]] == BLOCKS
    shares = [int(line.split()[-2]) for line in table[1:5]]
    # the invented plan: about nine tenths easy in the first block, less towards the race
    assert shares[0] >= 90 > shares[1] > shares[2] > 60
    pictures = sorted((tmp_path / "pictures").glob("*.png"))
    assert {f"picture: {path}" for path in pictures} <= set(lines)
    assert len(pictures) == 2 * (3 + len(PAGES))
    for path in pictures:
        check_picture(path)
    assert lines[-1] == "No window opened: pictures were asked for."

    # a second start finds the season there, and says why no window opens
    lines = run(tmp_path, "--store", tmp_path / "store")
    assert not any(" new" in line for line in lines)
    assert [line.split()[0] for line in lines[1:5]] == BLOCKS
    assert lines[-1] == "No window opened: there is no display on this machine."
    assert len(list((tmp_path / "tercet-pictures").glob("*.png"))) == len(pictures)


@pytest.mark.parametrize("ending", ["pdf", "html"])
def test_a_review_is_written_without_a_display(
    tmp_path: Path, ending: str, capsys: pytest.CaptureFixture[str]
) -> None:
    logs = tmp_path / "logs"
    logs.mkdir()
    for name in ("2026-04-15-1806.fit", "2026-05-02-0845.tcx", "2026-05-08-1855.gpx"):
        shutil.copy(resources.samples() / name, logs / name)
    target = tmp_path / f"review.{ending}"
    assert main(["review", str(logs), "--out", str(target), "--theme", "ink"]) == 0
    assert target.read_bytes()[:5] in (b"%PDF-", b"<!DOC")
    assert "places left out" in capsys.readouterr().out
    store = tmp_path / "store"
    library = Library(store)
    try:
        library.take_in([logs])
        # The store is open here all the while.
        again = tmp_path / f"again.{ending}"
        assert main(["review", "--store", str(store), "--out", str(again)]) == 0
        # A day on which no block begins is said, and nothing is written.
        capsys.readouterr()
        wrong = tmp_path / f"wrong.{ending}"
        asked = ["review", "--store", str(store), "--out", str(wrong), "--about", "1999-01-01"]
        assert main(asked) == 2
        said = capsys.readouterr().err
        assert "nothing here is 1999-01-01; there are 2026-" in said
        first = said.split("there are ")[1][:10]
        assert not wrong.exists()
        assert main([*asked[:-1], first]) == 0
    finally:
        library.close()
    assert not list(tmp_path.rglob("*.part"))


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["--out", "x.doc"], "should end in .pdf or .html"),
        (["not-there", "--out", "x.pdf"], "there is no not-there"),
        (["--store", "not-there", "--out", "x.pdf"], "there is no not-there"),
        (
            ["--store", str(Path(__file__).parent), "--out", "x.pdf"],
            "holds no store: name recordings",
        ),
        ([], "--out"),
    ],
)
def test_a_review_that_cannot_be_is_answered_in_one_line(
    arguments: list[str], words: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["review", *arguments]) == 2
    said = capsys.readouterr().err
    assert words in said
    assert said.count("\n") == 1
