"""Plays a whole day by moves, and again and again lets a child go on from where it stands, to be killed at a random
moment. Prints one line of JSON a kill: what the child said was saved, and what is there. Run as a program: it forks.

``day_killed.py WALK FOLDER SEED KILLS``
"""

from __future__ import annotations

import json
import os
import random
import shutil
import signal
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from threading import Event
from typing import Any

from detailbench.cli.walking.core.hand import Hand
from detailbench.cli.walking.core.player import ACTS, play
from detailbench.cli.walking.grammar import read_walk_file
from detailbench.cli.walking.step import Step
from detailbench.cli.walking.steps.workshop import WasRefused
from detailbench.moves.bench import Bench
from detailbench.record.checking import check
from detailbench.record.evidence import digest_of
from detailbench.record.journal import standing
from detailbench.record.tables import journal

PASSPHRASE = "an invented passphrase"
USUAL_S, LONGEST_S = 0.12, 1.5  # a child lives this long on average, and no longer


def told(bench: Bench) -> dict[int, str]:
    """Number and hash of every entry in the journal."""
    with bench.store.reading() as connection:
        return {row.n: row.hash for row in connection.execute(journal.select())}


def stands(bench: Bench) -> dict[str, Any]:
    """What can be taken back and done again, in every job and in the shop."""
    out = {}
    with bench.store.reading() as connection:
        for scope in ("shop", *(j.number for j in bench.shop().jobs)):
            id_ = next((j.id for j in bench.shop().jobs if j.number == scope), scope)
            found = standing(connection, id_)
            out[scope] = [[n for n, _says in found.done], [n for n, _says in found.undone]]
    return out


def kill_after(child: int, heard: int, seconds: float) -> list[str]:
    """Kill a child a while after its first word; every whole line it said."""
    text = os.read(heard, 1)  # it is ready
    Event().wait(seconds)  # the random moment
    os.kill(child, signal.SIGKILL)
    os.waitpid(child, 0)
    while more := os.read(heard, 65536):
        text += more
    os.close(heard)
    return text.decode().split("\n")[:-1]


def fork_and_kill(work: Callable[[Callable[[str], None]], object], seconds: float) -> list[str]:
    """Let a child do ``work(say)`` and kill it."""
    heard, mouth = os.pipe()
    child = os.fork()
    if child == 0:
        os.close(heard)
        try:
            work(lambda line: os.write(mouth, f"{line}\n".encode()) and None)  # type: ignore[func-returns-value]
        finally:
            os.close(mouth)
            signal.pause()
    os.close(mouth)
    return kill_after(child, heard, seconds)


def goes_on(steps: Sequence[Step], hand: Hand, folder: Path) -> Callable[[Callable[[str], None]], object]:
    """The rest of the day in a copy of the workshop, every entry said once it is saved."""

    def work(say: Callable[[str], None]) -> None:
        hand.folder, hand.out = folder / "workshop", folder
        bench = Bench(hand.folder, hand.clock, person=hand.person)
        hand._bench = bench
        bench.watch(lambda changes, _who: say(f"{changes.n} {bench.store.head()[1]}"))
        say("ready")
        for step, after in zip(steps, [*steps[1:], None], strict=True):
            if not isinstance(step, WasRefused) and not isinstance(after, WasRefused):
                ACTS[type(step)](step, hand)

    return work


def facts_after(folder: Path, hand: Hand, said: list[str]) -> dict[str, Any]:
    """What is there after the kill, as plain facts."""
    files = [p for p in folder.rglob("*") if p.is_file()]
    half = [p.name for p in files if p.suffix == ".pdf" and not p.read_bytes().rstrip().endswith(b"%%EOF")]
    half += [p.name for p in files if len(p.name) == 64 and digest_of(p.read_bytes()) != p.name]
    bench = Bench(folder / "workshop", hand.clock, person=hand.person)
    there = told(bench)
    result = {
        "said": [[int(n), h] for n, h in (line.split() for line in said if line != "ready")],
        "there": there,
        "troubles": check(bench.store).troubles,
        "half": half,
        "stands": stands(bench),
        "read_only": bench.read_only,
    }
    bench.close()
    return result


def main(walk: Path, folder: Path, seed: int, kills: int) -> None:
    steps = read_walk_file(walk)
    # a first run without a kill: how the undo lists stand after each entry
    whole = Hand(folder / "whole" / "workshop", walk.parent, folder / "whole", PASSPHRASE)
    reference: dict[int, Any] = {}

    class Watched(Bench):
        def _tell(self, changes: Any, initiator: object) -> Any:
            done = super()._tell(changes, initiator)
            reference[changes.n] = stands(self)
            return done

    import detailbench.cli.walking.core.hand as hands

    hands.Bench = Watched  # type: ignore[misc]
    play(steps, whole)
    hands.Bench = Bench  # type: ignore[misc]
    print(json.dumps({"reference": reference}), flush=True)
    chance = random.Random(seed)
    weights = [4.0 if step.verb.startswith("close ") else 1.0 for step in steps]
    starts = sorted(chance.choices(range(len(steps)), weights, k=kills))
    hand = Hand(folder / "day" / "workshop", walk.parent, folder / "day", PASSPHRASE)
    hand.open()
    for at, step in enumerate(steps):
        for n in range(starts.count(at)):
            copy = folder / f"kill-{at}-{n}"
            shutil.copytree(folder / "day", copy, ignore=shutil.ignore_patterns("writer.*"))
            live_s = min(chance.expovariate(1 / USUAL_S), LONGEST_S) * (4 if step.verb.startswith("close ") else 1)
            said = fork_and_kill(goes_on(steps[at:], hand, copy), live_s)
            if said:
                print(json.dumps({"at": at, "verb": step.verb} | facts_after(copy, hand, said)), flush=True)
            shutil.rmtree(copy)
        refused_next = at + 1 < len(steps) and isinstance(steps[at + 1], WasRefused)
        if not isinstance(step, WasRefused) and not refused_next:
            ACTS[type(step)](step, hand)
    hand.close()


if __name__ == "__main__":
    main(Path(sys.argv[1]), Path(sys.argv[2]), int(sys.argv[3]), int(sys.argv[4]))
