"""The vehicle identification number: form after ISO 3779, check digit after 49 CFR 565.15. It warns, never refuses.

Upper-case and trimmed, nothing else: a letter I, O or Q is reported where it stands and never read as 1 or 0. The
check digit is required in North America and China and often absent elsewhere, and older cars have shorter numbers.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from detailbench.basics.texts import _
from detailbench.basics.workings import Plain, Source, Working

CheckDigit = Literal["ok", "not", "not applicable"]

LENGTH = 17
WEIGHTS = (8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2)
VALUES: dict[str, int] = {
    **{str(n): n for n in range(10)},
    **dict(zip("ABCDEFGH", range(1, 9), strict=True)),
    **dict(zip("JKLMN", range(1, 6), strict=True)),
    "P": 7,
    "R": 9,
    **dict(zip("STUVWXYZ", range(2, 10), strict=True)),
}
REQUIRED_BY_FIRST = "12345L"
"""First characters of the regions that require the check digit: North America and China."""

SOURCE = Source("ISO 3779 (form); 49 CFR 565.15 (check digit)")


@dataclass(frozen=True)
class VinFinding:
    """What can be said about a number. ``wrong`` holds (position from 1, character) of what may not occur.

    check_digit: "ok"; "not" (17 fit characters, but the ninth disagrees and is required where the car was made);
    "not applicable" (other length, unfit characters, or a region where it is often absent and here disagrees).
    expected and weighted_sum are None where nothing could be computed. warning: one sentence, or None.
    """

    normalised: str
    length_ok: bool
    characters_ok: bool
    check_digit: CheckDigit
    warning: str | None
    wrong: tuple[tuple[int, str], ...] = ()
    expected: str | None = None
    weighted_sum: int | None = None


def check_vin(text: str) -> VinFinding:
    """The finding on a typed number; never an error, whatever was typed."""
    number = text.strip().upper()
    length_ok = len(number) == LENGTH
    wrong = tuple((i, char) for i, char in enumerate(number, 1) if char not in VALUES)
    total, expected, digit = None, None, "not applicable"
    if length_ok and not wrong:
        total = sum(w * VALUES[char] for w, char in zip(WEIGHTS, number, strict=True))
        expected = "X" if total % 11 == 10 else str(total % 11)
        if number[8] == expected:
            digit = "ok"
        elif number[0] in REQUIRED_BY_FIRST:
            digit = "not"
    return VinFinding(
        normalised=number,
        length_ok=length_ok,
        characters_ok=bool(number) and not wrong,
        check_digit="ok" if digit == "ok" else "not" if digit == "not" else "not applicable",
        warning=_warning(number, wrong, expected, digit),
        wrong=wrong,
        expected=expected,
        weighted_sum=total,
    )


def _warning(number: str, wrong: tuple[tuple[int, str], ...], expected: str | None, digit: str) -> str | None:
    if not number:
        return _("No number was entered.")
    if wrong:
        place, char = wrong[0]
        if char in "IOQ":
            return _(
                "Character {place} is the letter {char}, which no such number contains; look whether it is a 1 or a 0."
            ).format(place=place, char=char)
        return _("Character {place} (“{char}”) cannot stand in such a number; digits and letters only.").format(
            place=place, char=char
        )
    if len(number) != LENGTH:
        return _("This has {count} characters instead of {length}; right only on an older car.").format(
            count=len(number), length=LENGTH
        )
    if digit == "ok":
        return None
    if digit == "not":
        return _("The check digit (character 9) is {found} but should be {expected}; compare with the plate.").format(
            found=number[8], expected=expected
        )
    return _(
        "Character 9 is no check digit here ({found}, computed {expected}); outside North America and China often so."
    ).format(found=number[8], expected=expected)


def vin_working(text: str) -> Working:
    """How the finding came about."""
    finding = check_vin(text)
    letters: list[Plain] = [VALUES[c] for c in finding.normalised] if finding.weighted_sum is not None else []
    return Working(
        name="vin",
        formula="check digit = (Σ weight × value) mod 11, 10 written as X; weights 8 7 6 5 4 3 2 10 0 9 8 7 6 5 4 3 2",
        inputs={"number": text},
        results={
            "normalised": finding.normalised,
            "length_ok": finding.length_ok,
            "characters_ok": finding.characters_ok,
            "values": letters,
            "weighted_sum": finding.weighted_sum,
            "expected": finding.expected,
            "check_digit": finding.check_digit,
            "warning": finding.warning,
        },
        source=SOURCE,
        changes_with=_("any character of the number"),
        notes=(_("Required in North America and China, often absent elsewhere: it warns, it never refuses."),),
    )
