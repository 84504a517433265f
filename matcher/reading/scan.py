"""Cut a cleaned text once into words, runs of digits and single signs, each with its place.

A run of digits keeps the signs that hold its figures together: `208-230/460`, `5-5/8`, `1,5`, `.4995`;
Every repetition in the pattern starts with a character that the one before can't take, so that the
work grows with the length of the text and no faster.
"""

import re
from collections.abc import Container
from dataclasses import dataclass
from itertools import accumulate

from matcher.reading.clean import clean
from matcher.reading.mend import mend

_DIGIT = r"[\d½¼¾⅛⅜⅝⅞⅓⅔⅕⅙]"
_NUMBER = rf"\.?{_DIGIT}(?:[.,/\-]?{_DIGIT})*"
# Abbreviations whose point doesn't end a sentence: the first ones never, the second ones unless a
# capital follows.
_NEVER_LAST = (
    "mfr mfg mfgr cap ins insul isol iso kl encl amb brg brgs rot ser mod cat no nos nr num opp rev temp max min "
    "approx th cl mtg imp "
    "wkl typ art ref vol fr orig equiv incl vgl bohr durchm"
)
_MAY_BE_LAST = "in dia diam ft hrs yr yrs ea pc pcs amp sec min wt lbs lb mos ext ctr"
_WORD = (
    rf"(?i:{'|'.join(_NEVER_LAST.split())})\.(?!\w*\n)"
    rf"|(?i:{'|'.join(_MAY_BE_LAST.split())})\.(?=[ \t]?[a-z\d,;|(/&+x-])"
    r"|(?i:h\.p\.?|r\.p\.m\.?|v\.a\.c\.?|f\.l\.a\.?|c\.w\.?|c\.c\.w\.?|o\.d\.?|b\.c\.?|s\.p\.a\.?|p\.s\.c\.?|w/o?)(?![\w/])"
    r"|(?:[A-Z]\.){2,5}(?:[A-Z](?![\w]))?|(?:[A-Z]{1,5}|Th|Cl|Iso|Isol|Kl|is)\.(?=[A-Za-z\d])"
    r"|[^\W\d_]+(?:'[A-Za-z]+)?"
)
_TOKEN = re.compile(rf"({_NUMBER}|{_WORD}|\.{{2,}}|.)(-(?=[^\W\d_])|[ \t]*)", re.DOTALL)


class _Folded(dict[str, str]):
    """Lower-cased words without their points, remembered; never more than `LIMIT` of them."""

    LIMIT = 20_000

    def __missing__(self, word: str) -> str:
        if len(self) > self.LIMIT:
            self.clear()
        folded = word.lower()
        if len(folded) > 1 and folded[0].isalpha():
            folded = folded.replace(".", "")
        self[word] = folded
        return folded


_FOLDED = _Folded()


@dataclass(slots=True)
class Scan:
    """A text cut into words: `raw` as written, `words` folded, `gaps` what stands between, `starts` where."""

    text: str
    raw: tuple[str, ...]
    words: tuple[str, ...]
    gaps: tuple[str, ...]
    starts: list[int]

    def end(self, token: int) -> int:
        """Return the place in the text right after a token."""
        return self.starts[token] + len(self.raw[token])

    def glued(self, token: int) -> bool:
        """Say whether nothing but a hyphen stands between a token and the next one."""
        gap = self.gaps[token]
        return not gap or gap == "-"


def scan(text: str, *, plate: bool = False) -> Scan:
    """Cut `text`; tokens and gaps together are the whole cleaned text, in order."""
    pieces = _TOKEN.findall(mend(clean(text), plate=plate))
    if not pieces:
        return Scan(text, (), (), (), [])
    raw, gaps = zip(*pieces, strict=True)
    starts = [0, *accumulate([len(word) + len(gap) for word, gap in pieces])]
    return Scan(text, raw, tuple(map(_FOLDED.__getitem__, raw)), gaps, starts)


# Labels that a plate's scan runs together with their value: `ENCLTEAO`, `ROTCCWLE`, `BRGBALL`.
_RUN_TOGETHER = (
    "enclosure", "encl", "bearings", "bearing", "brg", "rotation", "rot", "ins", "class", "cl", "amb",
    "time", "duty", "mount", "shaft", "type", "prot", "ph", "fr", "single", "three", "thermally", "split",
    "shaded", "ball", "sleeve", "impedance", "hp", "rpm", "resilient", "rigid",
)  # fmt: skip


_CLASSES = frozenset(f"{label}{letter}" for label in ("cl", "ins", "class") for letter in "abfh")


def unjoin(cut: Scan, known: Container[str]) -> Scan:
    """Return the cut with words parted that a scan ran together, where both halves are known."""
    parts: list[tuple[int, int]] = []
    for token, word in enumerate(cut.words):
        if word in _CLASSES:
            parts.append((token, len(word) - 1))
        elif len(word) > 4 and word not in known and word.isalpha():
            for label in _RUN_TOGETHER:
                if word.startswith(label) and word[len(label) :] in known:
                    parts.append((token, len(label)))
                    break
    for token, length in reversed(parts):
        cut = _parted(cut, token, length)
    return cut


def _parted(cut: Scan, token: int, length: int) -> Scan:
    def put(row: tuple[str, ...], one: str, two: str) -> tuple[str, ...]:
        return (*row[:token], one, two, *row[token + 1 :])

    raw, word = cut.raw[token], cut.words[token]
    starts = [*cut.starts[: token + 1], cut.starts[token] + length, *cut.starts[token + 1 :]]
    return Scan(
        cut.text,
        put(cut.raw, raw[:length], raw[length:]),
        put(cut.words, word[:length], word[length:]),
        put(cut.gaps, "", cut.gaps[token]),
        starts,
    )
