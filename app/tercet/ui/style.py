"""The style sheet of the program's own widgets, made from colours and lengths by role."""

from __future__ import annotations

from collections.abc import Callable
from string import Template

from tercet.ui.marks import marks

# No shadow, no gradient; corners 5 on controls, 6 on panes; borders in the control colour.
_SHEET = Template("""
QToolTip { background: $raised; color: $text; border: 1px solid $control; padding: ${p4}px; }
QDialogButtonBox { dialogbuttonbox-buttons-have-icons: 0; }
QLabel[secondary="true"] { color: $text_2; }
QFrame[pane="true"] { background: $pane; border: 1px solid $edge; border-radius: 6px; }
QScrollArea, QWidget[clear="true"] { background: transparent; }
QFrame[raised="true"] { background: $raised; border: 1px solid $control; border-radius: 6px; }

QPushButton {
  background: $raised; color: $text; border: 1px solid $control; border-radius: 5px;
  padding: ${p4}px ${p12}px; min-height: ${button}px;
}
QPushButton:hover { background: $sunken; }
QPushButton:pressed { background: $selected; }
QPushButton:checked { background: $selected; border-color: $focus; }
QPushButton:disabled { color: $text_3; border-color: $edge; background: $pane; }
QPushButton[primary="true"] {
  background: $accent; color: $text_on_accent; border-color: $accent;
}
QPushButton[primary="true"]:hover { border-color: $text; }
QPushButton[primary="true"]:disabled {
  background: $pane; color: $text_3; border-color: $edge;
}
QPushButton[flat="true"] { background: transparent; border-color: transparent; }
QPushButton[flat="true"]:hover { border-color: $control; }

QLineEdit, QPlainTextEdit, QTextEdit, QComboBox, QSpinBox, QDoubleSpinBox, QTimeEdit {
  background: $raised; color: $text; border: 1px solid $control; border-radius: 5px;
  padding: ${p4}px ${p8}px; selection-background-color: $selected; selection-color: $text;
}
QLineEdit, QComboBox, QSpinBox, QDoubleSpinBox, QTimeEdit { min-height: ${field}px; }
QLineEdit:disabled, QPlainTextEdit:disabled, QComboBox:disabled { color: $text_3; }
QComboBox { combobox-popup: 0; }
QComboBox::drop-down { border: none; width: ${p24}px; }
QComboBox::down-arrow, QTimeEdit::down-arrow, QSpinBox::down-arrow,
QDoubleSpinBox::down-arrow, QPushButton::menu-indicator {
  image: url("$down"); width: ${p12}px; height: ${p12}px;
}
QSpinBox::up-arrow, QDoubleSpinBox::up-arrow, QTimeEdit::up-arrow {
  image: url("$up"); width: ${p12}px; height: ${p12}px;
}
QPushButton::menu-indicator { subcontrol-position: right center; right: ${p8}px; }
QSpinBox, QDoubleSpinBox, QTimeEdit { qproperty-alignment: 'AlignRight | AlignVCenter'; }
QSpinBox::up-button, QSpinBox::down-button, QDoubleSpinBox::up-button,
QDoubleSpinBox::down-button, QTimeEdit::up-button, QTimeEdit::down-button {
  border: none; width: ${p24}px;
}
QComboBox QAbstractItemView {
  background: $raised; color: $text; border: 1px solid $control;
  selection-background-color: $selected; selection-color: $text;
}

QPushButton[slim="true"] { min-height: ${slim}px; padding: 0 ${p12}px; }

QLineEdit:focus, QPlainTextEdit:focus, QTextEdit:focus, QComboBox:focus,
QSpinBox:focus, QDoubleSpinBox:focus, QTimeEdit:focus {
  border: 2px solid $focus; padding: ${p3}px ${p7}px;
}
QLineEdit[wrong="true"], QDoubleSpinBox[wrong="true"],
QLineEdit[wrong="true"]:focus, QDoubleSpinBox[wrong="true"]:focus {
  border: 2px solid $not_read; padding: ${p3}px ${p7}px;
}
QFrame[calendar="true"] { background: $raised; border: 1px solid $control; }
#qt_calendar_navigationbar { background: $raised; }
QCalendarWidget QToolButton { background: transparent; color: $text; border: none; }
QCalendarWidget QToolButton:hover, QCalendarWidget QToolButton:focus { background: $sunken; }
#qt_calendar_prevmonth { qproperty-icon: url("$left"); }
#qt_calendar_nextmonth { qproperty-icon: url("$right"); }
QCheckBox, QRadioButton { spacing: ${p8}px; min-height: ${check}px; }
QCheckBox::indicator, QRadioButton::indicator {
  width: ${p16}px; height: ${p16}px; background: $raised; border: 1px solid $control;
}
QCheckBox::indicator { border-radius: 4px; }
QRadioButton::indicator { border-radius: ${dot}px; }
QCheckBox::indicator:checked { background: $accent; border-color: $accent; image: url("$tick"); }
QRadioButton::indicator:checked {
  background: $accent; border-color: $accent; image: url("$dot_mark");
}
QPushButton:focus, QCheckBox:focus, QRadioButton:focus, QTabBar:focus { outline: none; }

QTableView, QTreeView, QListView {
  background: $pane; color: $text; border: none; gridline-color: $rule;
  alternate-background-color: $sunken;
  selection-background-color: $selected; selection-color: $text;
}
QHeaderView { background: $sunken; border: none; }
QHeaderView::section {
  background: $sunken; color: $text_2; border: none; border-bottom: 1px solid $rule;
  padding: ${p4}px ${p8}px;
}
QTableCornerButton::section { background: $sunken; border: none; }

QTabWidget::pane { border: none; border-top: 1px solid $edge; }
QTabBar { background: transparent; qproperty-drawBase: 0; }
QTabBar::tab {
  background: transparent; color: $text_2; padding: ${p8}px ${p12}px; border: none;
  border-bottom: 4px solid transparent;
}
QTabBar::tab:selected { color: $text; border-bottom-color: $text; }
QTabBar::tab:hover { color: $text; }

QMenu { background: $raised; color: $text; border: 1px solid $control; padding: ${p4}px; }
QMenu::item { padding: ${p4}px ${p24}px ${p4}px ${p12}px; border-radius: 4px; }
QMenu::item:selected { background: $selected; }
QMenu::item { padding-left: ${p24}px; }
QMenu::indicator { width: ${p8}px; height: ${p8}px; left: ${p8}px; border-radius: ${mark}px; }
QMenu::indicator:checked { background: $text; }
QMenu::item:disabled { color: $text_3; }
QMenu::separator { height: 1px; background: $rule; margin: ${p4}px ${p8}px; }
QMenuBar { background: $window; color: $text; }
QMenuBar::item { padding: ${p4}px ${p8}px; background: transparent; }
QMenuBar::item:selected { background: $selected; }

QScrollBar { background: transparent; border: none; }
QScrollBar:vertical { width: ${p12}px; }
QScrollBar:horizontal { height: ${p12}px; }
QScrollBar::handle { background: $control; border-radius: 3px; margin: 3px; }
QScrollBar::handle:vertical { min-height: ${p32}px; }
QScrollBar::handle:horizontal { min-width: ${p32}px; }
QScrollBar::handle:hover { background: $text_2; }
QScrollBar::add-line, QScrollBar::sub-line { width: 0; height: 0; }
QScrollBar::add-page, QScrollBar::sub-page { background: transparent; }

QProgressBar {
  background: $pane; color: $text; border: 1px solid $control; border-radius: 4px;
  min-height: ${p8}px; max-height: ${p8}px; text-align: center;
}
QProgressBar::chunk { background: $accent; border-radius: 3px; }
QSplitter::handle { background: $window; }
""")

_ROLES = (
    *("window", "pane", "raised", "sunken", "rule", "edge", "control", "text", "text_2", "text_3"),
    *("accent", "text_on_accent", "focus", "selected", "not_read"),
)


def style_sheet(color: Callable[[str], str], px: Callable[[float], int]) -> str:
    """Fill the style sheet in.

    Parameters
    ----------
    color : callable
        From a role to ``#RRGGBB``.
    px : callable
        From a length at 100 % text to whole logical pixels.
    """
    lengths = {f"p{n}": px(n) for n in (4, 8, 12, 16, 24, 32)}
    # A focused border is one pixel wider, so the padding gives that pixel back.
    lengths |= {"p3": px(4) - 1, "p7": px(8) - 1}
    lengths["mark"] = px(8) // 2
    lengths["slim"] = px(28) - 2
    height = px(32)
    lengths["button"] = height - 2 * px(4) - 2
    lengths["field"] = height - 2 * px(4) - 2
    lengths["check"] = px(28)
    lengths["dot"] = px(16) // 2 + 1
    files = marks(color("text_2"), color("text_on_accent"))
    names = {role: color(role) for role in _ROLES}
    for name in ("down", "up", "left", "right", "tick"):
        names[name] = files[name]
    return _SHEET.substitute(
        names, dot_mark=files["dot"], **{k: str(v) for k, v in lengths.items()}
    )
