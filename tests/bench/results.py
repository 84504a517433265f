"""The document that keeps what the benchmarks and the simulation found, and plain pictures beside it."""

import re
from collections.abc import Sequence
from pathlib import Path

FOLDER = Path(__file__).parent
DOCUMENT = FOLDER / "RESULTS.md"
TITLE = "# What was measured\n\nWritten by the scripts beside it; run them again to write it anew.\n"


def put(heading: str, text: str) -> None:
    """Put a section into the document, in the place of the one with its heading."""
    whole = DOCUMENT.read_text(encoding="utf-8") if DOCUMENT.exists() else TITLE
    section = f"## {heading}\n\n{text.strip()}\n"
    found = re.search(rf"^## {re.escape(heading)}\n.*?(?=^## |\Z)", whole, re.DOTALL | re.MULTILINE)
    if found:
        whole = whole[: found.start()] + section + "\n" + whole[found.end() :]
    else:
        whole = f"{whole.rstrip()}\n\n{section}"
    DOCUMENT.write_text(whole.rstrip() + "\n", encoding="utf-8")


def table(head: Sequence[str], rows: Sequence[Sequence[str]]) -> str:
    """Return a table, the first column to the left, the others to the right."""
    lines = [head, ["---", *["---:"] * (len(head) - 1)], *rows]
    return "\n".join("| " + " | ".join(line) + " |" for line in lines)


WIDE, HIGH, EDGE = 560, 360, 56
_STYLE = "font-family='sans-serif' font-size='12' fill='#333'"


class Picture:
    """A plain drawing of figures between two limits on each axis."""

    def __init__(self, across: tuple[float, float], up: tuple[float, float], title: str) -> None:
        self.across, self.up = across, up
        self.parts = [f"<text x='{EDGE}' y='20' {_STYLE} font-weight='bold'>{title}</text>"]

    def at(self, x: float, y: float) -> tuple[float, float]:
        """Return where a point lies on the drawing."""
        share_x = (x - self.across[0]) / (self.across[1] - self.across[0])
        share_y = (y - self.up[0]) / (self.up[1] - self.up[0])
        return EDGE + share_x * (WIDE - EDGE - 16), HIGH - 40 - share_y * (HIGH - 80)

    def line(self, points: Sequence[tuple[float, float]], colour: str, dash: str = "") -> None:
        """Join points."""
        path = " ".join(f"{x:.1f},{y:.1f}" for x, y in (self.at(*point) for point in points))
        self.parts.append(
            f"<polyline points='{path}' fill='none' stroke='{colour}' stroke-width='2' stroke-dasharray='{dash}'/>"
        )

    def dot(self, x: float, y: float, colour: str, size: float = 4) -> None:
        """Mark a point."""
        across, down = self.at(x, y)
        self.parts.append(f"<circle cx='{across:.1f}' cy='{down:.1f}' r='{size}' fill='{colour}'/>")

    def words(self, x: float, y: float, text: str, anchor: str = "middle", down: float = 0) -> None:
        """Write at a point, `down` pixels lower."""
        across, at = self.at(x, y)
        self.parts.append(
            f"<text x='{across:.1f}' y='{at + down:.1f}' text-anchor='{anchor}' {_STYLE}>{text}</text>"
        )

    def frame(self, xs: Sequence[tuple[float, str]], ys: Sequence[tuple[float, str]]) -> None:
        """Draw the lines of the scale with their words."""
        for x, text in xs:
            self.line([(x, self.up[0]), (x, self.up[1])], "#eee")
            self.words(x, self.up[0], text, down=16)
        for y, text in ys:
            self.line([(self.across[0], y), (self.across[1], y)], "#eee")
            across, down = self.at(self.across[0], y)
            self.parts.append(
                f"<text x='{across - 6:.1f}' y='{down + 4:.1f}' text-anchor='end' {_STYLE}>{text}</text>"
            )

    def save(self, name: str) -> None:
        """Write the drawing beside the document."""
        head = f"<svg xmlns='http://www.w3.org/2000/svg' width='{WIDE}' height='{HIGH}'>"
        body = "\n".join(self.parts)
        back = f"<rect width='{WIDE}' height='{HIGH}' fill='white'/>"
        (FOLDER / name).write_text(f"{head}\n{back}\n{body}\n</svg>\n", encoding="utf-8")
