"""The notice line and the flash: every entry is answered at once, never by a dialog.

The four answers differ in sign and in where the flash lies, not only in colour: *saved* along the foot, *flagged* at
both sides, *next* along the top, *stop* all round.
"""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, QRect, Qt, QTimer
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.screens.entry.text_field import RefusedAtField
from detailbench.screens.frame.strip import ShortText
from detailbench.screens.look.dress import Dress
from detailbench.screens.look.parts import area, label, set_kind

SIGNS = {"saved": "✓", "flagged": "△", "next": "→", "stop": "■", "plain": "·"}
FLASH_MS = 220
SIDES = {"saved": "b", "flagged": "lr", "next": "t", "stop": "tblr"}
LOOKS_AS = {"timer": "next"}  # a phase of a timer is seen and heard like any other going on, and named for what it is
COLOURS = {"saved": "saved", "flagged": "flagged", "next": "moved", "stop": "stop"}


def kind_name(kind: str) -> str:
    """The kind in a word, for the ear."""
    words = {
        "saved": _("saved"),
        "flagged": _("flagged"),
        "next": _("go on"),
        "timer": _("timer"),
        "stop": _("stop"),
    }
    return words.get(kind, "")


def looks_as(kind: str) -> str:
    """The kind whose sign, colour, flash and sound a notice has."""
    return LOOKS_AS.get(kind, kind)


class NoticeLine(QWidget):
    """One sentence, staying until the next. What a field of this window refuses is such a next one where the line
    still says that something was kept."""

    def __init__(self, dress: Dress, window: QWidget) -> None:
        super().__init__()
        window.installEventFilter(self)
        area(self, "surface")
        m = dress.look.measure
        self._sign = label("", "notice")
        self._text = ShortText("notice")
        row = QHBoxLayout(self)
        row.setContentsMargins(m.space("gap"), m.space("thin"), m.space("gap"), m.space("thin"))
        row.setSpacing(m.space("small"))
        row.addWidget(self._sign)
        row.addWidget(self._text, 1)
        self.setAccessibleName(_("Notices"))
        self._kind = "plain"
        self.say("", "plain")

    @property
    def text(self) -> str:
        return self._text.whole

    @property
    def kind(self) -> str:
        return str(self._sign.property("kind"))

    def say(self, sentence: str, kind: str) -> None:
        self._kind, look = kind, looks_as(kind)
        self._sign.setText(SIGNS.get(look, "·") if sentence else " ")
        self._sign.setAccessibleName(kind_name(kind))
        set_kind(self._sign, look)
        set_kind(self._text, look)
        self._text.set_whole(sentence)
        self.setAccessibleDescription(f"{kind_name(kind)}: {sentence}" if kind_name(kind) else sentence)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if isinstance(event, RefusedAtField) and self.kind in ("saved", "next"):
            self.say(event.sentence, "stop")
        return False

    def say_more(self, sentence: str) -> None:
        """Put other words to the notice just given, keeping its sign (plain when there was none)."""
        self.say(sentence, self._kind if self.text else "plain")


class Flash(QWidget):
    """A frame over the whole window for a moment; it takes no clicks."""

    def __init__(self, over: QWidget, dress: Dress) -> None:
        super().__init__(over)
        self._dress = dress
        self.kind = ""
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._ends = QTimer(self)
        self._ends.setSingleShot(True)
        self._ends.timeout.connect(self.hide)
        self.hide()

    def flash(self, kind: str) -> None:
        if kind not in SIDES:
            return
        self.kind = kind
        over = self.parentWidget()
        if over is not None:
            self.setGeometry(over.rect())
        self.raise_()
        self.show()
        self.update()
        self._ends.start(FLASH_MS)

    def paintEvent(self, event: QPaintEvent) -> None:
        if self.kind not in SIDES:
            return
        thick = self._dress.look.measure.px(2.5)
        colour = QColor(self._dress.colour(COLOURS[self.kind]))
        box, sides = self.rect(), SIDES[self.kind]
        painter = QPainter(self)
        for side, strip in (
            ("t", QRect(0, 0, box.width(), thick)),
            ("b", QRect(0, box.height() - thick, box.width(), thick)),
            ("l", QRect(0, 0, thick, box.height())),
            ("r", QRect(box.width() - thick, 0, thick, box.height())),
        ):
            if side in sides:
                painter.fillRect(strip, colour)
        painter.end()
