/* A question in the part of the address behind #, so that it can be passed on and opened again:
   unit=in&have=8+x+6&have=2+of+12+x+12&want=3+3/4+x+5&turn=no */
const address = (function () {
  "use strict";

  const COUNTED = /^([0-9]{1,5}) of (.+)$/;
  const MOST_ROWS = 26;

  function row(line) {
    const found = COUNTED.exec(line.trim());
    return found ? { size: found[2], count: found[1] } : { size: line.trim(), count: "" };
  }

  function spelt({ size, count }) {
    return count.trim() ? `${count.trim()} of ${size.trim()}` : size.trim();
  }

  function read(text, unit) {
    const said = new URLSearchParams(text.replace(/^#/, ""));
    const rows = (name) => said.getAll(name).slice(0, MOST_ROWS).map(row);
    const named = said.get("unit");
    return {
      unit: ["in", "mm", "cm"].includes(named) ? named : unit,
      have: rows("have"), want: rows("want"), turns: said.get("turn") !== "no",
    };
  }

  function write({ unit, have, want, turns }) {
    const said = new URLSearchParams([["unit", unit]]);
    for (const [name, rows] of [["have", have], ["want", want]]) {
      rows.filter((one) => one.size.trim()).forEach((one) => said.append(name, spelt(one)));
    }
    if (!turns) said.append("turn", "no");
    return said.toString().replace(/%2F/g, "/");
  }

  return { read, write, MOST_ROWS };
})();
