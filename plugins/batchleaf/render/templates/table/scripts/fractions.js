/* Exact fractions of whole numbers without bound: {top, bottom}, in lowest terms, never below 0. */
const fractions = (function () {
  "use strict";

  function gcd(one, other) {
    while (other) [one, other] = [other, one % other];
    return one;
  }

  function of(top, bottom) {
    const by = gcd(top, bottom) || 1n;
    return Object.freeze({ top: top / by, bottom: bottom / by });
  }

  function times(one, other) { return of(one.top * other.top, one.bottom * other.bottom); }

  function over(one, other) { return of(one.top * other.bottom, one.bottom * other.top); }

  function less(one, other) { return one.top * other.bottom < other.top * one.bottom; }

  function floor(one) { return one.top / one.bottom; }

  /* For the screen alone. */
  function asFloat(one) { return Number(one.top) / Number(one.bottom); }

  /* The largest fraction of which all of `many` are whole multiples. */
  function commonUnit(many) {
    const bottom = many.reduce((all, one) => all / gcd(all, one.bottom) * one.bottom, 1n);
    const top = many.reduce((all, one) => gcd(all, one.top * (bottom / one.bottom)), 0n);
    return of(top || 1n, bottom);
  }

  return { of, times, over, less, floor, asFloat, commonUnit };
})();
