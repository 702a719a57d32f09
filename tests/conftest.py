"""Shared by all tests: the project's folder, the built demo site, a browser, a server."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import threading
from collections.abc import Callable, Iterator
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any

import pytest
from hypothesis import settings
from playwright.sync_api import Browser, sync_playwright

settings.register_profile("same", derandomize=True, database=None, deadline=None)
settings.register_profile("explore", deadline=None, max_examples=2000)
settings.load_profile("explore" if os.environ.get("TRIVET_EXPLORE") else "same")
"""A change is judged on the same examples every time; TRIVET_EXPLORE=1 looks for new ones."""

ROOT = Path(__file__).resolve().parent.parent
BROWSER_FLAGS = [
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
EPOCH = "1795564800"
"""2026-11-25 00:00 UTC: the date of every site that tests build."""


SLOW_FIRST = "test_privacy_of_levels.py"
"""The file that takes longest as a whole: begun first, it ends beside the others."""


def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """Put the slow file first where there are several workers."""
    if hasattr(config, "workerinput"):
        items.sort(key=lambda item: item.path.name != SLOW_FIRST)


@pytest.hookimpl(optionalhook=True)
def pytest_xdist_make_scheduler(config: pytest.Config, log: Any) -> Any:
    """Keep each file with one worker, so that what its tests share is made once, in order; tests in a browser go one by one."""
    from xdist.scheduler import LoadScopeScheduling  # noqa: PLC0415 - only where there are workers

    class ByFile(LoadScopeScheduling):
        def _split_scope(self, nodeid: str) -> str:
            return nodeid if "/browser/" in nodeid else nodeid.partition("::")[0]

    config.option.loadscopereorder = False
    return ByFile(config, log)


@pytest.fixture(scope="session")
def root() -> Path:
    """The project's folder."""
    return ROOT


def mkdocs_build(project: Path, site: Path, *, program: str = "mkdocs", strict: bool = True) -> subprocess.CompletedProcess[str]:
    """Build `project` into `site` with the real command, on the tests' date."""
    command = [sys.executable, "-m", program, "build", "--site-dir", str(site), *(["--strict"] if strict else [])]
    environment = {**os.environ, "SOURCE_DATE_EPOCH": EPOCH, "NO_MKDOCS_2_WARNING": "1"}
    return subprocess.run(command, cwd=project, env=environment, capture_output=True, text=True, check=False, timeout=300)


@pytest.fixture(scope="session")
def built_site(root: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo site, built once by `mkdocs build --strict`."""
    site = tmp_path_factory.mktemp("built") / "site"
    done = mkdocs_build(root, site)
    assert done.returncode == 0, done.stderr
    return site


def find_chromium() -> str:
    """Return the browser's path, or fail: tests never skip for want of a browser."""
    given = os.environ.get("CHROMIUM")
    if given is not None:
        if os.access(given, os.X_OK):
            return given
        pytest.fail(f"CHROMIUM names no program: {given}")
    for name in ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable"):
        path = shutil.which(name)
        if path:
            return path
    pytest.fail("no Chromium on this machine; make test installs it on Debian, else set CHROMIUM=/path/to/chromium")


@pytest.fixture(scope="session")
def chromium() -> Iterator[Browser]:
    """A running Chromium with a fresh profile."""
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=find_chromium(), args=BROWSER_FLAGS)
        yield browser
        browser.close()


class _Quiet(SimpleHTTPRequestHandler):
    extensions_map = {**SimpleHTTPRequestHandler.extensions_map, ".js": "text/javascript", ".mjs": "text/javascript"}  # noqa: RUF012 - the base class has it so

    def log_message(self, format: str, *args: object) -> None:
        return


@pytest.fixture(scope="session")
def serve() -> Iterator[Callable[[Path], str]]:
    """Serve a folder on a free port of this machine and return its address, without the last slash."""
    servers: list[ThreadingHTTPServer] = []

    def start(folder: Path) -> str:
        server = ThreadingHTTPServer(("127.0.0.1", 0), partial(_Quiet, directory=str(folder)))
        servers.append(server)
        threading.Thread(target=server.serve_forever, daemon=True).start()
        return f"http://127.0.0.1:{server.server_port}"

    yield start
    for server in servers:
        server.shutdown()
        server.server_close()


@pytest.fixture(scope="session")
def site_url(built_site: Path, serve: Callable[[Path], str]) -> str:
    """The address of the served demo site."""
    return serve(built_site)
