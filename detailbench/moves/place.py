"""The workshop lies where things can get lost, and a person decides to work there all the same."""

from __future__ import annotations

import json
from dataclasses import dataclass
from typing import ClassVar

from detailbench.basics.texts import _
from detailbench.moves.move import SHOP, Done
from detailbench.record.picture import ShopPicture
from detailbench.record.things import Setting
from detailbench.record.where_it_lies import Worry, safe_way
from detailbench.record.writing import Writer

ACCEPTED = "place_accepted"


def accepted(shop: ShopPicture) -> frozenset[str]:
    """The kinds of worry a person has accepted; what cannot be read counts as none."""
    text = shop.setting(ACCEPTED)
    try:
        kinds = json.loads(text) if text is not None else []
    except ValueError:
        return frozenset()
    return frozenset(str(kind) for kind in kinds) if isinstance(kinds, list) else frozenset()


def place_words(found: tuple[Worry, ...], shop: ShopPicture) -> str:
    """The warning, with the safe way; empty when there is none, or it was accepted."""
    open_ = [w for w in found if w.kind not in accepted(shop)]
    if not open_:
        return ""
    seen = " ".join(w.sentence for w in open_)
    return f"{seen} {safe_way()} {_('To work here all the same, say so once under Shop, Kept safe.')}"


@dataclass(frozen=True)
class AcceptPlace:
    """Work here all the same; noted with the person, asked once for each kind of worry."""

    undoable: ClassVar[bool] = False
    kinds: tuple[str, ...]

    def make(self, w: Writer) -> Done:
        kinds = sorted(accepted(w.shop()) | set(self.kinds))
        thing = w.add(Setting, key=ACCEPTED, value=json.dumps(kinds))
        return Done(SHOP, _("working where the workshop lies was accepted"), thing.id)
