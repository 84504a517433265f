"""NEMA and IEC frames: behind their label, before the word, or standing alone (`48Y`, `145TC`)."""

import re
from collections.abc import Callable

from matcher.reading.items import Items

_NEMA_FRAME = re.compile(r"(?:42|48|56|66|14[35]|18[24]|21[35]|25[46])[A-Z]{0,3}")
FRAME_NUMBERS = frozenset(["42", "48", "56", "66", "143", "145", "182", "184", "213", "215", "254", "256"])
LONE_FRAMES = frozenset({"48", "56"})
_CELLS = frozenset("/|")
_PREFIXES = frozenset("ABCGHJKLNPRSU")  # `D56` is a British name of IEC frames
_IEC_FRAME = re.compile(r"(?:56|63|71|80|90|100|112|132)[SML]?")
_SUFFIXES = frozenset({"C", "T", "TC", "Y", "Z", "YZ", "H", "HC", "J", "JM", "U"})
_METRIC_SUFFIXES = frozenset("SML")
_BEHIND = frozenset({"frame", "fr", "frm", "frame iec", "frame motor"})
_IEC = frozenset(
    {"iec", "baugröße", "bg", "carcasse", "taille", "iec frame", "iec size", "frame iec"}
    | {"cei", "carcasse cei"}
)


def frame(items: Items, i: int, _value: str) -> None:
    """`FR 48Y`, `56 frame`, `IEC 71`, `IEC71`."""
    j = items.skip(i + 1, 1)
    while items.has(j, "frame") or _leads_on(items, j):
        j = items.skip(j + 1, 1)
    if items.has(j, "num") and _frame_at(items, i, j):
        return
    if items.has(j + 1, "num") and items.raw(j) in _PREFIXES and items.is_glued(j):
        _prefixed(items, i, j)
    elif items.word(i) in _BEHIND:  # `56 frame 5/8 shaft`
        before = i - 2 if items.raw(i - 1) in _SUFFIXES | _METRIC_SUFFIXES else i - 1
        if items.has(before, "num"):
            _frame_at(items, i, before)


def _leads_on(items: Items, j: int) -> bool:
    """`FR. 48`, `FRAME-56`."""
    return (items.plate and items.word(j) == ".") or (items.word(j) == "-" and items.has(j + 1, "num"))


def is_prefixed(text: str) -> bool:
    """Say whether a code is a letter and a frame: `S56`, `C48`."""
    return text[:1] in _PREFIXES and _NEMA_FRAME.fullmatch(text[1:]) is not None


def _prefixed(items: Items, i: int, j: int) -> None:
    """`FR. S56`, `FRAME C48`: some makers set a letter before the number."""
    end = (
        j + 2 if items.is_glued(j + 1) and items.raw(j + 2).isalpha() and len(items.raw(j + 2)) < 3 else j + 1
    )
    code = "".join(items.raw(k).upper() for k in range(j, end + 1))
    if is_prefixed(code):
        items.claim("frame", code, i, end)
        for k in range(i, end + 1):
            items.used[k] = True


def _frame_at(items: Items, i: int, j: int) -> bool:
    """Claim the frame whose number is item `j`; say whether it is one."""
    end = j
    code = items.word(j).upper().lstrip(".")  # `Fr.48Z`
    if (
        end + 1 < len(items)
        and items.is_glued(j)
        and items.raw(j + 1).isalpha()
        and len(items.raw(j + 1)) <= 3
    ):
        end = j + 1
        code += items.raw(end).upper()
    elif (
        items.raw(j + 1) in _SUFFIXES | (_METRIC_SUFFIXES if items.word(i) in _IEC else frozenset())
        and items.word(j + 1).upper() == items.raw(j + 1)
        and not (len(items.raw(j + 2)) == 1 and items.raw(j + 2).isalpha())
    ):
        end = j + 1  # `FR 143 T`, `56 C frame`; not `FR 56 H P 1/2`
        code += items.raw(end)
    elif items.has(j + 1, "frame") and items.has(j, "num") and j < i:
        end = i
    iec = any(items.word(k) in _IEC for k in range(min(i, j), max(i, j) + 1))
    if _NEMA_FRAME.fullmatch(code) and not iec:
        items.claim("frame", code, min(i, j), end)
    elif _IEC_FRAME.fullmatch(code):
        items.claim("frame", f"IEC{code}", min(i, j), end)
    else:
        return False
    for k in range(min(i, j), end + 1):
        items.used[k] = True
    return True


def bare_frame(items: Items, i: int) -> bool:
    """Take `48Y`, `56C`, `143TC` standing alone; bare digits are no frame."""
    if items.numbers[i].text not in FRAME_NUMBERS or not items.is_glued(i):
        return False
    token = items.first[i]
    within = token and items.scan.glued(token - 1) and not (items.plate and items.roles[i - 1])
    if within or items.scan.words[items.last[i] + 2 : items.last[i] + 3] == ["-"]:
        return False  # within a code
    if not items.raw(i + 1).isalpha():
        return False
    letters = items.raw(i + 1).upper()
    code = items.word(i) + letters
    if letters in ("V", "A", "W", "F", "IN") or not _NEMA_FRAME.fullmatch(code):
        return False
    if letters == "C" and items.word(i) not in ("56", "143", "145", "182", "184", "48"):
        return False
    items.claim("frame", code, i, i + 1)
    items.used[i] = items.used[i + 1] = True
    return True


def lone_frame(items: Items, i: int) -> bool:
    """Take `56` that is all of its cell: `1725RPM / 56 / TEFC`, `| 48 |`."""
    if items.numbers[i].text not in LONE_FRAMES or items.raws[i - 1] not in _CELLS:
        return False
    gaps = items.scan.gaps
    behind = items.last[i] + 1
    free = items.raws[i + 1] in _CELLS and gaps[items.first[i] - 1] and gaps[behind - 1] and gaps[behind]
    if not free:
        return False
    items.claim("frame", items.numbers[i].text, i)
    items.used[i] = True
    return True


HANDLERS: dict[str, Callable[[Items, int, str], None]] = {"frame": frame}
