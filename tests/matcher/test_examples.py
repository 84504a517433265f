"""The examples in the engine's docstrings run and are true."""

import doctest
from importlib import import_module
from pathlib import Path

import pytest

import matcher

ROOT = Path(matcher.__file__).parent
NAMED = sorted(
    ".".join(("matcher", *path.relative_to(ROOT).with_suffix("").parts)).removesuffix(".__init__")
    for path in ROOT.rglob("*.py")
    if ">>>" in path.read_text(encoding="utf-8")
)


@pytest.mark.parametrize("name", NAMED)
def test_examples(name: str) -> None:
    failed, tried = doctest.testmod(import_module(name))
    assert tried
    assert not failed
