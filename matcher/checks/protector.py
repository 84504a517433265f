"""Is it protected against overheating as the old one was?"""

from matcher.finding import Finding
from matcher.judging import answer
from matcher.judging.answer import Answer
from matcher.judging.pair import Pair, Reads

HARD = False
READS = Reads(old=("protector",), new=("protector",))
SETTLED = Reads(old=("protector",), new=("protector",))
_SAID = {
    "auto": "an automatic protector",
    "manual": "a protector reset by hand",
    "impedance": "impedance protection",
    "none": "no protector",
}


def judge(pair: Pair) -> Finding | None:
    """Compare protectors; does not apply where the old one has none or doesn't say."""
    old, new = pair.old.protector, pair.new.protector
    if "protector" in pair.contradicted_old:
        answered = answer.unknown("The old plate says its protector twice and differently.", "old.protector")
        return answer.finding("protector", answered, values=("", _SAID.get(new or "", "")))
    if old is None or old == "none":
        return None
    return answer.finding("protector", _answer(old, new), values=(_SAID[old], _SAID.get(new or "", "")))


def _answer(old: str, new: str | None) -> Answer:
    if new is None:
        return answer.unknown(
            f"Whether it is protected isn't said; the old one has {_SAID[old]}.", "protector"
        )
    words = f"It has {_SAID[new]}, the old one {_SAID[old]}"
    if new == "none":
        return answer.loses(0.6, f"{words}: nothing stops it when it overheats.", poor=True)
    if (old, new) == ("manual", "auto"):
        return answer.loses(0.4, f"{words}: it restarts by itself, so keep hands away.")
    if old == new:
        return answer.same(f"It has {_SAID[new]}, as the old one.")
    return answer.ok(f"{words}: either protects it.")
