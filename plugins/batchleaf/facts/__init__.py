"""What the records mean, as the core computes with it.

Everything here is complete: defaults are applied, roles are filled, names are
known to exist. Lengths are in mm, money in minor units of the archive's one
currency (cents), quantities in the supply's own unit.
"""

from batchleaf.facts.archive import Archive, CostFlow, OtherSheet, Series, Settings
from batchleaf.facts.batch import (
    Asked,
    Companion,
    Cut,
    KeptPiece,
    Photo,
    Project,
    Purpose,
    Status,
    Step,
    Use,
    Went,
    Whereabouts,
)
from batchleaf.facts.collating import Collating, Rule
from batchleaf.facts.drawer import (
    Basis,
    Count,
    Direction,
    Gone,
    Grain,
    Opening,
    PaperSide,
    Purchase,
    Scrap,
    Supply,
    Trim,
)
from batchleaf.facts.film import Film
from batchleaf.facts.parts import Design, Fold, ImageUse, Origin, Part, Score, ShownSide, folded_size
from batchleaf.facts.places import NOWHERE, Place, Problem, Weight
from batchleaf.facts.sticking import Coat, Dots, Sides, Sticks, Strips, Stuck
from batchleaf.facts.terms import NO_TERMS, Credit, Sale, Terms, Tie
from batchleaf.facts.tools import Image, StackLimit, Tool
from batchleaf.facts.works import CORNERS, Moment, Wait, Waiting, Work, WorkKind

__all__ = [
    "CORNERS",
    "NOWHERE",
    "NO_TERMS",
    "Archive",
    "Asked",
    "Basis",
    "Coat",
    "Collating",
    "Companion",
    "CostFlow",
    "Count",
    "Credit",
    "Cut",
    "Design",
    "Direction",
    "Dots",
    "Film",
    "Fold",
    "Gone",
    "Grain",
    "Image",
    "ImageUse",
    "KeptPiece",
    "Moment",
    "Opening",
    "Origin",
    "OtherSheet",
    "PaperSide",
    "Part",
    "Photo",
    "Place",
    "Problem",
    "Project",
    "Purchase",
    "Purpose",
    "Rule",
    "Sale",
    "Score",
    "Scrap",
    "Series",
    "Settings",
    "ShownSide",
    "Sides",
    "StackLimit",
    "Status",
    "Step",
    "Sticks",
    "Strips",
    "Stuck",
    "Supply",
    "Terms",
    "Tie",
    "Tool",
    "Trim",
    "Use",
    "Wait",
    "Waiting",
    "Weight",
    "Went",
    "Whereabouts",
    "Work",
    "WorkKind",
    "folded_size",
]
