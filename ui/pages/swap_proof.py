"""Swap and proof: which part failed, the sheet, the proof run, was it worth it, and the papers."""

from collections.abc import Callable
from functools import partial

from PySide6.QtWidgets import QTabWidget, QWidget

from matcher.airflow.entries import with_reading
from matcher.job import Job
from matcher.rest import Rest, with_note
from matcher.triage import with_answer
from matcher.worth import with_worth
from ui.bench_view import BenchView
from ui.desk import Desk, Page
from ui.papers_view import PapersView
from ui.proof_view import ProofView
from ui.rest_worker import RestWorker
from ui.sheet_view import SheetView
from ui.worth_view import WorthView


class SwapProofPage(Page):
    """Five views of one job; only the one in sight is kept up to date."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self._worker = RestWorker.of(desk.session)
        self.bench, self.sheet, self.proof = BenchView(), SheetView(), ProofView()
        self.worth = WorthView()
        self.papers = PapersView(self._worker.day)
        self.tabs = QTabWidget()
        self.tabs.setDocumentMode(True)
        for view, words in (
            (self.bench, self.tr("&Which part failed")),
            (self.sheet, self.tr("S&heet")),
            (self.proof, self.tr("Proof &run")),
            (self.worth, self.tr("Was it w&orth it")),
            (self.papers, self.tr("Pap&ers")),
        ):
            self.tabs.addTab(view, words)
        down = self.column()
        down.addWidget(self.tabs)
        self.starts_at(self.tabs)
        self._connect()

    def _connect(self) -> None:
        self._worker.ready.connect(self._show)
        self.tabs.currentChanged.connect(lambda _place: self._show_again())
        self.bench.answered.connect(
            partial(
                self._edit,
                self.tr("bench test"),
                lambda job, name, text: with_answer(job, job.wanted().motor, name, text),
            )
        )
        self.sheet.noted.connect(partial(self._edit, self.tr("a note on the sheet"), with_note))
        self.proof.entered.connect(partial(self._edit, self.tr("proof run"), with_reading))
        self.worth.entered.connect(partial(self._edit, self.tr("the reckoning"), with_worth))

    def _edit(self, words: str, change: Callable[[Job, str, str], Job], name: str, text: str) -> None:
        session = self.desk.session
        line = session.try_edit(words, lambda job: change(job, name, text), merge=f"{words} {name}")
        if line:
            session.trouble.emit(line)

    def _show_again(self) -> None:
        if self._worker.rest is not None:
            self._show(self._worker.rest)

    def _show(self, rest: Rest) -> None:
        view = self.tabs.currentWidget()
        if isinstance(view, BenchView | SheetView | ProofView | WorthView | PapersView):
            view.show_rest(rest)
        self.state.emit(self._state(rest))

    def _state(self, rest: Rest) -> str:
        if rest.proof.results:
            return rest.proof.says
        if not rest.bench.answers:
            return self.tr("which part failed?")
        return rest.bench.diagnosis.says if rest.bench.diagnosis.settled else self.tr("next bench test")
