/* From an arrangement to a tree of cuts: where the paper that is left over lies.

   One arrangement can be cut in several ways: a strip of waste may run the whole length of the piece,
   end at the first cut, or go to the last piece of a row. The largest sum of squared areas left over
   decides, which favours one large offcut, and then the fewest cuts; or the other way round. */
const cutOut = (function () {
  "use strict";

  /* More pieces in one row than these are not each tried as the last. */
  const MOST_ORDERS = 12;

  const LARGE_OFFCUTS = (one, other) => other.squares - one.squares || one.cuts - other.cuts;
  const FEW_CUTS = (one, other) => one.cuts - other.cuts || other.squares - one.squares;

  function cutter(grow, kind, prefer) {
    const known = new Map();

    function waste(width, height) {
      return { tree: grow.left, squares: (width * height) ** 2, cuts: 0 };
    }

    function joined(axis, at, first, second) {
      return {
        tree: grow.cut(axis, at, first.tree, second.tree),
        squares: first.squares + second.squares,
        cuts: first.cuts + second.cuts + 1,
      };
    }

    function best(piece, width, height) {
      if (!known.has(piece)) known.set(piece, new Map());
      const sizes = known.get(piece), name = `${width} ${height}`;
      if (!sizes.has(name)) sizes.set(name, ways(piece, width, height).sort(prefer)[0]);
      return sizes.get(name);
    }

    function ways(piece, width, height) {
      const over = { x: width - piece.width, y: height - piece.height };
      if (piece.shape) {
        if (!over.x && !over.y) return [{ tree: grow.part(kind, piece.shape.turned), squares: 0, cuts: 0 }];
        return ["x", "y"].filter((axis) => over[axis]).map((axis) => inTurn(axis, [piece], width, height, over[axis]));
      }
      const across = piece.axis === "x" ? "y" : "x";
      const found = [inTurn(piece.axis, piece.pieces, width, height, over[piece.axis])];
      if (over[across]) found.push(trimmedFirst(piece, across, width, height));
      if (over[piece.axis]) {
        for (const order of eachOneLast(piece.pieces)) found.push(inTurn(piece.axis, order, width, height, 0));
      }
      return found;
    }

    function trimmedFirst(piece, axis, width, height) {
      return axis === "x"
        ? joined("x", piece.width, best(piece, piece.width, height), waste(width - piece.width, height))
        : joined("y", piece.height, best(piece, width, piece.height), waste(width, height - piece.height));
    }

    /* `pieces` cut off one after the other; what `trailing` does not take goes to the last. */
    function inTurn(axis, pieces, width, height, trailing) {
      const along = pieces.map((piece) => (axis === "x" ? piece.width : piece.height));
      const before = along.slice(0, -1).reduce((all, one) => all + one, 0);
      along[along.length - 1] = (axis === "x" ? width : height) - trailing - before;
      const outs = pieces.map((piece, at) => (axis === "x" ? best(piece, along[at], height) : best(piece, width, along[at])));
      if (trailing) {
        along.push(trailing);
        outs.push(axis === "x" ? waste(trailing, height) : waste(width, trailing));
      }
      let rest = outs[outs.length - 1];
      for (let at = outs.length - 2; at >= 0; at -= 1) rest = joined(axis, along[at], outs[at], rest);
      return rest;
    }

    return best;
  }

  function eachOneLast(pieces) {
    const last = [...new Set(pieces)].slice(0, MOST_ORDERS);
    return last.map((piece) => {
      const at = pieces.lastIndexOf(piece);
      return [...pieces.slice(0, at), ...pieces.slice(at + 1), piece];
    });
  }

  /* Every tree worth looking at for one of `arrangements`, with what is left over. */
  function treesOf(grow, kind, arrangements, width, height) {
    return arrangements.flatMap((arrangement) =>
      [LARGE_OFFCUTS, FEW_CUTS].map((prefer) => cutter(grow, kind, prefer)(arrangement, width, height))
    );
  }

  return { treesOf };
})();
