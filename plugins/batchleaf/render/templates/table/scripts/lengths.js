/* Lengths and sizes as a maker writes them, exactly, in mm; and as a rule shows them.
   Reads and tells what the house's records read and tell. One inch is 25.4 mm (NIST SP 447). */
class NoMeasure extends Error {}

const lengths = (function () {
  "use strict";

  const IN_MM = { mm: fractions.of(1n, 1n), cm: fractions.of(10n, 1n), in: fractions.of(127n, 5n) };
  const NONE = fractions.of(0n, 1n);
  const MM = IN_MM.mm;
  const LONGEST = fractions.of(100000n, 1n);
  const SHORTEST = fractions.of(1n, 5n);
  const VULGAR = {
    "¼": "1/4", "½": "1/2", "¾": "3/4", "⅐": "1/7", "⅑": "1/9", "⅒": "1/10",
    "⅓": "1/3", "⅔": "2/3", "⅕": "1/5", "⅖": "2/5", "⅗": "3/5", "⅘": "4/5",
    "⅙": "1/6", "⅚": "5/6", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8",
  };
  const WORDS = {
    mm: "mm", millimetre: "mm", millimetres: "mm", millimeters: "mm",
    cm: "cm", centimetre: "cm", centimetres: "cm", centimeters: "cm",
    in: "in", inch: "in", inches: "in", "\"": "in", "”": "in", "“": "in", "″": "in", "''": "in",
  };
  /* At most six digits a number, so that no text can ask for a huge one. */
  const MIXED = /^(?:([0-9]{1,6})[ -]+)?([0-9]{1,6})\/([0-9]{1,6})$/;
  const DECIMAL = /^(?:[0-9]{1,6}(?:\.[0-9]{1,6})?|\.[0-9]{1,6})$/;
  const BETWEEN = /\s*(?:[x×X*]|\bby\b)\s*/;
  const EXACT_BOTTOMS = new Set([1n, 2n, 3n, 4n, 5n, 6n, 8n, 10n, 12n, 16n, 32n, 64n]);
  const NBSP = "\u00a0";

  function oneSpelling(text) {
    let out = text.replace(/[\u00a0\u2009\u202f\u2007\t]/g, " ");
    for (const sign of Object.keys(VULGAR)) out = out.split(sign).join(" " + VULGAR[sign]);
    return out.replace(/\u2044/g, "/").replace(/\u2013/g, "-").trim();
  }

  function whichOfTwo(text, top, bottom) {
    const whole = BigInt(top) / BigInt(bottom), part = BigInt(top) % BigInt(bottom);
    const asRead = part ? `${whole} ${part}/${bottom}` : `${whole}`;
    const last = Number(top.slice(-1));
    if (top.length > 1 && last > 0 && last < Number(bottom)) {
      return `“${text}” may be ${asRead} or ${top.slice(0, -1)} ${last}/${bottom}; write the one that is meant, with a space`;
    }
    return `“${text}” is more than a whole; write ${asRead}`;
  }

  function readNumber(plain, text) {
    if (DECIMAL.test(plain)) {
      const [whole, places = ""] = plain.split(".");
      return fractions.of(BigInt((whole || "0") + places), 10n ** BigInt(places.length));
    }
    const found = MIXED.exec(plain);
    if (!found) throw new NoMeasure(`“${text}” is not a number; write for example 4, 4.25 or 4 1/4`);
    const [, whole, top, bottom] = found;
    if (Number(bottom) === 0) throw new NoMeasure(`“${text}” divides by nothing`);
    if (whole === undefined && Number(top) >= Number(bottom) && Number(bottom) > 1) {
      throw new NoMeasure(whichOfTwo(text, top, bottom));
    }
    return fractions.of(BigInt(whole || 0) * BigInt(bottom) + BigInt(top), BigInt(bottom));
  }

  function checkNotTiny(text, length, unit, unitWritten) {
    if (fractions.less(length, MM) && !unitWritten && unit !== "in") {
      const shown = Number(fractions.asFloat(length).toPrecision(3));
      throw new NoMeasure(`“${text}” is ${shown} mm, too small to cut; is “in” missing after it?`);
    }
    if (fractions.less(length, SHORTEST)) {
      throw new NoMeasure(`“${text}” is too small to cut; a length is at least 0.2 mm`);
    }
  }

  function readLength(text, unit, unitWritten) {
    const shown = text.trim();
    if (/[0-9],[0-9]/.test(text)) throw new NoMeasure(`“${shown}” has a comma; write it with a point, like 4.25`);
    if (/^[-\u2212]/.test(shown)) throw new NoMeasure(`“${shown}” lies below nothing; a length is above 0`);
    const plain = oneSpelling(text);
    const found = /^([0-9./ -]*[0-9])\s*([^0-9\s./-]*)\.?$/.exec(plain);
    if (!found) throw new NoMeasure(`“${plain}” is not a length; write for example 4 1/4 in, 4.25 in or 108 mm`);
    const word = found[2].toLowerCase();
    if (word && !Object.hasOwn(WORDS, word)) {
      throw new NoMeasure(`“${word}” in “${shown}” is not a unit of length; write mm, cm or in`);
    }
    const length = fractions.times(readNumber(found[1].trim(), found[1].trim()), IN_MM[word ? WORDS[word] : unit]);
    if (!fractions.less(NONE, length) || fractions.less(LONGEST, length)) {
      throw new NoMeasure(`“${shown}” is no length for a table; it has to lie above 0 and below 100 m`);
    }
    checkNotTiny(shown, length, unit, unitWritten || word !== "");
    return length;
  }

  function unitNamed(text) {
    const last = /[^0-9\s./-]+$/.exec(text.trim());
    const word = last && last[0].toLowerCase().replace(/\.+$/, "");
    return word && Object.hasOwn(WORDS, word) ? WORDS[word] : null;
  }

  /* Two lengths with x between; a unit written once, at the end, counts for both. */
  function readSize(text, unit) {
    const noSize = () => new NoMeasure(
      `“${text.trim()}” is not a size; write two lengths with x between, like ${unit === "in" ? "8 1/2 x 11" : "44 x 70"}`
    );
    const pieces = oneSpelling(text).split(BETWEEN);
    if (pieces.length < 2 || !pieces.every(Boolean)) throw noSize();
    const named = unitNamed(pieces[pieces.length - 1]);
    const read = pieces.map((piece) => readLength(piece, named || unit, named !== null));
    if (read.length !== 2) throw noSize();
    return { width: read[0], height: read[1] };
  }

  function decimal(number, places) {
    const scale = 10n ** BigInt(places);
    const parts = number.top * scale / number.bottom;
    const rest = (parts % scale).toString().padStart(places, "0").replace(/0+$/, "");
    return (parts / scale).toString() + (rest && "." + rest);
  }

  /* With a comma for the thousands, as the house shows all but millimetres and marks of a rule. */
  function grouped(number, places) {
    return decimal(number, places).replace(/^[0-9]+/, (whole) => whole.replace(/\B(?=([0-9]{3})+$)/g, ","));
  }

  function mixed(number) {
    const whole = fractions.floor(number), rest = number.top % number.bottom;
    if (!rest) return whole.toString();
    return (whole ? whole + NBSP : "") + rest + "/" + number.bottom;
  }

  /* Without the unit's name. Exact wherever a few figures can do it; else cut off, at a mark of the
     rule, since what is cut too large does not fit. */
  function show(length, unit) {
    const inside = fractions.over(length, IN_MM[unit]);
    if (unit === "mm") return decimal(inside, 2);
    if (unit === "cm") return grouped(inside, 3);
    if (EXACT_BOTTOMS.has(inside.bottom)) return mixed(inside);
    if (1000n % inside.bottom === 0n) return grouped(inside, 3);
    const marks = fractions.of(inside.top * 16n / inside.bottom, 16n);
    return marks.top ? mixed(marks) : "under" + NBSP + "1/16";
  }

  function showSize(size, unit) {
    return show(size.width, unit) + NBSP + "×" + NBSP + show(size.height, unit);
  }

  return { readSize, show, showSize, NBSP };
})();
