// The line from this page to the server: it says that the page stands, and brings words for the reader.
(() => {
  const AGAIN = 1000, LONG = 12; // milliseconds between tries; tries before the reader is told
  let line = null, tries = 0, ended = false;

  function bar() {
    let found = document.getElementById('page-words');
    if (!found) {
      found = document.createElement('div');
      found.id = 'page-words';
      found.innerHTML = '<p role="alert"></p><button type="button" hidden></button>';
      document.body.append(found);
    }
    return found;
  }

  function say(words, name, action) {
    const found = bar(), button = found.querySelector('button');
    found.querySelector('p').textContent = words;
    button.hidden = !words;
    button.textContent = name || '';
    button.onclick = action;
    found.classList.toggle('says', Boolean(words));
  }

  const quiet = () => say('');
  const load = () => location.reload();

  function hear(message) {
    const {kind, words} = JSON.parse(message.data);
    if (kind === 'ended') { ended = true; say(words, 'Load again', load); }
    else if (words) say(words, 'Close', quiet);
    else quiet();
  }

  function hold(id) {
    line = new WebSocket(`${location.origin.replace('http', 'ws')}/line/${id}`);
    let open = false;
    line.onopen = () => { open = true; if (tries >= LONG) quiet(); tries = 0; };
    line.onmessage = hear;
    line.onclose = () => {
      if (ended) return;
      tries += 1;
      if (tries === LONG)
        say('This page has lost its connection, and its sliders move nothing. If the pages were stopped, start them ' +
            'again and open the new address; if not, load this page again.', 'Load again', load);
      setTimeout(hold, AGAIN, id);
    };
  }

  function find() {
    const about = document.getElementById('jupyter-config-data');
    let id = null;
    try { id = JSON.parse(about.textContent).kernelId; } catch { /* the page is still coming */ }
    if (id) hold(id); else setTimeout(find, 100);
  }

  find();
  document.addEventListener('DOMContentLoaded', bar); // a live region speaks only if it was there before its words
  // Before a page goes, or only seems to, as for a letter to be written: say so, and let nothing shut the sliders down.
  addEventListener('beforeunload', event => {
    event.stopImmediatePropagation();
    if (line?.readyState === WebSocket.OPEN) line.send('leaving');
  }, true);
  addEventListener('pageshow', event => { if (event.persisted) load(); });
})();
