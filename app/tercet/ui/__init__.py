"""The screens; the only place with Qt."""

import sys
from typing import Any

import PySide6.QtCore  # noqa: F401


def _spare_sources() -> None:
    """Keep PySide from reading the source of every module that is imported.

    It looks for its own name there, to know where its snake_case names might be wanted; nothing
    here or in the charts' library asks for them, and at a start it is a twentieth of all work.
    """
    feature: Any = sys.modules.get("shibokensupport.feature")
    if hasattr(feature, "_mod_uses_pyside"):
        feature._mod_uses_pyside = lambda module: False


_spare_sources()
