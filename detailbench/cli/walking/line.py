"""One line of a walk script: words and "quoted text", taken one after the other."""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from detailbench.basics.errors import BadFile
from detailbench.basics.texts import _

TOKEN = re.compile(r'\s*(?:"(?P<text>(?:[^"\\]|\\.)*)"|(?P<open>")|#.*|(?P<word>[^\s"#]+))')


@dataclass(frozen=True)
class Token:
    """A word, or a text that stood in quotes."""

    text: str
    quoted: bool


@dataclass
class Line:
    """The tokens of line ``number`` of the script ``name``; ``take`` moves along them."""

    name: str
    number: int
    tokens: tuple[Token, ...]
    usage: str = ""
    _at: int = field(default=0)

    @property
    def more(self) -> bool:
        return self._at < len(self.tokens)

    def peek(self, ahead: int = 0) -> Token | None:
        """The token ``ahead`` of the next one, or None behind the end."""
        at = self._at + ahead
        return self.tokens[at] if at < len(self.tokens) else None

    def take(self, what: str) -> Token:
        """The next token. Raises BadFile when the line ends before it."""
        token = self.peek()
        if token is None:
            raise self.bad(_("the line ends where {what} is expected").format(what=what))
        self._at += 1
        return token

    def bad(self, why: str, value: str = "") -> BadFile:
        """The error for this line, with how the verb is used."""
        sentence = _("{name}, line {line}: {why}.").format(name=self.name, line=self.number, why=why)
        if self.usage:
            sentence += " " + _("It is written: {usage}").format(usage=self.usage)
        return BadFile(sentence, name=self.name, line=self.number, value=value)


def line_of(text: str, name: str, number: int) -> Line:
    """Split a line into its tokens; what follows ``#`` is a comment. Raises BadFile for a quote left open."""
    tokens, at = [], 0
    while at < len(text.rstrip()):
        found = TOKEN.match(text, at)
        if found is None or found["open"]:
            raise Line(name, number, ()).bad(_("a quote is opened and never closed"), text[at:])
        at = found.end()
        if found["text"] is not None:
            tokens.append(Token(re.sub(r"\\(.)", r"\1", found["text"]), True))
        elif found["word"]:
            tokens.append(Token(found["word"], False))
    return Line(name, number, tuple(tokens))
