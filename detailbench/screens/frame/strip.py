"""The entry strip: who is entering, what the next value records, what was entered last, gauge, timer, live keys."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QSizePolicy, QVBoxLayout, QWidget

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.screens.actions import Action
from detailbench.screens.frame.key_line import KeyLine
from detailbench.screens.look.dress import Dress
from detailbench.screens.look.parts import area, button, caption, label, rule, set_kind, tip


class ShortText(QLabel):
    """One line that gives way: too long a text ends in dots and is whole in the tooltip and for the ear."""

    def __init__(self, role: str = "") -> None:
        super().__init__()
        self._whole = ""
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        if role:
            self.setProperty("role", role)

    @property
    def whole(self) -> str:
        return self._whole

    def set_whole(self, text: str) -> None:
        self._whole = text
        self.setAccessibleName(text)
        self.setToolTip(tip(text))
        self._fit()

    def resizeEvent(self, event: object) -> None:
        self._fit()

    def _fit(self) -> None:
        self.ensurePolished()
        self.setText(self.fontMetrics().elidedText(self._whole, Qt.TextElideMode.ElideRight, max(self.width(), 1)))


class EntryStrip(QWidget):
    """Two lines: facts above, keys that act now below."""

    def __init__(
        self,
        dress: Dress,
        person: Callable[[], object],
        undo: Callable[[], object],
        redo: Callable[[], object] | None = None,
    ) -> None:
        super().__init__()
        area(self, "surface")
        self._dress = dress
        m = dress.look.measure
        self.person = button(_("who?"), person, name=_("Who is entering"))
        self.person.setMaximumWidth(m.px(46))
        self.next = ShortText("next")
        self.last = ShortText()
        self.undo: QPushButton = button(_("Undo"), undo, name=_("Undo the last entry"))
        self.redo: QPushButton = button(_("Do again"), redo or (lambda: None), name=_("Do again what was taken back"))
        self.redo.hide()  # it takes no room until something was taken back
        self.gauge = ShortText()
        self._sent, self._lines, self._waiting = "", "", 0
        self.set_gauge("")
        self.timer = label("–", "strong")
        facts = QHBoxLayout()
        facts.setSpacing(m.space("gap"))
        facts.setContentsMargins(m.space("gap"), m.space("thin"), m.space("gap"), m.space("thin"))
        for title, widget, stretch in (
            (_("entering"), self.person, 0),
            (_("next value"), self.next, 4),
            (_("last entry"), self.last, 4),
            ("", self.undo, 0),
            ("", self.redo, 0),
            (_("sent by a gauge"), self.gauge, 4),
            (_("timer"), self.timer, 0),
        ):
            if title:
                if facts.count():
                    facts.addWidget(rule(upright=True))
                facts.addLayout(self._titled(title, widget), stretch)
            else:
                facts.addWidget(widget, 0, Qt.AlignmentFlag.AlignVCenter)
        self.keys = KeyLine(dress)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(rule())
        column.addLayout(facts)
        column.addWidget(rule())
        column.addWidget(self.keys)
        self.setAccessibleName(_("Entry strip"))
        self.set_next("")
        self.set_last("", can_undo=False)

    @staticmethod
    def _titled(title: str, widget: QWidget) -> QHBoxLayout | QVBoxLayout:
        if isinstance(widget, QPushButton):
            row = QHBoxLayout()
            row.addWidget(caption(title))
            row.addWidget(widget)
            return row
        column = QVBoxLayout()
        column.setSpacing(0)
        column.addWidget(caption(title))
        column.addWidget(widget)
        return column

    def set_person(self, name: str) -> None:
        self.person.setText((name or _("who?")).replace("&", "&&"))
        self.person.setAccessibleDescription(name)

    def set_next(self, text: str) -> None:
        self.next.set_whole(text or _("nothing is awaited here"))

    def set_last(self, text: str, *, can_undo: bool, can_redo: bool = False, not_saved: bool = False) -> None:
        self.last.set_whole(text or _("nothing to take back"))
        set_kind(self.last, "stop" if not_saved else "")
        self.undo.setEnabled(can_undo)
        self.redo.setVisible(can_redo)

    def set_gauge(self, text: str) -> None:
        """What was sent last."""
        self._sent = text
        self._show_gauge()

    def set_gauge_lines(self, text: str) -> None:
        """Which gauges are there and which are away."""
        self._lines = text
        self._show_gauge()

    def set_waiting(self, count: int) -> None:
        """How many values wait in the tray."""
        self._waiting = count
        self._show_gauge()

    def _show_gauge(self) -> None:
        waits = _("{n} in the tray").format(n=format_number(self._waiting)) if self._waiting else ""
        parts = (self._sent or ("" if self._lines or waits else _("nothing yet")), waits, self._lines)
        self.gauge.set_whole(" · ".join(part for part in parts if part))

    def set_timer(self, text: str) -> None:
        self.timer.setText(text or "–")

    def show_keys(self, actions: Iterable[Action]) -> None:
        """List the keys that act here and now."""
        self.keys.show_keys(tuple((a.shortcut, a.text) for a in actions if a.shown and a.enabled_when()))

    @property
    def shown_keys(self) -> tuple[tuple[str, str], ...]:
        """Key and text of what is listed now, those without room included."""
        return self.keys.listed
