"""The plan view: the car coloured by work left, live."""

from __future__ import annotations

from detailbench.basics.numbers import format_number
from detailbench.basics.ramp import Hatch
from detailbench.basics.texts import _
from detailbench.findings.plan import work_standing
from detailbench.screens.context import Context
from detailbench.screens.map.colouring import Colouring, PanelFill
from detailbench.screens.stages.work.words import minutes_left, panel_state

RUNNING = "▸"
HELD: Hatch = "crossed"
NO_PROCESS: Hatch = "dots"


def work_colouring(context: Context) -> Colouring:
    """Share of the planned minutes left on each panel, the minutes printed; held and without a process hatched."""
    picture = context.picture
    fills: dict[str, PanelFill] = {}
    if picture is not None:
        standing = work_standing(picture, context.clock.now())
        busy = {r.panel for r in picture.runs if r.finished_at is None}
        for panel, share in standing.left.by_panel.items():
            says = panel_state(picture, standing, panel)
            text = format_number(minutes_left(standing, panel), 0)
            if panel in busy:
                text, says = f"{RUNNING}{text}", _("running: {state}").format(state=says)
            fills[panel] = PanelFill(share, "", text, says)
        for panel, why in standing.plan.held:
            fills[panel] = PanelFill(None, HELD, "", why)
        for panel in standing.plan.without_process:
            fills[panel] = PanelFill(None, NO_PROCESS, "", _("no process yet"))
    return Colouring(
        "work_left",
        _("work left"),
        fills,
        _("done"),
        _("not begun; figures: min left"),
        ((HELD, _("held back")), (NO_PROCESS, _("no process yet"))),
    )
