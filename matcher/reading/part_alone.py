"""Whether a text without a title offers a part: `Run capacitor 7.5 MFD. $8`, `Housing, no motor in it`."""

from collections.abc import Sequence

from matcher.reading.claim import Claim
from matcher.reading.items import Items
from matcher.reading.things import things

_FIRST_WORDS = 6
_SAID_OF_MOTORS = frozenset({"motor", "bearing", "protector", "turn", "turnview", "either", "frame"})
_OF_TURN = frozenset({"turn", "turnview", "either"})
_OTHERS = frozenset({"for", "from", "off", "fits", "to fit", "out of", "for a", "from a", "off a", "fits a"})
_DENY = frozenset({"no", "without", "w/o", "with", "w/", "less", "minus", "plus", "and", "+", "&"})
_OF_SALE = frozenset({"price", "shipping", "condition", "quantity"})
_MOTOR_FACTS = frozenset(
    {
        "power_hp",
        "rpm",
        "rpm_range",
        "phase",
        "frame",
        "enclosure",
        "motor_type",
        "speeds",
        "service_factor",
        "insulation_class",
        "volts",
        "hertz",
    }
)
_ENOUGH = 3


def is_part_alone(items: Items, claims: Sequence[Claim], *, no_motor: bool) -> bool:
    """Say whether the first line names a part as what is for sale, and rates no motor.

    `no_motor` says that the text tells that there is no motor with it.
    """
    stop = next((i for i in range(1, items.head) if _leads_to_others(items.word(i))), items.head)
    part = _named(items, stop)
    if part is None:
        return False
    if no_motor:
        return True
    name = items.word(part).split(" ")
    if not _closes(items, part, stop):
        return False
    if _is_of_motor(items, stop, name) or not _goes_on(items, claims):
        return False
    facts = {claim.field for claim in claims} & _MOTOR_FACTS
    facts -= {"volts", "hertz"} if not things("electric").isdisjoint(name) else set()
    return len(facts) < _ENOUGH


def _leads_to_others(word: str) -> bool:
    return word in _OTHERS or word[:4] == "for "


def _named(items: Items, stop: int) -> int | None:
    """Return the part among the first words of the line; nothing when a motor is named before or with it."""
    count = 0
    for i in range(stop):
        word = items.word(i)
        if items.clause[i] != items.clause[0] and count:
            return None  # `old furnace blower, wheel is shot`
        if not word[:1].isalnum():
            continue
        if not things("part").isdisjoint(word.split(" ")) and items.word(i - 1) not in _DENY:
            return None if _said_of_it(items, i) else i
        count += sum(piece not in things("leads_in") for piece in word.split(" "))
        if count >= _FIRST_WORDS:
            return None
    return None


def _closes(items: Items, part: int, stop: int) -> bool:
    """Say whether the name of a part ends there: at a stop, a figure, a word that describes it."""
    k = part + 1
    while k < stop and (
        items.word(k) in ("and", "&", "+", "a") or not things("part").isdisjoint(items.word(k).split(" "))
    ):
        k += 1
    if k >= stop or "num" in items.roles[k] or not items.word(k)[0].isalnum():
        return True
    if items.word(k - 1)[-4:] == " for":
        return True
    return items.word(k).split(" ")[0] in things("closes") or "moduleonly" in items.roles[k]


def _said_of_it(items: Items, i: int) -> bool:
    """`Capacitor included.`, `the housing was rusted`, `wheel and motor`: it isn't sold by itself."""
    if "moduleonly" in items.roles[i + 1]:
        return False
    following = items.word(i + 1).split(" ")[0]
    if following in ("and", "&", "+", "with"):
        return any("motor" in items.roles[k] for k in range(i + 2, min(len(items), i + 5)))
    return (
        following in things("said_of_it")
        or "absent" in items.roles[i + 1]
        or "supplied" in items.roles[i + 1]
    )


def _is_of_motor(items: Items, stop: int, name: list[str]) -> bool:
    """Say whether the line tells of a motor: its rating, its bearings, or the word itself."""
    electric = not things("electric").isdisjoint(name)
    units = {"hp", "rpm"} if electric else {"hp", "v", "rpm", "A", "a"}
    fair = _OF_TURN if not things("turning").isdisjoint(name) else frozenset()
    for i in range(stop):
        roles = items.roles[i]
        if "num" in roles and items.said(i + 1, "unit") in units:
            return True
        if items.word(i + 1) == ":" or things("of_motors") & set(items.word(i).split(" ")):
            return True
        if "motor" in roles and not names_part(items.scan.words, items.last[i] + 1):
            return True
        if not (_SAID_OF_MOTORS - fair - {"motor"}).isdisjoint(roles):
            return True
        if (
            roles.get("fact", "mounting")[:8] != "mounting"
            and "plug" not in roles
            and "shaft" not in roles["fact"]
        ):
            return True
    return False


def names_part(words: Sequence[str], token: int) -> bool:
    """Say whether a part is named from a token on: behind `motor`, `bracket`, `run capacitor`."""
    while token < len(words) and words[token] in things("between") and words[token] not in things("part"):
        token += 1
    return token < len(words) and words[token] in things("part")


def _goes_on(items: Items, claims: Sequence[Claim]) -> bool:
    """Say whether there is more than a line with a part: it may be all that was left of a plate."""
    more = any(items.word(i)[:1].isalnum() for i in range(items.head, min(len(items), items.head + 4)))
    return more or any(claim.field in _OF_SALE for claim in claims)
