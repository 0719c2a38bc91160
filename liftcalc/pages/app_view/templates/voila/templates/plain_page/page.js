// Keys of the page, and what it does for print. Page keys always move the page, whatever has the focus; arrows, Home
// and End belong to a slider that has it.
(() => {
  document.getElementById('rendered_cells').setAttribute('role', 'main');

  window.addEventListener('keydown', event => {
    if (!['PageUp', 'PageDown'].includes(event.key) || event.ctrlKey || event.altKey || event.metaKey) return;
    event.stopImmediatePropagation(); // a slider would take it
    event.preventDefault();
    window.scrollBy({top: (event.key === 'PageDown' ? 0.87 : -0.87) * window.innerHeight});
  }, true);

  // What scrolls sideways in a box of its own, such as a wide table on a phone, is reached by keys, too.
  let soon = null;
  function reach() {
    for (const box of document.querySelectorAll('.jp-RenderedHTMLCommon:has(table)')) {
      if (box.scrollWidth <= box.clientWidth + 1) {
        box.removeAttribute('tabindex');
        continue;
      }
      const named = box.querySelector('caption, [aria-label]');
      box.tabIndex = 0;
      box.setAttribute('role', 'group');
      box.setAttribute('aria-label', (named && (named.textContent || named.ariaLabel)) || 'table');
    }
  }
  function reachSoon() {
    clearTimeout(soon);
    soon = setTimeout(reach, 300);
  }
  window.addEventListener('resize', reachSoon);
  document.addEventListener('toggle', reachSoon, true);
  new MutationObserver(reachSoon).observe(document.body, {childList: true, subtree: true});

  // A sheet cannot be unfolded or scrolled: folds are opened, and a table wider than the paper is made smaller.
  const PAPER = 660; // pixels: what A4, the narrower sheet, leaves between its margins, and a little less
  let opened = [], tables = [];

  function fit(table) {
    Object.assign(table.style, {width: 'min-content', tableLayout: 'auto'});
    const wide = table.offsetWidth;
    Object.assign(table.style, {width: '', tableLayout: ''});
    if (wide > PAPER) table.style.zoom = PAPER / wide;
  }

  window.addEventListener('beforeprint', () => {
    opened = [...document.querySelectorAll('details:not([open])')];
    for (const fold of opened) fold.open = true;
    tables = [...document.querySelectorAll('table')];
    tables.forEach(fit);
  });
  window.addEventListener('afterprint', () => {
    for (const fold of opened) fold.open = false;
    for (const table of tables) table.style.zoom = '';
    opened = tables = [];
  });
})();
