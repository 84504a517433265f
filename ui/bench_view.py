"""Which part failed: the bench tests in their order, the next one marked, and what they say so far."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from matcher.cautions import cautions_for
from matcher.rest import Rest
from matcher.triage.bench import BenchTest, bench_for
from matcher.triage.health import TOLERANCE
from matcher.triage.readings import SKIPPED
from ui.caution import Caution
from ui.choice_row import ChoiceRow
from ui.entry_row import Typed
from ui.line import Heading, Line, Soft, Trouble
from ui.theme import GRID, bold

TEXT_WIDTH = 44 * GRID


class _TestRow(QWidget):
    """One test: its question, how to do it, and the answer."""

    answered = Signal(str, str)

    def __init__(self, test: BenchTest, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.test = test
        self.question, self.trouble = Line(test.question), Trouble()
        words = {word: self.tr(word) for word in test.choices} | {SKIPPED: self.tr("not now")}
        self.choice = ChoiceRow(test.question, words)
        self.edit = Typed(self)  # with a parent from the start: shown without one it would flash as a window
        self.edit.setVisible(bool(test.numbers))
        self.edit.setFixedWidth((8 + 6 * test.numbers) * GRID)
        self.edit.setAccessibleName(f"{test.question} {test.unit}")
        self.edit.setPlaceholderText(" ".join(["2.1"] * test.numbers) if test.numbers > 1 else "")
        self._fault = ""
        self.edit.editingFinished.connect(lambda: self.trouble.tell(self._fault))
        self.choice.chosen.connect(lambda answer: self.answered.emit(test.name, answer))
        self.edit.typed.connect(lambda text: self.answered.emit(test.name, text))
        self._lay_out(test)
        self.setFocusProxy(self.edit if test.numbers else next(iter(self.choice.buttons.values())))

    def _lay_out(self, test: BenchTest) -> None:
        words = QVBoxLayout()
        words.setSpacing(0)
        words.addWidget(self.question)
        live = self.tr("Under voltage: only for people qualified to measure there.  ") if test.live else ""
        how = Soft(f"{live}{test.how}")
        how.setMinimumWidth(TEXT_WIDTH)
        words.addWidget(how)
        words.addWidget(self.trouble)
        across = QHBoxLayout(self)
        across.setContentsMargins(0, GRID // 2, 0, GRID // 2)
        across.setSpacing(2 * GRID)
        across.addLayout(words, 1)
        across.addWidget(self.edit)
        if test.unit:
            unit = Soft(test.unit)
            unit.setWordWrap(False)
            across.addWidget(unit)
        across.addWidget(self.choice)

    def show_answer(self, text: str, fault: str, *, is_next: bool) -> None:
        """Show the answer so far and whether this test is the next one."""
        self.question.setFont(bold(self.font()) if is_next else self.font())
        self.question.setText(f"▸ {self.test.question}" if is_next else self.test.question)
        self.choice.show_choice(text)
        self.edit.show_text("" if text == SKIPPED else text)
        self._fault = fault
        is_half = self.edit.hasFocus() and len(text.split()) < self.test.numbers
        self.trouble.tell("" if is_half else fault)


class BenchView(QWidget):
    """The tests under what they say."""

    answered = Signal(str, str)
    """Name of a test (or of the capacitor's tolerance) and the answer's text."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.says, self.why, self.means, self.caution = Heading(), Line(), Soft(), Caution()
        self.rows: dict[str, _TestRow] = {}
        self.tolerance, self._tolerance_row = Typed(), QWidget()
        self._tolerance_trouble = Trouble()
        body = QWidget()
        self._down = QVBoxLayout(body)
        self._down.setContentsMargins(0, 0, GRID, GRID)
        self._down.setSpacing(0)
        self._down.addWidget(self._made_tolerance())
        self._down.addStretch(1)
        area = QScrollArea()
        area.setWidgetResizable(True)
        area.setWidget(body)
        area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        down = QVBoxLayout(self)
        down.setContentsMargins(0, GRID, 0, 0)
        for widget in (self.says, self.why, self.caution, self.means):
            down.addWidget(widget)
        down.addWidget(area, 1)

    def _made_tolerance(self) -> QWidget:
        across = QHBoxLayout(self._tolerance_row)
        across.setContentsMargins(0, GRID // 2, 0, 0)
        words = Soft(self.tr("Tolerance printed on the capacitor, per cent; 10 counts if it prints none"))
        across.addWidget(words, 1)
        across.addWidget(self._tolerance_trouble)
        self.tolerance.setFixedWidth(8 * GRID)
        self.tolerance.setAccessibleName(self.tr("Tolerance printed on the capacitor, per cent"))
        self.tolerance.setPlaceholderText("10")
        self.tolerance.typed.connect(lambda text: self.answered.emit(TOLERANCE, text))
        across.addWidget(self.tolerance)
        return self._tolerance_row

    def show_rest(self, rest: Rest) -> None:
        """Show tests, answers and what follows."""
        bench, found = rest.bench, rest.bench.diagnosis
        tests = bench_for(rest.wanted.motor)
        if [test.name for test in tests] != list(self.rows):
            self._make_rows(tests)
        self.says.setText(found.says)
        self.why.setText("\n".join(found.why))
        self.why.setVisible(bool(found.why))
        self.caution.show_lines(cautions_for("bench", rest.wanted.motor))
        self.means.setText(self._means(rest))
        for name, row in self.rows.items():
            is_next = found.next_test is not None and found.next_test.name == name
            row.show_answer(bench.answers.get(name, ""), bench.faults.get(name, ""), is_next=is_next)
        self._tolerance_row.setVisible("capacitor_uf" in self.rows)
        self.tolerance.show_text(str(rest.job.triage.get(TOLERANCE) or ""))
        self._tolerance_trouble.tell(bench.faults.get(TOLERANCE, ""))

    def _means(self, rest: Rest) -> str:
        site = rest.wanted.site
        parts = []
        if site.motor_health:
            parts.append(self.tr("old motor: {}").format(site.motor_health))
        if site.module_health:
            parts.append(self.tr("old module: {}").format(site.module_health))
        if not parts:
            return self.tr("All of it is common practice; nothing is settled that changes a verdict yet.")
        return self.tr("Counted in every verdict: {}.").format(", ".join(parts))

    def _make_rows(self, tests: tuple[BenchTest, ...]) -> None:
        for row in self.rows.values():
            self._down.removeWidget(row)
            row.deleteLater()
        self.rows = {}
        for test in tests:
            row = _TestRow(test)
            row.answered.connect(self.answered)
            self.rows[test.name] = row
            self._down.insertWidget(self._down.count() - 1, row)
            if test.name == "capacitor_uf":
                self._down.removeWidget(self._tolerance_row)
                self._down.insertWidget(self._down.count() - 1, self._tolerance_row)
                *_others, last = row.choice.buttons.values()
                self.setTabOrder(last, self.tolerance)
