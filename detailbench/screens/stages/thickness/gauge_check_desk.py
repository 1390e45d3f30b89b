"""The gauge check as it is being done: which plate, which value, and what came of it."""

from __future__ import annotations

from collections.abc import Callable

from detailbench.basics.numbers import format_number, format_thickness, read_typed
from detailbench.basics.texts import _
from detailbench.findings.gauges import RoundOfChecks, rounds, thickness_sessions
from detailbench.moves.readings import RecordCheck, StartSession
from detailbench.record.things import Gauge, GaugeSession, Shim
from detailbench.screens.context import Context
from detailbench.thickness.gauge_check import FEWEST


class GaugeCheckDesk:
    """Zero plate first, then the foil, raw values one after another. Everything is asked of the picture. ``told`` is
    called when there is something to draw anew, ``passed_first`` when the first check has passed."""

    def __init__(
        self, context: Context, initiator: object, told: Callable[[], object], passed_first: Callable[[], object]
    ) -> None:
        self._context = context
        self._initiator = initiator
        self._told = told
        self._passed_first = passed_first
        self._again = False
        self._foil_id = ""
        self._plate_id = ""

    def begin(self) -> None:
        """Another job."""
        self._again, self._foil_id, self._plate_id = False, "", ""

    # looking
    @property
    def gauges(self) -> tuple[Gauge, ...]:
        shop = self._context.shop
        return () if shop is None else tuple(g for g in shop.gauges if not g.retired)

    @property
    def session(self) -> GaugeSession | None:
        """The thickness gauge in hand."""
        picture = self._context.picture
        found = thickness_sessions(picture) if picture is not None else ()
        return found[-1] if found else None

    @property
    def gauge(self) -> Gauge | None:
        session, shop = self.session, self._context.shop
        if session is None or shop is None:
            return None
        return next((g for g in shop.gauges if g.id == session.gauge_id), None)

    @property
    def _shims(self) -> tuple[Shim, ...]:
        shop = self._context.shop
        return () if shop is None else tuple(s for s in shop.shims if not s.retired)

    @property
    def zero(self) -> Shim | None:
        """The zero plate of the foil's metal, else the first there is."""
        plates = [s for s in self._shims if s.value_um == 0]
        metal = self.foil.substrate if self.foil is not None else ""
        return next((s for s in plates if s.substrate == metal), None) or next(iter(plates), None)

    @property
    def foils(self) -> tuple[Shim, ...]:
        return tuple(s for s in self._shims if s.value_um > 0)

    @property
    def foil(self) -> Shim | None:
        """The one of this round, else the one chosen, else the first."""
        now = self.round
        if now is not None and now.shim is not None:
            return now.shim
        return next((s for s in self.foils if s.id == self._foil_id), None) or next(iter(self.foils), None)

    @property
    def round(self) -> RoundOfChecks | None:
        """The round being done or done last; None before the first value, and once a new one was asked for."""
        found = self.all_rounds
        return found[-1] if found and not self._again else None

    @property
    def all_rounds(self) -> tuple[RoundOfChecks, ...]:
        session, picture = self.session, self._context.picture
        return () if session is None or picture is None else rounds(picture, session)

    @property
    def on_zero(self) -> tuple[float, ...]:
        return self.round.zero_um if self.round is not None else ()

    @property
    def on_foil(self) -> tuple[float, ...]:
        return self.round.shim_um if self.round is not None else ()

    @property
    def plate(self) -> Shim | None:
        """What the next value is read on: the zero plate until it has five, then the foil; or what was chosen."""
        chosen = next((s for s in self._shims if s.id == self._plate_id), None)
        if chosen is not None:
            return chosen
        return self.zero if len(self.on_zero) < FEWEST else self.foil

    @property
    def complete(self) -> bool:
        return self.round is not None and self.round.check is not None

    @property
    def takes(self) -> bool:
        """A value now would be one of the check."""
        return self.session is not None and self.plate is not None and (not self.complete or bool(self._plate_id))

    # doing
    def take_in_hand(self, gauge_id: str, temperature_c: float | None) -> None:
        """Begin a session with this gauge."""
        if self._context.job_id is not None:
            self._again, self._plate_id = False, ""
            self._context.do(StartSession(self._context.job_id, gauge_id, temperature_c), self._initiator)

    def use_foil(self, shim_id: str) -> None:
        self._foil_id = shim_id
        self._tell()

    def read_on(self, shim_id: str) -> None:
        """The next values are read on this plate, beyond the five as well."""
        self._plate_id = shim_id
        self._tell()

    def check_again(self) -> None:
        """A new round: a closing check, or one more after a failed one."""
        self._again, self._plate_id = True, ""
        self._tell()

    def value(self, value_um: float) -> str:
        """A raw value on the present plate; the sentence how far the check is."""
        session, plate, job = self.session, self.plate, self._context.job_id
        if session is None or plate is None or job is None:
            return ""
        if (
            self._context.do(RecordCheck(job, session.id, plate.id, (value_um,), again=self._again), self._initiator)
            is None
        ):
            return ""
        self._again = False
        if self.complete and not self._plate_id:
            return self._verdict()
        self._tell()
        sentence = self.progress()
        self._context.notice(sentence, "saved" if self.plate is not None else "flagged")
        return sentence

    def sent(self, text: str) -> str:
        """A value the gauge sent while the check is being done."""
        typed = read_typed(text, allow_negative=True)
        if typed.value_um is None:
            sentence = typed.sentence or typed.question
            self._context.notice(sentence, "flagged")
            return sentence
        return self.value(typed.value_um)

    def _verdict(self) -> str:
        now = self.round
        assert now is not None
        assert now.check is not None
        if now.check.passed:
            sentence = _("Gauge check passed.")
            self._context.notice(sentence, "next")
            if len(self.all_rounds) == 1:
                self._passed_first()
        else:
            went = zip((now.check.zero_passed, now.check.shim_passed), now.check.sentences, strict=True)
            sentence = " ".join(words for passed, words in went if not passed)
            self._context.notice(sentence, "stop")
        self._tell()
        return sentence

    def _tell(self) -> None:
        self._told()
        self._context.next_changed.emit()

    # in words
    def counts(self) -> str:
        """``zero plate 3 of 5, foil 0 of 5``."""
        return _("zero plate {zero} of {n}, foil {foil} of {n}").format(
            zero=format_number(len(self.on_zero)), foil=format_number(len(self.on_foil)), n=format_number(FEWEST)
        )

    def progress(self) -> str:
        plate = self.plate
        on = self.on_zero if plate is not None and plate.value_um == 0 else self.on_foil
        if plate is None:
            return _("{counts}. The foil is missing: enter it under Shop, then the check goes on.").format(
                counts=self.counts()
            )
        return _("{plate}: {n} of {of}").format(
            plate=plate.label, n=format_number(len(on)), of=format_number(max(FEWEST, len(on)))
        )

    def waits(self) -> str:
        """What the next value of the check is."""
        plate = self.plate
        if plate is None:
            return ""
        on = self.on_zero if plate.value_um == 0 else self.on_foil
        return _("gauge check, {plate}: value {n} of {of}").format(
            plate=plate.label, n=format_number(len(on) + 1), of=format_number(max(FEWEST, len(on) + 1))
        )

    def state(self) -> str:
        """Which gauge is in hand, and how its last check went, in one line."""
        gauge, session = self.gauge, self.session
        if gauge is None or session is None:
            return _("no gauge in hand yet")
        parts = [_("in hand: {gauge}").format(gauge=gauge.name)]
        parts.append(
            _("surface {t} °C").format(t=format_number(session.temperature_c))
            if session.temperature_c is not None
            else _("surface temperature not recorded")
        )
        done = [r for r in self.all_rounds if r.check is not None]
        if not done:
            parts.append(_("not checked"))
        else:
            passed = done[-1].check is not None and done[-1].check.passed
            at = done[-1].at.strftime("%H:%M")
            parts.append(_("checked {at}").format(at=at) if passed else _("check failed {at}").format(at=at))
        return ", ".join(parts)


def values_line(values_um: tuple[float, ...]) -> str:
    """Raw values side by side."""
    return " · ".join(format_thickness(v) for v in values_um)
