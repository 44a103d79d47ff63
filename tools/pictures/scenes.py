"""All pictures: their tables, views and light.

Subjects stay near the middle: pages crop to 4 : 5, 3 : 2 and 2 : 1.
"""

from __future__ import annotations

from typing import Final

import bench_steps
import close_steps
import flat_scenes
import standing_scenes
from develop import Exposure, Focus
from picture import Sun
from scene import COVER, Scene

FRONT: Final = Sun((-0.55, 0.3, 0.74), 0.1)
"""For things that stand: the light comes over the left shoulder."""
ROOM: Final = Exposure(focus=Focus(0.6, 0.26, 5))
CLOSE: Final = Exposure(focus=Focus(0.58, 0.2, 6))
BENCH: Final = Exposure(focus=Focus(0.5, 0.34, 4))

COVERS: Final = (
    Scene("sloe-lane-cards", COVER, "oak", flat_scenes.sloe_lane, 348, 18, (6, 6), table_turn=-8),
    Scene("wren-note-bookmarks", COVER, "slate", flat_scenes.wren_note, 376, 8, (0, -14)),
    Scene("first-frost-tags", COVER, "plaster", flat_scenes.first_frost, 356, 8, (4, -2)),
    Scene("ropewalk-place-cards", COVER, "linen", standing_scenes.ropewalk_place, 340, 56, (0, -38), 640, 12,
          FRONT, Exposure(focus=Focus(0.6, 0.24, 5))),
    Scene("hazel-square-cards", COVER, "felt", flat_scenes.hazel_square, 356, 13, (46, 12)),
    Scene("orchard-square-cards", COVER, "walnut", flat_scenes.orchard_square, 486, 0, (0, 0), 1100, 90),
    Scene("swift-slim-cards", COVER, "ash", flat_scenes.swift_slim, 420, 6, (-8, 0), table_turn=64),
    Scene("letter-bundle-bands", COVER, "wool", flat_scenes.letter_bundle, 398, 32, (0, -10), table_turn=6),
    Scene("ivy-gate-cards", COVER, "harbour", standing_scenes.ivy_gate, 474, 52, (36, -94), 820, 4,
          FRONT, ROOM),
    Scene("puddle-ice-cards", COVER, "oak", standing_scenes.puddle_ice, 430, 46, (4, -20), 780, 62,
          FRONT, ROOM),
    Scene("hawthorn-boxes", COVER, "sage", standing_scenes.hawthorn_boxes, 274, 46, (-12, -34), 600, 12,
          FRONT, ROOM),
    Scene("towpath-accordions", COVER, "sailcloth", standing_scenes.towpath, 450, 56, (0, -118), 800, -6,
          FRONT, ROOM),
)  # fmt: skip

STEPS: Final = (
    Scene("sloe-lane-cards", "01-cut.jpg", "oak", bench_steps.sloe_cut, 340, 38, (-6, -20), 700, -8,
          exposure=BENCH),
    Scene("sloe-lane-cards", "03-label.jpg", "oak", close_steps.sloe_label, 200, 44, (6, -4), 460, -8,
          exposure=CLOSE),
    Scene("wren-note-bookmarks", "01-cut.jpg", "oak", bench_steps.wren_cut, 304, 38, (-12, -24), 700, -8,
          exposure=BENCH),
    Scene("first-frost-tags", "01-clip.jpg", "plaster", bench_steps.frost_clip, 232, 38, (-16, 4), 600,
          exposure=BENCH),
    Scene("ropewalk-place-cards", "01-fold.jpg", "linen", bench_steps.ropewalk_fold, 250, 50, (-20, -14), 560,
          12, FRONT, CLOSE),
    Scene("hazel-square-cards", "03-stand.jpg", "felt", close_steps.hazel_stand, 392, 62, (-6, -100), 640, 0,
          FRONT, Exposure(focus=Focus(0.6, 0.3, 4))),
    Scene("ivy-gate-cards", "02-message.jpg", "harbour", close_steps.gate_message, 350, 40, (34, 2), 680, 4,
          exposure=CLOSE),
    Scene("ivy-gate-cards", "04-band.jpg", "harbour", close_steps.gate_band, 250, 42, (6, -10), 560, 4,
          exposure=CLOSE),
    Scene("puddle-ice-cards", "02-ice.jpg", "oak", close_steps.ice_on_slate, 270, 36, (20, 0), 620, 74,
          exposure=BENCH),
    Scene("puddle-ice-cards", "04-label.jpg", "oak", close_steps.label_on_film, 196, 46, (4, 6), 460, 74,
          exposure=CLOSE),
    Scene("letter-bundle-bands", "01-cut.jpg", "walnut", bench_steps.bands_cut, 390, 34, (0, 2), 700,
          exposure=BENCH),
    Scene("letter-bundle-bands", "03-label.jpg", "wool", close_steps.patch_and_label, 200, 36, (10, 0), 480,
          exposure=CLOSE),
    Scene("hawthorn-boxes", "01-score.jpg", "oak", bench_steps.box_score, 290, 38, (6, 6), 640, -8,
          exposure=BENCH),
    Scene("hawthorn-boxes", "03-knob.jpg", "sage", close_steps.lid_with_knob, 168, 48, (10, 0), 420, 12,
          FRONT, CLOSE),
    Scene("towpath-accordions", "01-fold.jpg", "sailcloth", close_steps.strip_folded, 452, 54, (-4, -96), 760,
          -6, FRONT, CLOSE),
    Scene("towpath-accordions", "03-reeds.jpg", "sailcloth", close_steps.reeds, 330, 52, (-4, -86), 640, -6,
          FRONT, BENCH),
    Scene("swift-slim-cards", "01-cut.jpg", "ash", bench_steps.slips_cut, 524, 20, (8, 8), 1000,
          exposure=BENCH),
    Scene("swift-slim-cards", "02-sky.jpg", "ash", close_steps.sky_and_line, 270, 34, (0, -40), 600, 64,
          exposure=CLOSE),
    Scene("orchard-square-cards", "03-squares.jpg", "walnut", bench_steps.squares_laid_out, 270, 34, (8, 0),
          620, 90, exposure=BENCH),
    Scene("fieldfare-slim-cards", "01-cut.jpg", "oak", bench_steps.slips_and_skies, 350, 28, (4, 10), 720, -8,
          exposure=BENCH),
)  # fmt: skip

SCENES: Final = (*COVERS, *STEPS)
