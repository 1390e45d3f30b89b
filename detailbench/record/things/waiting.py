"""What came from a gauge and has not been decided on yet."""

from __future__ import annotations

from dataclasses import dataclass

from detailbench.record.thing import ShopThing


@dataclass(frozen=True, kw_only=True)
class WaitingValue(ShopThing):
    """A value that was sent and landed nowhere: it waits in the tray until a person places it or puts it away.
    ``text`` as sent, ``why`` it waits, ``job_id`` the job that was open then (empty: none), ``gauge_id`` where the way
    it came says which gauge it was. ``value_um`` and ``no_value`` where the gauge's own line was read already, with
    ``clear_um`` from a gauge that resolves layers; ``angle_deg`` where it is a gloss value (then ``unit`` is gu and the
    value lies in ``text``)."""

    table = "waiting_value"
    text: str
    why: str = ""
    job_id: str = ""
    gauge_id: str = ""
    value_um: float | None = None
    unit: str = "um"
    no_value: str = ""
    clear_um: float | None = None
    angle_deg: int | None = None


@dataclass(frozen=True, kw_only=True)
class ReadingsFile(ShopThing):
    """A readings file that was taken in or put away: the same bytes are not offered again. ``fate``: taken, put_away.
    Its name is not kept: it may tell whose car it was."""

    table = "readings_file"
    sha256: str
    job_id: str = ""
    lines: int = 0
    fate: str = "taken"
