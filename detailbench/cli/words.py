"""The words of the command line, and its help, written for a person."""

from __future__ import annotations

import argparse
from collections.abc import Callable
from importlib import import_module
from pathlib import Path
from typing import Any

from detailbench import __version__
from detailbench.basics.folders import default_workshop

ABOUT = """\
The bench book of a paint-correction detailer.

With no word at all the window opens. The words below do the same work from a shell.
A workshop is a folder; without --workshop it is the one named by the variable
DETAILBENCH_WORKSHOP, else the one among your own data.
"""

ENDING = """\
Exit codes: 0 well · 1 something is wrong, said in one sentence · 2 the words cannot be read ·
verify has its own (3 signed later by the owner · 4 no fingerprint given to compare · 5 another key ·
6 changed · 7 without a seal · 8 not a whole PDF · 9 damaged · 10 closed outside the key's time).

Start here:  detailbench example my-example   then   detailbench window my-example
"""


def _later(module: str, function: str) -> Callable[[argparse.Namespace], int]:
    """A command loaded only when it is wanted."""

    def carry_out(words: argparse.Namespace) -> int:
        return int(getattr(import_module(f"detailbench.cli.{module}"), function)(words))

    return carry_out


def parser() -> argparse.ArgumentParser:
    """The whole command line."""
    top = argparse.ArgumentParser(
        prog="detailbench",
        description=ABOUT,
        epilog=ENDING,
        formatter_class=argparse.RawDescriptionHelpFormatter,
        allow_abbrev=False,
    )
    top.add_argument("--version", action="version", version=f"detailbench {__version__}")
    top.set_defaults(carry_out=_later("window", "open_it"), folder=None)
    commands = top.add_subparsers(title="words", metavar="WORD")

    def word(name: str, does: str, module: str, function: str, more: str = "") -> argparse.ArgumentParser:
        made: argparse.ArgumentParser = commands.add_parser(
            name,
            help=does,
            description=f"{does[0].upper()}{does[1:]}. {more}".strip(),
            formatter_class=argparse.RawDescriptionHelpFormatter,
            allow_abbrev=False,
        )
        made.set_defaults(carry_out=_later(module, function))
        return made

    window = word("window", "open the window", "window", "open_it")
    window.add_argument("folder", nargs="?", type=Path, metavar="FOLDER", help="the workshop folder")

    jobs = word("jobs", "list the jobs of a workshop", "records", "list_jobs")
    _workshop(jobs)

    walk = word(
        "walk",
        "play a walk script: a job written down act by act",
        "walks",
        "play",
        "The whole script is read before its first act; it stops at the first act that does not go as written.",
    )
    walk.add_argument("file", nargs="?", type=Path, metavar="FILE")
    walk.add_argument("--acts", action="store_true", help="list every act a script can name, and how it is written")
    _workshop(walk)
    _passphrase(walk)

    example = word("example", "make an example workshop, all of it invented", "walks", "make_example")
    example.add_argument("folder", type=Path, metavar="FOLDER", help="a folder that does not exist yet")

    paper = word(
        "print",
        "write the newest closed document of a job, or a draft of it, to a PDF",
        "papers",
        "print_document",
        "A draft is the document as the job stands now: not closed.",
    )
    paper.add_argument(
        "kind",
        nargs="?",
        choices=("arrival", "supplement", "report", "template"),
        default="report",
        help="which one (report); template: the places to measure at",
    )
    _workshop(paper)
    paper.add_argument("--job", required=True, metavar="NUMBER", help="the job's number, like 2031-001")
    paper.add_argument(
        "--to", required=True, type=Path, metavar="FILE", help="the PDF to write; never over another file"
    )
    paper.add_argument("--draft", action="store_true", help="the document as the job stands now, not closed")
    paper.add_argument("--paper", choices=("A4", "Letter"), help="the paper of a draft (else as the shop set it)")

    verify = word(
        "verify",
        "say whether a closed document is unchanged and whose it is",
        "papers",
        "verify",
        "The hash and the fingerprint stand in the workshop's record and in its other documents.",
    )
    verify.add_argument("file", type=Path, metavar="FILE")
    verify.add_argument("--sha256", metavar="HASH", help="the file's hash as recorded when it was closed")
    verify.add_argument("--fingerprint", metavar="DIGITS", help="the fingerprint of the workshop's key")
    verify.add_argument("--workshop", type=Path, metavar="FOLDER", help="take hash and fingerprint from this workshop")

    take = word("import", "take readings from a file into a job", "readings", "take_in")
    take.add_argument("file", type=Path, metavar="FILE")
    _workshop(take)
    take.add_argument("--job", required=True, metavar="NUMBER")
    take.add_argument("--panel", metavar="PANEL", help="where values without a panel belong")
    take.add_argument("--unit", choices=("um", "mil"), default="um", help="the unit where the file names none")
    take.add_argument("--look-only", action="store_true", help="say what would be taken, take nothing")

    check = word("check", "check a workshop: the chain, the rows, the files", "records", "check_it")
    _workshop(check)
    check.add_argument("--head", metavar="HASH", help="a journal hash kept elsewhere, as printed in a closed document")

    backup = word("backup", "back a workshop up: database, kept files, the encrypted key", "safe", "back_it_up")
    backup.add_argument("folder", type=Path, metavar="WORKSHOP")
    backup.add_argument("--to", required=True, type=Path, metavar="FOLDER", help="the backup folder; it keeps several")

    back = word(
        "restore",
        "bring a backup back into a new folder, and check it",
        "safe",
        "bring_back",
        "Nothing is written over. Where a kept file is missing it is named, and nothing is restored.",
    )
    back.add_argument("folder", type=Path, metavar="FOLDER", help="the backup folder (its newest) or one dated folder")
    back.add_argument("--to", required=True, type=Path, metavar="NEW_FOLDER", help="a folder that does not exist yet")
    back.add_argument("--head", metavar="HASH", help="a journal hash kept elsewhere, as printed in a closed document")
    back.add_argument("--even-so", action="store_true", help="restore what there is, although files are missing")

    out = word(
        "job-out",
        "write a job to a JSON file, its kept files into a folder beside it",
        "safe",
        "job_to_file",
        "Another workshop takes it in with job-in; ids, times and the journal as it was travel along.",
    )
    _workshop(out)
    out.add_argument("--job", required=True, metavar="NUMBER")
    out.add_argument("--to", required=True, type=Path, metavar="FILE", help="never over another file")
    out.add_argument(
        "--without-personal", action="store_true", help="without names, plate, texts, signatures, documents"
    )
    out.add_argument("--without-files", action="store_true", help="name the kept files by their hash only")

    taken = word("job-in", "take a job in from a JSON file, as one move that cannot be undone", "safe", "job_from_file")
    taken.add_argument("file", type=Path, metavar="FILE")
    _workshop(taken)
    taken.add_argument(
        "--head", metavar="HASH", help="a journal hash of the job kept elsewhere, as in a closed document"
    )
    taken.add_argument("--files", type=Path, metavar="FOLDER", help="where its kept files lie, if not beside it")

    workings = word(
        "workings",
        "redo a computed figure: inputs as JSON on standard input, the working as JSON out",
        "workings",
        "work",
        "Without NAME it lists the calculations.",
    )
    workings.add_argument("name", nargs="?", metavar="NAME")
    workings.add_argument("--schema", metavar="NAME", help="print the JSON Schema of a calculation's inputs")

    outline = word("outline", "check the drawing of a body style", "records", "check_drawing")
    outline.add_argument("file", type=Path, metavar="FILE")

    word("self-test", "try that this installation is whole", "self_test", "try_it")
    return top


def _workshop(made: argparse.ArgumentParser) -> None:
    made.add_argument("--workshop", type=Path, default=None, metavar="FOLDER", help="the workshop folder")


def _passphrase(made: argparse.ArgumentParser) -> None:
    made.add_argument(
        "--passphrase-file", type=Path, metavar="FILE", help="a file holding the passphrase of the workshop's key"
    )


def workshop_of(words: Any) -> Path:
    """The workshop folder the words name."""
    named: Path | None = words.workshop
    return named if named is not None else default_workshop()
