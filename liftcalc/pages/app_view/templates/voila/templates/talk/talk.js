// Scenes by keys, guesses of a room, and the clock of a talk. Works with and without a kernel behind the page.
(() => {
  "use strict";
  const scenes = [...document.querySelectorAll("section.scene")];
  const main = scenes.filter(scene => !("spare" in scene.dataset));
  const planned = main.reduce((sum, scene) => sum + Number(scene.dataset.minutes), 0);
  // what is kept over a reload; where the browser keeps nothing for a file, it lasts as long as the page
  const held = {}, passing = { getItem: name => held[name] ?? null, setItem: (name, value) => { held[name] = String(value); }, removeItem: name => { delete held[name]; } };
  const store = (() => { try { sessionStorage.getItem("talk"); return sessionStorage; } catch { return passing; } })();
  const kept = { get: name => store.getItem("talk-" + name), set: (name, value) => store.setItem("talk-" + name, value), drop: name => store.removeItem("talk-" + name) };
  let now = 0, typed = "";

  const add = (name, parent, tag = "div") => { const made = document.createElement(tag); made.className = name; parent.append(made); return made; };
  const where = add("where", document.body, "footer"), black = add("black", document.body);
  black.hidden = true;
  for (const scene of scenes) scene.setAttribute("aria-label", (scene.querySelector("h2") || scene).textContent.trim());

  // --- the stage: 960 x 720, zoomed so that all of it is seen
  function fit() {
    const zoom = Math.min(innerHeight / 720, innerWidth / 960);
    for (const scene of scenes) {
      scene.style.zoom = zoom;
      scene.style.left = Math.max(0, (innerWidth / zoom - 960) / 2) + "px";
      scene.style.top = Math.max(0, (innerHeight / zoom - 720) / 2) + "px";
    }
    where.style.zoom = zoom;
    where.style.right = Math.max(0, (innerWidth / zoom - 960) / 2) + 24 + "px";
    where.style.bottom = Math.max(0, (innerHeight / zoom - 720) / 2) + 10 + "px";
  }

  // --- the clock: begins when the first scene is left
  const clock = seconds => Math.floor(seconds / 60) + ":" + String(Math.floor(seconds % 60)).padStart(2, "0");
  function tell() {
    const at = main.indexOf(scenes[now]), begun = Number(kept.get("begun"));
    const due = main.slice(0, at + 1).reduce((sum, scene) => sum + Number(scene.dataset.minutes), 0);
    const place = at < 0 ? "spare " + now : now + " of " + (main.length - 1);
    const run = begun ? clock((Date.now() - begun) / 1000) : "0:00";
    const plan = at < 0 ? "" : " / " + clock(60 * due);
    where.textContent = typed ? "to " + typed + ": Enter" : place + "\n" + run + plan;
    where.style.whiteSpace = "pre";
  }

  function show(number, focus = true) {
    number = Math.min(Math.max(number, 0), scenes.length - 1);
    if (now === 0 && number > 0 && !kept.get("begun")) kept.set("begun", Date.now());
    now = number;
    scenes.forEach((scene, place) => { scene.hidden = place !== now; });
    if (location.hash !== "#" + now) { try { history.replaceState(null, "", "#" + now); } catch { location.replace("#" + now); } }
    if (focus) scenes[now].focus({ preventScroll: true });
    dispatchEvent(new Event("resize"));
    tell();
  }

  // --- keys
  const press = element => { if (element) element.click(); return Boolean(element); };
  function units() {
    const other = root => [...root.querySelectorAll(".scene-units button")].find(button => !button.classList.contains("mod-active"));
    press(other(scenes[now]) || other(document));
  }
  function reset() {
    if (now === 0) kept.drop("begun");
    press(scenes[now].querySelector(".scene-preset"));
    tell();
  }
  function boardAgain() {
    const board = scenes[now].querySelector("[data-board]");
    if (board) openAgain(board);
  }
  const busy = element => element && element.closest("input, textarea, select, button, [role=slider], label, a[href], [contenteditable]");
  function key(event) {
    if (event.ctrlKey || event.altKey || event.metaKey) return;
    const name = event.key, page = name === "PageDown" ? 1 : name === "PageUp" ? -1 : 0;
    const used = () => { event.preventDefault(); event.stopImmediatePropagation(); };
    if (page) { used(); black.hidden = true; typed = ""; return show(now + page); }
    if (busy(event.target) && black.hidden) {
      if (name === "Escape") { used(); scenes[now].focus({ preventScroll: true }); }
      return;
    }
    if (name === "b" || name === "B" || name === ".") { used(); black.hidden = !black.hidden; return; }
    if (/^[0-9]$/.test(name)) { used(); typed = (typed + name).slice(-2); return tell(); }
    if (name === "Enter" && typed) { used(); const to = Number(typed); typed = ""; black.hidden = true; return to < scenes.length ? show(to) : tell(); }
    if (name === "Escape") { used(); typed = ""; black.hidden = true; return tell(); }
    const step = { " ": event.shiftKey ? -1 : 1, ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[name];
    if (step) { used(); black.hidden = true; typed = ""; return show(now + step); }
    if (name === "Home") { used(); return show(0); }
    if (name === "End") { used(); return show(main.length - 1); }
    if (name === "u" || name === "U") { used(); return units(); }
    if (name === "R") { used(); return boardAgain(); }
    if (name === "r") { used(); return reset(); }
    if (name === "l" || name === "L") { used(); press(scenes[now].querySelector("[data-lock]")); }
  }
  addEventListener("keydown", key, true);
  // a slider or button that was used gives the keys back to the scene; a box keeps them while it is typed in
  addEventListener("click", event => {
    const button = event.target.closest && event.target.closest("button, .hold-rope");
    if (button && event.detail) scenes[now].focus({ preventScroll: true });
  });
  addEventListener("pointerup", event => { if (event.target.closest && event.target.closest(".noUi-target")) setTimeout(() => scenes[now].focus({ preventScroll: true })); });

  // --- guesses
  const state = name => JSON.parse(kept.get("board-" + name) || '{"hands":{},"called":{},"stage":0}');
  const keep = (name, value) => kept.set("board-" + name, JSON.stringify(value));
  const WRONG = "Write a whole number, such as 12.";
  const whole = (text, most) => { const plain = text.trim().replace(/[\s,.']/g, ""); return /^[0-9]{1,6}$/.test(plain) && /^[0-9]{1,3}([,.' ]?[0-9]{3})*$|^[0-9]+$/.test(text.trim()) && Number(plain) <= most ? Number(plain) : null; };

  function read(board) {
    const name = board.dataset.board, value = state(name);
    let wrong = false;
    for (const box of board.querySelectorAll("input")) {
      const [list, at, most] = box.dataset.hands ? ["hands", box.dataset.hands, 5000] : ["called", box.dataset.called, 99999];
      const number = whole(box.value, most), bad = box.value.trim() !== "" && number === null;
      box.classList.toggle("wrong", bad);
      box.setAttribute("aria-invalid", bad);
      wrong = wrong || bad;
      if (number === null) delete value[list][at]; else value[list][at] = number;
    }
    keep(name, value);
    return wrong;
  }
  function put(board) {
    const value = state(board.dataset.board), scene = board.closest(".scene");
    for (const box of board.querySelectorAll("input")) box.disabled = value.stage > 0;
    const lock = board.querySelector("[data-lock]"), here = Boolean(scene && scene.querySelector("[data-guesses], [data-after]"));
    lock.textContent = value.stage === 0 ? "Lock" : here ? "Show" : "Locked";
    lock.disabled = value.stage > 0 && !here;
    board.querySelector(".said").textContent = value.stage > 0 ? "No more guesses." : "";
    if (scene) scene.classList.toggle("revealed", value.stage > 1);
    const line = board.querySelector(".summary"), told = scene && scene.querySelector("[data-guesses]");
    const hands = Object.values(value.hands).some(number => number > 0);
    line.textContent = value.stage < 2 || told ? "" : !hands ? "Nobody guessed." : [...board.querySelectorAll(".choice")].map((choice, at) => (value.hands["ABCD"[at]] || 0) + " said " + choice.querySelector("span").textContent).join(",  ");
    draw();
  }
  function lock(board) {
    const name = board.dataset.board;
    if (state(name).stage === 0 && read(board)) { board.querySelector(".said").textContent = WRONG; board.querySelector(".wrong").focus(); return; }
    const value = state(name);
    value.stage = Math.min(value.stage + 1, 2);
    keep(name, value);
    put(board);
    scenes[now].focus({ preventScroll: true });
  }
  function openAgain(board) {  // once: open it, with what was typed; open already: empty it
    const name = board.dataset.board, value = state(name);
    if (value.stage > 0) { value.stage = 0; keep(name, value); }
    else { kept.drop("board-" + name); for (const box of board.querySelectorAll("input")) { box.value = ""; box.classList.remove("wrong"); } }
    put(board);
  }
  function begin(board) {
    board.dataset.ready = "yes";
    const value = state(board.dataset.board);
    for (const box of board.querySelectorAll("input")) {
      const number = box.dataset.hands ? value.hands[box.dataset.hands] : value.called[box.dataset.called];
      box.value = number === undefined ? "" : number;
      box.addEventListener("input", () => { board.querySelector(".said").textContent = read(board) ? WRONG : ""; });
      box.addEventListener("keydown", event => {
        if (event.key === "Enter") { const all = [...board.querySelectorAll("input")], next = all[all.indexOf(box) + 1]; (next || board.querySelector("[data-lock]")).focus(); event.preventDefault(); }
      });
    }
    put(board);
  }

  // --- the guesses against the result: hands as columns, called numbers as marks, the result as a line through both
  const svg = (tag, at, words) => { const made = document.createElementNS("http://www.w3.org/2000/svg", tag); for (const name in at) made.setAttribute(name, at[name]); if (words !== undefined) made.textContent = words; return made; };
  const said = number => Math.round(number).toString().replace(/\B(?=(\d{3})+$)/g, ",");
  function draw() {
    for (const place of document.querySelectorAll("[data-guesses]")) {
      const value = state(place.dataset.guesses), drawn = place.querySelector(".drawn");
      const choices = place.dataset.choices.split("|").map(text => { const cut = text.lastIndexOf("="); return [text.slice(0, cut), Number(text.slice(cut + 1))]; });
      const result = Number(place.dataset.result), hands = ["A", "B", "C", "D"].map(letter => value.hands[letter] || 0);
      const called = Object.values(value.called).sort((a, b) => a - b), all = hands.reduce((a, b) => a + b, 0);
      const none = value.stage === 0 || (!all && !called.length), scene = place.closest(".scene");
      drawn.replaceChildren();
      if (scene) scene.classList.toggle("unguessed", none);
      if (none) add("none", drawn, "p").textContent = value.stage === 0 ? "No guess was locked." : "Nobody guessed.";
      if (value.stage === 0) continue;
      const wide = 896, base = 198, most = Math.max(1, ...hands);
      const low = Math.min(0, ...choices.map(each => each[1])), end = 1.12 * Math.max(result, ...choices.map(each => each[1]), ...called.map(number => Math.min(number, 2 * result)));
      const x = number => 60 + (wide - 160) * (Math.min(number, end) - low) / (end - low);
      const halo = { "text-anchor": "middle", "paint-order": "stroke", stroke: "#fff", "stroke-width": 7 };
      const chart = svg("svg", { width: wide, role: "img", "aria-label": `${all} hands: ` + choices.map((each, at) => `${each[0]} ${hands[at]}`).join(", ") + (called.length ? `; called out ${called.map(said).join(", ")}` : "") + `; it is ${place.dataset.text}` });
      const shapes = svg("g", {}), words = svg("g", {}), edges = [];
      shapes.append(svg("path", { d: `M20 ${base}H${wide - 20}`, stroke: "#1a1a1a", "stroke-width": 3 }));
      choices.forEach(([choice, at], which) => {
        const tall = 120 * hands[which] / most, near = Math.abs(at - result) < 1;
        shapes.append(svg("rect", { x: x(at) - 34, y: base - tall, width: 68, height: tall, fill: "#4b3cc4", "fill-opacity": near ? 1 : 0.4 }));
        if (!none) words.append(svg("text", { x: x(at), y: base - tall - 10, "font-size": 28, "font-weight": "bold", ...halo }, hands[which]));
        words.append(svg("text", { x: x(at), y: base + 32, "font-size": 24, ...halo }, choice));
      });
      for (const number of new Set(called)) {  // each in the first row that has room for it
        const times = called.filter(each => each === number).length, text = said(number) + (times > 1 ? " \u00d7" + times : ""), half = 8 * text.length + 8, at = x(number);
        const free = edges.findIndex(edge => at - half > edge), row = free < 0 ? edges.length : free;
        edges[row] = at + half;
        shapes.append(svg("path", { d: `M${at} ${base}v${42 + 27 * row}`, stroke: "#b84a00", "stroke-width": 2, "stroke-dasharray": "3 4" }));
        words.append(svg("text", { x: at, y: base + 62 + 27 * row, "font-size": 23, fill: "#b84a00", ...halo }, text));
      }
      shapes.append(svg("path", { d: `M${x(result)} 36V${base}`, stroke: "#7a1f5c", "stroke-width": 7 }));
      words.append(svg("text", { x: x(result), y: 28, "font-size": 32, "font-weight": "bold", fill: "#7a1f5c", ...halo }, place.dataset.text));
      const high = base + 44 + 27 * edges.length;
      chart.setAttribute("height", high);
      chart.setAttribute("viewBox", `0 0 ${wide} ${high}`);
      chart.append(shapes, words);
      drawn.append(chart);
    }
  }

  // --- the rope, a step at a time
  let steps = 0;
  function step(button) {
    const rope = button.closest(".rope"), riders = rope.querySelector(".riders");
    rope.querySelector(".hold-rope").checked = true;
    riders.classList.add("stepped");
    steps = (steps + 1) % 12;
    riders.style.transform = `translateX(calc(var(--step) * ${steps / 4}))`;
  }
  addEventListener("click", event => {
    const found = name => event.target.closest && event.target.closest(name);
    if (found("[data-lock]")) lock(found("[data-board]"));
    if (found("[data-step]")) step(found("[data-step]"));
  });
  addEventListener("change", event => {
    if (!event.target.matches(".hold-rope")) return;
    const riders = event.target.closest(".rope").querySelector(".riders");
    riders.classList.remove("stepped"); riders.style.transform = ""; steps = 0;
  });

  // boards come when their cell has run
  function ready() {
    const boards = document.querySelectorAll(".scene [data-board]:not([data-ready])"), drawn = document.querySelectorAll(".scene [data-guesses]:not([data-ready])");
    boards.forEach(begin);
    drawn.forEach(place => { place.dataset.ready = "yes"; });
    if (drawn.length) { document.querySelectorAll("[data-board]").forEach(put); draw(); }
  }
  new MutationObserver(ready).observe(document.body, { childList: true, subtree: true });
  addEventListener("resize", fit);
  addEventListener("hashchange", () => show(Number(location.hash.slice(1)) || 0));
  setInterval(tell, 1000);
  fit();
  ready();
  show(Number(location.hash.slice(1)) || 0);
})();
