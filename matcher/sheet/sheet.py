"""The sheet itself: rows of `data/sheet_steps.tsv` that hold for this job, filled with its facts."""

from collections.abc import Mapping
from dataclasses import dataclass

from matcher.finding import Verdict
from matcher.sheet.conditions import Swap, holds
from matcher.sheet.words import words_for
from matcher.tables import rows

PARTS = {
    "caution": "Cautions",
    "tool": "Tools",
    "before": "Before it comes apart: write down",
    "out": "Take out",
    "prepare": "Prepare the new motor",
    "in": "Put back",
    "run": "First start",
}
"""The parts of a sheet in their order, with their headings."""
UNNUMBERED = ("caution", "tool")


@dataclass(frozen=True, slots=True)
class Line:
    """One caution, tool or step; `blank` is what is filled in by hand."""

    name: str
    text: str
    blank: str
    source: str
    note: str = ""
    """What was already written down beside it; it stands in the place of the blank."""

    @property
    def filled(self) -> str:
        """Return the note, or the blank to fill in."""
        return self.note or self.blank


@dataclass(frozen=True, slots=True)
class Sheet:
    """A swap sheet: its title and, by part, its lines."""

    title: str
    parts: dict[str, tuple[Line, ...]]
    warning: str = ""
    """Why the rules don't let this motor go in without more; empty when it fits."""

    @property
    def blanks(self) -> tuple[Line, ...]:
        """Return the lines beside which something is written down."""
        return tuple(line for part in self.parts.values() for line in part if line.blank)

    def names(self) -> tuple[str, ...]:
        """Return the names of all lines in their order."""
        return tuple(line.name for part in self.parts.values() for line in part)

    def as_text(self) -> str:
        """Return the sheet as plain text, steps numbered through, sources left out."""
        out = [self.title, "=" * len(self.title)]
        out += ["", f"!! {self.warning}"] if self.warning else []
        number = 0
        for part, heading in PARTS.items():
            out += ["", heading, "-" * len(heading)] if self.parts[part] else []
            for line in self.parts[part]:
                number += part not in UNNUMBERED
                mark = "!" if part == "caution" else "[ ]" if part == "tool" else f"{number}."
                out.append(" ".join(filter(None, (mark, line.text, line.filled))))
        return "\n".join(out) + "\n"

    def as_json(self) -> dict[str, object]:
        """Return the sheet as JSON holds it."""
        return {
            "title": self.title,
            "warning": self.warning,
            "parts": {
                part: [
                    {
                        "name": line.name,
                        "text": line.text,
                        "blank": line.blank,
                        "note": line.note,
                        "source": line.source,
                    }
                    for line in kept
                ]
                for part, kept in self.parts.items()
            },
        }


def swap_sheet(swap: Swap, notes: Mapping[str, object] | None = None) -> Sheet:
    """Return this job's sheet; `notes` maps a step's name to what was already written down for it."""
    words = words_for(swap)
    parts: dict[str, list[Line]] = {part: [] for part in PARTS}
    for row in rows("sheet_steps"):
        if holds(row["when"], swap):
            text = row["text"].format_map(words).strip()
            note = str((notes or {}).get(row["name"]) or "").strip()
            parts[row["part"]].append(Line(row["name"], text, row["blank"], row["source"], note))
    return Sheet(_title(swap), {part: tuple(kept) for part, kept in parts.items()}, _warning(swap))


WARNINGS: Mapping[Verdict | None, str] = {
    Verdict.WONT_FIT: "Stop: by the rules it doesn't fit.",
    Verdict.POOR: "By the rules it is a poor stand-in.",
    Verdict.ASK: "Not everything that must match is known; settle it before anything comes apart.",
}


def _warning(swap: Swap) -> str:
    words = WARNINGS.get(swap.judgement.verdict)
    return f"{words} {swap.judgement.reason}".strip() if words else ""


def _title(swap: Swap) -> str:
    old = " ".join(filter(None, (swap.old.brand, swap.old.part_number))) or "the old motor"
    new = " ".join(filter(None, (swap.new.brand, swap.new.part_number))) or "the new motor"
    return f"Swap sheet: {new} for {old}"
