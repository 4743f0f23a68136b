// Readings that could not be sent stay on this device, shown as unsent, and go in order once the workshop answers.
// Without this file every page still works; what it adds is only patience.
(() => {
  'use strict';
  const PLACE = 'longthrow.unsent';
  const ALIVE_WITHIN = 2500; // ms
  const AGAIN_AFTER = 5000; // ms

  const kept = () => {
    try {
      return JSON.parse(localStorage.getItem(PLACE)) || [];
    } catch (broken) {
      return [];
    }
  };
  const keep = (all) => localStorage.setItem(PLACE, JSON.stringify(all));

  /** The secret of the workshop that answers now, or nothing. */
  const alive = async () => {
    const stop = new AbortController();
    const timer = setTimeout(() => stop.abort(), ALIVE_WITHIN);
    try {
      const answer = await fetch('/alive', { cache: 'no-store', signal: stop.signal });
      return answer.ok ? await answer.text() : null;
    } catch (away) {
      return null;
    } finally {
      clearTimeout(timer);
    }
  };

  const element = (name, text) => {
    const made = document.createElement(name);
    made.textContent = text;
    return made;
  };

  const show = () => {
    const place = document.getElementById('unsent');
    if (!place) return;
    const all = kept();
    place.hidden = all.length === 0;
    place.replaceChildren();
    if (all.length === 0) return;
    place.append(element('b', all.length === 1 ? '1 reading is not sent yet.' : all.length + ' readings are not sent yet.'));
    const list = document.createElement('ul');
    for (const one of all) {
      const item = element('li', one.label + ': ' + one.words + (one.trouble ? ' – ' + one.trouble + ' ' : ' '));
      if (one.trouble) {
        const look = element('button', 'Look at it');
        look.type = 'button';
        look.addEventListener('click', () => openAgain(one));
        const drop = element('button', 'Let it go');
        drop.type = 'button';
        drop.className = 'quiet';
        drop.addEventListener('click', () => {
          keep(kept().filter((other) => other.key !== one.key));
          show();
        });
        item.append(look, ' ', drop);
      }
      list.append(item);
    }
    place.append(list);
  };

  /** Sends it as the browser would, so that the workshop's own page says what is wrong or asks which is to stand. */
  const openAgain = async (one) => {
    const token = await alive();
    if (!token) return;
    keep(kept().filter((other) => other.key !== one.key));
    const form = document.createElement('form');
    form.method = 'post';
    form.action = one.action;
    for (const [name, value] of one.fields.concat([['token', token]])) {
      const field = document.createElement('input');
      field.type = 'hidden';
      field.name = name;
      field.value = value;
      form.append(field);
    }
    document.body.append(form);
    form.submit();
  };

  let sending = false;
  const send = async () => {
    if (sending || kept().every((one) => one.trouble)) return;
    sending = true;
    let sent = 0;
    try {
      const token = await alive();
      if (!token) return;
      for (const one of kept()) {
        if (one.trouble) continue;
        const body = new URLSearchParams(one.fields.concat([['queued', 'yes'], ['token', token]]));
        const answer = await fetch(one.action, { method: 'POST', body, headers: { 'X-Longthrow-Token': token } });
        if (answer.ok) {
          keep(kept().filter((other) => other.key !== one.key));
          sent += 1;
        } else if (answer.status >= 500) {
          return; // later
        } else {
          const trouble = answer.status === 409
            ? 'another change of the same reading came before it.'
            : 'it was not taken as it is.';
          keep(kept().map((other) => (other.key === one.key ? { ...other, trouble } : other)));
        }
      }
    } catch (away) {
      // later
    } finally {
      sending = false;
      show();
      if (sent > 0) {
        const place = document.getElementById('unsent');
        if (place) {
          place.hidden = false;
          place.append(element('p', (sent === 1 ? '1 reading' : sent + ' readings') + ' sent. Load the page again to see what follows.'));
        }
      }
    }
  };

  const words = (fields) =>
    fields.filter(([name, value]) => (name === 'reading' || name === 'value') && value.trim() !== '').map(([, value]) => value).join(', ') ||
    'not known';

  document.addEventListener('submit', async (event) => {
    const form = event.target;
    if (!form.matches('form[data-unsent]') || form.dataset.going) return;
    event.preventDefault();
    const button = event.submitter;
    const fields = [...new FormData(form, button).entries()].filter(([name]) => name !== 'token').map(([name, value]) => [name, String(value)]);
    const token = await alive();
    if (token) {
      form.dataset.going = 'yes';
      form.elements.token.value = token;
      form.requestSubmit(button);
      return;
    }
    const key = form.elements.key.value;
    keep(kept().filter((one) => one.key !== key).concat([
      { key, action: form.getAttribute('action'), label: form.dataset.unsent, words: words(fields), fields },
    ]));
    form.elements.key.value = crypto.randomUUID ? crypto.randomUUID() : key;
    show();
    document.getElementById('unsent').scrollIntoView({ block: 'nearest' });
  });

  window.addEventListener('pageshow', () => {
    document.querySelectorAll('form[data-unsent]').forEach((form) => delete form.dataset.going);
  });

  const wide = window.matchMedia('(min-width: 70rem)');
  const ways = document.querySelector('.ways > details');
  if (ways && wide.matches) ways.open = true;

  show();
  send();
  window.addEventListener('online', send);
  setInterval(send, AGAIN_AFTER);
  if ('serviceWorker' in navigator) navigator.serviceWorker.register('/worker.js').catch(() => {});
})();
