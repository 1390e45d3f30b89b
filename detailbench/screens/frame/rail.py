"""The stage rail: the stages of the day with what is done and due, and the pages below them.

Each stage carries a measuring tick that grows with the share done: length, not colour, tells how far it is.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PySide6.QtCore import QRect, QSize, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.screens.actions import OPENS
from detailbench.screens.look.dress import Dress
from detailbench.screens.look.faces import face
from detailbench.screens.look.parts import area, tip
from detailbench.screens.stages.stage import CountsApart


class RailRow(QAbstractButton):
    """One stage or page. ``done`` and ``due`` None: nothing is counted (a page, or no job open)."""

    def __init__(self, key: str, title: str, dress: Dress) -> None:
        super().__init__()
        self.key = key
        self.title = title
        self._dress = dress
        self.done: float | None = None
        self.due: int | None = None
        self.apart: CountsApart | None = None
        self.setCheckable(True)
        self.setProperty(OPENS, True)
        self.setAutoExclusive(False)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.set_counts(None, None)

    def set_counts(self, done: float | None, due: int | None, apart: CountsApart | None = None) -> None:
        self.done, self.due, self.apart = done, due, apart
        self.setAccessibleName(self.title)
        self.setAccessibleDescription(apart.words if apart is not None else self.count_text())
        self.setToolTip(tip(apart.words if apart is not None else ""))
        self.update()

    def count_text(self) -> str:
        """``3 of 8``, ``done``, or nothing."""
        if self.done is None or self.due is None or self.due == 0:
            return ""
        if self.done >= self.due:
            return _("done")
        return _("{done} of {due}").format(done=format_number(int(self.done)), due=format_number(self.due))

    @property
    def share(self) -> float:
        if not self.due or self.done is None:
            return 0.0
        return min(self.done / self.due, 1.0)

    def sizeHint(self) -> QSize:
        m = self._dress.look.measure
        return QSize(m.px(42), max(m.target, m.px(11)))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        elif event.key() == Qt.Key.Key_Space:
            super().keyPressEvent(event)
        else:
            event.ignore()  # arrows belong to the rail

    def paintEvent(self, event: QPaintEvent) -> None:
        look = self._dress.look
        m, p = look.measure, look.palette
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.TextAntialiasing)
        box = self.rect()
        if self.isChecked():
            painter.fillRect(box, QColor(p.raised))
            painter.fillRect(QRect(0, 0, m.px(1), box.height()), QColor(p.accent_fill))
        elif self.underMouse():
            painter.fillRect(box, QColor(p.pressed))
        left, right = m.px(4), m.px(3)
        inner = box.adjusted(left, 0, -right, 0)
        ink = p.ink if self.isEnabled() else p.ink_faint
        painter.setPen(QColor(ink))
        painter.setFont(face(m.type("body"), bold=self.isChecked()))
        counted = bool(self.count_text())
        lift = m.px(1.2) if counted else 0
        if self.apart is not None:
            lift = m.px(5)  # room for a second line
        painter.drawText(
            inner.adjusted(0, 0, 0, -lift), int(Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft), self.title
        )
        if counted:
            painter.setFont(face(m.type("small")))
            painter.setPen(QColor(p.ink_soft))
            painter.drawText(
                inner.adjusted(0, 0, 0, -lift),
                int(Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignRight),
                self.count_text() if self.apart is None else self.apart.first,
            )
            if self.apart is not None:
                below = inner.adjusted(0, m.px(2.6), 0, 0)
                middle = int(Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignRight)
                painter.drawText(below, middle, self.apart.then)
            self._tick(painter, inner)
        if self.hasFocus():
            ring = max(2, m.px(0.5))
            painter.setPen(Qt.PenStyle.NoPen)
            colour = QColor(p.focus)
            for side in (
                QRect(0, 0, box.width(), ring),
                QRect(0, box.height() - ring, box.width(), ring),
                QRect(0, 0, ring, box.height()),
                QRect(box.width() - ring, 0, ring, box.height()),
            ):
                painter.fillRect(side, colour)
        painter.end()

    def _tick(self, painter: QPainter, inner: QRect) -> None:
        """A ruler's edge along the foot of the row, filled as far as the work is done."""
        look = self._dress.look
        m, p = look.measure, look.palette
        y = inner.bottom() - m.px(1.3)
        thick = max(2, m.px(0.6))
        painter.fillRect(QRect(inner.left(), y, inner.width(), 1), QColor(p.edge))
        painter.fillRect(
            QRect(inner.left(), y - thick + 1, round(inner.width() * self.share), thick), QColor(p.ink_soft)
        )
        for quarter in range(5):
            x = inner.left() + round((inner.width() - 1) * quarter / 4)
            painter.fillRect(QRect(x, y, 1, m.px(0.9)), QColor(p.edge))


class Rail(QWidget):
    """All rows; emits ``chosen`` with a key. Up and Down walk the rows."""

    chosen = Signal(str)

    def __init__(self, stages: Sequence[tuple[str, str]], pages: Sequence[tuple[str, str]], dress: Dress) -> None:
        super().__init__()
        area(self, "surface")
        self._dress = dress
        self.rows: dict[str, RailRow] = {}
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(0)
        self._column.addSpacing(dress.look.measure.space("small"))
        for key, title in stages:
            self._add(key, title)
        self._column.addStretch(1)
        self._acts_at = self._column.count()
        for key, title in pages:
            self._add(key, title)
        self._column.addSpacing(dress.look.measure.space("small"))
        self.setAccessibleName(_("Stages"))
        dress.changed.connect(self._dressed)

    def add_acts(self, acts: Sequence[QWidget]) -> None:
        """Acts that belong to every stage, side by side above the pages."""
        row = QHBoxLayout()
        m = self._dress.look.measure
        row.setContentsMargins(m.space("small"), 0, m.space("small"), m.space("small"))
        row.setSpacing(m.space("thin"))
        for act in acts:
            act.setSizePolicy(QSizePolicy.Policy.MinimumExpanding, QSizePolicy.Policy.Fixed)
            row.addWidget(act)
        self._column.insertLayout(self._acts_at, row)

    def _dressed(self) -> None:
        for row in self.rows.values():
            row.updateGeometry()
            row.update()

    def _add(self, key: str, title: str) -> None:
        row = RailRow(key, title, self._dress)
        row.clicked.connect(self._chooser(key))
        self.rows[key] = row
        self._column.addWidget(row)

    def _chooser(self, key: str) -> Callable[[], None]:
        return lambda: self.chosen.emit(key)

    def show_chosen(self, key: str) -> None:
        """Mark one row as the open one."""
        for each, row in self.rows.items():
            row.setChecked(each == key)

    def set_counts(self, key: str, done: float | None, due: int | None, apart: CountsApart | None = None) -> None:
        self.rows[key].set_counts(done, due, apart)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        steps: dict[int, int] = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}
        step = steps.get(event.key())
        rows = list(self.rows.values())
        here = next((i for i, row in enumerate(rows) if row.hasFocus()), None)
        if step is None or here is None:
            super().keyPressEvent(event)
            return
        rows[(here + step) % len(rows)].setFocus(Qt.FocusReason.OtherFocusReason)
