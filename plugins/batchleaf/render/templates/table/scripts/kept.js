/* What stays on this device: the last question and the ticks of a few plans. A browser may refuse to
   keep anything; then nothing is kept, and all else works. */
const kept = (function () {
  "use strict";

  const PLANS = 8;
  const OWN = "batchleaf-table " + location.pathname.replace(/index\.html$/, "") + " ";

  function read(name, otherwise) {
    try {
      const text = localStorage.getItem(OWN + name);
      return text === null ? otherwise : JSON.parse(text);
    } catch (error) {
      return otherwise;
    }
  }

  function write(name, value) {
    try {
      localStorage.setItem(OWN + name, JSON.stringify(value));
    } catch (error) {
      /* Full, or not allowed. */
    }
  }

  function lastQuestion() {
    const text = read("question", "");
    return typeof text === "string" ? text : "";
  }

  function keepQuestion(text) { write("question", text); }

  function plans() {
    const found = read("ticks", []);
    return Array.isArray(found) ? found.filter((one) => one && typeof one.plan === "string" && Array.isArray(one.ticked)) : [];
  }

  function ticksOf(plan) {
    const known = plans().find((one) => one.plan === plan);
    return new Set(known ? known.ticked : []);
  }

  function keepTicks(plan, ticked) {
    const others = plans().filter((one) => one.plan !== plan).slice(0, PLANS - 1);
    write("ticks", [{ plan, ticked: [...ticked] }, ...others]);
  }

  return { lastQuestion, keepQuestion, ticksOf, keepTicks };
})();
