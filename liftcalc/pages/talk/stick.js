// The panels of the talk without a kernel: presets, sliders over states computed beforehand, and a lift from the room.
(() => {
  "use strict";
  const told = JSON.parse(document.getElementById("told").textContent);
  const units = [...document.querySelectorAll("[data-system]")], announced = document.querySelector(".announced");
  let system = units[0].dataset.system, waiting = 0;

  function put(panel, markup) {  // what is shown, and once it rests for those who do not see it
    const shown = panel.root.querySelector(".shown");
    if (shown.innerHTML === markup) return;
    shown.innerHTML = markup;
    clearTimeout(waiting);
    waiting = setTimeout(() => { if (shown.getClientRects().length) announced.textContent = shown.innerText; }, 700);
  }

  // --- a panel: one of its presets, or one stop of one of its sliders
  function begin(root) {
    const panel = { root, states: told.panels[root.dataset.panel], preset: 0, slider: null, stop: 0, stops: {} };
    panel.show = () => show(panel);
    panel.turn = before => turn(panel, before);
    root.querySelectorAll("[data-preset]").forEach((button, place) => button.addEventListener("click", () => {
      panel.preset = place; panel.slider = null; show(panel);
    }));
    for (const slider of root.querySelectorAll("input[type=range]")) {
      slider.addEventListener("input", () => {
        const stop = panel.stops[slider.name][system][Number(slider.value)];
        panel.slider = stop.preset < 0 ? slider.name : null;
        panel.preset = stop.preset; panel.stop = Number(slider.value);
        show(panel);
      });
      slider.addEventListener("pointerup", () => setTimeout(() => root.closest(".scene").focus({ preventScroll: true })));
    }
    return panel;
  }
  function show(panel) {
    put(panel, panel.slider ? panel.stops[panel.slider][system][panel.stop].shown : panel.states[system][panel.preset]);
    panel.root.querySelectorAll("[data-preset]").forEach((button, place) => button.setAttribute("aria-pressed", !panel.slider && place === panel.preset));
    for (const slider of panel.root.querySelectorAll("input[type=range]")) {
      const stops = (panel.stops[slider.name] || {})[system];
      if (!stops) continue;
      const at = panel.slider === slider.name ? panel.stop : Math.max(0, stops.findIndex(stop => stop.preset === (panel.slider ? 0 : panel.preset)));
      slider.max = stops.length - 1;
      slider.value = at;
      slider.setAttribute("aria-valuetext", stops[at].text);
      const output = slider.closest(".slide").querySelector("output");
      output.textContent = stops[at].text;
      output.style.minWidth = Math.max(...stops.map(stop => stop.text.length)) + "ch";  // so that the track stands still
    }
  }
  function turn(panel, before) {  // to other units: the nearest stop
    if (panel.slider) {
      const was = panel.stops[panel.slider][before][panel.stop].at, stops = panel.stops[panel.slider][system];
      panel.stop = stops.reduce((best, stop, place) => Math.abs(stop.at - was) < Math.abs(stops[best].at - was) ? place : best, 0);
      if (stops[panel.stop].preset >= 0) { panel.preset = stops[panel.stop].preset; panel.slider = null; }
    }
    show(panel);
  }

  // --- a lift from the room: 3,600 n v / s and 3,600 n K / t, with one loading place K
  const fixed = (number, digits) => {  // a number half way goes to the even one
    const tenfold = number * 10 ** digits, half = Number.isInteger(number * 2 ** (digits + 1)) && Math.abs(tenfold % 1) === 0.5;
    return half ? (2 * Math.round(tenfold / 2) / 10 ** digits).toFixed(digits) : number.toFixed(digits);
  };
  const written = number => fixed(number, 0).replace(/\B(?=(\d{3})+$)/g, ",");
  const short = text => text.length > 20 ? text.slice(0, 20) + "..." : text;
  const capital = text => text[0].toUpperCase() + text.slice(1);

  // a number by the rules of the sheets: one decimal mark; what can be read in two ways is asked again
  function numberIn(text, name) {
    const word = text.trim(), comma = text.includes(","), mark = comma ? "," : ".", other = comma ? "." : ",";
    const count = word.split(mark).length - 1, plain = count === 1 ? word.replace(mark, "") : word;
    const decimal = new RegExp(`^[+-]?[0-9]+\\${mark}[0-9]+$`), wrong = new RegExp(`^[+-]?[0-9]+\\${other}[0-9]+$`);
    if (/^[+-]?[0-9]{1,3}(?:[.,' \u00a0\u202f][0-9]{3})+$/.test(word) && !decimal.test(word)) throw `${name}: '${short(text)}' can be read in two ways. Write it without a mark between thousands.`;
    if (wrong.test(word) || !/^[+-]?[0-9]+$/.test(plain) || !/^[+-]?(?:[0-9]{1,12}(?:\.[0-9]{0,12})?|\.[0-9]{1,12})$/.test(word.replace(mark, "."))) throw `${name}: '${short(text)}' is no number. Type digits, such as 3.4.`;
    return Number(word.replace(mark, "."));
  }
  function boxed(box, text) {
    if (!text.trim()) return null;
    const name = capital(box.name), parts = new RegExp(told.room.typed).exec(text);
    if (!parts) throw `${name}: '${short(text)}' is no number. Type digits, such as 3.4.`;
    const word = (parts[2] || "").toLowerCase().trim().replace(/\.+$/, "").trim().split(/\s+/).join(" ");
    const kind = box.kinds.find(each => word && Object.hasOwn(each.units, word)) || box.kinds[0], number = numberIn(parts[1], name);
    if (word && !Object.hasOwn(kind.units, word)) throw `${name}: '${short(word)}' is no unit for this box. Write ${kind.write}.`;
    const value = number * kind.units[word || kind.unit[system]];
    if (!(kind.low <= value && value <= kind.high)) throw `${name}: ${number} ${word || kind.unit[system]} is outside ${kind.low} to ${kind.high} ${kind.base}. Say it once more.`;
    return { kind: kind.name, value };
  }
  function beginRoom(root) {
    const room = told.room, boxes = [...root.querySelectorAll("[data-box]")], kinds = [...root.querySelectorAll("[data-kind]")];
    const panel = { root, kind: kinds[0].dataset.kind };
    function choose(kind, texts) {
      panel.kind = kind;
      for (const box of boxes) box.value = texts[box.dataset.box] || "";
      for (const button of kinds) { const on = button.dataset.kind === kind; button.classList.toggle("mod-active", on); button.setAttribute("aria-pressed", on); }
      panel.show();
    }
    panel.show = panel.turn = () => {
      const values = {};
      let complaint = "";
      for (const box of boxes) {
        let bad = false;
        try { values[box.dataset.box] = boxed(room.boxes[box.dataset.box], box.value); }
        catch (words) { if (typeof words !== "string") throw words; values[box.dataset.box] = null; complaint = words; bad = true; }
        box.setAttribute("aria-invalid", bad);
      }
      const { speed, every, loading } = values, persons = room.persons[panel.kind];
      const v = speed ? speed.value : 1, s = every && (every.kind === "time" ? v * every.value : every.value);
      const spacing = every && (speed || every.kind === "time") ? 3600 * persons * v / s : null;
      const start = loading ? 3600 * persons / loading.value : null;
      const governs = start !== null && (spacing === null || start < spacing) ? "loading" : "spacing";
      const least = governs === "loading" ? start : spacing, other = governs === "loading" ? spacing : start;
      const [words, drawing] = room.states[[speed ? "speed" : "", every ? every.kind : "", loading ? "loading" : "", governs].join("/")];
      let markup = complaint ? room.complaint : words + drawing;
      if (least !== null) markup = markup.replaceAll("{least}", written(least));
      if (least !== null && other !== null) {
        const length = room.bar.full / other * least;
        markup = markup.replaceAll("{other}", written(other)).replaceAll("{length}", fixed(length, 1)).replaceAll("{end}", fixed(room.bar.left + length + room.bar.gap, 1));
      }
      put(panel, markup);
      if (complaint) root.querySelector("[data-complaint]").textContent = complaint;
    };
    for (const button of kinds) button.addEventListener("click", () => choose(button.dataset.kind, {}));
    root.querySelectorAll("[data-preset]").forEach(button => button.addEventListener("click", () => {
      const { kind, ...texts } = room.presets[system][button.dataset.preset];
      choose(kind, texts);
    }));
    for (const box of boxes) box.addEventListener("input", panel.show);
    root.querySelector("[data-preset]").click();
    return panel;
  }

  const panels = [...document.querySelectorAll("[data-panel]")].map(begin);
  panels.push(...[...document.querySelectorAll("[data-room]")].map(beginRoom));

  // --- units
  function use(name) {
    const before = system;
    system = name;
    for (const button of units) button.classList.toggle("mod-active", button.dataset.system === system);
    for (const panel of panels) panel.turn(before);
  }
  for (const button of units) button.addEventListener("click", () => use(button.dataset.system));
  use(system);

  // --- the states of the sliders
  async function unpacked(text) {
    const bytes = Uint8Array.from(atob(text), letter => letter.charCodeAt(0));
    return JSON.parse(await new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"))).text());
  }
  unpacked(document.getElementById("packed").textContent.trim()).then(states => {
    for (const panel of panels) {
      panel.stops = states[panel.root.dataset.panel] || {};
      for (const slide of panel.root.querySelectorAll(".slide")) slide.hidden = false;
      panel.show();
    }
  }).catch(() => {  // stills stand in their place
    for (const words of document.querySelectorAll(".stills-only")) words.hidden = false;
  });
})();
