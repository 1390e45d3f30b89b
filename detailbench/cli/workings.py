"""``workings``: any figure redone from its inputs."""

from __future__ import annotations

import json
import sys
from argparse import Namespace

from detailbench.basics.calculations import json_schema
from detailbench.basics.errors import BadInput, DetailbenchError
from detailbench.cli import WRONG_WORDS
from detailbench.cli.calculations import calculations


def work(words: Namespace) -> int:
    """List, print a schema, or compute. A bad input gives one JSON object naming the field, exit code 2."""
    known = calculations()
    wanted = words.schema or words.name
    if wanted is None:
        width = max(len(name) for name in known)
        for name, calculation in known.items():
            print(f"{name:{width}}  {calculation.title}")
        return 0
    if wanted not in known:
        return _wrong(f"There is no calculation “{wanted}”; `detailbench workings` lists them.", "name")
    if words.schema:
        print(json.dumps(json_schema(known[wanted]), ensure_ascii=False, indent=2))
        return 0
    try:
        given = json.loads(sys.stdin.read(), parse_constant=_no_constant)
    except ValueError as error:
        return _wrong(f"The inputs are not JSON: {error}.", "")
    except RecursionError:  # what the reader of JSON raises on a text nested without end
        return _wrong("The inputs are nested too deeply to be read.", "")
    if not isinstance(given, dict):
        return _wrong("The inputs are one JSON object with named fields.", "")
    try:
        working = known[wanted].run(given)
    except BadInput as error:
        return _wrong(str(error), error.field)
    except DetailbenchError as error:
        return _wrong(str(error), "")
    print(json.dumps(working.as_json(), ensure_ascii=False, indent=2, allow_nan=False))
    return 0


def _no_constant(word: str) -> float:
    raise ValueError(f"{word} is not a number here")


def _wrong(sentence: str, field: str) -> int:
    print(json.dumps({"error": sentence, "field": field}, ensure_ascii=False))
    return WRONG_WORDS
