"""The program's own files are found, and the palette is whole."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tercet import resources


def test_root_holds_palette_and_fonts() -> None:
    assert (resources.root() / "palette.toml").is_file()
    assert len(resources.fonts()) == 3


def test_installed_package_wins_over_the_checkout(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(resources, "_PACKAGE", tmp_path)
    (tmp_path / "_data").mkdir()
    (tmp_path / "_sample_logs").mkdir()
    assert resources.root() == tmp_path / "_data"
    assert resources.samples() == tmp_path / "_sample_logs"


def test_checkout_is_used_without_an_installed_copy(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(resources, "_PACKAGE", tmp_path / "nowhere")
    monkeypatch.setattr(resources, "_CHECKOUT", tmp_path)
    assert resources.root() == tmp_path / "resources"
    assert resources.samples() == tmp_path / "sample_logs"


def test_both_themes_have_the_same_roles_and_only_colours() -> None:
    palette = resources.palette()
    assert palette.light.keys() == palette.dark.keys()
    for value in (*palette.light.values(), *palette.dark.values()):
        assert re.fullmatch(r"#[0-9A-F]{6}", value)


def test_a_role_of_one_theme_only_is_named(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "palette.toml").write_text('[light]\na = "x"\nb = "y"\n[dark]\na = "z"\n', "utf-8")
    monkeypatch.setattr(resources, "root", lambda: tmp_path)
    with pytest.raises(ValueError, match=r"\['b'\]"):
        resources.palette.__wrapped__()


def test_every_font_has_its_licence_beside_it() -> None:
    for font in resources.fonts():
        licence = font.with_name(f"{font.stem.split('-')[0]}-OFL.txt")
        assert "SIL OPEN FONT LICENSE Version 1.1" in licence.read_text("utf-8")
