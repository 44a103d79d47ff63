/* The page: asks, answers while one types, keeps the ticks. */
(function () {
  "use strict";

  /* In milliseconds: answered while typing, and told aloud or blamed only once nobody types. */
  const AT_ONCE = 120;
  const SETTLED = 900;
  /* A plan of more moves than this is drawn as a whole, and told to its first moves. */
  const MOST_MOVES = 120;

  const byId = (id) => document.getElementById(id);
  const ownUnit = document.body.dataset.unit;
  let answering = 0, settling = 0;
  let written = null;
  let width = 0;
  let shown = { plan: "", answer: null, told: null };

  function made(name, kind, ...inside) {
    const element = document.createElement(name);
    if (kind) element.className = kind;
    element.append(...inside);
    return element;
  }

  /* Answering ------------------------------------------------------------------------- */

  function read() {
    const state = form.state();
    const have = form.readRows("have", state.unit), want = form.readRows("want", state.unit);
    const faults = [...have, ...want].filter((one) => one.fault);
    return { state, faults, have: have.filter((one) => one.read), want: want.filter((one) => one.read) };
  }

  function answer() {
    clearTimeout(answering);
    const asked = read();
    const plan = address.write(asked.state);
    keep(plan);
    showUnit(asked.state.unit);
    if (!asked.faults.length) form.tellFaults([]);
    if (asked.faults.length || !asked.have.length || !asked.want.length) {
      clear(asked);
      return;
    }
    const sizes = (rows) => rows.map((one) => one.read);
    try {
      show(plan, question.answered({ pieces: sizes(asked.have), kinds: sizes(asked.want), turns: asked.state.turns }), asked.state.unit);
    } catch (error) {
      if (!(error instanceof NoMeasure)) throw error;
      say("", form.sentence(error.message));
    }
  }

  function soon() {
    clearTimeout(answering);
    clearTimeout(settling);
    answering = setTimeout(answer, AT_ONCE);
    settling = setTimeout(settle, SETTLED);
  }

  /* A field is left, or something is pressed: what is wrong need not wait. */
  function now() {
    clearTimeout(settling);
    answer();
    form.tellFaults(read().faults);
    settling = setTimeout(settle, SETTLED);
  }

  /* Nobody types: what is wrong is told, and the answer said aloud once. */
  function settle() {
    const { faults } = read();
    form.tellFaults(faults);
    const told = faults.length ? "" : `${byId("answer").textContent} ${byId("from").textContent}`.trim();
    if (byId("aloud").textContent !== told) byId("aloud").textContent = told;
  }

  function clear({ faults, have, want }) {
    const missing = faults.length ? "" : !have.length ? "Write down what lies at hand." : !want.length ? "Write down the size you want." : "";
    say("", missing);
    if (faults.length) byId("brief").textContent = "Something cannot be read yet.";
  }

  function say(head, sentences) {
    byId("answer").textContent = head;
    byId("answer").hidden = !head;
    byId("from").textContent = sentences;
    byId("brief").textContent = head || sentences;
    byId("brief").disabled = true;
    byId("whole").replaceChildren();
    byId("moves").replaceChildren();
    byId("care").hidden = true;
    shown = { plan: "", answer: null, told: null };
  }

  function keep(plan) {
    kept.keepQuestion(plan);
    if (location.hash.slice(1) === plan) return;
    try {
      history.replaceState(null, "", "#" + plan);
    } catch (error) {
      /* Some browsers keep the address of a file as it is. */
    }
  }

  function showUnit(unit) {
    document.querySelectorAll("[data-for]").forEach((one) => { one.hidden = !one.dataset.for.split(" ").includes(unit); });
  }

  /* Showing ---------------------------------------------------------------------------- */

  function show(plan, answer, unit) {
    const told = words.speaker(answer, unit);
    say(words.head(answer), words.sentences(answer, told));
    shown = { plan, answer, told };
    if (answer.plans.length && answer.drawn) draw();
  }

  function draw() {
    const { answer, told, plan } = shown;
    const room = byId("whole").clientWidth;
    byId("whole").replaceChildren(drawing.overview(answer, room, told), caption(answer, told));
    const ticked = kept.ticksOf(plan);
    const scale = drawing.scaleOfMoves(answer, room);
    const sections = [];
    let next = 1, place = 0;
    for (const one of answer.plans) {
      const piece = answer.pieces[one.piece];
      const list = moves.of(one.tree, piece.width, piece.height, next);
      sections.push(sectionOf(one, list, { scale, ticked, place, told }));
      next = list.length ? list[list.length - 1].to + 1 : next;
      place += list.length;
    }
    byId("moves").replaceChildren(...sections);
    byId("care").hidden = false;
    byId("brief").disabled = false;
  }

  function caption(answer, told) {
    const named = answer.kinds.map((kind, at) => `${words.letter(at)} is ${told.size(kind)}`);
    const scale = answer.plans.length > 1 ? "All at one scale. " : "";
    return made("figcaption", "", `${scale}${named.join("; ")}. Hatched: kept for the drawer; dotted: falls away. All figures in ${words.NAMES[told.unit]}.`);
  }

  function sectionOf(plan, list, { scale, ticked, place, told }) {
    const section = made("section", "piece", made("h3", "", words.planHead(plan, told)));
    const shown = list.slice(0, Math.max(0, MOST_MOVES - place));
    shown.forEach((move, n) => section.append(moveOf(move, { scale, told, whole: n === 0, place: place + n, ticked })));
    if (!list.length) section.append(made("p", "", "No cut: it has the size."));
    if (shown.length < list.length) section.append(made("p", "", "More settings follow than are told here; the drawing of the whole shows all."));
    return section;
  }

  function moveOf(move, { scale, told, whole, place, ticked }) {
    const numbers = words.numbers(move);
    const title = `${move.from === move.to ? "Cut" : "Cuts"} ${numbers}`;
    const setting = made("h4", "", made("span", "n", told.length(move.at)), " ", made("span", "", words.edge(move)));
    const hand = words.inHand(move, whole, told), does = words.move(move, told);
    const tick = made("input");
    tick.type = "checkbox";
    tick.checked = ticked.has(place);
    tick.dataset.place = String(place);
    const label = made("label", "", tick, made("span", "", made("span", "c", numbers), does));
    const figure = made("figure", "drawing", drawing.oneMove(move, scale, told, title, `${hand} Set to ${told.length(move.at)} ${words.edge(move)}. ${does}`));
    return made("div", "move", setting, made("p", "hand", hand), figure, label);
  }

  /* What is done with the form --------------------------------------------------------- */

  function pressed(event) {
    const button = event.target.closest("button");
    if (!button) return;
    if (button.dataset.size) form.lay(button.dataset.size);
    else if (button.dataset.sign) write(button);
    else if (button.dataset.more) focusOn(form.empty(button.dataset.more));
    else if (button.classList.contains("away")) takeAway(button);
    else if (button.id === "anew") anew();
    else if (button.id === "brief") {
      byId("answer").scrollIntoView();
      return;
    }
    now();
  }

  function focusOn(row) {
    if (row) form.field(row, "size").focus();
  }

  function takeAway(button) {
    const row = button.closest("li"), name = row.parentElement.id;
    const place = form.rows(name).indexOf(row);
    form.take(row);
    const left = form.rows(name);
    focusOn(left[Math.min(place, left.length - 1)]);
  }

  /* Signs that the keys of a phone hide go where the caret stands. */
  function write(button) {
    const name = button.closest("fieldset").querySelector("ol").id;
    const field = written && written.closest("ol") && written.closest("ol").id === name
      ? written : form.field(form.rows(name)[form.rows(name).length - 1], "size");
    field.focus();
    field.setRangeText(button.dataset.sign, field.selectionStart, field.selectionEnd, "end");
  }

  function anew() {
    form.fill({ unit: form.state().unit, have: [], want: [], turns: true });
    focusOn(form.rows("have")[0]);
  }

  /* Return goes on to the next row, as on a pad of paper. */
  function entered(event) {
    if (event.key !== "Enter" || event.target.dataset.part === undefined) return;
    event.preventDefault();
    const row = event.target.closest("li");
    const next = row.nextElementSibling;
    focusOn(next || (row.parentElement.id === "have" && form.field(row, "size").value.trim() ? form.empty("have") : null));
    now();
  }

  function ticking(event) {
    if (event.target.dataset.place === undefined) return;
    const ticked = [...document.querySelectorAll("#moves input:checked")].map((one) => Number(one.dataset.place));
    kept.keepTicks(shown.plan, ticked);
  }

  /* Beginning ----------------------------------------------------------------------------- */

  function begin(text) {
    form.fill(address.read(text, ownUnit));
    now();
  }

  function resized() {
    if (byId("whole").clientWidth === width) return;
    width = byId("whole").clientWidth;
    if (shown.answer && shown.answer.plans.length && shown.answer.drawn) draw();
  }

  function listen() {
    const asked = byId("asked");
    asked.addEventListener("submit", (event) => event.preventDefault());
    asked.addEventListener("click", pressed);
    asked.addEventListener("keydown", entered);
    asked.addEventListener("input", soon);
    asked.addEventListener("change", now);
    asked.addEventListener("focusin", (event) => { if (event.target.dataset.part === "size") written = event.target; });
    asked.addEventListener("pointerdown", (event) => { if (event.target.closest("[data-sign]")) event.preventDefault(); });
    byId("moves").addEventListener("change", ticking);
    window.addEventListener("hashchange", () => begin(location.hash));
    window.addEventListener("resize", resized);
  }

  byId("asked").hidden = false;
  listen();
  begin(location.hash.length > 1 ? location.hash : kept.lastQuestion());
})();
