"""The lines of the shop's gauges: where each is plugged in and how it writes."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import asdict, fields
from typing import Any

from detailbench.basics.errors import BadInput, RecordTrouble
from detailbench.basics.texts import _
from detailbench.record.picture import ShopPicture
from detailbench.thickness.gauge_line import GaugeLine, LineForm


def key_of(gauge_id: str) -> str:
    """The setting a gauge's line is kept under. A setting and no field of the gauge: a port belongs to the computer,
    and another port must not make another gauge of it."""
    return f"gauge_line:{gauge_id}"


def as_text(line: GaugeLine | None) -> str:
    """A line as JSON text; None: this gauge has none."""
    return json.dumps(None if line is None else asdict(line), ensure_ascii=False)


def line_of(shop: ShopPicture, gauge_id: str) -> GaugeLine | None:
    """How this gauge is plugged in, or None. Raises RecordTrouble for what no program of ours writes."""
    text = shop.setting(key_of(gauge_id))
    if text is None:
        return None
    try:
        kept = json.loads(text)
        return None if kept is None else _line(kept)
    except (ValueError, TypeError, KeyError, BadInput) as error:
        raise RecordTrouble(_("The line of a gauge cannot be read: it was changed outside this program.")) from error


def _line(kept: Any) -> GaugeLine:
    if not isinstance(kept, dict):
        raise TypeError(kept)
    form = kept.pop("form")
    known = {f.name for f in fields(LineForm)}
    values: dict[str, Any] = {n: tuple(v) if isinstance(v, list) else v for n, v in form.items() if n in known}
    return GaugeLine(**kept, form=LineForm(**values))


def lines(shop: ShopPicture) -> Mapping[str, GaugeLine]:
    """Gauge id → its line, for every gauge in use that has one."""
    found = {g.id: line_of(shop, g.id) for g in shop.gauges if not g.retired}
    return {gauge_id: line for gauge_id, line in found.items() if line is not None}
