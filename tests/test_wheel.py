"""The built wheel works away from a checkout, rulesets included."""

from __future__ import annotations

import os
import subprocess
import sys
import venv
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
PLAN = """\
plan: A stair in another place
rules: local/harrow-vale
permit: {date: "2026-05-04"}
stairs:
  - id: back
    status: new
    type: straight
    total_rise: 9 ft
    flights: [{id: back, risers: 12, going: 8 in}]
"""


def run(*command: str | Path, cwd: Path, status: int = 0, **environment: str) -> str:
    """Run a command and give what it prints; it must end with the status."""
    plain = {name: value for name, value in os.environ.items() if not name.startswith(("PYTHON", "VIRTUAL_ENV"))}
    done = subprocess.run(
        [str(part) for part in command], cwd=cwd, env=plain | environment, capture_output=True, text=True, check=False
    )
    assert done.returncode == status, done.stdout + done.stderr
    return done.stdout


@pytest.mark.wheel
def test_installed_wheel_checks_a_plan_elsewhere(tmp_path: Path) -> None:
    """Build, install into a fresh environment, check a plan from another folder."""
    run(sys.executable, "-m", "build", "--wheel", "--outdir", tmp_path / "dist", ROOT, cwd=tmp_path)
    wheel = next((tmp_path / "dist").glob("dryfit-*.whl"))
    venv.create(tmp_path / "env", with_pip=True)
    scripts = tmp_path / "env" / ("Scripts" if os.name == "nt" else "bin")
    run(scripts / "python", "-m", "pip", "install", "--quiet", wheel, cwd=tmp_path)
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    (elsewhere / "plan.yaml").write_text(PLAN, encoding="utf-8")
    cache = {"DRYFIT_CACHE": str(tmp_path / "cache")}
    text = run(scripts / "dryfit", "check", "plan.yaml", cwd=elsewhere, status=1, **cache)
    assert "Harrow Vale County" in text
    assert "Each riser is 9 in; the limit is 8 in." in text
    page = run(scripts / "dryfit", "check", "plan.yaml", "--format", "html", cwd=elsewhere, status=1, **cache)
    assert page.lower().startswith("<!doctype html>")
    assert "rules" in run(scripts / "dryfit", "rules", "test", cwd=elsewhere)
    assert str(ROOT) not in text + page
