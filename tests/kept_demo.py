"""What was worked out of the demo lies beside it, where its builds keep it: tests share it as builds do."""

from __future__ import annotations

import shutil
from pathlib import Path
from typing import Final

from batchleaf.core.batch_cutting import PLANNER, Planner, remembering
from batchleaf.kept_plans import PLANS, keeping
from batchleaf.store import Store

ROOT: Final = Path(__file__).parents[1]
CACHE: Final = Path(".cache") / "batchleaf"


def planner() -> Planner:
    """The planner, which need not plan again what any process planned for the demo."""
    return remembering(keeping(PLANNER, Store(ROOT / CACHE)))


def lay_plans_beside(archive: Path) -> None:
    """Copy the plans beside a copy of the demo; those that another process is just writing are left out."""
    plans = ROOT / CACHE / PLANS
    if plans.is_dir():
        shutil.copytree(plans, archive / CACHE / PLANS, ignore=shutil.ignore_patterns(".new-*"))
