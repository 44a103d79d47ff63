/* The question of the page, and its answer.

   Asked: {pieces: [{width, height, count}], kinds: [{width, height, count or null}], turns}, lengths as
   fractions of mm. Answered: {sets, each, wanted, found, atMost, unit, pieces, kinds, plans}, where
   `plans` are {piece, times, tree, gives}: that piece, so often, cut like that. */
const question = (function () {
  "use strict";

  const FINEST = 1n << 52n;

  function inWholeNumbers(asked) {
    const sizes = [...asked.pieces, ...asked.kinds];
    const unit = fractions.commonUnit(sizes.flatMap((size) => [size.width, size.height]));
    const whole = (length) => {
      const number = fractions.floor(fractions.over(length, unit));
      if (number > FINEST) {
        throw new NoMeasure("these fractions are too unlike to be measured together; write them in sixteenths or as decimals");
      }
      return Number(number);
    };
    const made = (size) => ({ ...size, width: whole(size.width), height: whole(size.height) });
    return {
      unit,
      pieces: asked.pieces.map(made),
      kinds: asked.kinds.map((kind) => ({ ...made(kind), turns: asked.turns })),
    };
  }

  function gcd(one, other) { return other ? gcd(other, one % other) : one; }

  function answered(asked) {
    const whole = inWholeNumbers(asked);
    return whole.kinds.length === 1 ? ofOneSize(whole) : ofSeveral(whole);
  }

  /* One size ---------------------------------------------------------------------- */

  function ofOneSize({ unit, pieces, kinds }) {
    const [kind] = kinds;
    const effort = oneSize.effort();
    const known = pieces.map((piece) => oneSize.most(kind, piece.width, piece.height, effort));
    const total = (name) => pieces.reduce((all, piece, at) => all + piece.count * known[at][name], 0);
    const answer = {
      sets: false, each: [1], wanted: kind.count, found: total("found"), atMost: total("atMost"),
      unit, pieces, kinds, grow: trees.grower(),
    };
    const takes = kind.count === null || kind.count >= answer.found
      ? pieces.map((piece, at) => ({ at, times: piece.count, gives: known[at].found }))
      : enough(pieces, known, kind.count);
    const plans = takes.filter((take) => take.times && take.gives).map((take) => planOf(answer, known, take));
    return { ...answer, plans, drawn: plans.every((plan) => plan.tree) };
  }

  /* Small pieces first, so that sheets stay whole; of the last no more than is wanted. */
  function enough(pieces, known, wanted) {
    const order = pieces.map((piece, at) => at);
    order.sort((one, other) => pieces[one].width * pieces[one].height - pieces[other].width * pieces[other].height || one - other);
    const takes = [];
    let need = wanted;
    for (const at of order.filter((one) => known[one].found)) {
      const gives = known[at].found;
      const times = Math.min(pieces[at].count, Math.floor(need / gives));
      takes.push({ at, times, gives });
      need -= times * gives;
      if (need && times < pieces[at].count) {
        takes.push({ at, times: 1, gives: need });
        break;
      }
    }
    return takes;
  }

  function planOf({ grow, pieces, kinds }, known, { at, times, gives }) {
    const { width, height } = pieces[at];
    const fewer = gives < known[at].found ? oneSize.some(kinds[0], width, height, gives) : [];
    const ways = cutOut.treesOf(grow, 0, fewer.length ? fewer : known[at].arrangements(), width, height);
    return { piece: at, times, gives: fewer.length ? gives : known[at].found, tree: tidiest(ways, width, height) };
  }

  /* The fewest settings, then the fewest cuts, then the largest offcuts. */
  function tidiest(ways, width, height) {
    const ranked = ways.map((way) => ({ ...way, stops: moves.of(way.tree, width, height, 1).length }));
    ranked.sort((one, other) => one.stops - other.stops || one.cuts - other.cuts || other.squares - one.squares);
    return ranked.length ? ranked[0].tree : null;
  }

  /* Several sizes ----------------------------------------------------------------- */

  function ofSeveral({ unit, pieces, kinds }) {
    const without = kinds.filter((kind) => kind.count === null).length;
    if (without && without < kinds.length) {
      throw new NoMeasure("some of these sizes have a count and some have none; write it for all or for none");
    }
    const wanted = without ? null : kinds.map((kind) => kind.count).reduce(gcd);
    const parts = kinds.map((kind) => ({ ...kind, each: wanted === null ? 1 : kind.count / wanted }));
    const { found, atMost, laidOut, single, plan } = sets.most(pieces, parts, wanted);
    return {
      sets: true, each: parts.map((kind) => kind.each), wanted, found, atMost, laidOut, unit, pieces, kinds,
      plans: alike(pieces, single, plan), drawn: true,
    };
  }

  /* Equal pieces that are cut alike are one plan. */
  function alike(pieces, single, plan) {
    const found = new Map();
    plan.forEach((tree, at) => {
      if (tree === null || tree.left) return;
      const piece = pieces.indexOf(single[at]);
      const name = `${piece} ${tree.id}`;
      if (found.has(name)) found.get(name).times += 1;
      else found.set(name, { piece, times: 1, tree, gives: null });
    });
    return [...found.values()].sort((one, other) => one.piece - other.piece);
  }

  return { answered };
})();
