PYTHON ?= python3
BIN := .venv/bin

.PHONY: demo test bench clean

demo: .venv/.installed
	@$(BIN)/dryfit check plans_demo/quince-street/plan.yaml || test $$? -eq 1 -o $$? -eq 3

test: .venv/.installed-test
	$(BIN)/ruff check .
	$(BIN)/ruff format --check .
	$(BIN)/mypy
	$(BIN)/pytest

bench: .venv/.installed-test
	$(BIN)/python -m tests.benchmarks.check_speed

.venv/bin/python:
	$(PYTHON) -m venv .venv

.venv/.installed: pyproject.toml | .venv/bin/python
	$(BIN)/python -m pip install --quiet --disable-pip-version-check --editable .
	touch $@

.venv/.installed-test: pyproject.toml | .venv/bin/python
	$(BIN)/python -m pip install --quiet --disable-pip-version-check --editable '.[test]'
	touch .venv/.installed $@

clean:
	rm -rf .venv build dist
