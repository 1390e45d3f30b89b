"""A calculation as the ``workings`` command offers it: named fields in, one Working out.

Each trade room lists its own in a tuple ``CALCULATIONS``; the command line gathers them.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any, Literal

import numpy as np

from detailbench.basics.errors import BadInput
from detailbench.basics.workings import Plain, Working

LARGEST = 1e12  # beyond every quantity of the trade in its own unit; no sum or square of such leaves a float
Kind = Literal["number", "integer", "text", "boolean", "numbers", "number_lists", "objects"]


@dataclass(frozen=True)
class Field:
    """One input. ``numbers`` is a list of numbers, ``number_lists`` a list of such lists, ``objects`` a list of
    objects whose own fields are ``of``. Units stand at the end of the name."""

    name: str
    says: str
    kind: Kind = "number"
    required: bool = True
    default: Plain = None
    minimum: float | None = None
    above: float | None = None
    maximum: float | None = None
    choices: tuple[str, ...] = ()
    fewest: int = 0
    of: tuple[Field, ...] = ()


@dataclass(frozen=True)
class Calculation:
    """A named calculation; ``work`` takes checked inputs (defaults filled in) and returns the Working."""

    name: str
    title: str
    fields: tuple[Field, ...]
    work: Callable[[Mapping[str, Any]], Working]

    def run(self, given: Mapping[str, Any]) -> Working:
        """Check ``given`` and compute. Raises BadInput naming the field, or none where the inputs lead nowhere."""
        inputs = checked(self.fields, given)
        nowhere = "No result can be computed from these inputs: a figure on the way leaves what a number can hold."
        try:
            with np.errstate(all="ignore"):  # what is no real number is found below, in the results
                working = self.work(inputs)
        except ArithmeticError as error:
            raise BadInput(nowhere) from error
        if not _all_finite(working.as_json()):
            raise BadInput(nowhere)
        return working


def _all_finite(value: Plain) -> bool:
    if isinstance(value, float):
        return math.isfinite(value)
    if isinstance(value, Mapping):
        return all(map(_all_finite, value.values()))
    return not isinstance(value, (list, tuple)) or all(map(_all_finite, value))


def checked(fields: tuple[Field, ...], given: Mapping[str, Any], inside: str = "") -> dict[str, Any]:
    """``given`` with defaults filled in; BadInput for an unknown, missing or unfit one (NaN too)."""
    known = {f.name for f in fields}
    for name in given:
        if name not in known:
            raise BadInput(
                f"There is no field “{inside}{name}” here; the fields are {', '.join(sorted(known))}.",
                field=inside + name,
                given=given[name],
            )
    out: dict[str, Any] = {}
    for field in fields:
        if field.name not in given or (given[field.name] is None and not field.required):
            if field.required:
                raise BadInput(f"“{inside}{field.name}” is missing: {field.says}.", field=inside + field.name)
            out[field.name] = field.default
            continue
        out[field.name] = _fit(field, given[field.name], inside + field.name)
    return out


def _fit(field: Field, value: Any, path: str) -> Any:
    if field.kind in ("number", "integer"):
        return _number(field, value, path)
    if field.kind == "text":
        if not isinstance(value, str):
            raise BadInput(f"“{path}” must be text, in quotes.", field=path, given=value)
        if field.choices and value not in field.choices:
            raise BadInput(f"“{path}” must be one of: {', '.join(field.choices)}.", field=path, given=value)
        return value
    if field.kind == "boolean":
        if not isinstance(value, bool):
            raise BadInput(f"“{path}” must be true or false.", field=path, given=value)
        return value
    if not isinstance(value, list):
        raise BadInput(f"“{path}” must be a list.", field=path, given=value)
    if len(value) < field.fewest:
        raise BadInput(f"“{path}” needs at least {field.fewest}; there are {len(value)}.", field=path, given=value)
    if field.kind == "numbers":
        return [_number(field, v, f"{path}[{i}]") for i, v in enumerate(value)]
    if field.kind == "number_lists":
        for i, row in enumerate(value):
            if not isinstance(row, list) or not row:
                raise BadInput(f"“{path}[{i}]” must be a list of numbers, not empty.", field=f"{path}[{i}]", given=row)
        return [[_number(field, v, f"{path}[{i}][{j}]") for j, v in enumerate(row)] for i, row in enumerate(value)]
    rows = []
    for i, row in enumerate(value):
        if not isinstance(row, dict):
            raise BadInput(f"“{path}[{i}]” must be an object with named fields.", field=f"{path}[{i}]", given=row)
        rows.append(checked(field.of, row, f"{path}[{i}]."))
    return rows


def _number(field: Field, given: Any, path: str) -> float | int:
    if isinstance(given, bool) or not isinstance(given, (int, float)):
        raise BadInput(f"“{path}” must be a number.", field=path, given=given)
    value: float | int = given
    if isinstance(value, float) and not math.isfinite(value):
        raise BadInput(f"“{path}” is not a real number ({value}).", field=path, given=str(value))
    if abs(value) > LARGEST:
        raise BadInput(f"“{path}” is larger than anything measured here.", field=path, given=str(value)[:40])
    if field.kind == "integer":
        if float(value) != int(value):
            raise BadInput(f"“{path}” must be a whole number.", field=path, given=value)
        value = int(value)
    if field.minimum is not None and value < field.minimum:
        raise BadInput(f"“{path}” must be {field.minimum:g} or more; it is {value:g}.", field=path, given=value)
    if field.above is not None and value <= field.above:
        raise BadInput(f"“{path}” must be above {field.above:g}; it is {value:g}.", field=path, given=value)
    if field.maximum is not None and value > field.maximum:
        raise BadInput(f"“{path}” must be {field.maximum:g} or less; it is {value:g}.", field=path, given=value)
    return value


def json_schema(calculation: Calculation) -> dict[str, Plain]:
    """The JSON Schema (2020-12) of a calculation's inputs."""
    body = _object_schema(calculation.fields)
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": calculation.name,
        "description": calculation.title,
        **body,
    }


def _object_schema(fields: tuple[Field, ...]) -> dict[str, Plain]:
    required: list[Plain] = [f.name for f in fields if f.required]
    return {
        "type": "object",
        "additionalProperties": False,
        "required": required,
        "properties": {f.name: _field_schema(f) for f in fields},
    }


def _field_schema(field: Field) -> dict[str, Plain]:
    one: dict[str, Plain] = {}
    if field.kind in ("number", "numbers", "number_lists", "integer"):
        one["type"] = "integer" if field.kind == "integer" else "number"
        for key, bound in (("minimum", field.minimum), ("exclusiveMinimum", field.above), ("maximum", field.maximum)):
            if bound is not None:
                one[key] = bound
    if field.kind == "numbers":
        one = {"type": "array", "items": one, "minItems": field.fewest}
    elif field.kind == "number_lists":
        inner: dict[str, Plain] = {"type": "array", "items": one, "minItems": 1}
        one = {"type": "array", "items": inner, "minItems": field.fewest}
    elif field.kind == "objects":
        one = {"type": "array", "items": _object_schema(field.of), "minItems": field.fewest}
    elif field.kind == "text":
        one = {"type": "string"}
        if field.choices:
            one["enum"] = list(field.choices)
    elif field.kind == "boolean":
        one = {"type": "boolean"}
    one["description"] = field.says
    if field.default is not None:
        one["default"] = field.default
    return one
