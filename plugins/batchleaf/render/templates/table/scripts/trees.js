/* A plan is a tree of through cuts. Lengths are whole numbers of the question's common unit.
   Equal trees are one and the same object, so that equal pieces are known for equal. */
const trees = (function () {
  "use strict";

  function grower() {
    const known = new Map();

    function once(name, make) {
      if (!known.has(name)) known.set(name, Object.freeze({ id: known.size, ...make }));
      return known.get(name);
    }

    const left = once("left", { left: true });

    function part(kind, turned) {
      return once(`part ${kind} ${turned}`, { part: kind, turned });
    }

    /* `axis` x: the setting is measured from the left edge of the piece in hand; y: from the top. */
    function cut(axis, at, first, second) {
      return once(`${axis} ${at} ${first.id} ${second.id}`, { axis, at, first, second });
    }

    /* `many` strips of `at` cut off one after the other, and then `rest`, where there is any. */
    function row(axis, at, many, strip, rest) {
      let node = rest === null ? strip : cut(axis, at, strip, rest);
      for (let n = 1; n < many; n += 1) node = cut(axis, at, strip, node);
      return node;
    }

    return { left, part, cut, row };
  }

  function halves(node, width, height) {
    return node.axis === "x"
      ? [{ node: node.first, width: node.at, height }, { node: node.second, width: width - node.at, height }]
      : [{ node: node.first, width, height: node.at }, { node: node.second, width, height: height - node.at }];
  }

  /* Where every leaf lies: parts and what is left over, from the top left corner. */
  function leaves(tree, width, height) {
    const found = [];
    const waiting = [{ node: tree, x: 0, y: 0, width, height }];
    while (waiting.length) {
      const piece = waiting.pop();
      if (!piece.node.axis) {
        found.push(piece);
        continue;
      }
      const [first, second] = halves(piece.node, piece.width, piece.height);
      const along = piece.node.axis === "x";
      waiting.push(
        { ...second, x: piece.x + (along ? piece.node.at : 0), y: piece.y + (along ? 0 : piece.node.at) },
        { ...first, x: piece.x, y: piece.y }
      );
    }
    return found;
  }

  return { grower, halves, leaves };
})();
