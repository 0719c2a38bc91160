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

  let opened = [];
  window.addEventListener('beforeprint', () => {
    opened = [...document.querySelectorAll('details:not([open])')];
    for (const fold of opened) fold.open = true;
  });
  window.addEventListener('afterprint', () => {
    for (const fold of opened) fold.open = false;
    opened = [];
  });
})();
