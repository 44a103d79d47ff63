/* Drawings of a plan, made of elements of SVG; one unit is one pixel of the screen. */
const drawing = (function () {
  "use strict";

  const SVG = "http://www.w3.org/2000/svg";
  const RING = 10;
  const REACH = 6;
  const GAP = 22;
  const HATCH = 9;
  /* Room for the measures before a piece, and for the numbers behind it. */
  const MEASURES = { across: 26, down: 46 };
  const NUMBERS = 34;
  const FIGURE = 7.4;
  let drawn = 0;

  function made(name, attributes, text) {
    const element = document.createElementNS(SVG, name);
    for (const [key, value] of Object.entries(attributes)) {
      element.setAttribute(key, typeof value === "number" ? String(Math.round(value * 100) / 100) : value);
    }
    if (text !== undefined) element.textContent = text;
    return element;
  }

  function sheet(width, height, title, description) {
    drawn += 1;
    const svg = made("svg", {
      viewBox: `0 0 ${Math.ceil(width)} ${Math.ceil(height)}`, width: Math.ceil(width), height: Math.ceil(height),
      role: "img", "aria-labelledby": `drawn-${drawn}-title`, "aria-describedby": `drawn-${drawn}-words`,
    });
    svg.append(
      made("title", { id: `drawn-${drawn}-title` }, title), made("desc", { id: `drawn-${drawn}-words` }, description)
    );
    return svg;
  }

  function rect(kind, box) {
    return made("rect", { class: kind, x: box.x, y: box.y, width: box.width, height: box.height });
  }

  function inset(box, by) {
    return { x: box.x + by, y: box.y + by, width: box.width - 2 * by, height: box.height - 2 * by };
  }

  /* Lines at 45 degrees, each from edge to edge of the box. */
  function hatched({ x, y, width, height }) {
    let path = "";
    for (let at = HATCH; at < width + height; at += HATCH) {
      const right = Math.min(at, width), top = at - right;
      const bottom = Math.min(at, height), left = at - bottom;
      path += `M${(x + right).toFixed(1)} ${(y + top).toFixed(1)}L${(x + left).toFixed(1)} ${(y + bottom).toFixed(1)}`;
    }
    return made("path", { class: "hatch", d: path });
  }

  function leftOver(group, box, kept) {
    if (kept) group.append(rect("keep", box), hatched(box));
    else if (Math.min(box.width, box.height) > 9) group.append(rect("waste", inset(box, 3)));
  }

  function lettered(group, box, text) {
    const room = Math.min(box.width, box.height);
    if (room < 11) return;
    group.append(made("text", { class: room < 24 ? "letter small" : "letter", x: box.x + box.width / 2, y: box.y + box.height / 2 }, text));
  }

  /* A plan as a whole ------------------------------------------------------------- */

  /* So many letters are written; where parts are more, they are too small to hold one. */
  const MOST_LETTERS = 240;

  function piece(plan, at, scale, say) {
    const whole = say.answer.pieces[plan.piece];
    const group = made("g", { transform: `translate(${at.x.toFixed(1)} ${at.y.toFixed(1)})` });
    const box = { x: 0, y: 0, width: whole.width * scale, height: whole.height * scale };
    group.append(rect("sheet", box));
    const leaves = trees.leaves(plan.tree, whole.width, whole.height);
    const boxed = leaves.map((leaf) => ({
      leaf, box: { x: leaf.x * scale, y: leaf.y * scale, width: leaf.width * scale, height: leaf.height * scale },
    }));
    for (const one of boxed.filter(({ leaf }) => leaf.node.left)) leftOver(group, one.box, say.isKept(one.leaf));
    const parts = boxed.filter(({ leaf }) => leaf.node.part !== undefined);
    const outlines = parts.map(({ box: b }) =>
      `M${b.x.toFixed(2)} ${b.y.toFixed(2)}h${b.width.toFixed(2)}v${b.height.toFixed(2)}h${(-b.width).toFixed(2)}z`);
    group.append(made("path", { class: "part lined", d: outlines.join("") }));
    if (parts.length <= MOST_LETTERS) parts.forEach((one) => lettered(group, one.box, words.letter(one.leaf.node.part)));
    group.append(rect("outline", box));
    return group;
  }

  /* Rows of pieces from left to right at one scale; the caption of each stands below it. */
  function placed(plans, room, scale, say) {
    const places = [];
    let x = 0, y = 0, high = 0, wide = 0;
    for (const plan of plans) {
      const whole = say.answer.pieces[plan.piece];
      const width = Math.max(whole.width * scale, words.caption(plan, say).length * FIGURE);
      if (x && x + width > room) [x, y, high] = [0, y + high + GAP + 26, 0];
      places.push({ x: x + 1, y: y + 1 });
      x += width + GAP;
      wide = Math.max(wide, x - GAP);
      high = Math.max(high, whole.height * scale);
    }
    return { places, width: wide + 2, height: y + high + 30 };
  }

  /* As large as all of them stand in one row; where that were too small to read, two in a row. */
  function scaleFor(plans, room, say) {
    const wholes = plans.map((plan) => say.answer.pieces[plan.piece]);
    const widest = Math.max(...wholes.map((one) => one.width)), highest = Math.max(...wholes.map((one) => one.height));
    const all = wholes.reduce((sum, one) => sum + one.width, 0);
    const inOneRow = (room - GAP * (wholes.length - 1) - 4) / all;
    const least = Math.min(150 / widest, 150 / highest);
    const inTwos = Math.min((room - GAP - 4) / (2 * widest), 190 / highest);
    return Math.min(inOneRow >= least ? inOneRow : inTwos, (room - 4) / widest, 340 / highest);
  }

  function overview(answer, room, say) {
    const scale = scaleFor(answer.plans, room, say);
    const { places, width, height } = placed(answer.plans, room, scale, say);
    const description = answer.plans.map((plan) => words.described(plan.tree, answer.pieces[plan.piece], say)).join(" ");
    const svg = sheet(Math.min(width, room), height, words.head(answer), description);
    answer.plans.forEach((plan, at) => {
      const whole = answer.pieces[plan.piece];
      svg.append(
        piece(plan, places[at], scale, say),
        made("text", { class: "quiet start", x: places[at].x, y: places[at].y + whole.height * scale + 16 }, words.caption(plan, say))
      );
    });
    return svg;
  }

  /* One setting ------------------------------------------------------------------ */

  /* Along the cut axis of a move, `u` runs with the setting and `v` along the blade. */
  function turner(axis, origin) {
    const point = axis === "x"
      ? (u, v) => ({ x: origin.x + u, y: origin.y + v })
      : (u, v) => ({ x: origin.x + v, y: origin.y + u });
    const box = (u, v, long, wide) => (axis === "x"
      ? { ...point(u, v), width: long, height: wide }
      : { ...point(u, v), width: wide, height: long });
    return { point, box };
  }

  function line(kind, one, other) {
    return made("path", { class: kind, d: `M${one.x.toFixed(1)} ${one.y.toFixed(1)}L${other.x.toFixed(1)} ${other.y.toFixed(1)}` });
  }

  function content(svg, node, box, kept) {
    if (node.part !== undefined) {
      svg.append(rect("part", box));
      lettered(svg, box, words.letter(node.part));
    } else if (node.left) leftOver(svg, box, kept);
    else svg.append(rect("part", box));
  }

  function ringed(svg, at, text) {
    const half = Math.max(RING, 4 + text.length * 3.6);
    svg.append(
      made("rect", { class: "ring", x: at.x - half, y: at.y - RING, width: 2 * half, height: 2 * RING, rx: RING }),
      made("text", { class: "no", x: at.x, y: at.y }, text)
    );
  }

  /* Each cut its own ring where there is room for it; else one for all of them, on a bracket. */
  function numbered(svg, turn, move, step, deep) {
    const v = deep + REACH;
    const many = move.many * move.alike;
    const apart = move.alike === 1 && move.many <= 12 && (move.many === 1 || step >= 2 * RING + 4);
    if (apart) {
      for (let n = 0; n < move.many; n += 1) ringed(svg, turn.point((n + 1) * step, v + RING), `${move.from + n}`);
      return;
    }
    const first = step, last = step * move.many;
    if (move.many > 1) {
      svg.append(line("bracket", turn.point(first, v), turn.point(last, v)));
    }
    ringed(svg, turn.point((first + last) / 2, v + RING + (move.many > 1 ? 2 : 0)), many === 1 ? `${move.from}` : words.numbers(move));
  }

  function measured(svg, turn, move, scale, say) {
    const total = move.axis === "x" ? move.width : move.height;
    const away = move.axis === "x" ? -16 : -20;
    const marks = [0];
    for (let n = 1; n <= move.many; n += 1) marks.push(n * move.at);
    if (marks[marks.length - 1] < total) marks.push(total);
    svg.append(line("dim", turn.point(0, away), turn.point(total * scale, away)));
    for (const mark of marks) {
      const at = turn.point(mark * scale, away);
      svg.append(
        line("ext", turn.point(mark * scale, -3), turn.point(mark * scale, away - 4)),
        line("dim", { x: at.x - 3.5, y: at.y + 3.5 }, { x: at.x + 3.5, y: at.y - 3.5 })
      );
    }
    marks.slice(1).forEach((mark, at) => figure(svg, turn, move.axis, [marks[at] * scale, mark * scale], away, say.length(mark - marks[at]), at));
  }

  /* A measure in the break of its line; one without room is left out, but for the first of a chain,
     which is the setting itself and stands above the line. */
  function figure(svg, turn, axis, [from, to], away, text, place) {
    const room = to - from > text.length * FIGURE + 10;
    if (!room && place > 0) return;
    const at = turn.point((from + to) / 2, room ? away : away - 12);
    const turned = axis === "y" ? { transform: `rotate(-90 ${at.x.toFixed(1)} ${at.y.toFixed(1)})` } : {};
    svg.append(made("text", { class: "m", x: at.x, y: at.y, ...turned }, text));
  }

  function oneMove(move, scale, say, title, description) {
    const across = move.axis === "x";
    const width = move.width * scale, height = move.height * scale;
    const origin = { x: across ? 10 : MEASURES.down, y: across ? MEASURES.across + 6 : 10 };
    const svg = sheet(
      origin.x + width + (across ? 22 : NUMBERS + 10), origin.y + height + (across ? NUMBERS : 12), title, description
    );
    const turn = turner(move.axis, origin);
    const long = (across ? width : height), deep = (across ? height : width), step = move.at * scale;
    move.strips.forEach((strip, n) => content(svg, strip.node, turn.box(n * step, 0, step, deep), say.isKept(strip)));
    const rest = long - move.many * step;
    content(svg, move.rest.node, turn.box(move.many * step, 0, rest, deep), say.isKept(move.rest));
    svg.append(rect("outline", turn.box(0, 0, long, deep)));
    for (let n = 1; n <= move.many; n += 1) {
      svg.append(line("cut", turn.point(n * step, 0), turn.point(n * step, deep + REACH)));
    }
    numbered(svg, turn, move, step, deep);
    measured(svg, turn, move, scale, say);
    return svg;
  }

  /* One scale for all moves of an answer. */
  function scaleOfMoves(answer, room) {
    const wholes = answer.plans.map((plan) => answer.pieces[plan.piece]);
    const widest = Math.max(...wholes.map((one) => one.width)), highest = Math.max(...wholes.map((one) => one.height));
    return Math.min((room - MEASURES.down - NUMBERS - 10) / widest, 300 / highest);
  }

  return { overview, oneMove, scaleOfMoves };
})();
