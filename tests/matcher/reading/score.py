"""Score a reader against a corpus with keys: precision and recall by field, conflicts found.

Run as a script: `python -m tests.matcher.reading.score [--held-out | --all] [--errors] FILE...`.
Records whose id ends in a number that 3 divides are the held-out third; they are left alone unless
asked for.
"""

import argparse
import json
import re
import sys
from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from matcher.reading import read_listing, read_plate
from matcher.record import Record

Key = dict[str, Any]
_OPPOSITE = {"cw": "ccw", "ccw": "cw"}


@dataclass
class Score:
    right: Counter[str] = field(default_factory=Counter)
    wrong: Counter[str] = field(default_factory=Counter)
    missing: Counter[str] = field(default_factory=Counter)
    conflicts_due: int = 0
    conflicts_found: int = 0
    conflicts_false: int = 0
    errors: list[str] = field(default_factory=list)

    def precision(self, name: str = "") -> float:
        right, wrong = self._sum(self.right, name), self._sum(self.wrong, name)
        return right / (right + wrong) if right + wrong else 1.0

    def recall(self, name: str = "") -> float:
        right, missing = self._sum(self.right, name), self._sum(self.missing, name)
        return right / (right + missing) if right + missing else 1.0

    @staticmethod
    def _sum(counts: Counter[str], name: str) -> int:
        return counts[name] if name else counts.total()


def held_out(key: Key) -> bool:
    found = re.search(r"(\d+)$", key["id"])
    return bool(found) and int(found[1]) % 3 == 0


def load(paths: Iterable[Path], part: str = "development") -> list[Key]:
    keys = [
        json.loads(line) | {"plate": "plate" in path.stem}
        for path in paths
        for line in path.read_text(encoding="utf-8").splitlines()
        if line.strip()
    ]
    if part == "all":
        return keys
    return [key for key in keys if held_out(key) == (part == "held-out")]


def equal(one: Any, two: Any) -> bool:
    if isinstance(one, bool) or isinstance(two, bool):
        return one is two
    if isinstance(one, (int, float)) and isinstance(two, (int, float)):
        return abs(one - two) <= max(0.002, 0.005 * abs(two))
    if isinstance(one, list) and isinstance(two, list):
        if len(one) != len(two):
            return False
        if all(isinstance(value, str) for value in one + two):
            return sorted(one) == sorted(two)
        return all(map(equal, one, two))
    if isinstance(one, str) and isinstance(two, str):
        return " ".join(one.split()) == " ".join(two.split())
    return bool(one == two)


def turn_of(facts: Key) -> Any:
    """`turn` and `seen_from` count as one, told from the lead end."""
    if "turn" not in facts:
        return None
    turn, view = facts["turn"], facts.get("seen_from")
    if view == "shaft_end":
        turn, view = _OPPOSITE[turn], "lead_end"
    return [turn, view or ""]


def read(key: Key) -> Record:
    return read_plate(key["text"]) if key["plate"] else read_listing(key["text"], key.get("title", ""))


def score(keys: Iterable[Key]) -> Score:
    total = Score()
    for key in keys:
        _score_one(total, key, read(key))
    return total


def _score_one(total: Score, key: Key, record: Record) -> None:
    due, got = dict(key["facts"]), record.facts.said()
    either = dict(key.get("either", {}))
    clashes = {conflict.field for conflict in record.conflicts}
    clashes = {"turn" if name == "seen_from" else name for name in clashes}
    for facts in (due, got):
        facts["turn"] = turn_of(facts)
        facts.pop("seen_from", None)
        if facts["turn"] is None:
            del facts["turn"]
    for name in sorted(set(due) | set(got)):
        _score_field(total, key["id"], name, due, got, either)
    wanted = {"turn" if name == "seen_from" else name for name in key.get("conflicts", [])}
    total.conflicts_due += len(wanted)
    total.conflicts_found += len(wanted & clashes)
    optional = {name for name, values in either.items() if None in values}
    total.conflicts_false += len(clashes - wanted - optional)
    for name in wanted ^ clashes:
        if name not in optional:
            total.errors.append(f"{key['id']} conflict {name}: due {name in wanted}, found {name in clashes}")


def _score_field(total: Score, name: str, field_name: str, due: Key, got: Key, either: Key) -> None:
    allowed = either.get(field_name, [])
    if field_name in got:
        if (field_name in due and equal(got[field_name], due[field_name])) or any(
            equal(got[field_name], value) for value in allowed if value is not None
        ):
            total.right[field_name] += 1
        else:
            total.wrong[field_name] += 1
            if field_name in due:
                total.missing[field_name] += 1
            total.errors.append(f"{name} {field_name}: got {got[field_name]!r}, due {due.get(field_name)!r}")
    elif None not in allowed:
        total.missing[field_name] += 1
        total.errors.append(f"{name} {field_name}: missing {due[field_name]!r}")


def report(total: Score) -> str:
    lines = [f"{'field':20} {'right':>6} {'wrong':>6} {'missing':>8} {'prec.':>7} {'recall':>7}"]
    lines += [
        f"{name:20} {total.right[name]:6} {total.wrong[name]:6} {total.missing[name]:8} "
        f"{total.precision(name):7.3f} {total.recall(name):7.3f}"
        for name in sorted({*total.right, *total.wrong, *total.missing})
    ]
    lines.append(
        f"{'all':20} {total.right.total():6} {total.wrong.total():6} {total.missing.total():8} "
        f"{total.precision():7.3f} {total.recall():7.3f}"
    )
    lines.append(
        f"conflicts: {total.conflicts_found} of {total.conflicts_due} found, {total.conflicts_false} false"
    )
    return "\n".join(lines)


def main() -> None:
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("files", nargs="+", type=Path)
    options.add_argument("--held-out", dest="part", action="store_const", const="held-out")
    options.add_argument("--all", dest="part", action="store_const", const="all")
    options.add_argument("--errors", action="store_true")
    chosen = options.parse_args()
    total = score(load(chosen.files, chosen.part or "development"))
    if chosen.errors:
        sys.stdout.write("\n".join(total.errors) + "\n")
    sys.stdout.write(report(total) + "\n")


if __name__ == "__main__":
    main()
