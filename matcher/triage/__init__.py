"""Which part failed: guided bench tests, dead before live, and what their answers settle."""

from matcher.triage.bench import BenchTest, bench_for
from matcher.triage.conclude import Diagnosis, diagnose

__all__ = ["BenchTest", "Diagnosis", "bench_for", "diagnose"]
