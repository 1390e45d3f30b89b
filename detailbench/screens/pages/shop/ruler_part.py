"""True sizes on this screen: a line to hold a ruler to, and what the ruler says."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QVBoxLayout, QWidget

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.findings.settings import setting
from detailbench.moves.shop import SetSetting
from detailbench.screens.context import Context
from detailbench.screens.entry.text_field import TextField
from detailbench.screens.look.parts import heading, sentence
from detailbench.screens.pages.shop.asked import needed_number

LINE_MM = 100.0
LEAST_MM, MOST_MM = 40.0, 250.0  # a line measured outside this is a slip, or the line of another screen


class RulerLine(QWidget):
    """A line of 100 mm as the screen takes a millimetre to be, with no correction."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._dress = context.dress
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(_("line to measure"))

    @property
    def long_px(self) -> float:
        return LINE_MM * self._dress.screen_dots_per_mm

    def sizeHint(self) -> QSize:
        return QSize(round(self.long_px) + 4, self._dress.look.measure.px(10))

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        ink = QColor(self._dress.colour("ink"))
        high = self.height()
        painter.fillRect(QRectF(1, high / 2 - 1, self.long_px, 2), ink)
        for at in (1.0, 1.0 + self.long_px - 2):
            painter.fillRect(QRectF(at, 0, 2, high), ink)
        painter.end()


class RulerPart(QWidget):
    """Typed once for a screen; every size follows at once."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        self.line = RulerLine(context)
        self.measured = TextField(_("this line measures, mm"), check=_plausible)
        self.measured.setMaximumWidth(context.dress.look.measure.px(70))
        self.measured.committed.connect(self._measured)
        self.says = sentence()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(context.dress.look.measure.space("small"))
        column.addWidget(heading(_("This screen")))
        column.addWidget(
            sentence(
                _("Hold a ruler to the line and type what it measures. Buttons, marks and the far view's figures then "
                  "have their true size on this screen.")
            )
        )  # fmt: skip
        column.addWidget(self.line)
        column.addWidget(self.measured)
        column.addWidget(self.says)
        column.addStretch(1)
        self.redraw()

    def redraw(self) -> None:
        """Show what is in force."""
        shop = self._context.shop
        if shop is None:
            return
        factor = float(setting(shop, "touch_factor"))
        self.measured.set_text(format_number(round(factor * LINE_MM, 1)))
        if factor == 1.0:
            text = _("As it is, the screen's own statement is believed.")
        else:
            text = _("One millimetre as the screen states it is {mm} mm here.").format(mm=format_number(factor, 3))
        self.says.setText(text)
        self.says.setAccessibleName(text)
        self.line.updateGeometry()
        self.line.update()

    def _measured(self, text: str) -> None:
        factor = needed_number(text) / LINE_MM
        self._context.do(SetSetting("touch_factor", factor), initiator=self, at=self.measured.refuse)


def _plausible(text: str) -> float:
    """What was measured, in mm. Raises BadInput outside what a screen can be."""
    value = needed_number(text)
    if not LEAST_MM <= value <= MOST_MM:
        raise BadInput(
            _("The line should measure about {mm} mm; measure it again from end to end.").format(
                mm=format_number(LINE_MM)
            ),
            given=text,
        )
    return value
