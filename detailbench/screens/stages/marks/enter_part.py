"""Entering marks: one question at a time, each answer one key or one press."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.numbers import format_quantity
from detailbench.basics.texts import _
from detailbench.marks.severity import severity_words
from detailbench.screens.entry.key_grid import KeyButton, KeyChoice, KeyGrid
from detailbench.screens.look.parts import button, label, sentence, set_kind
from detailbench.screens.stages.marks.desk import MarksDesk
from detailbench.screens.stages.marks.kind_finder import KindFinder
from detailbench.screens.stages.marks.open_mark import scale_of
from detailbench.screens.stages.marks.quick_keys import (
    NO_DEPTH,
    depth_choices,
    kind_choices,
    severity_choices,
)
from detailbench.screens.stages.marks.words import lamp_words, severity_line, short


class EnterPart(QWidget):
    """Lamp, the question of the moment with its answers, and what else one key does."""

    def __init__(self, desk: MarksDesk) -> None:
        super().__init__()
        self._desk = desk
        dress = desk.context.dress
        m = dress.look.measure
        self.finding = False
        self.lamp = button("", desk.ask_lamp, name=_("Lamp in use"))
        self.asks = label("", "next", wrap=True)
        self.place = sentence()
        self.kinds = KeyGrid(dress, columns=3)
        self.kinds.set_choices(kind_choices())
        self.digits = KeyGrid(dress, columns=2)
        self.lamps = KeyGrid(dress, columns=1)
        self.finder = KindFinder(dress)
        self.other = self._keyed("o", _("other kinds"), self.find_kind, _("Other kinds of marks"))
        self.again = self._keyed("r", _("again"), desk.repeat, _("The last mark again, here"))
        self.nothing = self._keyed("n", _("nothing seen"), desk.nothing_seen, _("Looked, nothing seen"))
        self.drop = self._keyed("Esc", _("put away"), desk.drop, _("Put the open mark away"))
        self.new = button("", lambda: desk.enter_new(not desk.new_marks_after))
        self.here = sentence()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("thin"))
        for part in (self.lamp, self.asks, self.place, self.lamps, self.kinds, self.digits):
            column.addWidget(part)
        column.addWidget(self.finder, 1)
        for pair in ((self.other, self.again), (self.nothing, self.drop)):
            row = QHBoxLayout()
            row.setSpacing(m.space("thin"))
            for part in pair:
                row.addWidget(part, 1)
            column.addLayout(row)
        column.addWidget(self.new)
        column.addWidget(self.here)
        column.addStretch(1)
        self.kinds.chosen.connect(desk.choose_kind)
        self.lamps.chosen.connect(desk.use_lamp)
        self.digits.chosen.connect(self._digit)
        self.finder.chosen.connect(self._found)
        self.finder.left.connect(self._leave_finder)
        desk.changed.connect(self.redraw)
        self.redraw()

    def _keyed(self, cap: str, text: str, press: Callable[[], object], name: str) -> KeyButton:
        return KeyButton(KeyChoice(name, cap, text, name), self._desk.context.dress, press)

    def find_kind(self) -> None:
        """Show every kind."""
        if self._desk.context.selected_panel and not self._desk.looks_again:
            self.finding = True
            self.redraw()
            self.finder.begin()

    def _found(self, key: str) -> None:
        self._leave_finder()
        self._desk.choose_kind(key)

    def _leave_finder(self) -> None:
        self.finding = False
        self.redraw()
        self.digits.take_focus() if self.digits.isVisible() else self.kinds.take_focus()

    def _digit(self, key: str) -> None:
        if key == NO_DEPTH:
            self._desk.finish()
        else:
            self._desk.digit(int(key))

    def redraw(self) -> None:
        desk = self._desk
        asks = self._page()
        panel = bool(desk.context.selected_panel)
        self.asks.setText(desk.waits())
        self.lamp.setText(_("lamp: {lamp}").format(lamp=lamp_words(desk.lamp)).replace("&", "&&"))
        self.lamp.setAccessibleDescription(lamp_words(desk.lamp))
        self.lamps.setVisible(asks == "lamp")
        self.kinds.setVisible(asks == "kind")
        self.digits.setVisible(asks in ("severity", "depth", "again"))
        self.finder.setVisible(asks == "find")
        self.lamps.set_choices([KeyChoice(lamp.id, str(i), lamp_words(lamp)) for i, lamp in enumerate(desk.lamps, 1)])
        self._digits(asks)
        self._place(asks)
        last = desk.last
        self.again.set_words(_("again: {mark}").format(mark=short(last)) if last is not None else _("again"))
        entering = panel and asks in ("kind", "severity", "depth")
        self.again.setEnabled(entering and last is not None)
        self.other.setEnabled(entering)
        self.nothing.setEnabled(panel and not desk.results())
        self.drop.setEnabled(desk.open.begun)
        for part in (self.other, self.again, self.nothing, self.drop):
            part.setVisible(asks not in ("find", "lamp", "again"))
        self.new.setVisible(desk.polished and bool(desk.results()))
        self.new.setText(_("Look again at the marks") if desk.new_marks_after else _("Enter a new mark"))
        self.new.setAccessibleName(self.new.text())
        self._summary()

    def _page(self) -> str:
        desk = self._desk
        if desk.asks_lamp:
            return "lamp"
        if desk.looks_again:
            return "again"
        if self.finding:
            return "find"
        return "kind" if desk.open.asks == "panel" else desk.open.asks

    def _digits(self, asks: str) -> None:
        desk = self._desk
        if asks == "depth":
            self.digits.set_choices(depth_choices())
        elif asks == "severity" and desk.open.kind is not None:
            self.digits.set_choices(severity_choices(desk.open.kind))
        elif asks == "again" and desk.again is not None:
            self.digits.set_choices(severity_choices(desk.again.kind))
        elif asks == "again":
            self.digits.set_choices(())

    def _place(self, asks: str) -> None:
        desk, open_ = self._desk, self._desk.open
        text, kind = "", ""
        if asks == "again" and desk.again is not None:
            mark = desk.again.mark
            text = _("before: {severity}").format(severity=severity_line(mark))
            if desk.lamp is None or mark.lamp_id != desk.lamp.id:
                text += ". " + _("It was seen under another lamp: the two will not be compared.")
                kind = "flagged"
        elif not open_.panel:
            text = _("Click a place on the map; or choose a panel with the arrow keys and press Enter for a place.")
        elif open_.at is None:
            text = _("all over the panel; click the map for a place")
        else:
            text = open_.at.phrase()
            if open_.length_mm is not None:
                text += ", " + _("{length} long").format(length=format_quantity(open_.length_mm, "mm", 0))
            elif open_.takes_line:
                text += "; " + _("click the far end for its length")
        self.place.setText(text)
        self.place.setVisible(asks not in ("lamp", "find"))
        set_kind(self.place, kind)

    def _summary(self) -> None:
        results = self._desk.results()
        parts = []
        for r in results:
            after = (
                ""
                if r.after is None
                else _(" → {words}").format(words=severity_words(r.after.severity, scale_of(r.kind)))
            )
            parts.append(short(r.mark) + after)
        picture, panel = self._desk.context.picture, self._desk.context.selected_panel
        looked = picture is not None and any(look.panel == panel for look in picture.panel_looks)
        if parts:
            self.here.setText(_("on this panel: {marks}").format(marks=" · ".join(parts)))
        else:
            self.here.setText(_("looked at, nothing seen") if looked and panel else "")
