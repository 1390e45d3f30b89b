"""Each kind of document in the words of its closing page."""

from __future__ import annotations

from dataclasses import dataclass

from detailbench.basics.texts import _


@dataclass(frozen=True)
class ClosingWords:
    """``close`` and ``anew`` on the button, ``closed`` over the list, ``copy`` on the ear of the copy button, ``kept``
    before what a check of it says, ``busy`` and ``done`` in the notice line, ``stopped`` in the strip."""

    close: str
    anew: str
    closed: str
    copy: str
    kept: str
    busy: str
    done: str
    stopped: str


def closing_words(kind: str) -> ClosingWords:
    """The words of a kind: handover, arrival or supplement."""
    if kind == "arrival":
        return ClosingWords(
            close=_("Close the arrival record"),
            anew=_("Close a new arrival record"),
            closed=_("Closed arrival records"),
            copy=_("Copy the record out"),
            kept=_("The kept record"),
            busy=_("The arrival record is being closed: nothing else is entered until that is done. One moment."),
            done=_("The arrival record is closed. Send it off today and note how it left."),
            stopped=_("NOT CLOSED: the arrival record."),
        )
    if kind == "supplement":
        return ClosingWords(
            close=_("Close the supplement"),
            anew=_("Close a new supplement"),
            closed=_("Closed supplements"),
            copy=_("Copy the supplement out"),
            kept=_("The kept supplement"),
            busy=_("The supplement is being closed: nothing else is entered until that is done. One moment."),
            done=_("The supplement is closed. Send it off and note how it left."),
            stopped=_("NOT CLOSED: the supplement."),
        )
    return ClosingWords(
        close=_("Close the report"),
        anew=_("Close a new report"),
        closed=_("Closed reports"),
        copy=_("Copy the report out"),
        kept=_("The kept report"),
        busy=_("The report is being closed: nothing else is entered until that is done. One moment."),
        done=_("The report is closed. Copy it out, or open the copy."),
        stopped=_("NOT CLOSED: the report."),
    )


def way_words(way: str) -> str:
    """How a document left, on a button."""
    return {"mail": _("mail"), "message": _("message"), "print": _("print"), "handed": _("handed over")}[way]
