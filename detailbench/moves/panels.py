"""Panels named in a move must be panels of this car."""

from __future__ import annotations

from collections.abc import Iterable

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.findings.panels import outline_of
from detailbench.record.picture import JobPicture


def on_this_car(picture: JobPicture, panels: Iterable[str]) -> None:
    """Raise BadInput for the first panel this car's outline does not have. An empty name means no panel."""
    known = outline_of(picture).panels
    for panel in panels:
        if panel and panel not in known:
            raise BadInput(_("This car has no panel “{panel}”.").format(panel=panel), field="panel", given=panel)
