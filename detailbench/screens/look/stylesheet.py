# ruff: noqa: E501  (a style rule reads best on one line)
"""The stylesheet, made from a look's tokens. No other file writes style rules.

Widgets say what they are with a dynamic property ``role`` (caption, heading, figure, sentence, field, choice, quiet,
cap …) and, where it varies, ``kind``.
"""

from __future__ import annotations

from PySide6.QtGui import QColor, QPalette

from detailbench.screens.look.faces import FALLBACK, FAMILY
from detailbench.screens.look.looks import Look


def stylesheet(look: Look) -> str:
    """All rules of a look."""
    c, m = look.palette, look.measure
    radius = m.px(0.8)
    ring = max(2, m.px(0.5))
    plain = m.target - 2  # a hairline border on both sides
    ringed = f"min-height: {m.target - 2 * ring}px; "  # the ring takes from the inside: nothing moves on focus
    return f"""
QWidget {{ font-family: "{FAMILY}", "{FALLBACK}"; font-size: {m.type("body")}px; color: {c.ink}; background: transparent; }}
QWidget#window {{ background: {c.ground}; }}
QWidget[area="surface"] {{ background: {c.surface}; }}
QWidget[area="well"] {{ background: {c.well}; }}
QWidget[area="raised"] {{ background: {c.raised}; border-radius: {radius}px; }}
QWidget[area="sheet"] {{ background: {c.surface}; border: 1px solid {c.edge}; border-radius: {radius}px; }}
QFrame[role="rule"] {{ background: {c.line}; border: none; }}

QLabel[role="caption"] {{ font-size: {m.type("small")}px; color: {c.ink_soft}; }}
QLabel[role="key_words"] {{ font-size: {m.type("small")}px; }}
QLabel[role="heading"] {{ font-size: {m.type("title")}px; font-weight: bold; }}
QLabel[role="strong"] {{ font-weight: bold; }}
QLabel[role="next"] {{ font-weight: bold; color: {c.accent}; }}
QLabel[role="figure"] {{ font-size: {m.type("figure")}px; font-weight: bold; }}
QLabel[role="sentence"] {{ color: {c.ink_soft}; }}
QLabel[role="sentence"][kind="stop"] {{ color: {c.stop}; }}
QLabel[role="sentence"][kind="flagged"] {{ color: {c.flagged}; }}
QLabel[role="notice"] {{ font-weight: bold; }}
QLabel[role="notice"][kind="saved"] {{ color: {c.saved}; }}
QLabel[role="notice"][kind="flagged"] {{ color: {c.flagged}; }}
QLabel[role="notice"][kind="next"] {{ color: {c.moved}; }}
QLabel[role="notice"][kind="stop"] {{ color: {c.stop}; }}
QLabel[role="cap"] {{ font-size: {m.type("small")}px; font-weight: bold; color: {c.ink}; background: {c.raised};
  border: 1px solid {c.edge}; border-radius: {radius}px; padding: 0px {m.px(1)}px; }}

QPushButton, QToolButton {{ background: {c.raised}; border: 1px solid {c.edge}; border-radius: {radius}px;
  min-height: {plain}px; min-width: {plain}px; padding: 0px {m.space("small")}px; }}
QPushButton:hover, QToolButton:hover {{ background: {c.pressed}; }}
QPushButton:pressed, QToolButton:pressed {{ background: {c.pressed}; border-color: {c.accent}; }}
QPushButton:focus, QToolButton:focus {{ border: {ring}px solid {c.focus}; {ringed}}}
QPushButton:disabled, QToolButton:disabled {{ color: {c.ink_faint}; background: {c.surface}; border: 1px dashed {c.line}; }}
QPushButton[role="main"] {{ background: {c.accent_fill}; color: {c.on_accent}; font-weight: bold; border: 1px solid {c.accent_fill}; }}
QPushButton[role="main"]:focus {{ border: {ring}px solid {c.focus}; {ringed}}}
QPushButton[role="main"]:disabled {{ background: {c.surface}; color: {c.ink_faint}; border: 1px dashed {c.line}; }}
QPushButton[role="quiet"] {{ background: transparent; border: 1px solid transparent; }}
QPushButton[role="quiet"]:hover {{ background: {c.raised}; }}
QPushButton[role="quiet"]:focus {{ border: {ring}px solid {c.focus}; {ringed}}}
QPushButton[role="choice"] {{ text-align: left; }}
QPushButton[role="choice"][close="true"] {{ text-align: center; padding: 0px {m.px(0.5)}px; }}
QPushButton[role="choice"]:checked {{ background: {c.accent_fill}; color: {c.on_accent}; font-weight: bold; border: 1px solid {c.accent_fill}; }}
QPushButton[role="choice"][close="true"]:checked {{ font-weight: normal; }}
QPushButton[role="choice"]:focus {{ border: {ring}px solid {c.focus}; {ringed}}}
QPushButton[role="why"] {{ color: {c.accent}; font-size: {m.type("small")}px; background: transparent; border: 1px solid transparent;
  text-decoration: underline; padding: 0px {m.px(1)}px; }}
QPushButton[role="why"]:focus {{ border: {ring}px solid {c.focus}; {ringed}}}

QLineEdit, QPlainTextEdit, QTextEdit {{ background: {c.well}; border: 1px solid {c.edge}; border-radius: {radius}px;
  padding: 0px {m.space("small")}px; selection-background-color: {c.accent_fill}; selection-color: {c.on_accent}; }}
QLineEdit {{ min-height: {plain}px; }}
QLineEdit:focus, QPlainTextEdit:focus, QTextEdit:focus {{ border: {ring}px solid {c.focus}; }}
QLineEdit:focus {{ {ringed}}}
QLineEdit:disabled, QPlainTextEdit:disabled, QTextEdit:disabled {{ color: {c.ink_faint}; border: 1px dashed {c.line}; }}
QLineEdit[kind="stop"] {{ border: {ring}px solid {c.stop}; }}

QComboBox {{ background: {c.raised}; border: 1px solid {c.edge}; border-radius: {radius}px;
  min-height: {plain}px; padding: 0px {m.space("small")}px; }}
QComboBox:focus {{ border: {ring}px solid {c.focus}; {ringed}}}
QComboBox QAbstractItemView, QListView, QListWidget, QTreeView, QTableView {{ background: {c.well}; border: 1px solid {c.edge};
  selection-background-color: {c.accent_fill}; selection-color: {c.on_accent}; outline: none; }}
QListView::item, QListWidget::item, QComboBox QAbstractItemView::item {{ min-height: {m.target}px; padding: 0px {m.space("small")}px; }}
QListView:focus, QListWidget:focus, QTreeView:focus, QTableView:focus {{ border: {ring}px solid {c.focus}; }}
QTableView {{ gridline-color: {c.line}; }}
QHeaderView::section {{ background: {c.surface}; color: {c.ink_soft}; border: none; border-bottom: 1px solid {c.line};
  font-size: {m.type("small")}px; padding: {m.px(1)}px {m.space("small")}px; }}
QCheckBox, QRadioButton {{ min-height: {m.target}px; spacing: {m.space("small")}px; border: {ring}px solid transparent; }}
QCheckBox:focus, QRadioButton:focus {{ border: {ring}px solid {c.focus}; border-radius: {radius}px; }}
QCheckBox::indicator, QRadioButton::indicator {{ width: {m.px(4)}px; height: {m.px(4)}px; border: 1px solid {c.edge}; background: {c.well}; }}
QCheckBox::indicator:checked, QRadioButton::indicator:checked {{ background: {c.accent_fill}; border: {m.px(1)}px solid {c.raised}; }}

QGraphicsView {{ border: {ring}px solid transparent; background: {c.well}; }}
QGraphicsView:focus {{ border: {ring}px solid {c.focus}; }}
QScrollArea {{ border: none; background: transparent; }}
QScrollBar:vertical {{ background: transparent; width: {m.px(3)}px; margin: 0; }}
QScrollBar:horizontal {{ background: transparent; height: {m.px(3)}px; margin: 0; }}
QScrollBar::handle {{ background: {c.edge}; border-radius: {m.px(1)}px; min-height: {m.target}px; min-width: {m.target}px; }}
QScrollBar::add-line, QScrollBar::sub-line {{ width: 0; height: 0; }}
QScrollBar::add-page, QScrollBar::sub-page {{ background: transparent; }}
QProgressBar {{ background: {c.raised}; border: none; border-radius: {m.px(0.5)}px; max-height: {m.px(1)}px; color: {c.ink}; }}
QProgressBar::chunk {{ background: {c.accent_fill}; border-radius: {m.px(0.5)}px; }}
QToolTip {{ background: {c.raised}; color: {c.ink}; border: 1px solid {c.edge}; padding: {m.px(1)}px; }}

QLabel[role="far_value"] {{ font-weight: bold; }}
QWidget#far {{ background: {c.ground}; }}
""".strip()


def palette_of(look: Look) -> QPalette:
    """The same colours for what Qt draws without the stylesheet."""
    c = look.palette
    p = QPalette()
    for role, name in (
        (QPalette.ColorRole.Window, c.ground),
        (QPalette.ColorRole.Base, c.well),
        (QPalette.ColorRole.AlternateBase, c.surface),
        (QPalette.ColorRole.Button, c.raised),
        (QPalette.ColorRole.WindowText, c.ink),
        (QPalette.ColorRole.Text, c.ink),
        (QPalette.ColorRole.ButtonText, c.ink),
        (QPalette.ColorRole.PlaceholderText, c.ink_faint),
        (QPalette.ColorRole.Highlight, c.accent_fill),
        (QPalette.ColorRole.HighlightedText, c.on_accent),
        (QPalette.ColorRole.ToolTipBase, c.raised),
        (QPalette.ColorRole.ToolTipText, c.ink),
    ):
        p.setColor(role, QColor(name))
    return p
