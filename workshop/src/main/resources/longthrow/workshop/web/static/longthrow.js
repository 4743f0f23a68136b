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

  /** The secret of the workshop that answers now, or nothing. A workshop that was started anew has another: every form gets it. */
  const alive = async () => {
    const stop = new AbortController();
    const timer = setTimeout(() => stop.abort(), ALIVE_WITHIN);
    try {
      const answer = await fetch('/alive', { cache: 'no-store', signal: stop.signal });
      if (!answer.ok) return null;
      const token = await answer.text();
      for (const field of document.querySelectorAll('input[name="token"]')) field.value = token;
      return token;
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

  const freshKey = () => {
    if (crypto.randomUUID) return crypto.randomUUID();
    const b = crypto.getRandomValues(new Uint8Array(16)); // RFC 9562, version 4, where the page is no secure context
    b[6] = (b[6] & 0x0f) | 0x40;
    b[8] = (b[8] & 0x3f) | 0x80;
    const hex = [...b].map((one) => one.toString(16).padStart(2, '0')).join('');
    return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-');
  };

  const twoDigits = (number) => String(number).padStart(2, '0');
  /** A time as the pages write it: 2026-11-26 03:29. */
  const written = (time) => {
    const t = new Date(time);
    return t.getFullYear() + '-' + twoDigits(t.getMonth() + 1) + '-' + twoDigits(t.getDate()) + ' ' +
      twoDigits(t.getHours()) + ':' + twoDigits(t.getMinutes());
  };

  /** In the rows of Measure: what was typed stands where it will be read, and says that it is not sent. */
  const showInRows = (all) => {
    document.querySelectorAll('.not-sent').forEach((mark) => mark.remove());
    for (const one of all) {
      const row = document.getElementById(one.action.split('/').pop());
      const cell = row && row.matches('tr') && one.action.startsWith(document.body.dataset.build + '/') && row.querySelector('th');
      if (!cell) continue;
      const mark = element('strong', 'not sent yet: ' + one.words);
      mark.className = 'not-sent';
      cell.append(mark);
    }
  };

  const show = () => {
    showInRows(kept());
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

  const basedOn = (one) => Number((one.fields.find(([name]) => name === 'based') || [])[1]);

  /**
   * A reading that was typed twice while the workshop was away: the second follows the first, as long as every revision since they were begun is one of those
   * that were just sent from here. Else somebody else was there too, and the workshop asks which is to stand.
   */
  const follow = async (one, begun, ownSince) => {
    const next = (other) => other.action === one.action && !other.trouble && basedOn(other) === basedOn(one);
    if (!kept().some(next)) return;
    const page = await fetch(one.action, { cache: 'no-store' });
    const field = page.ok && new DOMParser().parseFromString(await page.text(), 'text/html').querySelector('input[name="based"]');
    if (!field || Number(field.value) !== begun + ownSince) return;
    keep(kept().map((other) => (next(other)
      ? { ...other, fields: other.fields.map(([name, value]) => [name, name === 'based' ? field.value : value]) }
      : other)));
  };

  let sending = false;
  const send = async () => {
    if (sending || kept().every((one) => one.trouble)) return;
    sending = true;
    let sent = 0;
    try {
      const token = await alive();
      if (!token) return;
      const own = new Map(); // by build: the revision the first was begun on, and how many were sent since
      for (const key of kept().map((waiting) => waiting.key)) {
        const one = kept().find((waiting) => waiting.key === key);
        if (!one || one.trouble) continue;
        const body = new URLSearchParams(one.fields.concat([['queued', 'yes'], ['token', token]]));
        const answer = await fetch(one.action, { method: 'POST', body, headers: { 'X-Longthrow-Token': token }, redirect: 'manual' });
        if (answer.type === 'opaqueredirect') { // kept: the workshop goes on to the page that shows it
          keep(kept().filter((other) => other.key !== one.key));
          for (const said of document.querySelectorAll('.waits')) {
            if (said.dataset.key === one.key) said.textContent = 'Sent: ' + one.words + '.';
          }
          sent += 1;
          const build = one.action.split('/').slice(0, 3).join('/');
          const so = own.get(build) || { begun: basedOn(one), since: 0 };
          own.set(build, { begun: so.begun, since: so.since + 1 });
          await follow(one, so.begun, so.since + 1);
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
        answersAgain();
        const place = document.getElementById('unsent');
        if (place) {
          place.hidden = false;
          place.append(element('p', (sent === 1 ? '1 reading' : sent + ' readings') + ' sent. Load the page again to see what follows.'));
        }
      }
    }
  };

  // What is typed and not sent stays in this tab until it is sent, and comes back with its page: pages of the workshop are never
  // stored by the browser, so its Back would lose it. The revision it was begun on comes back with it, so that nothing newer is overwritten.
  const DRAFTS = 'longthrow.draft ' + location.pathname + location.search + ' ';
  const draftPlace = (form) => DRAFTS + (form.id || form.getAttribute('action'));
  const typedInto = (form) =>
    [...form.elements].filter((one) => one.name && !['hidden', 'file', 'submit', 'button', 'fieldset'].includes(one.type));
  const state = (one) => (one.type === 'radio' || one.type === 'checkbox' ? one.checked : one.value);
  const asBefore = (one, value) => {
    if (one.type === 'radio' || one.type === 'checkbox') one.checked = value === true;
    else one.value = value;
  };
  const isPost = (form) => form && form.method === 'post' && form.elements.based;
  const draft = (form) => {
    try {
      sessionStorage.setItem(draftPlace(form), JSON.stringify({
        based: form.elements.based.value,
        fields: typedInto(form).map((one) => [one.name, state(one)]),
      }));
    } catch (full) {
      // then it is as without this
    }
  };
  const dropDraft = (form) => sessionStorage.removeItem(draftPlace(form));
  const putBack = (form) => {
    let before = null;
    try {
      before = JSON.parse(sessionStorage.getItem(draftPlace(form)));
    } catch (broken) {
      dropDraft(form);
    }
    if (!before) return;
    const fields = typedInto(form);
    if (before.fields.length !== fields.length || fields.some((one, i) => one.name !== before.fields[i][0])) return;
    if (fields.every((one, i) => state(one) === before.fields[i][1])) return;
    const fresh = fields.map(state);
    const based = form.elements.based.value;
    fields.forEach((one, i) => asBefore(one, before.fields[i][1]));
    form.elements.based.value = before.based;
    const said = element('p', 'What you had typed here and not kept stands here again. ');
    said.className = 'notice caution put-back';
    said.setAttribute('role', 'status');
    const clear = element('button', 'Clear it');
    clear.type = 'button';
    clear.className = 'quiet';
    clear.addEventListener('click', () => {
      fields.forEach((one, i) => asBefore(one, fresh[i]));
      form.elements.based.value = based;
      dropDraft(form);
      said.remove();
    });
    said.append(clear);
    const folded = form.closest('details');
    if (folded) folded.open = true;
    form.before(said);
    if (form.matches('[hx-post]')) setTimeout(() => fields[0].dispatchEvent(new Event('input', { bubbles: true })));
  };
  for (const kind of ['input', 'change']) {
    document.addEventListener(kind, (event) => { if (isPost(event.target.form)) draft(event.target.form); });
  }

  /** What was typed, with the unit that stands beside it where it is a bare number. */
  const words = (fields) => {
    const of = (name) => (fields.find(([one, value]) => one === name && value.trim() !== '') || ['', ''])[1].trim();
    const whole = (typed) => (/^[+\-−]?\s*[\d.,\s]+$/.test(typed) ? (typed.trim() + ' ' + of('unit')).trim() : typed.trim());
    const figures = fields.filter(([name, value]) => (name === 'reading' || name === 'value') && value.trim() !== '').map(([, value]) => whole(value));
    if (figures.length === 0) return 'not known';
    return figures.join(', ') + (of('plus_minus') ? ' ± ' + whole(of('plus_minus')) : '');
  };

  /** Said beside the button that was pressed, since what waits is listed at the top of the page, out of sight on a phone. */
  const sayItWaits = (form, button, key, typed) => {
    form.querySelectorAll('.waits').forEach((old) => old.remove());
    const said = element('p', 'Not sent yet: ' + typed + '. It waits on this device and goes on its own once the workshop is back.');
    said.className = 'notice caution waits';
    said.setAttribute('role', 'status');
    said.dataset.key = key;
    ((button && button.closest('p')) || form.lastElementChild).after(said);
    said.scrollIntoView({ block: 'nearest' });
  };

  document.addEventListener('submit', async (event) => {
    const form = event.target;
    if (form.method !== 'post' || form.dataset.going) return;
    event.preventDefault();
    const button = event.submitter;
    const fields = [...new FormData(form, button).entries()].filter(([name]) => name !== 'token').map(([name, value]) => [name, String(value)]);
    const token = await alive();
    if (token) {
      dropDraft(form);
      form.dataset.going = 'yes';
      form.requestSubmit(button);
      return;
    }
    if (!form.matches('[data-unsent]')) {
      say('The workshop does not answer. Nothing was sent; what you entered still stands here. Try again when it is back.');
      return;
    }
    const key = form.elements.key.value;
    keep(kept().filter((one) => one.key !== key).concat([
      { key, action: form.getAttribute('action'), label: form.dataset.unsent, words: words(fields), fields },
    ]));
    form.elements.key.value = freshKey();
    dropDraft(form);
    show();
    sayItWaits(form, button, key, words(fields));
  });

  window.addEventListener('pageshow', () => {
    document.querySelectorAll('form').forEach((form) => delete form.dataset.going);
  });

  const say = (words) => {
    let place = document.getElementById('away');
    if (!place) {
      place = element('p', '');
      place.id = 'away';
      place.className = 'notice caution';
      place.setAttribute('role', 'status');
      document.getElementById('unsent').before(place);
    }
    place.textContent = words;
    place.scrollIntoView({ block: 'nearest' });
    // Back leads to a row far down the page: said there too.
    const row = location.hash && document.getElementById(decodeURIComponent(location.hash.slice(1)));
    const cell = row && row.matches('tr') && row.querySelector('th');
    if (cell && !row.querySelector('.away-here')) {
      const mark = element('strong', 'the workshop does not answer');
      mark.className = 'away-here';
      cell.append(mark);
      row.scrollIntoView({ block: 'center' });
    }
  };

  /** What was said of its silence goes. */
  const answersAgain = () => {
    for (const said of document.querySelectorAll('#away, .away-here')) said.remove();
  };

  const seen = document.body.dataset.seen;
  if (seen) {
    // What is sent from here is not what was sent from the page when it was new.
    for (const field of document.querySelectorAll('input[name="key"]')) field.value = freshKey();
    say('The workshop does not answer. This page is as it was on ' + written(seen) +
      '. Readings can be entered: they wait here and go when it is back.');
  }

  const unseen = (event) => {
    const place = event.detail.target;
    if (place && place.id === 'figures') {
      place.replaceChildren(element('p', 'The workshop does not answer, so no figures follow from what is typed until it is back.'));
    }
  };
  // What follows from what is typed stands far below the field on a phone: what is wrong with it, or its first line, is said at the
  // field too. That place alone is announced, so that nobody hears twelve figures at every key.
  const atHand = () => {
    const figures = document.getElementById('figures');
    const wrong = figures ? figures.querySelectorAll('p.notice') : [];
    const heading = figures && figures.querySelector('h3');
    const label = figures && figures.querySelector('dt');
    const figure = figures && figures.querySelector('dd');
    for (const place of document.querySelectorAll('.at-hand')) {
      const typed = typedInto(place.closest('form')).some((one) => one.value !== one.defaultValue && /^(reading|value|plus_minus)$/.test(one.name));
      const said = [];
      if (typed && wrong.length > 0) {
        said.push(wrong[0].cloneNode(true));
        if (wrong.length > 1) said.push(element('p', 'There is more to mind: it stands below the form.'));
      } else if (typed && label) {
        const line = element('p', (heading.textContent + ': ' + label.textContent + ' ' + figure.textContent).replace(/\s+/g, ' ').trim());
        line.className = 'notice';
        said.push(line);
      }
      if (said.map((one) => one.textContent).join() === [...place.children].map((one) => one.textContent).join()) continue;
      place.replaceChildren(...said);
    }
  };
  document.addEventListener('htmx:afterSwap', (event) => { if (event.detail.target.id === 'figures') atHand(); });
  document.addEventListener('htmx:sendError', unseen);
  // A workshop that was started anew refuses the token of a page from before: it is asked for the new one, and once more for the figures.
  document.addEventListener('htmx:responseError', async (event) => {
    const form = event.detail.elt;
    const asked = form.matches('form') && form.elements.token;
    if (!asked || event.detail.xhr.status !== 403) return;
    const refused = asked.value;
    const token = await alive();
    if (token && token !== refused) form.dispatchEvent(new Event('input', { bubbles: true }));
  });
  document.addEventListener('htmx:timeout', unseen);

  // A place inside something folded is shown, also where it comes after the page.
  const toPlace = () => {
    const place = location.hash && document.getElementById(decodeURIComponent(location.hash.slice(1)));
    if (!place) return;
    for (let folded = place.closest('details'); folded; folded = folded.parentElement.closest('details')) folded.open = true;
    place.scrollIntoView();
  };
  window.addEventListener('hashchange', toPlace);
  if (location.hash) {
    const place = document.getElementById(decodeURIComponent(location.hash.slice(1)));
    if (!place) document.addEventListener('htmx:afterSettle', toPlace, { once: true });
    else if (place.closest('details:not([open])')) toPlace();
  }

  const wide = window.matchMedia('(min-width: 70rem)');
  const ways = document.querySelector('.ways > details');
  if (ways && wide.matches) ways.open = true;

  // Gaps, limits and shake are worked out beside the page: rail and list take them when they are there. What somebody stands on stays.
  const RAIL_AFTER = [2500, 4000, 8000, 16000]; // ms
  const takeRail = (fresh) => {
    const items = document.querySelectorAll('.rail li');
    fresh.querySelectorAll('.rail li').forEach((item, i) => {
      items[i].className = item.className;
      items[i].querySelector('small').replaceChildren(...item.querySelector('small').childNodes);
    });
    const count = document.querySelector('.ways .count');
    count.textContent = fresh.querySelector('.ways .count').textContent;
    const list = document.querySelector('.ways > details');
    if (list.querySelector('ul, summary ~ p') && list.querySelector('ul, summary ~ p').contains(document.activeElement)) return;
    const was = [...list.children].filter((part) => !part.matches('summary'));
    const is = [...fresh.querySelectorAll('.ways > details > :not(summary)')];
    if (was.length === is.length && was.every((part, i) => part.isEqualNode(is[i]))) return; // as it was: nobody loses the place
    list.replaceChildren(list.querySelector('summary'), ...is);
  };
  // A rail that asks no more says so: it has lost the address to ask at.
  const askRail = (waits) => {
    const place = document.querySelector('.rail[data-asks]');
    if (!place || document.body.dataset.seen) return;
    const over = () => place.removeAttribute('data-asks');
    if (waits.length === 0) {
      over();
      return;
    }
    setTimeout(async () => {
      let answer;
      try {
        answer = await fetch(place.dataset.asks, { cache: 'no-store' });
      } catch (away) {
        over();
        return;
      }
      if (answer.status !== 200) { // the build has gone on
        over();
        return;
      }
      const fresh = new DOMParser().parseFromString(await answer.text(), 'text/html');
      takeRail(fresh);
      if (fresh.querySelector('.rail[data-asks]')) askRail(waits.slice(1));
      else over();
    }, waits[0]);
  };
  askRail(RAIL_AFTER);

  // On a narrow screen the ten questions are a strip: it shows the one that is asked. The page itself stays where it is.
  const asked = document.querySelector('.rail [aria-current]');
  const strip = asked && asked.closest('ol');
  if (strip) {
    const place = asked.getBoundingClientRect();
    const frame = strip.getBoundingClientRect();
    strip.scrollLeft += place.left + place.width / 2 - frame.left - frame.width / 2;
  }

  // A slider beside a field: either moves the other. The field is what is sent.
  function pairUp(slide) {
    slide.classList.add('paired');
    const field = document.getElementById(slide.dataset.for);
    const beside = document.getElementById(slide.dataset.for + '.unit');
    const follow = () => {
      const figure = parseFloat(field.value.replace(',', '.'));
      const unit = field.value.replace(/^[\s\d.,+-]+/, '').trim() || (beside ? beside.value : slide.dataset.unit); // bare, it is sent in the slider's unit
      const same = Number.isFinite(figure) && unit === slide.dataset.unit;
      if (same) slide.value = figure;
      slide.setAttribute('aria-valuetext', field.value.trim() || 'empty');
    };
    slide.hidden = false;
    slide.disabled = false;
    follow();
    field.addEventListener('input', follow);
    if (beside) beside.addEventListener('change', follow);
    slide.addEventListener('input', () => {
      const places = (slide.step.split('.')[1] || '').length;
      field.value = (Number(slide.value).toFixed(places) + ' ' + slide.dataset.unit).trim();
      slide.setAttribute('aria-valuetext', field.value);
    });
  }
  const pairAll = () => document.querySelectorAll('input.slide:not(.paired)').forEach(pairUp);
  pairAll();
  document.addEventListener('htmx:afterSettle', pairAll);

  // The cross-section turns under the finger, too: sideways by half a degree a pixel. The slider is what asks for the drawing.
  const section = document.getElementById('section');
  const angle = document.getElementById('angle');
  if (section && angle) {
    let from = null;
    section.addEventListener('pointerdown', (event) => {
      from = { x: event.clientX, angle: Number(angle.value) };
      section.setPointerCapture(event.pointerId);
    });
    section.addEventListener('pointermove', (event) => {
      if (!from) return;
      const turned = from.angle + (event.clientX - from.x) / 2;
      const next = String(Math.round((((turned % 360) + 360) % 360) / 5) * 5);
      if (next === angle.value) return;
      angle.value = next;
      angle.dispatchEvent(new Event('input', { bubbles: true }));
    });
    for (const end of ['pointerup', 'pointercancel']) section.addEventListener(end, () => { from = null; });
  }

  // The card of what was just kept, as it is now, for when the workshop is away.
  const row = location.hash && document.getElementById(location.hash.slice(1));
  const card = row && document.querySelector('p.notice') && row.querySelector('th a');
  if (card && navigator.serviceWorker && navigator.serviceWorker.controller) fetch(card.href).catch(() => {});

  document.querySelectorAll('form[method="post"]').forEach((form) => { if (isPost(form)) putBack(form); });
  show();
  send();
  window.addEventListener('online', send);
  setInterval(send, AGAIN_AFTER);
  // The first page of all came before the worker that keeps pages: it is asked for once more, with what it is made of, when the worker is there.
  if (navigator.serviceWorker && !navigator.serviceWorker.controller) {
    navigator.serviceWorker.addEventListener('controllerchange', () => {
      const parts = [...document.querySelectorAll('script[src], link[rel="stylesheet"], link[rel="icon"]')].map((one) => one.src || one.href);
      for (const address of [location.href.split('#')[0], ...parts]) fetch(address).catch(() => {});
    }, { once: true });
  }
  if ('serviceWorker' in navigator) navigator.serviceWorker.register('/worker.js').catch(() => {});
})();
