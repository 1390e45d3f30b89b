"""The wheel never changes a field: over one it scrolls what lies around it, or does nothing."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication, QEvent, QObject
from PySide6.QtWidgets import QAbstractSlider, QAbstractSpinBox, QComboBox, QScrollBar, QTabBar, QWidget

FIELDS = (QAbstractSpinBox, QComboBox, QAbstractSlider, QTabBar)


class WheelRule(QObject):
    """Application-wide filter."""

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() != QEvent.Type.Wheel or not isinstance(watched, QWidget):
            return False
        field = _field_of(watched)
        if field is None:
            return False
        around = field.parentWidget()
        if around is not None:
            QCoreApplication.sendEvent(around, event)
        return True


def _field_of(widget: QWidget) -> QWidget | None:
    """The field a widget is or belongs to (a spin box's inner line), or None."""
    for each in (widget, widget.parentWidget()):
        if isinstance(each, FIELDS) and not isinstance(each, QScrollBar):
            return each
    return None
