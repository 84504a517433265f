"""Which part failed: guided bench tests, dead before live, and what their answers settle."""

from matcher.triage.bench import BenchTest, bench_for, bench_tests
from matcher.triage.conclude import Diagnosis, diagnose
from matcher.triage.health import Bench, bench_of, site_with, with_answer

__all__ = [
    "Bench",
    "BenchTest",
    "Diagnosis",
    "bench_for",
    "bench_of",
    "bench_tests",
    "diagnose",
    "site_with",
    "with_answer",
]
