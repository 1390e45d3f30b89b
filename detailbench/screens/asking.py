"""What a stage may want the sheet about the owner to open with."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

SheetPage = Literal["asked", "ask", "limits"]


@dataclass(frozen=True)
class AskAbout:
    """``page``: what was asked, a new question, or the owner's limits. The rest is put into the new question."""

    page: SheetPage = "ask"
    about: str = ""
    question: str = ""
    panels: tuple[str, ...] = ()
    limit_id: str = ""
    document_id: str = ""
    trial_id: str = ""
    mishap_id: str = ""
    replaces: str = ""
