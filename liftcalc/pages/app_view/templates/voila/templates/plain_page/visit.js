// The reader's own files of this visit. The browser keeps them for this tab, until it is closed; no server has them.
// A page hears of them by a text area that nobody sees, and tells what came by a piece of HTML that nobody sees.
const liftcalcVisit = (() => {
  const place = "liftcalc.own-files";

  function kept() {
    try {
      const files = JSON.parse(sessionStorage.getItem(place));
      return Array.isArray(files) ? files : [];
    } catch {
      return [];
    }
  }

  function write(files) {
    try {
      if (files.length) sessionStorage.setItem(place, JSON.stringify(files));
      else sessionStorage.removeItem(place);
      return true;
    } catch {
      return false; // no room, or the browser keeps nothing: the page goes on without
    }
  }

  function keep(came) {
    const names = came.map((file) => file.name);
    return write([...kept().filter((file) => !names.includes(file.name)), ...came]);
  }

  function forget(name) {
    return write(name === undefined ? [] : kept().filter((file) => file.name !== name));
  }

  function look() {
    for (const area of document.querySelectorAll(".visit-hears textarea:not([data-filled])")) {
      area.dataset.filled = "";
      area.value = JSON.stringify({ files: kept() });
      area.dispatchEvent(new Event("input", { bubbles: true }));
      area.dispatchEvent(new Event("change", { bubbles: true }));
    }
    for (const told of document.querySelectorAll(".visit-tells [data-visit]:not([data-done])")) {
      told.dataset.done = "";
      const says = JSON.parse(told.dataset.says);
      if (says.keep) keep(says.keep);
      if (says.forget) forget(says.forget === true ? undefined : says.forget);
    }
  }

  new MutationObserver(look).observe(document, { childList: true, subtree: true });
  return { kept, keep, forget };
})();
