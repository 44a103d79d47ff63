/* Several sizes from several pieces: the most whole sets that are found, and what none can exceed.

   A set is `each` parts of every kind. A try lays blocks of equal parts into the corner of a piece,
   parts what is left by one cut through, and goes on there; the tries differ in which part comes
   first, how large its block is and which way the rest is parted. Chance is drawn from a fixed seed,
   and the work is counted in blocks, so that one question has one answer on every device. */
const sets = (function () {
  "use strict";

  const MOST_STEPS = 60000;
  const FIRST_TRIES = 24;
  const MORE_TRIES = 600;
  const TIDY_TRIES = 40;
  /* More parts than these are not laid out. */
  const MOST_PARTS = 1500;
  const BLIND = { left: null, part: () => null, cut: () => null, row: () => null };

  /* What no way of cutting can exceed -------------------------------------------- */

  function reach(length, sizes) {
    const every = sizes.length ? points.sums(length, sizes) : [0];
    return every === null ? length : every[every.length - 1];
  }

  /* The area that parts can cover, pushed to the left and to the top. */
  function usable(piece, kinds) {
    const shapes = kinds.flatMap((kind) => oneSize.shapesOf(kind, piece.width, piece.height));
    const width = reach(piece.width, shapes.map((shape) => shape.width));
    const height = reach(piece.height, shapes.map((shape) => shape.height));
    return BigInt(width) * BigInt(height) * BigInt(piece.count);
  }

  function byArea(pieces, kinds) {
    const wanted = kinds.reduce((all, kind) => all + BigInt(kind.width) * BigInt(kind.height) * BigInt(kind.each), 0n);
    return Number(pieces.reduce((all, piece) => all + usable(piece, kinds), 0n) / wanted);
  }

  function byKind(pieces, kind, effort) {
    const parts = pieces.reduce(
      (all, piece) => all + piece.count * oneSize.most(kind, piece.width, piece.height, effort).atMost, 0
    );
    return Math.floor(parts / kind.each);
  }

  function bound(pieces, kinds) {
    const effort = oneSize.effort();
    return Math.min(byArea(pieces, kinds), ...kinds.map((kind) => byKind(pieces, kind, effort)));
  }

  /* One try --------------------------------------------------------------------- */

  function chance(seed) {
    let state = (seed * 2654435761 + 1013904223) >>> 0;
    return () => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      return state / 4294967296;
    };
  }

  /* The first tries are plain; later ones leave more to chance. */
  function habitsOf(seed) {
    const draw = chance(seed);
    const bold = seed < 8 ? 0 : draw();
    return {
      draw,
      byFit: seed < 8 ? [0, 1, 0.5, 2][seed % 4] : 2 * draw(),
      noise: bold * 0.8,
      small: seed < 8 ? 0 : 0.5 * draw(),
      split: seed < 4 ? "larger" : seed < 8 ? "smaller" : ["larger", "smaller", "any"][Math.floor(3 * draw())],
      largestPieceFirst: seed % 2 === 1,
    };
  }

  function blockOf(shape, width, height, need, habits) {
    let columns = Math.min(Math.floor(width / shape.width), need);
    let rows = Math.min(Math.floor(height / shape.height), Math.floor(need / columns));
    if (habits.small && habits.draw() < habits.small) rows = 1 + Math.floor(habits.draw() * rows);
    if (habits.small && habits.draw() < habits.small) columns = 1 + Math.floor(habits.draw() * columns);
    rows = Math.min(rows, Math.floor(height / shape.height));
    return { columns, rows };
  }

  function worthOf(shape, width, height, largest, habits) {
    const across = (width - width % shape.width) / width, down = (height - height % shape.height) / height;
    const size = (shape.width * shape.height) / largest;
    return size + habits.byFit * Math.max(across, down) + habits.noise * habits.draw();
  }

  function picked(run, width, height) {
    let best = null, most = -1;
    run.kinds.forEach((kind, at) => {
      if (!run.need[at]) return;
      for (const shape of oneSize.shapesOf(kind, width, height)) {
        const worth = worthOf(shape, width, height, run.largest, run.habits);
        if (worth > most) [best, most] = [{ at, shape }, worth];
      }
    });
    return best;
  }

  function xFirst(run, block) {
    const { width, height, wide, high, columns, rows, shape } = block;
    const fillBelow = () => (height > high ? fill(run, wide, height - high) : null);
    const fillBeside = () => (width > wide ? fill(run, width - wide, height) : null);
    const [below, beside] = inOrder(run, fillBelow, fillBeside);
    const line = run.grow.row("x", shape.width, columns, block.part, null);
    const column = run.grow.row("y", shape.height, rows, line, below);
    return width > wide ? run.grow.cut("x", wide, column, beside) : column;
  }

  function yFirst(run, block) {
    const { width, height, wide, high, columns, rows, shape } = block;
    const fillBeside = () => (width > wide ? fill(run, width - wide, high) : null);
    const fillBelow = () => (height > high ? fill(run, width, height - high) : null);
    const [beside, below] = inOrder(run, fillBeside, fillBelow);
    const stack = run.grow.row("y", shape.height, rows, block.part, null);
    const line = run.grow.row("x", shape.width, columns, stack, beside);
    return height > high ? run.grow.cut("y", high, line, below) : line;
  }

  /* The larger rest is filled first, but where chance has it otherwise. */
  function inOrder(run, small, large) {
    if (run.habits.noise && run.habits.draw() < 0.3) {
      const first = small();
      return [first, large()];
    }
    const second = large();
    return [small(), second];
  }

  function fill(run, width, height) {
    run.steps += 1;
    const found = picked(run, width, height);
    if (found === null) return run.grow.left;
    const { at, shape } = found;
    const { columns, rows } = blockOf(shape, width, height, run.need[at], run.habits);
    run.need[at] -= columns * rows;
    const wide = columns * shape.width, high = rows * shape.height;
    const block = { width, height, wide, high, columns, rows, shape, part: run.grow.part(at, shape.turned) };
    const xLarger = (width - wide) * height >= width * (height - high);
    const { split, draw } = run.habits;
    const xNow = split === "any" ? draw() < 0.5 : (split === "larger") === xLarger;
    return xNow ? xFirst(run, block) : yFirst(run, block);
  }

  /* A tree for each piece, or null where not all of `target` sets found room. */
  function tried(pieces, kinds, target, seed, grow) {
    const habits = habitsOf(seed);
    const run = {
      kinds, habits, grow, steps: 0, need: kinds.map((kind) => kind.each * target),
      largest: Math.max(...kinds.map((kind) => kind.width * kind.height)),
    };
    const order = pieces.map((piece, at) => at);
    const area = (at) => pieces[at].width * pieces[at].height;
    order.sort((one, other) => (habits.largestPieceFirst ? area(other) - area(one) : area(one) - area(other)) || one - other);
    const plan = pieces.map(() => null);
    for (const at of order) {
      if (run.need.every((need) => need === 0)) break;
      plan[at] = fill(run, pieces[at].width, pieces[at].height);
    }
    return { done: run.need.every((need) => need === 0), steps: run.steps, plan };
  }

  /* Many tries ------------------------------------------------------------------ */

  function seedFor(pieces, kinds, target, tries, effort, from = 0) {
    for (let seed = from; seed < from + tries && effort.left > 0; seed += 1) {
      const { done, steps } = tried(pieces, kinds, target, seed, BLIND);
      effort.left -= steps;
      if (done) return seed;
    }
    return null;
  }

  /* The most sets that are found, and a seed that finds them. */
  function climbed(pieces, kinds, most, effort) {
    let best = { found: 0, seed: null }, low = 0, high = most, next = most;
    while (low < high && effort.left > 0) {
      const seed = seedFor(pieces, kinds, next, FIRST_TRIES, effort);
      if (seed === null) high = next - 1;
      else [best, low] = [{ found: next, seed }, next];
      next = (low + high + 1) >> 1;
    }
    while (best.found < most && effort.left > 0) {
      const seed = seedFor(pieces, kinds, best.found + 1, MORE_TRIES, effort, FIRST_TRIES);
      if (seed === null) break;
      best = { found: best.found + 1, seed };
    }
    return best;
  }

  /* Of some tries that give as many, the one with the fewest settings, then cuts. */
  function tidied(pieces, kinds, { found, seed }) {
    const seeds = [seed, ...Array(TIDY_TRIES).keys()];
    const plans = seeds.map((one) => tried(pieces, kinds, found, one, trees.grower())).filter((one) => one.done);
    const costs = plans.map(({ plan }) => costOf(pieces, plan));
    const best = costs.reduce((least, cost, at) => (cost < costs[least] ? at : least), 0);
    return plans[best].plan;
  }

  function costOf(pieces, plan) {
    const lists = plan.map((tree, at) => (tree ? moves.of(tree, pieces[at].width, pieces[at].height, 1) : []));
    const stops = lists.reduce((all, list) => all + list.length, 0);
    const cuts = lists.reduce((all, list) => all + (list.length ? list[list.length - 1].to : 0), 0);
    return 1000 * stops + cuts;
  }

  /* {found, atMost, laidOut, single, plan}: a tree, or null, for each of `single`, the pieces one by one;
     `laidOut` is the most parts that are laid out, where nothing else kept more from being found. */
  function most(pieces, kinds, wanted) {
    const atMost = bound(pieces, kinds);
    const parts = kinds.reduce((all, kind) => all + kind.each, 0);
    const single = pieces.flatMap((piece) => Array(Math.min(piece.count, MOST_PARTS)).fill(piece));
    const asked = Math.min(atMost, Math.floor(MOST_PARTS / parts), wanted === null ? Infinity : wanted);
    const best = climbed(single, kinds, asked, { left: MOST_STEPS });
    const all = best.found === asked && asked < Math.min(atMost, wanted === null ? Infinity : wanted);
    return { found: best.found, atMost, laidOut: all ? MOST_PARTS : null, single, plan: best.found ? tidied(single, kinds, best) : [] };
  }

  return { most };
})();
