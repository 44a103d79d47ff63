"""``python -m batchleaf``."""

import sys

from batchleaf.cli import main

sys.exit(main())
