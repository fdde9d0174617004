"""The layers hold: import-linter's contracts, and no Qt below the screens when run alone."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]


def lint(folder: Path) -> subprocess.CompletedProcess[str]:
    """Run the contracts of pyproject.toml on the source under a folder."""
    return subprocess.run(
        [
            sys.executable, "-c",
            "from importlinter.cli import lint_imports_command; lint_imports_command()",
            "--no-cache", "--no-logo",
        ],
        cwd=folder, env={**os.environ, "PYTHONPATH": str(folder / "app")},
        capture_output=True, text=True, timeout=120, check=False,
    )  # fmt: skip


def test_the_contracts_are_kept() -> None:
    done = lint(ROOT)
    assert done.returncode == 0, done.stdout + done.stderr
    assert "3 kept, 0 broken" in done.stdout


@pytest.mark.parametrize(
    ("module", "line", "broken"),
    [
        ("engine/tally.py", "import tercet.domain", 1),  # the engine imports nothing of ours
        ("library/views.py", "from PySide6 import QtCore", 1),
        ("cli.py", "import sqlite3", 1),
        ("newcomer.py", "", 1),  # a module that nobody placed in a layer
    ],
)
def test_the_contracts_bite(tmp_path: Path, module: str, line: str, broken: int) -> None:
    shutil.copytree(ROOT / "app", tmp_path / "app", ignore=shutil.ignore_patterns("__pycache__"))
    shutil.copy(ROOT / "pyproject.toml", tmp_path)
    with (tmp_path / "app" / "tercet" / module).open("a", encoding="utf-8") as file:
        file.write(f"\n{line}\n")
    done = lint(tmp_path)
    assert done.returncode == 1, done.stdout + done.stderr
    if line:
        assert f"{broken} broken" in done.stdout
    else:
        assert "newcomer" in done.stdout + done.stderr


IMPORT_ALL = """
import importlib, pkgutil, sys
for name in sys.argv[1:]:
    module = importlib.import_module(name)
    for found in pkgutil.walk_packages(getattr(module, "__path__", []), name + "."):
        importlib.import_module(found.name)
qt = ("PySide6", "pyqtgraph", "shiboken6")
print(*sorted(name for name in sys.modules if name.split(".")[0] in qt))
"""


@pytest.mark.parametrize(
    "layer",
    [
        "engine",
        "language",
        "resources",
        "domain",
        "week_days",
        "units",
        "formats",
        "store",
        "library",
        "invocation",
        "cli",
        "__main__",
    ],
)
def test_a_layer_below_the_screens_loads_no_qt(layer: str) -> None:
    done = subprocess.run(
        [sys.executable, "-c", IMPORT_ALL, f"tercet.{layer}"],
        env={**os.environ, "PYTHONPATH": str(ROOT / "app")},
        capture_output=True, text=True, timeout=60, check=True,
    )  # fmt: skip
    assert done.stdout.split() == []


def test_every_module_is_in_a_layer_that_was_looked_at() -> None:
    seen = {"engine", "language", "resources", "domain", "week_days", "formats", "store"}
    seen |= {"library", "units", "invocation", "cli", "__main__"}
    there = {
        path.stem
        for path in (ROOT / "app" / "tercet").iterdir()
        if path.name not in ("__init__.py", "__pycache__", "py.typed")
    }
    assert there - {"ui"} == seen
