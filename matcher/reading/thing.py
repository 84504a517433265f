"""What is for sale: a motor (said nothing), an electronic module alone, or a part of something."""

from matcher.reading.items import Claim, Items

_PARTS = frozenset(
    [
        "wheel",
        "wheels",
        "blade",
        "blades",
        "bracket",
        "brackets",
        "capacitor",
        "capacitors",
        "harness",
        "housing",
        "adapter",
        "bushing",
        "relay",
        "board",
        "transformer",
        "hub",
        "pulley",
        "sheave",
        "mount",
        "cage",
        "grommet",
        "grommets",
        "rings",
        "ring",
        "contactor",
        "belt",
        "filter",
        "coil",
        "cord",
        "cover",
        "grille",
        "guard",
        "louver",
        "shroud",
        "propeller",
        "impeller",
        "band",
        "straps",
        "strap",
        "plug",
        "connector",
        "cap",
        "caps",
        "fuse",
        "switch",
        "clamp",
        "feet",
        "lüfterrad",
        "squirrel",
        "stator",
        "rotor",
    ]
)
# Words that a part isn't described by: a title with one of them is about a motor.
_OF_MOTORS = frozenset(["hp", "rpm", "ecm", "psc", "split", "shaded", "tefc", "tenv", "teao", "odp", "oao"])
_MOTORS = frozenset(
    ["motor", "motors", "elektromotor", "moteur", "drehstrommotor", "moter", "mtr", "ventilatormotor"]
)
_MODULES = frozenset({"module", "modules", "modul", "brain"})
_FIRST_WORDS = 5
_SAID_OF_MOTORS = frozenset({"motor", "bearing", "protector", "turn", "turnview", "either", "frame"})
_OTHERS = frozenset({"for", "from", "off", "fits", "to fit", "out of", "for a", "from a", "off a", "fits a"})
_KITS = frozenset({"kit", "kits"})
_LINKS = frozenset(
    {"for", "with", "w/", "from", "off", "fits", "without", "w", "para", "für", "pour", "to", "w/o", "of"}
)


def kind_of_thing(parts: list[Items], claims: list[Claim]) -> list[Claim]:
    """Return the claims on `item` and `module` that follow from what the title (or text) is about."""
    head = parts[0]
    words = tuple(word for word in head.scan.words[:24] if word != "-")
    about = _about(words, title=head.source == "title", plate=head.plate)
    alone = [claim for claim in claims if claim.field == "module_alone"]
    claims[:] = [claim for claim in claims if claim.field != "module_alone"]
    if about == "motor" and head.source == "text" and not head.plate and _is_part_alone(head):
        about = "part"
    if about == "part" and not (alone and _speaks_of_module(parts)):
        return [Claim("item", "part", head.source, head.span(0, max(0, min(len(head), 4) - 1)), -1)]
    if about == "module" and not any(claim.value == "without" for claim in claims if claim.field == "module"):
        where = next(
            (i for i in range(len(head)) if "module" in head.roles[i] or "moduleonly" in head.roles[i]), 0
        )
        return _module(head.source, head.span(where, where))
    if alone and _speaks_of_module(parts):
        return _module(alone[0].source, alone[0].span)
    return []


def first_line(items: Items) -> int:
    """Return how many items the first line with words in it takes; in a long line, its first sentence."""
    i = 0
    while i < len(items) and items.word(i) == "\n":
        i += 1
    first = i
    while i < len(items) and items.segment[i] == items.segment[first]:
        i += 1
    return i


def _is_part_alone(items: Items) -> bool:
    """`Squirrel cage wheel 11 x 10`: the first line names a part among its first words and rates no motor."""
    stop = next((i for i in range(items.head) if items.word(i) in _OTHERS), items.head)
    line = range(stop)
    words = [items.word(i) for i in line if items.word(i)[:1].isalnum()]
    named = [k for k, word in enumerate(words) if not _PARTS.isdisjoint(word.split())]
    rated = any(
        items.has(i, "num") and not {"hp", "v", "rpm", "A", "a"}.isdisjoint((items.said(i + 1, "unit"), "-"))
        for i in line
    )
    labels = any(items.word(i + 1) == ":" for i in line)
    motor = any(
        not _SAID_OF_MOTORS.isdisjoint(items.roles[i])
        or items.roles[i].get("fact", "mounting")[:8] != "mounting"
        or _OF_MOTORS & set(items.word(i).split())
        for i in line
    )
    goes_on = any(items.word(i)[:1].isalnum() for i in range(items.head, min(len(items), items.head + 4)))
    return goes_on and bool(named) and named[0] < _FIRST_WORDS and not (rated or labels or motor)


def _module(source: str, span: tuple[int, int]) -> list[Claim]:
    return [Claim("item", "module", source, span, -1), Claim("module", "module_only", source, span, -1, 2)]


def _speaks_of_module(parts: list[Items]) -> bool:
    return any(not _MODULES.isdisjoint(items.scan.words) for items in parts)


def _about(words: tuple[str, ...], *, title: bool, plate: bool) -> str:
    """Return `motor`, `module` or `part` by the first words, up to `for`, `with`."""
    stop = next(
        (
            k
            for k, word in enumerate(words)
            if word in _LINKS or (not title and not plate and word in ".\n;|")
        ),
        len(words),
    )
    head = words[:stop]
    for k, word in enumerate(head):
        if word in _MOTORS and (k + 1 == len(head) or head[k + 1] not in _PARTS | _MODULES | {"control"}):
            return "motor"
    if not _MODULES.isdisjoint(head):
        return "module"
    if title and _KITS & set(head):
        return "part"
    if not title or _PARTS.isdisjoint(head) or not _OF_MOTORS.isdisjoint(head):
        return "motor"
    return "part"
