"""Values a gauge sends that wait, and the line it sends them on."""

from __future__ import annotations

import hashlib

from detailbench.basics.errors import BadFile
from detailbench.basics.texts import _
from detailbench.cli.walking.core.expecting import same
from detailbench.cli.walking.core.hand import Hand
from detailbench.cli.walking.core.shop import found
from detailbench.cli.walking.steps import sending as s
from detailbench.moves.gauge_lines import SetGaugeLine
from detailbench.moves.readings_file import PutFileAway
from detailbench.moves.tray import PlaceWaiting, PutAway
from detailbench.thickness.gauge_line import GaugeLine


def place_tray(step: s.PlaceTray, hand: Hand) -> None:
    hand.do(PlaceWaiting(hand.job, hand.on_panel()))


def put_tray_away(step: s.PutTrayAway, hand: Hand) -> None:
    hand.do(PutAway((), hand.job))


def expect_tray(step: s.ExpectTray, hand: Hand) -> None:
    same(len(hand.bench.shop().waiting), step.count)


def plug_in(step: s.PlugIn, hand: Hand) -> None:
    gauge = found(hand, "gauge", step.gauge)
    hand.do(SetGaugeLine(gauge.id, GaugeLine(step.port, step.speed) if step.port else None))


def put_file_away(step: s.PutFileAway, hand: Hand) -> None:
    try:
        content = (hand.beside / step.file).read_bytes()
    except OSError as error:
        raise BadFile(
            _("{name} cannot be read ({why}).").format(name=step.file, why=error.strerror), name=step.file
        ) from error
    hand.do(PutFileAway(hashlib.sha256(content).hexdigest(), hand.job))


ACTS = {
    s.PlaceTray: place_tray,
    s.PutTrayAway: put_tray_away,
    s.ExpectTray: expect_tray,
    s.PlugIn: plug_in,
    s.PutFileAway: put_file_away,
}
