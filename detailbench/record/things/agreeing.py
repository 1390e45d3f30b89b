"""What binds: the owner's limits, what was put to the owner and answered, what was found later, what went wrong."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime
from decimal import Decimal

from detailbench.record.thing import JobThing


@dataclass(frozen=True, kw_only=True)
class OwnerLimit(JobThing):
    """What must not happen to this car. ``kind``: bar_panel, most_off, no_sanding, no_solvent or other; no panels: the
    whole car. ``lifted_by``: the agreement that lifted it; nothing else can."""

    table = "owner_limit"
    kind: str
    panels: tuple[str, ...] = ()
    most_off_um: float | None = None
    words: str = ""
    lifted_by: str = ""


@dataclass(frozen=True, kw_only=True)
class LimitSeen(JobThing):
    """Who is entering has read a limit of kind *other* on this day."""

    table = "limit_seen"
    limit_id: str
    day: date


@dataclass(frozen=True, kw_only=True)
class Agreement(JobThing):
    """A question put to the owner and the answer. ``about``: limit, supplement, test_section, extra_work, sanding,
    level, mishap or other, with the id of what it is about; ``answer``: open, yes, yes_with_remark, no or withdrawn;
    ``channel``: present, telephone or message; ``party_id``: who was asked; ``replaces``: an earlier agreement's id.
    ``level``: the level agreed to, in words. The owner's remark and a message's text are personal data (``remarks``,
    ``message``); ``evidence_id``: the proof."""

    table = "agreement"
    about: str
    question: str
    answer: str = "open"
    channel: str = ""
    party_id: str = ""
    price: Decimal | None = None
    panels: tuple[str, ...] = ()
    answered_at: datetime | None = None
    answered_to: str = ""
    replaces: str = ""
    limit_id: str = ""
    document_id: str = ""
    trial_id: str = ""
    mishap_id: str = ""
    evidence_id: str = ""
    level: str = ""


@dataclass(frozen=True, kw_only=True)
class SupplementItem(JobThing):
    """Something the wash or the work brought to light, for the owner to know before a machine starts."""

    table = "supplement_item"
    words: str
    panel: str = ""
    mark_id: str = ""


@dataclass(frozen=True, kw_only=True)
class Mishap(JobThing):
    """Something that went wrong on our watch. ``told``: owner, bearer or empty while nobody was told; ``channel`` as in
    an agreement. When it happened is ``stated_at``, else ``entered_at``."""

    table = "mishap"
    words: str
    panel: str = ""
    told: str = ""
    told_at: datetime | None = None
    channel: str = ""
