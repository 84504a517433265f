"""The proof run: entries at the left, results and the curve at the right."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from matcher.airflow.entries import GROUPS, proof_entries, texts_in
from matcher.cautions import cautions_for
from matcher.rest import Rest
from ui.caution import Caution
from ui.curve_picture import CurvePicture
from ui.entry_form import EntryForm
from ui.line import Heading, Soft
from ui.result_list import ResultList
from ui.theme import GRID

FORM_WIDTH = 48 * GRID


class ProofView(QWidget):
    """What was measured, and what it proves."""

    entered = Signal(str, str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.form, self.says, self.results = EntryForm(), Heading(), ResultList()
        self.picture, self.notes, self.reminders = CurvePicture(), Soft(), Soft()
        self.caution = Caution(cautions_for("proof"))
        self._fill_form()
        self.form.entered.connect(self.entered)
        self.form.setFixedWidth(FORM_WIDTH)
        body = QWidget()
        right = QVBoxLayout(body)
        right.setContentsMargins(0, 0, GRID, GRID)
        for widget in (self.caution, self.says, self.results, self.picture, self.notes, self.reminders):
            right.addWidget(widget, 1 if widget is self.picture else 0)
        right.addStretch(0)
        area = QScrollArea()
        area.setWidgetResizable(True)
        area.setWidget(body)
        across = QHBoxLayout(self)
        across.setContentsMargins(0, GRID, 0, 0)
        across.setSpacing(2 * GRID)
        across.addWidget(self.form)
        across.addWidget(area, 1)

    def _fill_form(self) -> None:
        group = ""
        for entry in proof_entries():
            if entry.group != group:
                group = entry.group
                self.form.add_heading(self.tr(GROUPS[group]))
            if entry.choices:
                self.form.add_choice(entry.name, entry.label, entry.choices, entry.how)
            else:
                self.form.add_entry(entry.name, entry.label, entry.unit, entry.how)

    def _show_source(self, source: str) -> None:
        """Show the entries of the heat source that was chosen; an electric one while none is."""
        for name, row in self.form.rows.items():
            if name.startswith(("heater_", "furnace_")):
                row.setVisible(name.startswith("furnace_") == (source == "furnace"))
        self.form.show_choice("heater_phase", visible=source != "furnace")

    def show_rest(self, rest: Rest) -> None:
        """Show the run as it stands."""
        proof, chart = rest.proof, rest.chart
        self.form.show_entries(texts_in(rest.job.proof), proof.faults)
        self._show_source(texts_in(rest.job.proof).get("heat_source", ""))
        self.says.setText(f"{proof.says[0].upper()}{proof.says[1:]}")
        self.results.show_results(proof.results)
        self.picture.show_chart(chart)
        notes = chart.notes if chart else (self.tr("Airflow and both statics draw the curve."),)
        self.notes.setText("\n".join(notes))
        self.reminders.setText("\n".join(proof.reminders))
