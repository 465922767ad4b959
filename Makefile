# Two words for a stranger: `make run` and `make test`. Each sets up what it needs on the way.

PYTHON ?= python3
VENV := .venv
BIN := $(VENV)/bin
PIP := $(BIN)/pip install --quiet --disable-pip-version-check
SYSTEM := python3 python3-venv libcairo2 libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0
BROWSING := chromium default-jre-headless npm
HOST ?= 127.0.0.1
PORT ?= 8080

.PHONY: run test test-browser test-soak fuzz bench check format clean

run: $(VENV)/run.stamp ## the gallery and the API at http://127.0.0.1:8080/
	$(BIN)/spreadwright serve --host $(HOST) --port $(PORT)

test: check ## types, lint, floors, and every test that needs no browser, on as many cores as there are
	$(BIN)/python -m pytest -q -n auto --dist loadfile

test-browser: $(VENV)/browser.stamp ## the built gallery in a real Chromium
	$(BIN)/python -m pytest -q -m browser

test-soak: $(VENV)/dev.stamp ## writers killed fifty times on each database
	$(BIN)/python -m pytest -q -m soak

fuzz: $(VENV)/dev.stamp ## many random requests to every operation of the API, on the database that SPREADWRIGHT_DATABASE_URL names
	$(BIN)/python -m pytest -q -m fuzz

bench: $(VENV)/bench.stamp ## how far the planner gets, beside others; BENCH='slack --count 20' runs a part; stopped, it goes on where it was
	$(BIN)/python -m tests.bench.planner --others --keep $(VENV)/bench.jsonl $(BENCH)

check: $(VENV)/dev.stamp
	$(BIN)/ruff format --check api tests
	$(BIN)/ruff check api tests
	$(BIN)/mypy
	$(BIN)/lint-imports

format: $(VENV)/dev.stamp
	$(BIN)/ruff format api tests
	$(BIN)/ruff check --fix api tests

clean:
	rm -rf $(VENV) .pytest_cache .mypy_cache .ruff_cache .hypothesis .import_linter_cache

# A new enough Python that can make environments, and the libraries that draw and set type: installed when root, asked for otherwise.
define has_system
command -v $(PYTHON) >/dev/null && \
$(PYTHON) -c 'import ctypes, ensurepip, sys, venv; [ctypes.CDLL(name) for name in ("libcairo.so.2", "libpango-1.0.so.0", "libpangoft2-1.0.so.0", "libharfbuzz-subset.so.0")]; sys.exit(sys.version_info < (3, 11))' 2>/dev/null
endef

$(VENV)/venv.stamp:
	@if $(has_system); then :; \
	elif [ "$$(id -u)" = 0 ] && command -v apt-get >/dev/null; then \
	  echo "Installing $(SYSTEM)" >&2 && apt-get update -qq && \
	  DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $(SYSTEM) >/dev/null; \
	fi
	@$(has_system) || { \
	  echo "Spreadwright needs Python 3.11 or newer with venv, and the libraries cairo, Pango and HarfBuzz. On Debian, as root:" >&2; \
	  echo "    apt-get install $(SYSTEM)" >&2; exit 1; }
	$(PYTHON) -m venv --clear $(VENV)
	@touch $@

$(VENV)/run.stamp: pyproject.toml $(VENV)/venv.stamp
	$(PIP) --editable .
	@touch $@

$(VENV)/dev.stamp: pyproject.toml $(VENV)/venv.stamp
	$(PIP) --editable '.[dev]'
	@touch $@ $(VENV)/run.stamp

$(VENV)/bench.stamp: pyproject.toml $(VENV)/dev.stamp
	$(PIP) --editable '.[dev,bench]'
	@touch $@

$(VENV)/browser.stamp: pyproject.toml $(VENV)/dev.stamp
	$(PIP) --editable '.[dev,browser]'
	@{ [ -x /usr/bin/chromium ] && command -v java npm >/dev/null; } || { [ "$$(id -u)" = 0 ] && apt-get update -qq && \
	  apt-get install -y -qq --no-install-recommends $(BROWSING) >/dev/null; } || { \
	  echo "The browser tests need a browser and what runs the HTML checker. On Debian, as root: apt-get install $(BROWSING)" >&2; exit 1; }
	npm install --silent --no-audit --no-fund --prefix $(VENV)/checker vnu-jar
	@touch $@
