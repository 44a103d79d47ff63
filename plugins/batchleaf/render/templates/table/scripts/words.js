/* The answer and its moves in words. */
const words = (function () {
  "use strict";

  const { NBSP } = lengths;
  const LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";
  /* In mm: a piece with both sides so long goes back into the drawer … */
  const KEPT = 20;
  /* … and one that is narrower wants holding while it is cut. */
  const NARROW = 20;
  const NAMES = { in: "inches", mm: "millimetres", cm: "centimetres" };

  /* Lengths of an answer are whole numbers of its unit. */
  function speaker(answer, unit) {
    const exact = (whole) => fractions.times(answer.unit, fractions.of(BigInt(whole), 1n));
    const inMm = (whole) => fractions.asFloat(exact(whole));
    const length = (whole) => lengths.show(exact(whole), unit);
    const size = ({ width, height }) => lengths.showSize({ width: exact(width), height: exact(height) }, unit);
    const isKept = (piece) => Math.min(inMm(piece.width), inMm(piece.height)) >= KEPT;
    const isNarrow = (piece) => Math.min(inMm(piece.width), inMm(piece.height)) < NARROW;
    return { length, size, inMm, isKept, isNarrow, unit, answer };
  }

  function number(many) { return many.toString().replace(/\B(?=([0-9]{3})+$)/g, ","); }

  function counted(many, one, several) { return number(many) + NBSP + (many === 1 ? one : several); }

  function listed(many) {
    return many.length < 2 ? many.join("") : many.slice(0, -1).join(", ") + " and " + many[many.length - 1];
  }

  function letter(kind) { return LETTERS[kind]; }

  /* The answer -------------------------------------------------------------------- */

  function head(answer) {
    const { found, atMost, wanted, sets: whole } = answer;
    const what = (many) => (whole ? counted(many, "set", "sets") : counted(many, "piece", "pieces"));
    if (!atMost) return "None.";
    if (wanted !== null && found >= wanted) return whole ? "All of it." : wanted === 1 ? "Yes, one piece." : `All ${what(wanted)}.`;
    const of = wanted === null ? "" : `of ${number(wanted)} `;
    if (found === atMost) return of ? `${number(found)} ${of}${whole ? "sets" : "pieces"}.` : `${what(found)}.`;
    if (!found) return `${of ? "None" : "No"} ${of}${whole ? "set" : "piece"} was found; no more than ${number(atMost)}.`;
    return of
      ? `At least ${number(found)} ${of}${whole ? "sets" : "pieces"}, and no more than ${number(atMost)}.`
      : `At least ${what(found)}, and no more than ${number(atMost)}.`;
  }

  function aSet(answer, say) {
    const parts = answer.kinds.map((kind, at) => `${answer.each[at]}${NBSP}${letter(at)} (${say.size(kind)})`);
    return `A set is ${listed(parts)}.`;
  }

  function from(answer, say) {
    if (!answer.plans.length) return "";
    if (answer.sets) return `${allOfIt(answer)}ut from ${listed(inAll(usedOf(answer), answer, say))}.`;
    const each = answer.plans.map(({ piece, times, gives }) => {
      const size = say.size(answer.pieces[piece]);
      return times === 1 ? `${number(gives)} from ${size}` : `${number(gives)} from each of ${times} of ${size}`;
    });
    return `${say.size(answer.kinds[0])}: ${listed(each)}.`;
  }

  function allOfIt({ found, wanted, kinds }) {
    if (wanted === null || found < wanted) return "C";
    return `${listed(kinds.map((kind, at) => number(kind.count) + NBSP + letter(at)))}, c`;
  }

  /* How many of each piece are cut. */
  function usedOf(answer) {
    return answer.pieces.map((piece, at) =>
      answer.plans.filter((plan) => plan.piece === at).reduce((all, plan) => all + plan.times, 0));
  }

  function inAll(many, answer, say) {
    return many.flatMap((one, at) => {
      const size = say.size(answer.pieces[at]);
      return one ? [one === 1 ? size : `${one} of ${size}`] : [];
    });
  }

  function untouched(answer, say) {
    const whole = inAll(usedOf(answer).map((used, at) => answer.pieces[at].count - used), answer, say);
    return answer.plans.length && whole.length ? `Not cut: ${listed(whole)}.` : "";
  }

  function why(answer) {
    const { found, atMost, wanted, sets: whole } = answer;
    if (!atMost) return whole ? "One of the sizes fits on none of these pieces, or all of them together are too small." : "It fits on none of these pieces.";
    if (wanted !== null && found >= wanted) return !whole && atMost > wanted ? more(answer) : "";
    if (found === atMost) return "No way of through cuts gives more.";
    if (whole && answer.laidOut) return `No more than ${number(answer.laidOut)} pieces are laid out here at a time; there may be room for more.`;
    return whole
      ? "This is what was found; another way may give more."
      : "There are too many ways to look through all of them; another may give more.";
  }

  /* A piece may give more than are still wanted. */
  function over({ plans, wanted }) {
    const cut = plans.reduce((all, { times, gives }) => all + times * gives, 0);
    return wanted !== null && cut > wanted ? `${counted(cut - wanted, "is", "are")} over.` : "";
  }

  function more({ found, atMost }) {
    return found === atMost
      ? `These pieces could give ${number(found)}.`
      : `These pieces could give ${number(found)}, and no more than ${number(atMost)}.`;
  }

  function sentences(answer, say) {
    const told = [from(answer, say), answer.sets ? aSet(answer, say) : "", why(answer), untouched(answer, say)];
    if (!answer.sets) told.push(over(answer));
    if (!answer.drawn) told.push("So many are counted, and not drawn.");
    return told.filter(Boolean).join(" ");
  }

  /* The moves ------------------------------------------------------------------------ */

  function numbers({ from: first, to: last }) {
    return first === last ? `${first}` : `${first}${last === first + 1 ? ", " : "–"}${last}`;
  }

  function edge(move) { return move.axis === "x" ? "from the left edge" : "from the top edge"; }

  function inHand(move, whole, say) {
    if (whole) return `In hand: the whole piece, ${say.size(move)}.`;
    return move.alike === 1
      ? `In hand: the piece of ${say.size(move)}.`
      : `In hand: ${move.alike} pieces of ${say.size(move)}, one after the other.`;
  }

  function what(move) {
    const times = move.many === 1 ? "One cut" : `${number(move.many)} cuts, each time pushed to the stop`;
    return move.alike === 1 ? `${times}.` : `${times}, through each of the ${move.alike}.`;
  }

  function gives(move) {
    const found = new Map();
    for (const { node } of [...move.strips, move.rest]) {
      if (node.part !== undefined) found.set(node.part, (found.get(node.part) || 0) + move.alike);
    }
    const parts = [...found].sort(([one], [other]) => one - other).map(([kind, many]) => number(many) + NBSP + letter(kind));
    return parts.length ? `That is ${listed(parts)}.` : "";
  }

  function goOn(move) {
    const strips = move.strips.some(({ node }) => node.axis), rest = Boolean(move.rest.node.axis);
    if (strips && rest) return "Lay the pieces aside: all are cut further.";
    if (strips) return move.many * move.alike === 1 ? "The piece cut off is cut further." : "Lay the strips together: they are cut further.";
    return rest ? "What is left is cut further." : "";
  }

  function leftOver(move, say) {
    const found = new Map();
    for (const piece of [...move.strips, move.rest]) {
      if (!piece.node.left) continue;
      const size = say.size(piece);
      found.set(size, { piece, many: (found.has(size) ? found.get(size).many : 0) + move.alike });
    }
    return [...found].map(([size, { piece, many }]) => fallen(size, piece, many, say)).join(" ");
  }

  function fallen(size, piece, many, say) {
    if (say.isKept(piece)) return many === 1 ? `Keep ${size} for the drawer.` : `Keep ${many} of ${size} for the drawer.`;
    const narrow = say.length(Math.min(piece.width, piece.height));
    return many === 1 ? `A strip of ${narrow} falls away.` : `${many} strips of ${narrow} fall away.`;
  }

  function held(move, say) {
    const narrow = [...move.strips, move.rest].some((piece) => say.isNarrow(piece));
    return narrow ? "Hold the narrow piece with low-tack tape." : "";
  }

  function move(one, say) {
    return [what(one), gives(one), goOn(one), leftOver(one, say), held(one, say)].filter(Boolean).join(" ");
  }

  /* The size of a plan's piece; where equal pieces are cut otherwise, with its place among them. */
  function pieceOf(plan, { answer, size }) {
    const alike = answer.plans.filter((one) => one.piece === plan.piece);
    const called = size(answer.pieces[plan.piece]);
    return alike.length < 2 ? called : `${called}, way ${alike.indexOf(plan) + 1}`;
  }

  function planHead(plan, say) {
    const called = pieceOf(plan, say);
    return plan.times === 1 ? called : `${called}: cut ${plan.times} like this`;
  }

  function caption(plan, say) {
    const called = pieceOf(plan, say), { times, gives } = plan;
    if (gives === null) return times === 1 ? called : `${times} of ${called}`;
    return times === 1 ? `${called}: ${number(gives)}` : `${times} of ${called}: ${number(gives)} each`;
  }

  /* A drawing in one sentence: which parts it shows, and what is kept. */
  function described(tree, piece, say) {
    const parts = new Map(), kept = [];
    for (const leaf of trees.leaves(tree, piece.width, piece.height)) {
      if (leaf.node.part !== undefined) parts.set(leaf.node.part, (parts.get(leaf.node.part) || 0) + 1);
      else if (say.isKept(leaf)) kept.push(say.size(leaf));
    }
    const named = [...parts].sort(([one], [other]) => one - other).map(([kind, many]) => number(many) + NBSP + letter(kind));
    return `${say.size(piece)}: ${listed(named)}${kept.length ? `; kept ${listed(kept)}` : ""}.`;
  }

  return { speaker, head, sentences, number, numbers, letter, edge, inHand, move, planHead, caption, described, NAMES };
})();
