/* Which of many batches are found. Choices of one kind widen, choices of different kinds narrow, a
   ladder says "at most"; beside each choice stands how many batches it would find. Knows no page:
   it is given what is true of each batch, and the kinds of choice in their order, with the texts of the
   choices and how many batches each would find as long as nothing is asked. */
(function () {
  "use strict";

  var NONE = -1;
  var SEVERAL = -2;
  var AS_IT_IS = /^[\u0000-\u007f\u00a3\u20ac]*$/; // nothing to take apart
  var AT_ONCE = 250; // so many are made ready between two looks at what the reader does

  /* Words as they are compared: small, without accents. */
  function folded(text) {
    var plain = text.toLowerCase().replace(/\u00a0/g, " ");
    return AS_IT_IS.test(plain) ? plain : plain.normalize("NFKD").replace(/[\u0300-\u036f]/g, "");
  }

  /* The rungs of a ladder that let a number in. */
  function rungs(limits, number) {
    var within = [];
    if (number !== null) limits.forEach(function (limit, at) { if (number <= limit) within.push(at); });
    return within;
  }

  /* Of each kind, what is true of each batch: places in the list of its choices. */
  function trueOf(data, kind) {
    var limits = data.limits[kind.key];
    if (!limits) return data.choices[kind.key];
    return data.numbers[kind.key].map(function (number) { return rungs(limits, number); });
  }

  /* What is true of all batches, one behind the other. All choices are numbered through, those of kind k
     from `bases[k]`; those of batch b and kind k are `choices` from `starts[b * kinds + k]`. */
  function flat(data, kinds) {
    var mine = kinds.map(function (kind) { return trueOf(data, kind); });
    var bases = [0];
    kinds.forEach(function (kind, k) { bases.push(bases[k] + kind.texts.length); });
    var starts = new Int32Array(data.titles.length * kinds.length + 1);
    var choices = [];
    for (var b = 0, next = 1; b < data.titles.length; b += 1) {
      for (var k = 0; k < kinds.length; k += 1, next += 1) {
        for (var n = 0; n < mine[k][b].length; n += 1) choices.push(bases[k] + mine[k][b][n]);
        starts[next] = choices.length;
      }
    }
    return { bases: bases, starts: starts, choices: Uint16Array.from(choices) };
  }

  /* What is not known comes last. */
  function less(one, other) {
    if (one === null || other === null) return (one === null) - (other === null);
    return one - other;
  }

  window.batchleafSieve = function (data, kinds) {
    var width = kinds.length;
    var every = Array.from(data.titles.keys());
    var offered = Int32Array.from(kinds.flatMap(function (kind) { return kind.counts; }));
    var all = null; // these three are made when they are first asked for
    var texts = [];
    var places = null;

    /* All that is told of a batch. */
    function textOf(at) {
      if (texts[at] !== undefined) return texts[at];
      var said = [data.titles[at], data.lines[at], data.days[at]];
      kinds.forEach(function (kind) {
        if (data.limits[kind.key]) return;
        data.choices[kind.key][at].forEach(function (choice) { said.push(kind.texts[choice]); });
      });
      texts[at] = folded(said.join(" "));
      return texts[at];
    }

    function says(at, words) {
      return words.every(function (word) { return textOf(at).indexOf(word) >= 0; });
    }

    function lets(at, kind, wanted) {
      for (var n = all.starts[at * width + kind]; n < all.starts[at * width + kind + 1]; n += 1) {
        if (wanted[all.choices[n]]) return true;
      }
      return false;
    }

    /* The kind that alone leaves a batch out, of those that ask for something. */
    function missedBy(at, asking, wanted) {
      var missed = NONE;
      for (var n = 0; n < asking.length; n += 1) {
        if (lets(at, asking[n], wanted)) continue;
        if (missed !== NONE) return SEVERAL;
        missed = asking[n];
      }
      return missed;
    }

    function asks(wanted) {
      return function (kind) { return wanted.subarray(all.bases[kind], all.bases[kind + 1]).indexOf(1) >= 0; };
    }

    /* `wanted` has a 1 for each choice that is taken, all kinds numbered through; the counts are laid out
       alike. Of what one kind alone leaves out, another choice of this kind would let it in. */
    function found(text, wanted) {
      var words = folded(text).split(/\s+/).filter(Boolean);
      if (!words.length && wanted.indexOf(1) < 0) return { hits: every, counts: offered };
      all = all || flat(data, kinds);
      var asking = Array.from(kinds.keys()).filter(asks(wanted));
      var counts = new Int32Array(wanted.length);
      var hits = [];
      for (var at = 0; at < data.titles.length; at += 1) {
        if (words.length && !says(at, words)) continue;
        var missed = missedBy(at, asking, wanted);
        if (missed === SEVERAL) continue;
        if (missed === NONE) hits.push(at);
        var from = at * width + (missed === NONE ? 0 : missed);
        var to = missed === NONE ? (at + 1) * width : from + 1;
        for (var n = all.starts[from]; n < all.starts[to]; n += 1) counts[all.choices[n]] += 1;
      }
      return { hits: hits, counts: counts };
    }

    function placesByTitle() {
      if (places) return places;
      var collator = new Intl.Collator("en", { numeric: true });
      var order = every.slice().sort(function (a, b) { return collator.compare(data.titles[a], data.titles[b]); });
      places = new Int32Array(order.length);
      order.forEach(function (at, place) { places[at] = place; });
      return places;
    }

    function sorted(hits, order) {
      var numbers = order === "title" ? placesByTitle() : data.numbers[order];
      if (order === "oldest") return hits.slice().reverse();
      if (!numbers) return hits;
      return hits.slice().sort(function (a, b) { return less(numbers[a], numbers[b]) || a - b; });
    }

    /* Makes ready, a little at a time, what the first choice, words and order by title will ask for. */
    function warm() {
      var at = 0;
      all = all || flat(data, kinds);
      (function some() {
        for (var n = 0; n < AT_ONCE && at < data.titles.length; n += 1, at += 1) textOf(at);
        if (at < data.titles.length) setTimeout(some);
        else placesByTitle();
      })();
    }

    return { found: found, sorted: sorted, warm: warm };
  };
})();
