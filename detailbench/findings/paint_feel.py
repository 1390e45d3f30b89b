"""How the paint of a finish group behaves under the pad, as the trials showed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from detailbench.basics.texts import _
from detailbench.record.picture import JobPicture
from detailbench.record.things import FinishGroup, PaintFeel


@dataclass(frozen=True)
class Feel:
    """``feel`` soft, medium, hard or empty; ``sticky`` yes, no or empty: by the newest notes about these panels."""

    feel: str = ""
    sticky: str = ""
    note: str = ""

    @property
    def known(self) -> bool:
        return bool(self.feel or self.sticky)


def feel_of_panels(picture: JobPicture, panels: Sequence[str]) -> Feel:
    """The newest word about any of these panels; a part nobody noted since keeps its earlier one."""
    here = [f for f in picture.paint_feels if set(f.panels) & set(panels)]

    def newest(name: str) -> str:
        return next((str(getattr(f, name)) for f in reversed(here) if getattr(f, name)), "")

    return Feel(newest("feel"), newest("sticky"), newest("note"))


def feel_of(picture: JobPicture, group: FinishGroup) -> Feel:
    return feel_of_panels(picture, group.panels)


def feel_words(feel: Feel | PaintFeel) -> str:
    """ "soft, sticky"; empty where nothing was noted."""
    words = [
        {"soft": _("soft"), "medium": _("medium"), "hard": _("hard")}.get(feel.feel, ""),
        {"yes": _("sticky"), "no": _("not sticky")}.get(feel.sticky, ""),
    ]
    return ", ".join(word for word in words if word)


def feel_for_table(feel: Feel) -> str | None:
    """The word the outcome table asks for: soft, medium, hard, sticky or None."""
    if feel.feel in ("soft", "hard"):
        return feel.feel
    return "sticky" if feel.sticky == "yes" else feel.feel or None
