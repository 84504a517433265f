"""Words that are a fact by themselves, and labels whose value is a letter, a code or a temperature."""

import re
from collections.abc import Callable

from matcher.reading.denial import absent, denied, is_none, is_refused
from matcher.reading.items import Items

Handler = Callable[[Items, int, str], None]
_VALUES: dict[str, object] = {"true": True, "false": False, "0": 0, "1": 1, "2": 2, "3": 3}
# `Totally enclosed` in a title, `TEAO` on the tag: the fuller one counts.
_VAGUE = frozenset({"totally enclosed", "tot encl", "totally encl", "tot enclosed", "fully enclosed", "te"})
_TAKES_NO = frozenset(
    {"phase", "mounting", "enclosure", "control_signal", "explosion_proof", "duty", "shaft_ends"}
    | {"shaft_position", "motor_type"}
)
_NOT_ADVISED = frozenset({"not recommended", "not allowed", "not ok", "not advised", "prohibited", "not"})
# The key may be lost while its keyway is there: `no key with it but the shaft is keyed`.
_OF_KEY_ALONE = frozenset({"no key", "without key"})


_NEAR = 6
_ON_CONDITION = frozenset({"if", "when", "only", "unless", "where", "should"})
_VERBS = 4  # items
_ARTICLES = frozenset({"the", "my", "our", "your", "a", "its"})
_FROM = frozenset({"from", "by", "off", "to", "with"})
_ARMS = ("arm", "leg")


def _of_band(items: Items, i: int) -> bool:
    """`belly band with three arms`: the arms are the band's."""
    if not items.word(i).rstrip("s").endswith(_ARMS):
        return False
    near = range(max(0, i - _NEAR), i)
    return any(
        "mounting=band" in (items.said(j, "fact"), items.said(j, "weak"))
        and items.segment[j] == items.segment[i]  # `belly band, 4 arm`
        for j in near
    )


def _is_a_thing(items: Items, i: int) -> bool:
    """`the thermostat was fine`, `thermostat sold separately`: the thing on the wall, not how it is told."""
    told = items.word(i - 1) in _ARTICLES and items.word(i - 2) not in _FROM
    return (
        told
        or "absent" in items.roles[i + 1]
        or items.word(i + 1).split(" ")[0] in ("sold", "not", "was", "is")
    )


def _on_another(items: Items, i: int) -> bool:
    """`ears on the wheel housing`: of another thing."""
    if items.word(i + 1) not in ("on", "of") or items.word(i + 2) not in _ARTICLES:
        return False
    return items.said(i + 3, "subject") == "other" and items.clause[i] == items.clause[i + 3]


def fact(items: Items, i: int, value: str) -> None:
    """`belly band` -> mounting band; denied or absent ones give nothing."""
    field, _, said = value.partition("=")
    if field in _TAKES_NO and (denied(items, i) or is_none(items, i)):
        return
    if _is_turned_away(items, i, value) or _is_of_number(items, i):
        return
    if field == "mounting":
        if not absent(items, i) and not _of_band(items, i) and not _on_another(items, i):
            items.claim(field, tuple(said.split(",")), i)
        return
    vague = (field == "enclosure" and items.word(i) in _VAGUE) or items.word(i) in _OF_KEY_ALONE
    vague = vague or items.word(i) == "one shaft"  # `one shaft has a flat` counts nothing
    items.claim(field, _VALUES.get(said, said), i, strength=0 if vague else 1)
    if said == "polyphase" and _THREE.search(items.word(i)):
        items.claim("phase", 3, i)  # `3 PH INDUCTION MOTOR`


def _is_turned_away(items: Items, i: int, value: str) -> bool:
    """Say whether the words beside a fact take it back: each kind of fact has its own."""
    if value == "explosion_proof=true":
        return is_refused(items, i)
    if value == "control_signal=thermostat":
        return items.word(i) == "thermostat" and _is_a_thing(items, i)
    if value == "return_shipping=seller":  # `return freight is on us if we sent the wrong one`
        return items.word(i + 1).split(" ")[0] in _ON_CONDITION
    return value[:14] == "shaft_position" and (items.word(i + 1) in _NOT_ADVISED or _is_warned_of(items, i))


def _is_of_number(items: Items, i: int) -> bool:
    """`TE-HALF-E`: a piece of a number."""
    return items.word(i) == "te" and items.is_glued(i) and items.word(i + 1)[:1].isalnum()


def _is_warned_of(items: Items, i: int) -> bool:
    """`do not hang it shaft down`: `not`, a verb or two, and the position."""
    before = range(i - 1, max(-1, i - 1 - _VERBS), -1)
    return any("not" in items.roles[j] and items.clause[j] == items.clause[i] for j in before)


def weak(items: Items, i: int, value: str) -> None:
    """`stud`, `band`, `open`: facts only right behind their label (`Mount Stud`, `ENCL OPEN`)."""
    if value == "mounting=studs":
        fact(items, i, value)
        return
    if items.plate and value == "mounting=band" and "bearing" in {**items.roles[i - 1], **items.roles[i + 1]}:
        fact(items, i, value)  # `BB BAND`
        return
    if (
        items.plate
        and value == "enclosure=ODP"
        and items.word(i - 1) != "not"
        and items.word(i + 1) not in ("when", "before", "air")
    ):
        fact(items, i, value)
        return
    label = items.skip(i - 1, -1)
    named = any(items.has(j, kind) for j in (label, i + 1) for kind in ("fill0", "encl"))
    if (
        named
        or alone(items, i)
        or (value[:8] == "mounting" and (_among_mountings(items, i) or _on_circle(items, i)))
    ):
        fact(items, i, value)


def alone(items: Items, i: int, width: int = 1) -> bool:
    """Say whether an item, or `width` of them from it on, is all of its clause."""
    opens = i == 0 or items.clause[i - 1] != items.clause[i] or not items.word(i - 1)[0].isalnum()
    opens = opens or "." in items.scan.gaps[items.last[i - 1]]  # `Sleeve brg. Open.`
    behind = i + width
    return opens and (behind >= len(items) or items.clause[behind] != items.clause[i])


def _among_mountings(items: Items, i: int) -> bool:
    """`belly band or stud`, `band/stud`: beside another kind of mounting."""
    for step in (-1, 1):
        if items.word(i + step) in ("or", "/", "and", "&"):
            roles = items.roles[i + 2 * step] if 0 <= i + 2 * step < len(items) else {}
            if "mounting" in roles.get("fact", "") or "mounting" in roles.get("weak", ""):
                return True
    return False


def _on_circle(items: Items, i: int) -> bool:
    """`studs, 3-3/8 bc`: a bolt circle in the same sentence says that they hold the motor."""
    return any(
        items.said(j, "subject") == "bolt"
        for j in range(max(0, i - 6), min(len(items), i + 8))
        if items.segment[j] == items.segment[i]
    )


def protector(items: Items, i: int, value: str) -> None:
    """Thermal protection; `manual` or `auto` alone only beside a word for the protector."""
    word = items.word(i)
    if (
        word in ("auto", "automatic", "manual", "tp", "impedance", "zp", "imp")
        and not (alone(items, i) or any(items.has(j, "protlabel") for j in (i - 1, i - 2, i + 1)))
        and (word not in ("tp", "zp") or not items.plate)
        and not (items.plate and _closes_line(items, i))
    ):
        return
    if denied(items, i):
        value = "none"
    strength = 2 if value in ("manual", "impedance", "none") else 1
    items.claim("protector", value, i, strength=strength)


_THREE = re.compile(r"^3|three|triphas|trifas|trifás|drehstrom")
_THICKEST = 1.63  # inch; of a shaft


def _closes_line(items: Items, i: int) -> bool:
    """`CCWLE AUTO`: behind another fact, at the end of its line on a plate."""
    return not _SAID_BEFORE.isdisjoint(items.roles[i - 1]) and items.word(i + 1) in ("\n", "")


_SAID_BEFORE = frozenset({"turn", "turnview", "fact", "bearing"})
_LOOSE = frozenset(
    {
        "rund",
        "rond",
        "redondo",
        "redonda",
        "tondo",
        "round",
        "rd",
        "rnd",
        "flat",
        "a flat",
        "has the flat",
        "flat side",
        "flat spot",
        "plana",
    }
)
_BARE_FLATS = frozenset({"flat", "a flat", "with flat", "with a flat", "has a flat"})


def flats(items: Items, i: int, value: str) -> None:
    """Flats of the shaft, counted (`2 flats`, `Flats: 1`) or named."""
    counted = _counted_flats(items, i)
    if counted is not None:
        items.used[counted] = True
        items.claim("shaft_flats", int(items.numbers[counted].value or 0), i, counted, 2)
        return
    about = items.word(i) in ("rund", "rond") and items.has(i + 1, "num")  # `rund 12 mm`: about
    about = about or (items.word(i) == "rd" and items.is_glued(i - 1))  # `3rd`
    if (
        value == "-"
        or about
        or items.word(i + 1) in ("rate", "can")
        or (items.word(i) in _LOOSE and not _of_shaft(items, i))
    ):
        return
    if value == "0" and "round" in items.word(i) and _has_flat(items, i):
        return
    value = "0" if denied(items, i) else value
    items.claim("shaft_flats", int(value), i, strength=1 if items.word(i) in _BARE_FLATS else 2)


def _has_flat(items: Items, i: int) -> bool:
    """`round with one flat`, `5-5/8 round`: not the bare round of a shaft."""
    for j in range(i + 1, min(len(items), i + 4)):
        if items.segment[j] == items.segment[i] and items.said(j, "flats") in ("1", "2"):
            return not denied(items, j)
    j = i - 2 if items.said(i - 1, "after") == "in" else i - 1
    number = items.numbers.get(j)
    if number is None or (number.value or 0.0) <= _THICKEST or items.word(i) != "round":
        return False
    of_shaft = any(items.said(k, "subject") == "shaft" for k in range(max(0, j - _NEAR), i + 2))
    return not (of_shaft or items.has(j - 1, "by"))


def _counted_flats(items: Items, i: int) -> int | None:
    """Return the number that counts the flats: right before the word, or behind it and a colon."""
    long = (
        items.word(i) == "flat" and items.has(i - 2, "by") and not items.has(i - 4, "by")
    )  # `5/16X2 FLAT`: as long as that
    places = [i - 1] if items.said(i, "after") == "flat" and not long else []
    if items.word(i) in ("flats", "number of flats"):
        places.append(items.skip(i + 1, 1))
    for j in places:
        if items.has(j, "num") and items.clause[j] == items.clause[i] and not items.used[j]:
            return j if items.numbers[j].value in (0, 1, 2) else None
    return None


def _of_shaft(items: Items, i: int) -> bool:
    if items.has(i - 1, "num") and items.has(i - 2, "by"):
        return True  # `1/2 X 4 FLAT`
    near = range(max(0, i - 16), min(len(items), i + 4))
    before = items.segment[i] - alone(items, i)  # `Shaft 1/2 x 5; flat`
    return any(
        items.said(j, "subject") in ("shaft", "shaft_length")
        for j in near
        if before <= items.segment[j] <= items.segment[i]
    )


def no_protection(items: Items, i: int, _value: str) -> None:
    """`Thermal prot: none`."""
    j = items.skip(i + 1, 1)
    if items.word(j) == "none":
        items.claim("protector", "none", i, j, 3)


def key(items: Items, i: int, _value: str) -> None:
    """`5/8 KEY`, `with 5 mm key`: a key in a sentence about the shaft."""
    if _of_shaft(items, i) and not denied(items, i):
        items.claim("shaft_keyed", True, i)


def position(items: Items, i: int, _value: str) -> None:
    """`Shaft pos.: up`: a label for the position, and the position."""
    j = items.skip(i + 1, 1)
    said = {"up": "up", "down": "down", "any": "any", "all": "any", "horizontal": "horizontal"}.get(
        items.word(j)
    )
    if said and items.word(j + 1) not in ("or", "/", "and"):
        items.claim("shaft_position", said, i, j)


HANDLERS: dict[str, Handler] = {
    "fact": fact,
    "weak": weak,
    "protector": protector,
    "protlabel": no_protection,
    "flats": flats,
    "key": key,
    "poslabel": position,
}
