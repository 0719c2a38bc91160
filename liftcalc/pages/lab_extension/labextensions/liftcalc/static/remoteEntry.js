// What the panels of the series want in a page beside their widgets, in JupyterLab and in the app view alike: sliders
// with a name and a clean value, buttons that say whether they are chosen, a result that is said once when the keys
// rest, a decimal comma in a number box, and sliders that are seen. Written by hand, without a build; it touches
// only what stands inside a panel of the series (class "liftcalc").
(() => {
  const OURS = '.liftcalc';
  const REST = 700; // milliseconds without a change after which a result is said

  const LOOK = `
    .liftcalc .widget-slider .noUi-connects {background: #767676; border-radius: 3px}
    .liftcalc .widget-slider .noUi-connect {background: #0063a3}
    .liftcalc .widget-slider .noUi-target .noUi-handle {
      background: #fff; border: 2px solid #0063a3; border-radius: 50%; cursor: grab}
    .liftcalc .widget-slider .noUi-target:not([disabled]) .noUi-handle:hover {background: #cfe3f2; border: 2px solid #0063a3}
    .liftcalc .widget-slider .noUi-target:not([disabled]) .noUi-handle:focus {
      background: #0063a3; border: 2px solid #0063a3; outline: 3px solid #1a1a1a; outline-offset: 2px}
    .liftcalc .jupyter-button, .liftcalc input, .liftcalc textarea {border: 1px solid #767676}
    .liftcalc .jupyter-button.mod-active, .liftcalc .jupyter-button.chosen:not(.exercise-statement) {
      background: #0063a3; color: #fff; border-color: #0063a3; box-shadow: none}
    .liftcalc button:focus-visible, .liftcalc input:focus-visible, .liftcalc textarea:focus-visible,
    .liftcalc summary:focus-visible {outline: 3px solid #1a1a1a !important; outline-offset: 2px}
    .liftcalc a {text-decoration: underline}
    .liftcalc-said {position: fixed; top: 0; left: 0; width: 1px; height: 1px; margin: -1px; overflow: hidden;
      clip-path: inset(50%); white-space: nowrap}`;

  const SET = (element, name, value) => {
    if (element.getAttribute(name) !== value) element.setAttribute(name, value);
  };

  // Sliders. The name is that of the number box beside it, or its own; the value is the number with the unit in that name.

  function labelOf(slider) {
    const own = slider.querySelector(':scope > .widget-label');
    if (own && own.textContent.trim()) return own.textContent.trim();
    const beside = slider.parentElement && slider.parentElement.querySelector('.widget-label[for]');
    return beside ? beside.textContent.trim() : '';
  }

  function clean(text) {
    const number = Number(text);
    return text === '' || Number.isNaN(number) ? text : String(+number.toPrecision(6));
  }

  function nameHandle(handle) {
    const slider = handle.closest('.widget-slider'), target = handle.closest('.noUi-target');
    if (!slider || !target) return;
    const label = labelOf(slider), both = target.querySelectorAll('.noUi-handle').length === 2;
    const end = both ? (handle.dataset.handle === '0' ? ', from' : ', to') : '';
    if (label) SET(handle, 'aria-label', label + end);
    const unit = (label.match(/\(([^()]+)\)$/) || ['', ''])[1];
    const said = handle.getAttribute('aria-valuetext') || '';
    if (/^-?[\d.]+(e-?\d+)?$/.test(said)) SET(handle, 'aria-valuetext', `${clean(said)} ${unit}`.trim());
    const range = target.noUiSlider && target.noUiSlider.options.range;
    if (range) { // the slider itself writes them with one digit behind the point, whatever its steps
      SET(handle, 'aria-valuemin', clean(String(range.min)));
      SET(handle, 'aria-valuemax', clean(String(range.max)));
      const values = [].concat(target.noUiSlider.get(true));
      SET(handle, 'aria-valuenow', clean(String(values[Number(handle.dataset.handle)] ?? values[0])));
    }
  }

  // Buttons that can be chosen. One whose words change with its state needs no mark beside them.

  function markButton(button) {
    if (button.parentElement && button.parentElement.closest('.widget-toggle-buttons'))
      SET(button, 'aria-pressed', String(button.classList.contains('mod-active')));
    else if (button.classList.contains('can-be-chosen'))
      SET(button, 'aria-pressed', String(button.classList.contains('chosen')));
  }

  function nameGroup(group) {
    SET(group, 'role', 'group');
    const words = group.querySelector(':scope > .widget-label');
    const before = group.previousElementSibling;
    const name = (words && words.textContent.trim()) || (before && before.matches('.widget-label') && before.textContent.trim());
    if (name) SET(group, 'aria-label', name.replace(/:$/, ''));
  }

  // Results. Each stands in a status of its own, drawn anew at every step of a slider; that one is silent here, and
  // one region that stays says what has changed when nothing has changed for a while.

  let region, timer = null, touched = null;
  const before = new WeakMap(), waiting = new Set();
  const placeOf = status => status.closest('.widget-html-content') || status.parentElement;
  const words = element => element.innerText.replace(/\s*\n\s*/g, '. ').replace(/\.\. /g, '. ').trim();

  function parts(status) {
    const results = [...status.querySelectorAll('.one-result')].map(one =>
      [...one.children].map(child => child.textContent.trim()).join(': '));
    const refused = status.querySelector('.was-refused');
    return {all: status.textContent, results, refused: refused ? refused.textContent.trim() : ''};
  }

  function silence(status) {
    SET(status, 'aria-live', 'off');
    const place = placeOf(status), now = parts(status);
    const known = before.get(place);
    if (known && known.now.all === now.all) return;
    const first = waiting.has(place) ? known.said : known ? known.now : null;
    before.set(place, {now, said: first});
    if (!touched) return; // nothing is said of a page that fills by itself
    waiting.add(place);
    clearTimeout(timer);
    timer = setTimeout(say, REST);
  }

  function sentence(place) {
    const status = place.querySelector('[role=status]');
    if (!status) return '';
    const {now, said} = before.get(place);
    if (now.refused && now.refused !== (said && said.refused)) return now.refused;
    if (!now.results.length) return words(status);
    const changed = now.results.filter(one => !said || !said.results.includes(one));
    return (changed.length ? changed : now.results).join('; ');
  }

  function say() {
    const places = [...waiting].filter(place => place.isConnected);
    waiting.clear();
    const focus = document.activeElement && document.activeElement.closest(OURS) ? document.activeElement : touched;
    for (let own = focus && focus.closest(OURS); own; own = own.parentElement && own.parentElement.closest(OURS)) {
      const inside = places.filter(place => own.contains(place));
      const said = inside.map(sentence).filter(Boolean).join(' ');
      if (inside.length) {
        if (said) region.textContent = region.textContent === said ? `${said}\u00a0` : said;
        return;
      }
    }
  }

  // A page is looked through once; then only what is added to it or has changed.

  const EACH = [
    ['.noUi-handle', nameHandle],
    ['.widget-toggle-buttons', nameGroup],
    ['button', markButton],
    ['[role=status]', silence],
    ['[title=null]', element => element.removeAttribute('title')],
  ];

  function lookThrough(root) {
    for (const [selector, does] of EACH) {
      if (root.matches(selector) && root.closest(OURS)) does(root);
      for (const element of root.querySelectorAll(selector)) if (element.closest(OURS)) does(element);
    }
  }

  function changed(records) {
    for (const {type, target, attributeName, addedNodes} of records) {
      if (type === 'attributes') {
        if (attributeName === 'class') {
          if (target.nodeName === 'BUTTON') {
            if (target.closest(OURS)) markButton(target);
          } else if (target.classList.contains('liftcalc') && !target.dataset.seen) {
            target.dataset.seen = 'yes';
            lookThrough(target);
          }
        } else if (attributeName === 'title') {
          if (target.getAttribute('title') === 'null' && target.closest(OURS)) target.removeAttribute('title');
        } else if (target.classList.contains('noUi-handle') && target.closest(OURS)) nameHandle(target);
      } else {
        for (const node of addedNodes) if (node.nodeType === 1 && !(node instanceof SVGElement)) lookThrough(node);
        const label = target.nodeType === 1 && target.closest('.widget-label');
        if (label && label.closest(OURS)) {
          const row = label.closest('.widget-hbox') || label.closest('.widget-slider');
          if (row) row.querySelectorAll('.noUi-handle').forEach(handle => {
            handle.setAttribute('aria-valuetext', (handle.getAttribute('aria-valuetext') || '').split(' ')[0]);
            nameHandle(handle);
          });
        }
      }
    }
  }

  // Number boxes. The browser drops a comma that is typed into one, so that 37,5 becomes 375. Here it is the decimal
  // mark; a comma before exactly three digits, as in 1,200, parts thousands, as everywhere in the series.

  const isBox = element => element.nodeName === 'INPUT' && element.type === 'number' && element.closest(OURS);
  const commas = new WeakMap();

  function comma(event) {
    const box = event.target;
    if (!isBox(box) || !event.data || !event.data.includes(',') || !event.inputType.startsWith('insert')) return;
    event.preventDefault();
    const marks = (commas.get(box) || 0) + event.data.split(',').length - 1;
    let data = event.data.replaceAll(',', '');
    if (/^\s*-?\d{1,3}(\.\d{3})+,\d+\s*$/.test(event.data)) { // 1.200,5
      data = event.data.replaceAll('.', '').replace(',', '.');
    } else if (marks === 1 && !event.data.includes('.')) {
      data = event.data.replace(',', '.');
    } else if (commas.get(box) === 1) { // a second one: each of them parts thousands
      box.value = box.value.replace('.', '');
    }
    commas.set(box, marks);
    document.execCommand('insertText', false, data);
  }

  function thousands(event) {
    const box = event.target;
    if (!isBox(box)) return;
    if (commas.get(box) === 1 && /^-?[1-9]\d{0,2}\.\d{3}$/.test(box.value)) box.value = box.value.replace('.', '');
    commas.delete(box);
  }

  // Home and End. A slider goes to the ends that it was made with, though its range is another since, as after a turn of
  // the units; here it goes to the ends that it has.

  function toAnEnd(event) {
    const handle = event.target;
    if (!['Home', 'End'].includes(event.key) || !handle.matches('.liftcalc .noUi-handle')) return;
    const target = handle.closest('.noUi-target'), {range} = target.noUiSlider.options;
    if (target.hasAttribute('disabled')) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    target.noUiSlider.setHandle(Number(handle.dataset.handle), event.key === 'End' ? range.max : range.min, true);
  }

  function start() {
    const look = document.createElement('style');
    look.textContent = LOOK;
    document.head.append(look);
    region = document.createElement('div');
    region.className = 'liftcalc-said';
    SET(region, 'role', 'status');
    SET(region, 'aria-live', 'polite');
    SET(region, 'aria-atomic', 'true');
    document.body.append(region);
    for (const kind of ['focusin', 'pointerdown'])
      document.addEventListener(kind, event => {
        if (event.target.closest && event.target.closest(OURS)) touched = event.target;
      }, true);
    document.addEventListener('keydown', toAnEnd, true);
    document.addEventListener('beforeinput', comma, true);
    document.addEventListener('change', thousands, true);
    document.addEventListener('wheel', event => { // the wheel moves the page, and no number
      if (event.target === document.activeElement && isBox(event.target)) event.target.blur();
    }, {capture: true, passive: true});
    document.addEventListener('focusin', event => commas.delete(event.target), true);
    new MutationObserver(changed).observe(document.body, {
      childList: true, subtree: true, attributes: true, attributeFilter: ['class', 'title', 'aria-valuetext'],
    });
    document.querySelectorAll(OURS).forEach(lookThrough);
  }

  const plugin = {id: 'liftcalc:panels', autoStart: true, activate: start};
  window._JUPYTERLAB = window._JUPYTERLAB || {};
  window._JUPYTERLAB.liftcalc = {init: () => {}, get: async () => () => ({__esModule: true, default: plugin})};
})();
