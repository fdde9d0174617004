"""The wheel: built, installed into a fresh environment, and started from another folder."""

from __future__ import annotations

import json
import os
import subprocess
import sys
import sysconfig
import venv
from pathlib import Path

import pytest

from tercet import __version__

ROOT = Path(__file__).parents[1]
SCRIPTS = "Scripts" if sys.platform == "win32" else "bin"

LOOK = """
import json, tercet
from tercet import resources
print(json.dumps({
    "package": tercet.__file__,
    "root": str(resources.root()),
    "samples": str(resources.samples()),
    "files": sum(1 for _ in resources.samples().iterdir()),
    "roles": len(resources.palette().light),
    "fonts": [str(path) for path in resources.fonts()],
}))
"""

pytestmark = pytest.mark.slow


def run(*command: object, folder: Path) -> str:
    """Run a command without this checkout on its path."""
    kept = {name: value for name, value in os.environ.items() if name != "PYTHONPATH"}
    done = subprocess.run(
        [str(part) for part in command],
        cwd=folder, env=kept, capture_output=True, text=True, timeout=240, check=False,
    )  # fmt: skip
    assert done.returncode == 0, done.stdout + done.stderr
    return done.stdout


@pytest.fixture(scope="module")
def environment(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A virtual environment with the wheel in it, and this one's packages behind it."""
    place = tmp_path_factory.mktemp("wheel")
    run(
        sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", place / "dist",
        ROOT, folder=place,
    )  # fmt: skip
    (wheel,) = (place / "dist").iterdir()
    home = place / "venv"
    venv.create(home, with_pip=False)
    python = home / SCRIPTS / "python"
    run(
        sys.executable, "-m", "pip", "--python", python, "install", "--no-deps", "--no-index",
        "--quiet", wheel, folder=place,
    )  # fmt: skip
    site = run(
        python, "-c", "import sysconfig; print(sysconfig.get_path('purelib'))", folder=place
    ).strip()
    # A line that ends up behind the environment's own packages; .pth files in there are not
    # followed, so a checkout that is installed for editing stays out of sight.
    (Path(site) / "behind.pth").write_text(sysconfig.get_path("purelib") + "\n")
    return home


def test_everything_is_found_inside_the_wheel(environment: Path, tmp_path: Path) -> None:
    found = json.loads(run(environment / SCRIPTS / "python", "-c", LOOK, folder=tmp_path))
    inside = Path(found["package"]).parent
    assert inside.is_relative_to(environment)
    assert Path(found["root"]) == inside / "_data"
    assert Path(found["samples"]) == inside / "_sample_logs"
    assert found["files"] == sum(1 for _ in (ROOT / "sample_logs").iterdir())
    assert found["roles"] > 10
    assert len(found["fonts"]) == 3
    assert all(Path(font).is_relative_to(inside) for font in found["fonts"])


def test_it_starts_by_its_name_from_any_folder(environment: Path, tmp_path: Path) -> None:
    tercet = environment / SCRIPTS / "tercet"
    assert run(tercet, "--version", folder=tmp_path) == f"Tercet {__version__}\n"
    sample = ROOT / "sample_logs" / "2026-04-15-1806.fit"
    thresholds = ROOT / "sample_logs" / "season.toml"
    out = run(tercet, "tally", sample, "--thresholds", thresholds, "--json", folder=tmp_path)
    (row,) = json.loads(out)
    assert row["status"] == "read" and row["easy_s"] > 1000
    assert list(tmp_path.iterdir()) == []


def test_it_opens_its_window_offscreen(environment: Path, tmp_path: Path) -> None:
    tercet = environment / SCRIPTS / "tercet"
    pictures = tmp_path / "pictures"
    out = run(tercet, "--store", tmp_path / "store", "--pictures", pictures, folder=tmp_path)
    assert "No window opened: pictures were asked for." in out
    assert len(list(pictures.glob("*.png"))) == 4


def test_licences_of_the_fonts_travel_with_them(environment: Path) -> None:
    (information,) = environment.rglob("tercet-*.dist-info")
    names = {path.name for path in information.rglob("*") if path.is_file()}
    assert {"LICENSE", "SourceSans3-OFL.txt", "SourceSerif4-OFL.txt", "entry_points.txt"} <= names
