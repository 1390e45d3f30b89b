"""Walk scripts from the shell: play one on a workshop, make the example."""

from __future__ import annotations

from argparse import Namespace
from pathlib import Path

from detailbench.basics.errors import BadFile, BadInput, RecordTrouble
from detailbench.basics.shelf import resource
from detailbench.basics.texts import _
from detailbench.cli.walking.grammar import help_lines, read_walk_file
from detailbench.cli.words import workshop_of

EXAMPLE = ("shop.walk", "handed_over.walk", "in_work.walk", "just_arrived.walk")
EXAMPLE_PASSPHRASE = "invented example"


def passphrase_in(file: Path | None) -> str | None:
    """The first line of the file, None where none is named."""
    if file is None:
        return None
    try:
        lines = file.read_text("utf-8").splitlines()
    except (OSError, UnicodeDecodeError) as error:
        raise BadFile(_("{name} cannot be read.").format(name=file.name), name=file.name) from error
    if not lines or not lines[0]:
        raise BadFile(_("{name} holds no passphrase in its first line.").format(name=file.name), name=file.name)
    return lines[0]


def play(words: Namespace) -> int:
    """Play one script on a workshop; the whole script is read before its first act."""
    from detailbench.cli.walking.core.hand import Hand
    from detailbench.cli.walking.core.player import play as play_steps

    if words.acts:
        for line in help_lines():
            print(line)
        return 0
    if words.file is None:
        raise BadInput(_("Name the script to play, or --acts to list what a script can say."), field="file")
    steps = read_walk_file(words.file)
    hand = Hand(workshop_of(words), words.file.parent, Path.cwd(), passphrase_in(words.passphrase_file))
    play_steps(steps, hand)
    print(_("{n} acts played, all as the script says.").format(n=len(steps)))
    return 0


def make_example(words: Namespace) -> int:
    """Make the example workshop in a new folder: everything in it is invented and says so."""
    from detailbench.cli.walking.core.hand import Hand
    from detailbench.cli.walking.core.player import play as play_steps

    folder: Path = words.folder
    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        raise RecordTrouble(_("{folder} is there already; name a new folder.").format(folder=folder))
    for name in EXAMPLE:
        script = resource("example", name)
        play_steps(read_walk_file(script), Hand(folder, script.parent, folder, EXAMPLE_PASSPHRASE))
    print(_("The example workshop is in {folder}. Everything in it is invented.").format(folder=folder))
    print(_("The passphrase of its key is: {words}").format(words=EXAMPLE_PASSPHRASE))
    return 0
