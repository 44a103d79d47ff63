/* A tree of cuts as moves at a trimmer: the stop is set once, all pieces that are alike go through,
   strip by strip; then the strips are taken in hand, first those that need the stop where it stands. */
const moves = (function () {
  "use strict";

  /* {axis, at, width, height, alike, many, strips, rest, from, to} for each setting: `alike` pieces of
     that size, each cut `many` times; `strips` and `rest` are the nodes of what one of them gives;
     `from` and `to` number the cuts of one sheet. */
  function of(tree, width, height, from) {
    const made = { list: [], next: from };
    cutAlike({ node: tree, width, height, alike: 1 }, made);
    return made.list;
  }

  function cutAlike(piece, made) {
    if (!piece.node.axis) return;
    const { axis } = piece.node;
    const strips = [];
    let rest = piece;
    while (rest.node.axis === axis) {
      const run = runOf(rest);
      put(made, rest, run);
      strips.push(...run.strips);
      rest = run.rest;
    }
    takeInTurn([...strips, rest], made);
  }

  /* Strips at one setting, as long as they follow one another. */
  function runOf(piece) {
    const { axis, at } = piece.node;
    const strips = [];
    let rest = piece;
    while (rest.node.axis === axis && rest.node.at === at) {
      const [first, second] = trees.halves(rest.node, rest.width, rest.height);
      strips.push({ ...first, alike: piece.alike });
      rest = { ...second, alike: piece.alike };
    }
    return { strips, rest };
  }

  function put(made, piece, { strips, rest }) {
    const cuts = strips.length * piece.alike;
    made.list.push({
      axis: piece.node.axis, at: piece.node.at, width: piece.width, height: piece.height, alike: piece.alike,
      many: strips.length, strips, rest, from: made.next, to: made.next + cuts - 1,
    });
    made.next += cuts;
  }

  function takeInTurn(pieces, made) {
    const groups = new Map();
    for (const piece of pieces) {
      const name = `${piece.node.id} ${piece.width} ${piece.height}`;
      if (groups.has(name)) groups.get(name).alike += piece.alike;
      else groups.set(name, { ...piece });
    }
    const waiting = [...groups.values()].filter((group) => group.node.axis);
    while (waiting.length) {
      const stop = made.list[made.list.length - 1].at;
      const ready = Math.max(0, waiting.findIndex((group) => group.node.at === stop));
      cutAlike(waiting.splice(ready, 1)[0], made);
    }
  }

  return { of };
})();
