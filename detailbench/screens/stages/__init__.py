"""The stages of a job, in the day's real order.

How to add one:

1.  A file (or a folder) here with a class that extends ``stage.Stage``: a ``key``, a ``title`` through ``_()``
    (as a property, so that it follows the language), ``make_card``, ``counts``; and where they help ``what_next``,
    ``colourings``, ``drawing``, ``far``, ``actions``. A page such as Shop extends ``stage.Page``.
2.  Add it to the tuple in ``all_stages`` below. The rail is built from that tuple: a stage that is not in it
    does not exist on screen.

The card
    is a plain QWidget. Build it from the parts in ``screens/entry`` (``NumberField``, ``TextField``, ``ChoiceRow``,
    ``WhyButton``, ``NoteField``) and ``screens/look/parts`` (``caption``, ``heading``, ``figure``, ``button``), which
    bring target sizes, sentences at the place and accessible names with them. Connect to ``context.changed``,
    ``context.panel_selected`` and ``context.job_opened`` and redraw from ``context.picture`` what differs. Act only
    through ``context.do(move, initiator=self)``; it turns refusals into notices and returns None. Never keep a copy of
    anything the picture knows, never open a modal dialog, never name a colour or a pixel size (see ``screens/look``).

Readings
    reach the stage that called ``context.take_bursts_with(taker)``, whatever has the focus and whichever stage is
    open; the taker does the move and returns the sentence where the value landed.

Numbers
    that a person reads carry a ``WhyButton`` with a function returning the ``Working``; F1 opens the first one
    visible on the card, or the one that has the focus.

Test it by handing the window a tuple with your stage alone: ``Window(clock, stages=(YourStage(),))``.
"""

from __future__ import annotations

from collections.abc import Callable
from importlib import import_module
from typing import TYPE_CHECKING

from detailbench.basics.texts import _

if TYPE_CHECKING:
    from detailbench.screens.stages.stage import Page, Stage


def all_stages() -> tuple[Stage, ...]:
    """The stages there are, in the order of the day. Their modules are loaded when first needed."""
    from detailbench.screens.stages.late_stage import LateStage

    def late(key: str, title: Callable[[], str], name: str) -> LateStage:
        return LateStage(key, title, lambda: getattr(import_module(f"detailbench.screens.stages.{key}.stage"), name)())

    return (
        late("arrival", lambda: _("Arrival"), "ArrivalStage"),
        late("wash", lambda: _("Wash"), "WashStage"),
        late("marks", lambda: _("Marks"), "MarksStage"),
        late("thickness", lambda: _("Thickness"), "ThicknessStage"),
        late("trials", lambda: _("Trials"), "TrialsStage"),
        late("work", lambda: _("Work"), "WorkStage"),
        late("handover", lambda: _("Handover"), "HandoverStage"),
    )


def all_pages() -> tuple[Page, ...]:
    """The pages below the stages."""
    from detailbench.screens.pages.history.page import HistoryPage
    from detailbench.screens.pages.jobs.page import JobsPage
    from detailbench.screens.pages.shop.page import ShopPage

    return (JobsPage(), ShopPage(), HistoryPage())
