"""Readings from a file: what can be taken, what cannot and why, then one move."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from PySide6.QtCore import QStringListModel, Qt
from PySide6.QtWidgets import QListView, QProgressBar, QVBoxLayout, QWidget

from detailbench.basics.numbers import LengthUnit, PlausibleRange, format_number
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.settings import plausible_range_um
from detailbench.moves.readings_file import MOST_LINES, ImportedReading, ImportReadings, as_line
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.entry.file_choice import FileChooser, choose_files
from detailbench.screens.gauges.folder_watch import FoundFile
from detailbench.screens.look.parts import button, caption, gives_way, label, sentence, set_kind
from detailbench.screens.stages.thickness.desk import ThicknessDesk
from detailbench.screens.stages.thickness.file_reader import FileRead, FileReader
from detailbench.screens.stages.work_parts.pages import in_line
from detailbench.thickness.csv_import import ImportedReading as FileLine


class FilePart(QWidget):
    """``choose`` is how the file is chosen; a test hands in its own."""

    def __init__(self, desk: ThicknessDesk, choose: FileChooser = choose_files) -> None:
        super().__init__()
        self._desk = desk
        self.choose = choose
        self._reader: FileReader | None = None
        self._read: FileRead | None = None
        self._path: Path | None = None
        self._lines: tuple[FileLine, ...] = ()
        m = desk.context.dress.look.measure
        self.about = sentence(
            _(
                "A list with the columns value, unit, panel, place, time, note; only value is needed. One column "
                "without a heading goes to the selected panel, place after place."
            )
        )
        self.open = button(_("Choose a file…"), self.ask, name=_("Choose a file of readings"))
        self.bar = QProgressBar()
        self.bar.setRange(0, 0)
        self.bar.setAccessibleName(_("The file is being read"))
        self.bar.hide()
        self.result = label("", "strong", wrap=True)
        self.unit = in_line(ChoiceRow(_("values without a unit are in"), (("um", "µm"), ("mil", "mil")), columns=2))
        self.unit.chosen.connect(lambda key: self._read_again("mil" if key == "mil" else "um"))
        self.mapping = sentence()
        self.notes = sentence()
        self.refused_title = caption("")
        self._model = QStringListModel()
        self.refused = QListView()
        self.refused.setModel(self._model)
        self.refused.setAccessibleName(_("Lines not taken, and why"))
        self.refused.setWordWrap(True)
        self.refused.setEditTriggers(QListView.EditTrigger.NoEditTriggers)
        self.refused.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        gives_way(self.refused, m.px(26))
        self.take = button("", self._take, role="main")
        self.leave = button(_("Leave the file"), self._leave, role="quiet")
        self._offered: FoundFile | None = None
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(m.space("small"))
        above = (self.about, self.open, self.bar, self.result, self.unit, self.mapping, self.notes, self.refused_title)
        part: QWidget
        for part in above:
            column.addWidget(part)
        column.addWidget(self.refused, 1)
        column.addWidget(self.take)
        column.addWidget(self.leave)
        column.addStretch(1)
        desk.changed.connect(self.redraw)
        desk.context.left.connect(self.stop)
        desk.context.job_opened.connect(self.forget)
        desk.context.changed.connect(lambda _changes, _who: self.offer())
        desk.watched.found.connect(self.offer)
        self.redraw()
        self.offer()

    def ask(self) -> None:
        filters = [_("Lists (*.csv *.txt *.tsv)"), _("All files (*)")]
        self.choose(self, _("A file of readings"), filters, False, lambda paths: self.read(paths[0]))

    def read(self, path: Path, unit: LengthUnit = "um") -> None:
        """Read this file beside the window; ``unit`` is that of values it gives none for."""
        context = self._desk.context
        if self._reader is not None or context.shop is None:
            return
        self.forget()
        self._path = path
        self.unit.set_value(unit)
        plausible = PlausibleRange(*plausible_range_um(context.shop))
        known = frozenset(context.outline.panels)
        self._reader = FileReader(path, known, plausible, context.clock.now().tzinfo, self, unit)
        self._reader.done.connect(self._done, Qt.ConnectionType.QueuedConnection)
        self._reader.start()
        self.bar.show()
        self.open.setEnabled(False)

    def _read_again(self, unit: LengthUnit) -> None:
        """Another unit was chosen for this file: it is read anew, and stays offered if it was."""
        path, offered = self._path, self._offered
        if path is not None and self._read is not None:
            self.read(path, unit)
            self._offered = offered

    def offer(self) -> None:
        """Read what waits in the watched folder, unless a file is in hand already."""
        first = self._desk.watched.first
        if first is not None and self._read is None and self._reader is None:
            self.read(first.path)
            self._offered = first

    @property
    def can_take(self) -> bool:
        """The file in hand can be taken in as it stands."""
        return self._read is not None and bool(self._lines) and self.take.isEnabled()

    def take_in(self) -> None:
        """One key for the button."""
        if self.can_take:
            self._take()

    def _leave(self) -> None:
        """Put the file away; one from the watched folder for good."""
        offered = self._offered
        if offered is None or self._desk.watched.put_away(offered):
            self.forget()
            self.offer()

    def _done(self, read: FileRead) -> None:
        reader, self._reader = self._reader, None
        if reader is not None:
            reader.wait()
            reader.deleteLater()
        self._read = read
        self.bar.hide()
        self.open.setEnabled(True)
        if read.found is None:
            self._desk.context.notice(read.sentence, "stop")
        else:
            self._lines, unplaced = self._placed(read.found.accepted)
            refused = [line.sentence for line in read.found.refused] + unplaced
            self._model.setStringList(refused)
        self.redraw()
        if self._offered is not None and self.can_take:
            words = _("“{name}” from the watched folder: {n} lines can be taken; in Thickness Ctrl+I does it").format(
                name=read.name, n=format_number(len(self._lines))
            )
            self._desk.context.notice(words, "flagged")

    def stop(self) -> None:
        """End now: the window closes."""
        if self._reader is not None:
            self._reader.wait()
            self._reader = None

    def forget(self) -> None:
        """Put the file away; nothing was taken."""
        self._read, self._lines, self._offered, self._path = None, (), None, None
        self._model.setStringList([])
        self.redraw()

    @property
    def accepted(self) -> tuple[FileLine, ...]:
        """Lines that can be taken; those without a panel only once one is selected."""
        return self._lines

    def _placed(self, lines: tuple[FileLine, ...]) -> tuple[tuple[FileLine, ...], list[str]]:
        """Lines whose place there is, and a sentence for each of the others."""
        good, bad = [], []
        numbers: dict[str, set[int]] = {}
        for line in lines:
            number = _number(line)
            if number is not None and line.panel is not None:
                if line.panel not in numbers:
                    numbers[line.panel] = {p.number for p in self._desk.places(line.panel)}
                if number not in numbers[line.panel]:
                    bad.append(
                        _("Line {line}, place “{place}”: the {panel} has {n} places.").format(
                            line=line.line,
                            place=line.place,
                            panel=panel_name(line.panel),
                            n=format_number(len(numbers[line.panel])),
                        )
                    )
                    continue
            good.append(line)
        return tuple(good), bad

    def redraw(self) -> None:
        read = self._read
        found = read.found if read is not None else None
        lines, panel = self.accepted, self._desk.panel
        part: QWidget
        loose = sum(1 for line in lines if line.panel is None)
        for part in (self.result, self.leave):
            part.setVisible(read is not None)
        for part in (self.refused, self.refused_title):
            part.setVisible(self._model.rowCount() > 0)
        self.unit.setVisible(found is not None)
        self.mapping.setVisible(found is not None and bool(lines))
        odd = sum(line.doubt in ("mil", "um") for line in lines)
        self.notes.setVisible(found is not None and bool(found.notes or odd))
        set_kind(self.notes, "flagged" if odd else "")
        self.take.setVisible(bool(lines))
        if read is None:
            return
        if found is None:
            self.result.setText(read.sentence)
            set_kind(self.result, "stop")
            return
        set_kind(self.result, "")
        self.result.setText(
            _("{name}: {good} lines can be taken, {bad} not").format(
                name=read.name, good=format_number(len(lines)), bad=format_number(self._model.rowCount())
            )
        )
        self.refused_title.setText(_("not taken:"))
        parts = [f"“{words}” → {panel_name(key)}" for words, key in read.words]
        if loose:
            parts.append(
                _("{n} without a panel → {panel}").format(n=format_number(loose), panel=panel_name(panel))
                if panel
                else _("{n} without a panel: choose one").format(n=format_number(loose))
            )
        self.mapping.setText(", ".join(parts))
        unlike = _("{n} of them look like values in another unit: is the one above right?")
        self.notes.setText("\n".join((*found.notes, *([unlike.format(n=format_number(odd))] if odd else []))))
        self.take.setText(_("Take {n} readings in").format(n=format_number(len(lines))))
        self.take.setAccessibleName(self.take.text())
        many = len(lines) > MOST_LINES
        self.take.setEnabled(not many and (not loose or bool(panel)) and self._desk.check.session is not None)
        if many:
            self.notes.setVisible(True)
            self.notes.setText(
                _("That is more than one car has: at most {most} are taken at a time. Is it the right file?").format(
                    most=format_number(MOST_LINES)
                )
            )
        elif self._desk.check.session is None:
            self.notes.setVisible(True)
            self.notes.setText(_("Choose the gauge first: turn to Gauge."))

    def _take(self) -> None:
        job, read = self._desk.context.job_id, self._read
        if job is None or read is None:
            return
        lines = tuple(_line(line, self._desk.panel) for line in self.accepted)
        if self._desk.context.do(ImportReadings(job, lines, read.name, read.sha256), self._desk) is not None:
            flagged = sum(1 for line in self.accepted if line.doubt)
            words = _("{n} readings from “{name}”").format(n=format_number(len(lines)), name=read.name)
            if flagged:
                words += ", " + _("{n} of them flagged").format(n=format_number(flagged))
            self._desk.context.notice(words, "flagged" if flagged else "saved")
            self.forget()
            self._desk.told()


def _number(line: FileLine) -> int | None:
    """The place's number, where the file names places by number."""
    return int(line.place) if line.place.strip().isdigit() else None


def _line(line: FileLine, selected: str) -> ImportedReading:
    number = _number(line) if line.panel is not None else None
    note = line.note if number is not None or not line.place else f"{line.place}: {line.note}".rstrip(": ")
    return replace(as_line(line, line.panel or selected), place_number=number, note=note)
