"""The sentence that goes with each result: what to do, plainly, and what stays the same."""

from __future__ import annotations

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _, listed_words
from detailbench.trials.outcome import Result
from detailbench.trials.rungs import Rung

R = Result


def sentence(result: Result, *, row: str, place: str, rung: Rung | None, then: Rung | None) -> str:
    """One or two sentences for ``result`` in the table's ``row``; ``rung`` and ``then`` as in Option."""
    name, refine = rung.label if rung else "", then.label if then else ""
    on_top = place == "on_top"
    if result is R.TWO_STEPS:
        if on_top:
            return _("Keep it for the cut and refine on top, on the same place, with {name}.").format(name=name)
        return _("Two steps: cut with {name} on a fresh place, then refine on top with {refine}.").format(
            name=name, refine=refine
        )
    if result in (R.STRONGER, R.OTHER_MOVEMENT) and row == "on top, clear, the cut did not clear":
        return _(
            "The finish is clear, but the cut beneath did not clear: cut with {name} on a fresh place, then refine on "
            "top as here."
        ).format(name=name)
    if result is R.STRONGER:
        if on_top:
            return _("Refine on top with {name}: milder ones left haze here.").format(name=name)
        if then:
            return _(
                "Try {name} on a fresh place for the cut. The trails are of the movement: finish on top with {refine}."
            ).format(name=name, refine=refine)
        return _("Try the next stronger, {name}, on a fresh place.").format(name=name)
    if result is R.MILDER:
        if on_top:
            return _("Refine on top with the next milder, {name}.").format(name=name)
        return _("Try the next milder, {name}, on a fresh place.").format(name=name)
    if result is R.OTHER_PAD:
        return _("Same machine and compound on the other pad: {name}, fresh place.").format(name=name)
    if result is R.OTHER_MOVEMENT:
        if on_top:
            return _("The trails are of the movement: go over it on top with {name}.").format(name=name)
        return _("Same pad and compound with the other movement: {name}, fresh place.").format(name=name)
    if result is R.CLEAN_PAD:
        return _clean_pad(row, on_top)
    if result is R.LOWER_LEVEL:
        return _lower_level(row)
    if result is R.WIPE and row == "trails without a driven pad":
        return _("A pad that is not driven round leaves no trails by itself: panel wipe, were they there before?")
    if result is R.SECOND_LAMP and row == "on top, clear, the cut not known":
        return _(
            "The finish is clear. Whether the cut beneath cleared is not known: look for the marks under a second "
            "lamp, and say it of the cut's trial."
        )
    if result is R.WIPE and row == "smear":
        return _("Panel wipe, wait two minutes, look again. Still smeared: look after a wash or the next day.")
    return _plain(result, row)


def _clean_pad(row: str, on_top: bool) -> str:
    if row in ("cleared, even haze", "on top, even haze"):
        return _("Clean or fresh pad, and a last pair of light passes on top.")
    if on_top:
        return _("Clean the pad or take a fresh one, blow out, same combination on top.")
    if row == "pad or dust marks":
        return _(
            "Clean, blow out, fresh pad: same combination on a fresh place. "
            "Old sanding marks look alike: ask what was done."
        )
    return _("Fresh pad, same combination on a fresh place.")


def lower_level_instead() -> str:
    """While there are other ways left."""
    return _("Or stop here: agree a lower level with the owner.")


def _lower_level(row: str) -> str:
    if row == "cleared, trails":
        return _("No free orbital combination is left to finish with: put one into the range, or agree a lower level.")
    if row == "stopped: heat":
        return _("Nothing milder is left to try: agree a lower level with the owner.")
    return _("Nothing in the range is left to try: agree a lower level with the owner, or widen the range.")


def _plain(result: Result, row: str) -> str:
    words = {
        R.KEEP: _("Keep both steps: cut and refine.") if row == "on top, clear" else _("Keep this combination."),
        R.SLOWER_ARM: _("Slower arm, everything else the same, within the working time; fresh place."),
        R.SMALLER_SECTION: _("Smaller section, same seconds and the same everything else; fresh place."),
        R.WIPE: _("Panel wipe, wait two minutes, look again under the same lamp."),
        R.SECOND_LAMP: _("Look under a second lamp or in daylight before deciding."),
        R.COUNT: _("Count the marks in the frame, before beside after, in daylight too."),
        R.OTHER_TOWEL: _("Other towel with more lubricant, same place, then look again."),
        R.COOLER: _("Fewer drops and cooler: less pad speed or force, with a pause; fresh place.")
        if row.startswith("not cleared")
        else _("Let it cool, then less pad speed or force, or a pause; fresh place."),
        R.FRESH_PLACE: _("Mask the edge or move to a fresh place; same combination."),
        R.ON_HOLD: _(
            "Colour on the pad: single-stage paint, or through the clear coat. The panel is on hold; ask the owner."
        ),
    }
    return words[result]


def through_the_clear(mishap: bool | None) -> str:
    """Whether colour on the pad is a mishap; None where the paint system is not known."""
    if mishap:
        return _("Here there is clear over the colour: it is through. Note it as a mishap.")
    if mishap is None:
        return _("Where there is clear over the colour it is a mishap: find out what the paint is.")
    return _("Single-stage paint gives colour to the pad; how much is left is not known from it.")


def several_changes(changes: tuple[str, ...]) -> str:
    """Said where no combination of the range differs in one thing only."""
    names = {"movement": _("movement"), "pad": _("pad"), "compound": _("compound")}
    return _("It changes {parts} at once: no combination left differs in one thing only.").format(
        parts=listed_words([names[c] for c in changes])
    )


def deep_left() -> str:
    return _("What is left is felt even when wet (depth 3 or more): that does not count as not cleared.")


def light_paint() -> str:
    return _("On light paint haze and swirl hardly show: second lamp, or a gloss reading.")


def one_milder(name: str, minutes: float, *, thin: bool = False) -> str:
    text = _("One milder trial, {name}, would show whether less is enough: about {minutes} minutes.")
    said = text.format(name=name, minutes=format_number(minutes))
    return f"{_('The paint is thin here.')} {said}" if thin else said


def not_this_one(retired: bool = False) -> str:
    return _("This combination is retired.") if retired else _("This combination is not to be used here.")
