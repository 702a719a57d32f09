"""The same requests give the same groups: in every Python that is found here, under any hash seed, in one process and in two."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context
from pathlib import Path

import pytest

from tests.planning.grouping.corpus import CLASSES, digest, digest_of_all, drawn

FIGURE = "41c5f19af77e30e2"
"""Of groups drawn on CPython 3.11, 3.12 and 3.13; another one here means that classes would be drawn anew by an upgrade."""

CODE = "from tests.planning.grouping.corpus import digest_of_all; print(digest_of_all())"
HASH_SEEDS = ("0", "1", "42", "1000", "4294967295")


def pythons() -> list[str]:
    """Return the programs to ask: the running Python, and each other version from 3.11 on that starts here under its usual name."""
    found = [sys.executable]
    for minor in range(11, 15):
        program = shutil.which(f"python3.{minor}")
        if program and minor != sys.version_info.minor:
            started = subprocess.run([program, "-c", "import sys; print(sys.version_info[1])"], capture_output=True, text=True, check=False)
            found += [program] if started.stdout.strip() == str(minor) else []
    return found


def asked(program: str, hash_seed: str, root: Path) -> str:
    environment = {**os.environ, "PYTHONHASHSEED": hash_seed, "PYTHONPATH": os.pathsep.join([str(root), str(root / "plugins")])}
    done = subprocess.run([program, "-c", CODE], cwd=root, env=environment, capture_output=True, text=True, check=True, timeout=300)
    return done.stdout.strip()


def test_the_corpus_is_drawn_as_ever() -> None:
    """The groups are those that were drawn when the figure was written down."""
    assert digest_of_all() == FIGURE


@pytest.mark.parametrize("hash_seed", HASH_SEEDS)
def test_under_any_hash_seed(hash_seed: str, root: Path) -> None:
    """A second process with another hash seed draws the same groups."""
    assert asked(sys.executable, hash_seed, root) == FIGURE


def test_in_every_python(root: Path) -> None:
    """Each Python that is found here draws the same groups."""
    assert {program: asked(program, "7", root) for program in pythons()} == dict.fromkeys(pythons(), FIGURE)


def test_in_two_processes() -> None:
    """A pool of two processes draws the same groups as one."""
    with ProcessPoolExecutor(2, mp_context=get_context("spawn")) as pool:
        assert digest(list(pool.map(drawn, range(len(CLASSES))))) == FIGURE
