"""What is for sale: a motor (said nothing), an electronic module alone, or a part of something."""

from matcher.reading.items import Claim, Items

_PARTS = frozenset(
    [
        "wheel",
        "blade",
        "bracket",
        "capacitor",
        "harness",
        "housing",
        "adapter",
        "bushing",
        "relay",
        "board",
        "transformer",
        "hub",
        "pulley",
        "mount",
        "kit",
        "cage",
        "grommet",
        "grommets",
        "rings",
        "thermostat",
        "contactor",
        "control",
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
        "fuse",
        "switch",
        "wheels",
        "blades",
        "caps",
        "capacitors",
        "clamp",
        "feet",
        "lüfterrad",
    ]
)
_LINKS = frozenset({"for", "with", "w/", "from", "off", "to", "fits", "without"})
_MOTORS = frozenset(["motor", "motors", "elektromotor", "moteur"])


def kind_of_thing(parts: list[Items], claims: list[Claim]) -> list[Claim]:
    """Return the claims on `item` and `module` that follow from what the title (or text) is about."""
    head = parts[0]
    module_only = next((claim for claim in claims if claim.value == "module_only"), None)
    words = [head.word(i) for i in range(min(len(head), 14))]
    about = _about(words)
    if about == "part" and module_only is None:
        return [Claim("item", "part", head.source, head.span(0, len(words) - 1), -1)]
    if module_only is None and about == "module":
        module_only = Claim("module", "module_only", head.source, head.span(0, len(words) - 1), -1, 2)
        return [module_only, Claim("item", "module", head.source, module_only.span, -1)]
    if module_only:
        return [Claim("item", "module", module_only.source, module_only.span, -1)]
    return []


def _about(words: list[str]) -> str:
    """Return `motor`, `module` or `part` by the first words, up to `for`, `with`."""
    head = words[: next((k for k, word in enumerate(words) if word in _LINKS), len(words))]
    for k, word in enumerate(head):
        if word in _MOTORS and (k + 1 == len(head) or head[k + 1] not in _PARTS):
            return "motor"
    if any("module" in word for word in head):
        return "module" if _MOTORS.isdisjoint(words) else "motor"
    return "part" if any(word in _PARTS for word in head) else "motor"
