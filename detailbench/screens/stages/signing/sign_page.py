"""The page handed to a signer: the statement and the pad, nothing else. The workshop takes the screen back."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QApplication, QHBoxLayout, QVBoxLayout, QWidget

from detailbench.basics.texts import _
from detailbench.moves.handover import Sign
from detailbench.screens.context import Context
from detailbench.screens.entry.choice_row import ChoiceRow
from detailbench.screens.look.parts import area, button, heading, label, sentence
from detailbench.screens.stages.signing.sign_pad import SignPad
from detailbench.screens.stages.signing.words import role_words
from detailbench.screens.stages.work_parts.pages import Faces

_KEYS = {QEvent.Type.KeyPress, QEvent.Type.KeyRelease, QEvent.Type.ShortcutOverride}


class SignPage(QWidget):
    """Covers the window. While it is up no key reaches anything else; F-keys and Undo are dead."""

    def __init__(
        self,
        window: QWidget,
        context: Context,
        role: str,
        name: str,
        statement: str,
        remarks: str = "",
        moment: str = "handover",
    ) -> None:
        super().__init__(window)
        area(self, "surface")
        self.setObjectName("sign_page")
        self.setAccessibleName(_("Page to sign"))
        self._context, self._role, self._name, self._statement = context, role, name, statement
        self._moment = moment
        self._ended = False
        m = context.dress.look.measure
        who = f"{role_words(role)}: {name}" if name else role_words(role)
        self.statement = label(statement, "heading", wrap=True)
        self.remarks = label(_("Remarks: {text}").format(text=remarks), wrap=True)
        if not remarks:  # shown by itself once it lies in the page; earlier it would be a window of its own
            self.remarks.hide()
        self.pad = SignPad(context.dress)
        self.says = sentence()
        self.clear = button(_("Clear"), self._clear, name=_("Clear the pad"))
        self.done = button(_("Done"), self._sign, role="main", name=_("Signed"))
        self.back = button(_("Hand back without signing"), self._handed_back, role="quiet")
        self.faces = Faces()
        signing, taking = QWidget(), QWidget()
        row = QHBoxLayout()
        row.addWidget(self.back)
        row.addStretch(1)
        row.addWidget(self.clear)
        row.addWidget(self.done)
        column = QVBoxLayout(signing)
        column.setSpacing(m.space("gap"))
        column.addWidget(label(who[:1].upper() + who[1:], "strong", wrap=True))
        column.addWidget(self.remarks)
        column.addWidget(self.statement)
        column.addWidget(self.pad, 1)
        column.addWidget(self.says)
        column.addLayout(row)
        self.takes = ChoiceRow(_("The workshop takes the screen back: who?"), self._people(), columns=1)
        self.takes.chosen.connect(self._taken_back)
        other = QVBoxLayout(taking)
        other.setSpacing(m.space("gap"))
        other.addStretch(1)
        self.thanks = heading("")
        other.addWidget(self.thanks)
        other.addWidget(sentence(_("Please hand the screen back to the workshop.")))
        other.addWidget(self.takes)
        other.addStretch(2)
        self.faces.addWidget(signing)
        self.faces.addWidget(taking)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(m.px(12), m.px(8), m.px(12), m.px(8))
        whole.addWidget(self.faces)
        self._drawn()
        self.pad.drawn.connect(self._drawn)
        window.installEventFilter(self)
        app = QApplication.instance()
        assert app is not None
        app.installEventFilter(self)  # the last one installed is asked first
        self.setGeometry(window.rect())
        self.show()
        self.raise_()
        self.clear.setFocus(Qt.FocusReason.OtherFocusReason)

    def _people(self) -> list[tuple[str, str]]:
        shop = self._context.shop
        people = [(p.id, p.name) for p in shop.people if not p.retired] if shop is not None else []
        return people or [("", _("the workshop"))]

    def _drawn(self) -> None:
        self.done.setEnabled(bool(self.pad.strokes))

    def _clear(self) -> None:
        self.pad.clear()

    def _sign(self) -> None:
        picture = self._context.picture
        if picture is None:
            return
        move = Sign(picture.job.id, self._role, "drawn", self._name, self.pad.strokes, self._moment, self._statement)
        if self._context.do(move, self) is None:
            self.says.setText(_("This could not be kept; the workshop sees why."))
            return
        self.thanks.setText(_("Thank you."))
        self._handed_back()

    def _handed_back(self) -> None:
        if self._role == "workshop":
            self.end()
            return
        self.faces.setCurrentIndex(1)
        self.takes.take_focus()

    def _taken_back(self, person_id: str) -> None:
        bench = self._context.bench
        if bench is not None and person_id:
            bench.person = person_id
            self._context.changed.emit(None, None)
        self.end()

    def end(self) -> None:
        """Give the window back."""
        if self._ended:
            return
        self._ended = True
        app = QApplication.instance()
        if app is not None:
            app.removeEventFilter(self)
        window = self.parentWidget()
        if window is not None:
            window.removeEventFilter(self)
        self.hide()
        self.deleteLater()

    # nothing but this page
    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        window = self.parentWidget()
        if watched is window and isinstance(event, QResizeEvent):
            self.setGeometry(0, 0, event.size().width(), event.size().height())
            return False
        if event.type() not in _KEYS or not isinstance(watched, QWidget) or watched.window() is not window:
            return False
        if watched is self or self.isAncestorOf(watched):
            self._key_within(watched, event)
        return True

    def _key_within(self, watched: QWidget, event: QEvent) -> None:
        """A key for this page goes to its widget by hand: no other filter may make an act of it."""
        if not isinstance(event, QKeyEvent) or event.type() == QEvent.Type.ShortcutOverride:
            return
        step = {Qt.Key.Key_Tab: 1, Qt.Key.Key_Backtab: -1}.get(Qt.Key(event.key()))
        if step is None:
            target: QWidget | None = watched
            while target is not None and target is not self:
                event.setAccepted(True)
                target.event(event)
                if event.isAccepted():
                    return
                target = target.parentWidget()
        elif event.type() == QEvent.Type.KeyPress:
            self._tab(step)

    def _tab(self, step: int) -> None:
        stops = [w for w in self._stops() if w.isVisibleTo(self) and w.isEnabled()]
        if stops:
            now = QApplication.focusWidget()
            at = stops.index(now) + step if now in stops else 0
            stops[at % len(stops)].setFocus(Qt.FocusReason.TabFocusReason)

    def _stops(self) -> list[QWidget]:
        return [*self.takes.buttons.values(), self.back, self.clear, self.done]


def signer(
    context: Context, over: Callable[[], QWidget], moment: str = "handover"
) -> Callable[[str, str, str, str], SignPage]:
    """Opens the page over the window that ``over`` is in."""
    return lambda role, name, statement, remarks: SignPage(
        over().window(), context, role, name, statement, remarks, moment
    )
