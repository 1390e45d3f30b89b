"""The walk: where the next value lands, the value, and the places of the panel with what was read there."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QListWidget, QListWidgetItem, QVBoxLayout, QWidget

from detailbench.basics.numbers import PlausibleRange, Typed, format_number, plausibility
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.kit_names import with_initials
from detailbench.findings.settings import plausible_range_um
from detailbench.findings.state_words import state_words
from detailbench.findings.states import State
from detailbench.record.things import GlossReading, Reading
from detailbench.screens.entry.key_grid import KeyChoice, KeyGrid
from detailbench.screens.look.parts import button, gives_way, label, sentence, set_kind, tip
from detailbench.screens.stages.thickness.add_place_row import AddPlaceRow
from detailbench.screens.stages.thickness.desk import ThicknessDesk
from detailbench.screens.stages.thickness.kind_row import KindRow
from detailbench.screens.stages.thickness.mend_row import MendRow
from detailbench.screens.stages.thickness.tray_line import TrayLine
from detailbench.screens.stages.thickness.value_entry import ValueEntry
from detailbench.screens.stages.thickness.value_field import ValueField
from detailbench.screens.stages.thickness.walk import WalkPlace, doubled
from detailbench.screens.stages.thickness.words import flags_line, gloss_words, surface_words, value_hint, value_words


class WalkPart(QWidget):
    """Everything for one value after another."""

    def __init__(self, desk: ThicknessDesk) -> None:
        super().__init__()
        self._desk = desk
        dress = desk.context.dress
        m = dress.look.measure
        self.tray = TrayLine(desk)
        self.next = label("", "next", wrap=True)
        self.where = sentence()
        self.kind = KindRow(desk)
        self.field = ValueField(_("value"), desk.read, self._flag)
        self.entry = ValueEntry(_("value"), dress, field=self.field, stroke=True)
        self.nothing = KeyGrid(dress, columns=3)
        self.nothing.set_choices(
            (
                KeyChoice("nothing", "F3", _("no value shown"), _("No value: nothing shown")),
                KeyChoice("over_range", "⇧F3", _("over range"), _("No value: over range")),
                KeyChoice("no_metal", "^F3", _("no metal"), _("No value: no metal")),
            )
        )
        self.on = button("", desk.next_panel)
        self.add = AddPlaceRow(desk)
        self.list = QListWidget()
        self.list.setAccessibleName(_("Places of this panel"))
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.list.setWordWrap(True)  # a line is never cut: what is odd about a value stands in it
        gives_way(self.list, m.px(26))
        self.mend = MendRow(desk)
        self.beside = QListWidget()  # after what mends: to pass it on the way there would choose its first line
        self.beside.setAccessibleName(_("Places in shuts and underneath"))
        self.beside.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.beside.setFixedHeight(m.px(18))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("thin"))
        for part in (self.tray, self.next, self.where, self.kind, self.entry, self.nothing, self.on, self.add):
            column.addWidget(part)
        column.addWidget(self.list, 1)
        column.addWidget(self.mend)
        column.addWidget(self.beside)
        column.addStretch()
        self.field.sent.connect(desk.typed)
        self.field.no_value_said.connect(lambda: desk.no_value("nothing"))
        self.nothing.chosen.connect(desk.no_value)
        for rows, other in ((self.list, self.beside), (self.beside, self.list)):
            rows.currentRowChanged.connect(lambda row, other=other: self._turned_to(row, other))
            rows.itemClicked.connect(lambda item: desk.choose_place(item.data(Qt.ItemDataRole.UserRole)))
            rows.itemActivated.connect(lambda item: desk.choose_place(item.data(Qt.ItemDataRole.UserRole)))
        self.entry.pad_shown.connect(lambda _on: self.redraw())
        desk.asked_in_field.connect(self.entry.ask_about)
        desk.changed.connect(self.redraw)
        self.redraw()

    @property
    def chosen(self) -> WalkPlace | None:
        """The place chosen in one of the lists."""
        item = self.list.currentItem() or self.beside.currentItem()
        wanted = item.data(Qt.ItemDataRole.UserRole) if item is not None else None
        return next((p for p in (*self._desk.places(), *self._desk.references()) if p.number == wanted), None)

    def _turned_to(self, row: int, other: QListWidget) -> None:
        """One place is chosen at a time, whichever list it stands in."""
        if row >= 0:
            other.setCurrentRow(-1)
        self.mend.show_place(self.chosen)

    def _flag(self, typed: Typed) -> str:
        shop = self._desk.context.shop
        if shop is None or typed.value is None or typed.unit not in ("um", "mil"):
            return ""
        odd = plausibility(typed.value, typed.unit, PlausibleRange(*plausible_range_um(shop)))  # type: ignore[arg-type]
        return odd.sentence if odd is not None else ""

    def redraw(self) -> None:
        desk = self._desk
        panel, place = desk.panel, desk.place
        self.next.setText(_("{panel} done").format(panel=panel_name(panel)) if desk.done_here else desk.waits())
        gauge = desk.check.session is not None or desk.gloss.on
        stands = place is not None and (not desk.complete or desk.place_is_chosen)
        texts = [place.at.phrase()] if place is not None and stands else []
        if desk.gloss.on:
            texts.append(desk.gloss.angle_why)
        if not gauge:
            texts = [_("Choose the gauge first: turn to Gauge.")]
        self.where.setText("\n".join(t for t in texts if t))
        self.where.setVisible(bool(self.where.text()))
        set_kind(self.where, "" if gauge else "flagged")
        self.kind.redraw()
        for part in (self.entry, self.nothing):
            part.setVisible(bool(panel))
            part.setEnabled(gauge)
        self.nothing.setVisible(bool(panel) and not desk.gloss.on)
        layers = not desk.gloss.on and desk.check.gauge is not None and desk.check.gauge.layers
        self.entry.pad.allow_stroke(layers)
        hint = value_hint(layers=layers, gloss_on=desk.gloss.on, angles=desk.gloss.angles)
        self.field.line.setPlaceholderText(hint)
        after = "" if desk.gloss.on else desk.panel_after()
        self.on.setVisible(bool(after) and (desk.complete or not panel))
        self.on.setText(_("On to {panel}").format(panel=panel_name(after)))
        self.on.setAccessibleName(self.on.text())
        focused = QApplication.focusWidget()
        adding = focused is not None and self.add.isAncestorOf(focused)
        self.add.redraw()
        if adding and self.add.isHidden():
            self.entry.setFocus()  # the place is there, its value comes next
        self._fill()

    def _fill(self) -> None:
        desk = self._desk
        places, beside, now = desk.places(), desk.references(), desk.place
        kept = self.chosen
        self._fill_list(self.list, places, kept)
        self._fill_list(self.beside, beside, kept)
        pad = not self.entry.pad.isHidden()
        self.list.setVisible(bool(places) and not pad)
        self.beside.setVisible(bool(beside) and not pad and self.add.isHidden())  # all of it does not fit at once
        last = desk.last
        if last is not None and kept is None:
            self._follow(last, places)
        for rows, there in ((self.list, places), (self.beside, beside)):
            at = next((i for i, p in enumerate(there) if now is not None and p.number == now.number), -1)
            if at >= 0:
                rows.scrollToItem(rows.item(at))
        self.mend.show_place(self.chosen)

    def _fill_list(self, rows: QListWidget, places: tuple[WalkPlace, ...], kept: WalkPlace | None) -> None:
        desk = self._desk
        picture, now = desk.context.picture, desk.place
        pairs = doubled(picture) if picture is not None else None
        rows.blockSignals(True)
        rows.clear()
        for row, place in enumerate(places):
            gloss = desk.gloss.values(place.id) if place.id else ()
            text = gloss_row(place, gloss) if desk.gloss.on else _row_words(place, pairs or {})
            if picture is not None:
                text = with_initials(picture.shop, text, *(gloss if desk.gloss.on else place.readings))
            item = QListWidgetItem(text)
            item.setData(Qt.ItemDataRole.UserRole, place.number)
            said = _("place {n}: {what}").format(n=format_number(place.number), what=text.partition("  ")[2])
            item.setData(Qt.ItemDataRole.AccessibleTextRole, said)
            states = dict.fromkeys(state_words(r) for r in place.readings)
            item.setToolTip(tip("\n".join((place.at.phrase(), *states))))
            rows.addItem(item)
            here = now is not None and place.number == now.number and (not desk.complete or desk.place_is_chosen)
            if here:
                item.setText("▸ " + text)
            if kept is not None and place.number == kept.number:
                rows.setCurrentRow(row)
        rows.blockSignals(False)

    def _follow(self, last: Reading, places: tuple[WalkPlace, ...]) -> None:
        """A flagged value is the one to put right: it is chosen by itself."""
        if last.flags:
            row = next((i for i, p in enumerate(places) if last in p.readings), -1)
            if row >= 0:
                self.list.setCurrentRow(row)


def gloss_row(place: WalkPlace, values: tuple[GlossReading, ...]) -> str:
    """``3  84.2 GU at 60°``"""
    own = surface_words(place.surface) or (_("chosen by hand") if place.origin == "chosen" else "")
    words = ", ".join(gloss_words(v) for v in values) or _("no gloss yet")
    flags = " ".join(filter(None, (flags_line(v) for v in values)))
    odd = dict.fromkeys(state_words(v) for v in values if not State(v.clean, v.work, v.cover).bare_and_clean)
    return "  ".join(part for part in (format_number(place.number), words, flags, own, *odd) if part)


def _row_words(place: WalkPlace, pairs: dict[str, int]) -> str:
    number = format_number(place.number)
    own = surface_words(place.surface) or (_("chosen by hand") if place.origin == "chosen" else "")
    if not place.readings:
        words = _("due") if not own else _("{kind}, due").format(kind=own)
        return f"{number}  {words}"
    values = ", ".join(value_words(r) for r in place.readings)
    flags = " ".join(filter(None, (flags_line(r, pairs) for r in place.readings)))
    # what was read clean and bare can be compared; any other state is said in the line
    odd = dict.fromkeys(state_words(r) for r in place.readings if not State(r.clean, r.work, r.cover).bare_and_clean)
    return "  ".join(part for part in (number, values, flags, own, *odd) if part)
