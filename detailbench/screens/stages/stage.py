"""What a stage brings to the window."""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QWidget

from detailbench.screens.context import Context
from detailbench.screens.map.colouring import Colouring, Drawing

if TYPE_CHECKING:
    from detailbench.record.picture import JobPicture
    from detailbench.screens.actions import Action


@dataclass(frozen=True)
class ColouringChoice:
    """One entry of *show:* — what the map's colours can ask. ``make`` draws it from the context's picture."""

    key: str
    title: str
    make: Callable[[Context], Colouring]


@dataclass(frozen=True)
class FarFacts:
    """The four things readable at 2 m, and below them the keys that end what runs. Empty texts are left out."""

    where: str = ""  # panel and place
    last: str = ""  # last value, with unit
    next: str = ""  # what comes next
    left: str = ""  # how many left
    keys: str = ""  # which key ends what runs, as "Space stops"


@dataclass(frozen=True)
class CountsApart:
    """``first`` in place of the count, ``then`` below it; ``words`` says both for the ear and under the pointer."""

    first: str
    then: str
    words: str


class Stage(ABC):
    """One stage of the day. The window asks; the stage draws and turns gestures into moves."""

    key: str
    title: str

    def begin(self, context: Context) -> None:  # noqa: B027  # most stages need nothing before they are opened
        """Called once when there is a bench: for what must listen before the stage is first opened."""

    @abstractmethod
    def make_card(self, context: Context) -> QWidget:
        """The card; made once, when the stage is first shown. It listens to the context's signals itself."""

    @abstractmethod
    def counts(self, picture: JobPicture) -> tuple[float, int]:
        """Done and due."""

    def counts_apart(self, picture: JobPicture) -> CountsApart | None:
        """The counts where they are of two kinds; None: they are of one."""
        return None

    def what_next(self, context: Context) -> str:
        """What the next value or key will record, in one short line; empty: nothing is awaited."""
        return ""

    def colourings(self) -> tuple[ColouringChoice, ...]:
        """The choices of *show:* this stage adds; its first is taken when the stage is opened."""
        return ()

    def drawing(self, context: Context) -> Drawing:
        """Marks and places to draw on the map."""
        return Drawing()

    def far(self, context: Context) -> FarFacts:
        """What the far view shows in this stage."""
        return FarFacts(next=self.what_next(context))

    def actions(self, context: Context) -> tuple[Action, ...]:
        """Keys that act while this stage is open (F9 start/finish, plain letters in an open mark …)."""
        return ()


class Page(ABC):
    """A page beside the stages that fills map and card together: Jobs, Shop, History.

    ``home``: the page that is open while no job is. ``scope``: whose last move is taken back while the page is open;
    empty: the open job's.
    """

    key: str
    title: str
    home: bool = False
    scope: str = ""

    @abstractmethod
    def make_page(self, context: Context) -> QWidget:
        """The page; made once, when first shown."""
