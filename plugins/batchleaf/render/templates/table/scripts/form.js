/* The form: rows of pieces and of sizes, and what stands in them. */
const form = (function () {
  "use strict";

  const LISTS = { have: { most: 99, noun: "piece" }, want: { most: 9999, noun: "size" } };
  const { MOST_ROWS } = address;

  function list(name) { return document.getElementById(name); }

  function rows(name) { return [...list(name).children]; }

  function field(row, part) { return row.querySelector(`[data-part="${part}"]`); }

  /* Rows ------------------------------------------------------------------------------ */

  function add(name, { size = "", count = "" } = {}) {
    const row = document.getElementById(`${name}-row`).content.firstElementChild.cloneNode(true);
    field(row, "size").value = size;
    field(row, "count").value = count;
    list(name).append(row);
    nameRows(name);
    return row;
  }

  function nameRows(name) {
    const all = rows(name), { noun } = LISTS[name];
    all.forEach((row, at) => {
      const called = name === "want" ? `size ${words.letter(at)}` : `${noun} ${at + 1}`;
      const label = called[0].toUpperCase() + called.slice(1);
      row.querySelector(".called").textContent = name === "want" ? words.letter(at) : `${at + 1}`;
      field(row, "size").setAttribute("aria-label", `${label}, width × height`);
      field(row, "count").setAttribute("aria-label", `${label}, how many`);
      const away = row.querySelector(".away");
      away.setAttribute("aria-label", `Take ${called} away`);
      away.hidden = all.length < 2;
      row.querySelector(".fault").id = `${name}-${at + 1}-fault`;
    });
    document.getElementById(`${name}-more`).disabled = all.length >= MOST_ROWS;
  }

  function take(row) {
    const name = row.parentElement.id;
    row.remove();
    if (!rows(name).length) add(name);
    nameRows(name);
  }

  /* The first row without a size, or a new one. */
  function empty(name) {
    const found = rows(name).find((row) => !field(row, "size").value.trim());
    if (found) return found;
    return rows(name).length < MOST_ROWS ? add(name) : null;
  }

  /* A usual size is one tap; another tap is one more of them. */
  function lay(size) {
    const same = rows("have").find((row) => field(row, "size").value.trim() === size);
    if (same) {
      const count = field(same, "count");
      count.value = `${Math.min(LISTS.have.most, (Number(count.value) || 1) + 1)}`;
      return;
    }
    const row = empty("have");
    if (row) field(row, "size").value = size;
  }

  function state() {
    const said = (name) => rows(name).map((row) => ({ size: field(row, "size").value, count: field(row, "count").value }));
    const unit = document.querySelector("[name=unit]:checked");
    return { unit: unit.value, have: said("have"), want: said("want"), turns: document.getElementById("turns").checked };
  }

  function fill({ unit, have, want, turns }) {
    for (const [name, said] of [["have", have], ["want", want]]) {
      list(name).replaceChildren();
      (said.length ? said : [{}]).forEach((one) => add(name, one));
    }
    const chosen = document.querySelector(`[name=unit][value="${unit}"]`) || document.querySelector("[name=unit]");
    chosen.checked = true;
    document.getElementById("turns").checked = turns;
  }

  /* Reading -------------------------------------------------------------------------------- */

  function countIn(name, text, otherwise) {
    const { most } = LISTS[name];
    if (!text.trim()) return otherwise;
    if (!/^[0-9]{1,6}$/.test(text.trim()) || Number(text) < 1 || Number(text) > most) {
      throw new NoMeasure(`“${text.trim()}” is no count; write a whole number from 1 to ${words.number(most)}`);
    }
    return Number(text);
  }

  /* A row that is written: {size} or {fault, part}; null for one without anything in it. */
  function readRow(name, row, unit) {
    const size = field(row, "size").value, count = field(row, "count").value;
    if (!size.trim()) return null;
    let part = "size";
    try {
      const read = lengths.readSize(size, unit);
      part = "count";
      return { row, read: { ...read, count: countIn(name, count, name === "have" ? 1 : null) } };
    } catch (error) {
      if (!(error instanceof NoMeasure)) throw error;
      return { row, fault: error.message, part };
    }
  }

  function readRows(name, unit) {
    return rows(name).map((row) => readRow(name, row, unit)).filter((one) => one !== null);
  }

  /* A sentence below its row; fields without a fault lose theirs. */
  function tellFaults(faults) {
    for (const name of Object.keys(LISTS)) {
      for (const row of rows(name)) {
        const found = faults.find((one) => one.row === row);
        const told = row.querySelector(".fault");
        told.textContent = found ? sentence(found.fault) : "";
        for (const part of ["size", "count"]) mark(field(row, part), told.id, Boolean(found) && found.part === part);
      }
    }
  }

  function mark(input, told, wrong) {
    if (wrong) {
      input.setAttribute("aria-invalid", "true");
      input.setAttribute("aria-describedby", told);
    } else {
      input.removeAttribute("aria-invalid");
      input.removeAttribute("aria-describedby");
    }
  }

  function sentence(text) { return `${text[0].toUpperCase()}${text.slice(1)}.`; }

  return { take, empty, lay, state, fill, rows, field, readRows, tellFaults, sentence };
})();
