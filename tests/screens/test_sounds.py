"""The four sounds: they differ, follow the shop's loudness, go with the flash, and no loudspeaker is no trouble."""

from __future__ import annotations

import io
import itertools
import wave
from pathlib import Path

import numpy as np
import pytest
from bay_hand import Bay, bay, invented, prepared

from detailbench.basics.errors import BadInput
from detailbench.moves.shop import SetSetting
from detailbench.screens.sound import player
from detailbench.screens.sound.player import Sounds
from detailbench.screens.sound.tones import NOTES, RATE, samples, sound_file

__all__ = ["bay", "invented", "prepared"]


@pytest.mark.parametrize("pair", list(itertools.combinations(NOTES, 2)))
def test_any_two_sounds_differ_in_what_is_heard(pair: tuple[str, str]) -> None:
    one, other = (NOTES[kind] for kind in pair)
    assert len(one) != len(other) or [h for h, _s in one] != [h for h, _s in other]
    assert samples(pair[0], 1.0).shape != samples(pair[1], 1.0).shape


@pytest.mark.parametrize("kind", NOTES)
def test_a_sound_never_clips_and_begins_and_ends_in_silence(kind: str) -> None:
    made = samples(kind, 1.0)
    assert 0.5 < np.abs(made).max() <= 1.0
    assert abs(made[0]) < 1e-9
    assert abs(made[-1]) < 1e-9
    assert np.abs(samples(kind, 0.5)).max() == pytest.approx(np.abs(made).max() / 2)


@pytest.mark.parametrize(("kind", "hertz"), [("saved", 880.0), ("flagged", 660.0)])
def test_the_strongest_tone_is_the_one_meant(kind: str, hertz: float) -> None:
    made = samples(kind, 1.0)
    strengths = np.abs(np.fft.rfft(made, n=RATE))
    assert abs(float(np.argmax(strengths)) - hertz) <= 12.0  # two notes with a gap make a comb about it


def test_every_kind_that_is_played_is_made() -> None:
    assert set(player.KINDS) == set(NOTES)


@pytest.mark.parametrize("kind", NOTES)
def test_a_sound_is_a_whole_sound_file(kind: str) -> None:
    with wave.open(io.BytesIO(sound_file(kind, 60))) as file:
        assert (file.getnchannels(), file.getsampwidth(), file.getframerate()) == (1, 2, RATE)
        assert file.getnframes() == len(samples(kind, 0.6))


class Ear:
    """Hears which file was played."""

    def __init__(self) -> None:
        self.heard: list[str] = []

    def player(self, parent: object) -> player.Play:
        return lambda file: self.heard.append(file.stem)


@pytest.fixture
def ear(bay: Bay) -> Ear:
    made = Ear()
    bay.window.sounds = Sounds(bay.window.context, bay.window, made.player)
    bay.shop.checked(bay.job)
    bay.open("thickness")
    bay.click("Walk")
    bay.click_map("bonnet")
    bay.window.to_map()
    bay.qtbot.wait(20)
    made.heard.clear()
    return made


def heard(bay: Bay, ear: Ear) -> list[str]:
    bay.qtbot.wait(20)
    out = list(ear.heard)
    ear.heard.clear()
    return out


def test_each_answer_has_its_sound_once_beside_its_flash(bay: Bay, ear: Ear) -> None:
    bay.gauge("118")
    assert (heard(bay, ear), bay.window.flash.kind) == (["saved-60"], "saved")
    bay.gauge("4.6")
    assert (heard(bay, ear), bay.window.flash.kind) == (["flagged-60"], "flagged")
    for value in ("117", "119", "120", "116", "118"):
        bay.gauge(value)
    heard(bay, ear)
    bay.gauge("122")
    assert (heard(bay, ear), bay.window.flash.kind) == (["next-60"], "next")
    bay.window.context.notice("invented stop", "stop")
    assert (heard(bay, ear), bay.window.flash.kind) == (["stop-60"], "stop")


def test_the_loudness_is_the_shops_and_0_is_off(bay: Bay, ear: Ear) -> None:
    bay.shop.bench.do(SetSetting("sound_volume", 25.0))
    assert heard(bay, ear) == ["saved-25"]
    bay.shop.bench.do(SetSetting("sound_volume", 0.0))
    bay.gauge("118")
    assert heard(bay, ear) == []
    assert bay.window.flash.kind == "saved"
    with pytest.raises(BadInput, match="loudest"):
        bay.shop.bench.do(SetSetting("sound_volume", 101.0))


def test_a_computer_that_plays_nothing_is_silent_and_says_nothing(bay: Bay, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(player.shutil, "which", lambda _name: None)
    bay.window.sounds = Sounds(bay.window.context, bay.window)
    bay.window.context.notice("invented words", "stop")
    bay.qtbot.wait(20)
    assert bay.said == "invented words"


def test_a_player_that_fails_is_silent_and_says_nothing(
    bay: Bay, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setattr(player.shutil, "which", lambda _name: str(tmp_path / "no-such-player"))
    bay.window.sounds = Sounds(bay.window.context, bay.window)
    bay.window.context.notice("invented words", "stop")
    bay.qtbot.wait(50)
    assert bay.said == "invented words"
