# make site, make serve, make test, make check: each does its own set-up in .venv/.
PYTHON ?= python3
VENV := .venv
BIN := $(VENV)/bin
PIP := $(BIN)/python -m pip install --quiet --disable-pip-version-check --no-deps
RUN := .ci/requirements-run.lock
TEST := .ci/requirements-test.lock

# A worker for each core; make test WORKERS= has none, with what tests print as it comes.
WORKERS := -n auto

export NO_MKDOCS_2_WARNING := 1

.PHONY: site serve test check lint types strict lighthouse benchmarks locks clean browser
.DEFAULT_GOAL := site

site: $(VENV)/.run
	$(BIN)/mkdocs build --quiet
	@echo
	@echo "The site is in site/. To open it here: make serve, then http://127.0.0.1:8000/"

serve: $(VENV)/.run
	$(BIN)/mkdocs serve

test: $(VENV)/.test browser
	$(BIN)/python -m pytest $(WORKERS)

check: $(VENV)/.test browser lint types strict lighthouse

lint: $(VENV)/.test
	$(BIN)/ruff check .
	$(BIN)/ruff format --check .

types: $(VENV)/.test
	$(BIN)/mypy

strict: $(VENV)/.test
	$(BIN)/trivet check --strict
	$(BIN)/mkdocs build --strict # with --quiet it would pass over warnings

lighthouse: strict
	npm --prefix .ci/lighthouse ci --no-audit --no-fund --silent
	CHROME_PATH="$$(.ci/browser --print)" node .ci/lighthouse/run.mjs site

browser:
	@.ci/browser

# Pin again after a change to pyproject.toml; needs uv.
locks:
	uv pip compile pyproject.toml --group build $(COMPILE) -o $(RUN)
	uv pip compile pyproject.toml --group build --group test $(COMPILE) -o $(TEST)
COMPILE := --universal --python-version 3.11 --generate-hashes --no-header --no-emit-index-url --no-emit-find-links --upgrade

$(VENV)/bin/python:
	@$(PYTHON) -c 'import sys; sys.exit(sys.version_info < (3, 11))' || { echo "Trivet needs Python 3.11 or newer: make PYTHON=python3.12 site"; exit 1; }
	@$(PYTHON) -m venv $(VENV) || { rm -rf $(VENV); echo "This Python cannot make environments; on Debian: apt-get install python3-venv"; exit 1; }

$(VENV)/.run: $(RUN) pyproject.toml | $(VENV)/bin/python
	$(PIP) --require-hashes -r $(RUN)
	$(PIP) --no-build-isolation -e .
	@touch $@

$(VENV)/.test: $(TEST) pyproject.toml | $(VENV)/bin/python
	$(PIP) --require-hashes -r $(TEST)
	$(PIP) --no-build-isolation -e .
	@touch $@ $(VENV)/.run

clean:
	rm -rf $(VENV) site .pytest_cache .mypy_cache .ruff_cache .hypothesis .ci/lighthouse/node_modules
