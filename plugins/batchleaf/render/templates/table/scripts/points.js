/* The places where a cut can matter: sums of the parts' lengths (Herz 1972), and of these only, for
   every sum x, the largest that fits in what is left beside x (Scheithauer and Terno 1996). */
const points = (function () {
  "use strict";

  /* More sums than these are not looked through. */
  const MOST_SUMS = 30000;

  /* Every sum of `sizes` up to `length`, rising; null where there are too many. */
  function sums(length, sizes) {
    const reached = new Set([0]);
    for (const size of [...new Set(sizes)].sort((one, other) => other - one)) {
      for (const from of [...reached]) {
        for (let at = from + size; at <= length; at += size) {
          reached.add(at);
          if (reached.size > MOST_SUMS) return null;
        }
      }
    }
    return [...reached].sort((one, other) => one - other);
  }

  /* The last place in rising `numbers` whose number is at most `limit`. */
  function within(numbers, limit) {
    let low = 0, high = numbers.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (numbers[middle] <= limit) low = middle + 1;
      else high = middle;
    }
    return low - 1;
  }

  function raster(length, sizes) {
    const every = sums(length, sizes);
    if (every === null) return null;
    const kept = new Set(every.map((at) => every[within(every, length - at)]));
    return [...kept].sort((one, other) => one - other);
  }

  /* For each point the pairs [near, far] of pieces that a cut of it leaves, each as long as can be. */
  function cuts(at) {
    return at.map((length, piece) => {
      const pairs = new Map();
      for (let place = 1; place < piece; place += 1) {
        const far = within(at, length - at[place]);
        const near = within(at, length - at[far]);
        if (near > 0 && far > 0 && near <= far) pairs.set(near * at.length + far, [near, far]);
      }
      return [...pairs.values()];
    });
  }

  return { sums, raster, within, cuts };
})();
