/* How many parts of one size a piece gives by through cuts, and arrangements that give so many.

   Lying one way, rows and columns are the most. Lying both ways, the exact count comes from a table
   over all cuts; where that would be too large, from rows that lie one way or the other, on either
   side of one cut, with a bound beside it. An arrangement is a part or a row of arrangements. */
const oneSize = (function () {
  "use strict";

  /* A table that weighs more cuts than this takes more than a moment. */
  const MOST_WORK = 8000000;
  /* So many places of a first cut are tried where there is no table. */
  const MOST_CUTS = 400;
  /* What gives more parts than this is counted, and not drawn. */
  const MOST_DRAWN = 1500;
  /* So many numbers of columns are tried for a few parts of a piece. */
  const MOST_COLUMNS = 40;
  /* All tables of one answer together weigh no more cuts than this. */
  const MOST_IN_ALL = 40000000;

  function shapesOf(part, width, height) {
    const lying = [{ turned: false, width: part.width, height: part.height }];
    if (part.turns && part.width !== part.height) {
      lying.push({ turned: true, width: part.height, height: part.width });
    }
    return lying.filter((shape) => shape.width <= width && shape.height <= height);
  }

  function across(shape, width) { return Math.floor(width / shape.width); }

  function down(shape, height) { return Math.floor(height / shape.height); }

  /* Rows of arrangements ---------------------------------------------------- */

  function leaf(shape) { return { shape, width: shape.width, height: shape.height }; }

  function inARow(axis, pieces) {
    const flat = pieces.flatMap((piece) => (piece === null ? [] : piece.axis === axis ? piece.pieces : [piece]));
    if (flat.length < 2) return flat.length ? flat[0] : null;
    const total = (side) => flat.reduce((all, piece) => all + piece[side], 0);
    const most = (side) => flat.reduce((all, piece) => Math.max(all, piece[side]), 0);
    return axis === "x"
      ? { axis, pieces: flat, width: total("width"), height: most("height") }
      : { axis, pieces: flat, width: most("width"), height: total("height") };
  }

  function repeated(axis, piece, many) {
    return piece === null || many < 1 ? null : inARow(axis, Array(many).fill(piece));
  }

  function block(shape, columns, rows, outer) {
    return outer === "y"
      ? repeated("y", repeated("x", leaf(shape), columns), rows)
      : repeated("x", repeated("y", leaf(shape), rows), columns);
  }

  /* Plain rows, and strips that lie one way or the other ------------------------ */

  function plainGrid(shapes, width, height) {
    return Math.max(0, ...shapes.map((shape) => across(shape, width) * down(shape, height)));
  }

  /* The most by rows (axis y) or columns (axis x), each of parts lying one way: {count, many}. */
  function strips(shapes, width, height, axis) {
    const [one, other] = shapes;
    const deep = (shape) => (axis === "y" ? shape.height : shape.width);
    const each = (shape) => (axis === "y" ? across(shape, width) : down(shape, height));
    const room = axis === "y" ? height : width;
    let best = { count: 0, many: [0, 0] };
    for (let n = 0; n <= Math.min(Math.floor(room / deep(one)), MOST_DRAWN); n += 1) {
      const rest = Math.floor((room - n * deep(one)) / deep(other));
      const count = n * each(one) + rest * each(other);
      if (count > best.count) best = { count, many: [n, rest] };
    }
    return best;
  }

  function striped(shapes, width, height, axis, many) {
    const inner = axis === "y" ? "x" : "y";
    const rows = shapes.map((shape, at) => {
      const each = axis === "y" ? across(shape, width) : down(shape, height);
      return repeated(axis, repeated(inner, leaf(shape), each), many[at]);
    });
    return inARow(axis, rows);
  }

  function inStrips(shapes, width, height) {
    if (shapes.length < 2) return plainGrid(shapes, width, height);
    return Math.max(strips(shapes, width, height, "x").count, strips(shapes, width, height, "y").count);
  }

  /* The table over all cuts ------------------------------------------------- */

  function tableOf(shapes, width, height, effort) {
    const x = points.raster(width, shapes.map((shape) => shape.width));
    const y = points.raster(height, shapes.map((shape) => shape.height));
    if (x === null || y === null) return null;
    const work = x.length * y.length * (x.length + y.length) / 4;
    if (work > Math.min(MOST_WORK, effort.left)) return null;
    effort.left -= work;
    const table = { x, y, cutsX: points.cuts(x), cutsY: points.cuts(y), best: new Int32Array(x.length * y.length) };
    for (let i = 1; i < x.length; i += 1) {
      for (let j = 1; j < y.length; j += 1) table.best[i * y.length + j] = settle(table, shapes, i, j);
    }
    return table;
  }

  function settle(table, shapes, i, j) {
    const { x, y, cutsX, cutsY, best } = table;
    const rows = y.length;
    let found = shapes.some((shape) => shape.width <= x[i] && shape.height <= y[j]) ? 1 : 0;
    for (const [near, far] of cutsX[i]) found = Math.max(found, best[near * rows + j] + best[far * rows + j]);
    for (const [near, far] of cutsY[j]) found = Math.max(found, best[i * rows + near] + best[i * rows + far]);
    return found;
  }

  function valueOf(table, width, height) {
    return table.best[points.within(table.x, width) * table.y.length + points.within(table.y, height)];
  }

  /* One way of cutting that gives what the table says, as plain as can be found piece by piece. */
  function arranged(table, shapes, width, height) {
    const worth = valueOf(table, width, height);
    if (worth === 0) return null;
    const plain = simple(shapes.filter((shape) => shape.width <= width && shape.height <= height), width, height, worth);
    if (plain.length) return plain[0];
    const i = points.within(table.x, width), j = points.within(table.y, height);
    const rows = table.y.length;
    for (const [near, far] of [...table.cutsX[i]].reverse()) {
      if (table.best[near * rows + j] + table.best[far * rows + j] !== worth) continue;
      const at = table.x[near];
      return inARow("x", [arranged(table, shapes, at, height), arranged(table, shapes, width - at, height)]);
    }
    for (const [near, far] of [...table.cutsY[j]].reverse()) {
      if (table.best[i * rows + near] + table.best[i * rows + far] !== worth) continue;
      const at = table.y[near];
      return inARow("y", [arranged(table, shapes, width, at), arranged(table, shapes, width, height - at)]);
    }
    throw new Error("a piece has a count that neither a part nor a cut explains");
  }

  /* Plain grids and strips of the piece that give `worth`. */
  function simple(shapes, width, height, worth) {
    const found = [];
    for (const shape of shapes) {
      if (across(shape, width) * down(shape, height) !== worth) continue;
      for (const outer of ["y", "x"]) found.push(block(shape, across(shape, width), down(shape, height), outer));
    }
    if (shapes.length < 2) return found;
    for (const axis of ["y", "x"]) {
      const { count, many } = strips(shapes, width, height, axis);
      if (count === worth && many.every(Boolean)) found.push(striped(shapes, width, height, axis, many));
    }
    return found;
  }

  /* Where there is no table -------------------------------------------------- */

  /* A bound for any layout: a part is a bundle of bars, one unit thin and as long as a side, and
     bars of length n leave free at least r·s or (n - r)·(n - s), the less, with r and s what a
     division by n leaves of the sides (Barnes, Discrete Mathematics 26 (1979) 93-100). */
  function byBars(part, width, height) {
    const lost = [part.width, part.height].map((bar) => {
      const one = BigInt(width % bar), other = BigInt(height % bar), long = BigInt(bar);
      const inside = one * other, outside = (long - one) * (long - other);
      return inside < outside ? inside : outside;
    });
    const free = BigInt(width) * BigInt(height) - (lost[0] > lost[1] ? lost[0] : lost[1]);
    return Number(free / (BigInt(part.width) * BigInt(part.height)));
  }

  /* Strips on either side of one cut: {count, axis, at}; no cut where `at` is 0. */
  function besideOneCut(shapes, width, height) {
    let best = { count: inStrips(shapes, width, height), axis: "x", at: 0 };
    for (const [axis, length, side] of [["x", width, "width"], ["y", height, "height"]]) {
      const every = points.sums(length, shapes.map((shape) => shape[side])) || [];
      for (const at of every.filter((one) => one && one <= length / 2).slice(0, MOST_CUTS)) {
        const halves = axis === "x" ? [[at, height], [width - at, height]] : [[width, at], [width, height - at]];
        const count = halves.reduce((all, [wide, high]) => all + inStrips(fitting(shapes, wide, high), wide, high), 0);
        if (count > best.count) best = { count, axis, at };
      }
    }
    return best;
  }

  function fitting(shapes, width, height) {
    return shapes.filter((shape) => shape.width <= width && shape.height <= height);
  }

  function inStripsArranged(shapes, width, height) {
    const fits = fitting(shapes, width, height);
    const count = inStrips(fits, width, height);
    return count ? simple(fits, width, height, count)[0] : null;
  }

  function parted(shapes, width, height, { count, axis, at }) {
    if (!at) return simple(shapes, width, height, count);
    const halves = axis === "x" ? [[at, height], [width - at, height]] : [[width, at], [width, height - at]];
    return [inARow(axis, halves.map(([wide, high]) => inStripsArranged(shapes, wide, high)))];
  }

  /* The answer ----------------------------------------------------------------- */

  /* What the tables of one answer may still weigh. */
  function effort() { return { left: MOST_IN_ALL }; }

  /* {found, atMost, arrangements}; arrangements() makes some that give `found`. */
  function most(part, width, height, left = effort()) {
    const shapes = shapesOf(part, width, height);
    if (shapes.length < 2) {
      const found = plainGrid(shapes, width, height);
      return told(found, found, () => simple(shapes, width, height, found));
    }
    const table = tableOf(shapes, width, height, left);
    if (table) {
      const found = valueOf(table, width, height);
      return told(found, found, () => {
        const plain = simple(shapes, width, height, found);
        return plain.length ? plain : [arranged(table, shapes, width, height)];
      });
    }
    const best = besideOneCut(shapes, width, height);
    const atMost = Math.max(best.count, byBars(part, width, height));
    return told(best.count, atMost, () => parted(shapes, width, height, best));
  }

  function told(found, atMost, arrangements) {
    return { found, atMost, arrangements: () => (found && found <= MOST_DRAWN ? arrangements() : []) };
  }

  /* Arrangements of `count` parts and no more, in rows that lie one way. */
  function some(part, width, height, count) {
    const found = [];
    for (const shape of count <= MOST_DRAWN ? shapesOf(part, width, height) : []) {
      const widest = Math.min(across(shape, width), count);
      for (let columns = widest; columns > Math.max(0, widest - MOST_COLUMNS); columns -= 1) {
        const rows = Math.floor(count / columns), over = count % columns;
        if (rows + (over ? 1 : 0) > down(shape, height)) continue;
        const full = block(shape, columns, rows, "y");
        found.push(inARow("y", [full, repeated("x", leaf(shape), over)]));
      }
    }
    return found;
  }

  return { most, some, effort, shapesOf };
})();
