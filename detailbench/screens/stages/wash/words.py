"""States and paint systems in words, and what each means for the work."""

from __future__ import annotations

from detailbench.basics.texts import _
from detailbench.basics.workings import COMMON_PRACTICE


def clean_words() -> dict[str, str]:
    return {
        "dirty": _("dirty"),
        "washed": _("washed"),
        "decontaminated": _("decontaminated"),
        "wiped": _("panel-wiped, bare"),
    }


def paint_words() -> dict[str, str]:
    return {
        "clear_over_colour": _("clear over colour"),
        "single_stage": _("single-stage"),
        "matt": _("matt or satin"),
        "tinted_clear": _("tinted clear"),
        "filmed": _("filmed"),
        "wrapped": _("wrapped"),
        "bare": _("bare"),
        "unknown": _("unknown"),
    }


def paint_means(system: str) -> str:
    """What follows from a paint system."""
    return {
        "clear_over_colour": _("Clear coat over colour: what comes off is clear coat."),
        "single_stage": _("No clear coat above the colour: the pad takes on colour; go on with care."),
        "matt": _("Matt or satin: no abrasive process is offered here."),
        "tinted_clear": _("Colour in the clear coat: what comes off changes the shade; go on with care."),
        "filmed": _("Protective film: no abrasive process is offered here."),
        "wrapped": _("Wrapped: no abrasive process is offered here."),
        "bare": _("Bare: there is no paint to polish; no abrasive process is offered."),
        "unknown": white_pad_hint(),
    }[system]


def white_pad_hint() -> str:
    return _(
        "Not known: go on with care. Rub a hidden place with a white pad and mild polish; colour on the pad means no "
        "clear coat, or one that is worn through ({source})."
    ).format(source=_(COMMON_PRACTICE))
