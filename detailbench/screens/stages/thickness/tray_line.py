"""The tray on the card: values that wait for a person, and what becomes of them, one by one or all."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QListWidget, QListWidgetItem, QVBoxLayout, QWidget

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.record.things import WaitingValue
from detailbench.screens.look.parts import button, sentence, set_kind, tip
from detailbench.screens.stages.thickness.desk import ThicknessDesk
from detailbench.screens.stages.thickness.words import with_clear


def waiting_words(value: WaitingValue) -> str:
    """What waits, as it will be read."""
    if value.angle_deg is not None:
        return _("{value} GU at {angle}°").format(value=value.text, angle=format_number(value.angle_deg))
    if value.clear_um is not None and value.value_um is not None:
        return with_clear(value.value_um, value.clear_um)
    return value.text


class TrayList(QListWidget):
    """Enter places the chosen value on the selected panel, Delete puts it away."""

    def __init__(self, desk: ThicknessDesk) -> None:
        super().__init__()
        self._desk = desk
        self.setAccessibleName(_("Values waiting in the tray"))
        self.setAccessibleDescription(_("Enter places the chosen value, Delete puts it aside"))
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)

    @property
    def chosen(self) -> tuple[str, ...]:
        """The id of the value chosen, or nothing."""
        item = self.currentItem()
        return () if item is None else (item.data(Qt.ItemDataRole.UserRole),)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        acts = {
            Qt.Key.Key_Return: self._desk.sent.place,
            Qt.Key.Key_Enter: self._desk.sent.place,
            Qt.Key.Key_Delete: self._desk.sent.put_away,
        }
        act = acts.get(Qt.Key(event.key()))
        if act is not None and self.chosen:
            act(self.chosen)
        else:
            super().keyPressEvent(event)

    def show_values(self, values: tuple[WaitingValue, ...]) -> None:
        """These, the chosen row staying where it was."""
        ids = [self.item(i).data(Qt.ItemDataRole.UserRole) for i in range(self.count())]
        if ids == [v.id for v in values]:
            return
        row = max(self.currentRow(), 0)
        self.clear()
        for value in values:
            text = waiting_words(value)
            item = QListWidgetItem(f"{text}: {value.why}" if value.why else text)
            item.setData(Qt.ItemDataRole.UserRole, value.id)
            item.setToolTip(tip(item.text()))
            self.addItem(item)
        self.setCurrentRow(min(row, self.count() - 1))


class TrayLine(QWidget):
    """Shown while something waits."""

    def __init__(self, desk: ThicknessDesk) -> None:
        super().__init__()
        self._desk = desk
        m = desk.context.dress.look.measure
        self.says = sentence()
        set_kind(self.says, "flagged")
        self.assign = button("", desk.sent.place)
        self.discard = button(_("Not new"), desk.sent.put_away, name=_("Put the tray's values aside"))
        self.list = TrayList(desk)
        self.list.setFixedHeight(m.px(17))
        row = QHBoxLayout()
        row.setSpacing(m.space("small"))
        row.addWidget(self.assign, 2)
        row.addWidget(self.discard, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("thin"))
        column.addWidget(self.says)
        column.addWidget(self.list)
        column.addLayout(row)
        desk.changed.connect(self.redraw)
        self.redraw()

    def redraw(self) -> None:
        tray, panel = self._desk.sent.tray, self._desk.panel
        self.setVisible(bool(tray))
        self.says.setText(
            _("In the tray: {n} values, new or repeated? Enter places one, Delete puts one aside.").format(
                n=format_number(len(tray))
            )
            if len(tray) != 1
            else _("In the tray: 1 value. Enter places it, Delete puts it aside.")
        )
        self.list.show_values(tray)
        self.assign.setEnabled(bool(panel))
        words = _("New: put on {panel}").format(panel=panel_name(panel)) if panel else _("New: choose a panel")
        self.assign.setText(words)
        self.assign.setAccessibleName(words)
