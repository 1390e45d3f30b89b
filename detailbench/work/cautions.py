"""Short cautions by stage, each with whom to defer to: read from ``resources/cautions.json``."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from detailbench.basics import shelf
from detailbench.basics.errors import BadFile, BadInput
from detailbench.basics.texts import _

STAGES = ("arrival", "wash", "marks", "thickness", "trials", "work", "handover")


@dataclass(frozen=True)
class Caution:
    """``defer_to``: whom to follow instead: published guidance by its name and number, or a paper at hand."""

    key: str
    stages: tuple[str, ...]
    says_text: str
    defer_to_texts: tuple[str, ...]

    @property
    def says(self) -> str:
        return _(self.says_text)

    @property
    def defer_to(self) -> tuple[str, ...]:
        return tuple(_(text) for text in self.defer_to_texts)


def read_cautions(data: Mapping[str, Any], name: str = "cautions.json") -> tuple[Caution, ...]:
    """The cautions of a file's data. Raises BadFile."""
    rows = data.get("cautions")
    if not isinstance(rows, list) or not rows:
        raise BadFile(_("{name} holds no cautions.").format(name=name), name=name)
    found = []
    for row in rows:
        key = row.get("key") if isinstance(row, dict) else None
        ok = (
            isinstance(key, str)
            and isinstance(row.get("says"), str)
            and bool(row["says"].strip())
            and bool(row.get("stages"))
            and set(row["stages"]) <= set(STAGES)
            and isinstance(row.get("defer_to"), list)
            and bool(row["defer_to"])
        )
        if not ok:
            raise BadFile(
                _("{name}: the caution “{key}” lacks its words, its stages or whom to defer to.").format(
                    name=name, key=key
                ),
                name=name,
                value=str(key),
            )
        found.append(Caution(str(key), tuple(row["stages"]), row["says"], tuple(row["defer_to"])))
    if len({c.key for c in found}) != len(found):
        raise BadFile(_("{name}: a caution stands twice.").format(name=name), name=name)
    return tuple(found)


@cache
def all_cautions() -> tuple[Caution, ...]:
    """The cautions the program ships."""
    return read_cautions(shelf.data("cautions.json"))


def cautions(stage: str) -> tuple[Caution, ...]:
    """The cautions of one stage. Raises BadInput for an unknown stage."""
    if stage not in STAGES:
        raise BadInput(_("There is no stage “{stage}”.").format(stage=stage), field="stage", given=stage)
    return tuple(c for c in all_cautions() if stage in c.stages)


def first_of_all() -> str:
    """The sentence that stands under every list of cautions."""
    return _("Local law, the product's own data sheet and licensed practice come first.")
