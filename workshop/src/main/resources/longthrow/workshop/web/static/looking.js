// Closer looks on the page Dyno: a stretch of time or of speeds is fetched and put in the place of the one that is seen, and a drag across a picture chooses one. Without this file links and
// forms lead to the same. Nothing is worked out here but where in the picture the finger is.
'use strict';
(() => {
  const LEAST_DRAG = 6; // pixels; less is a touch

  const placeOf = (element) => element.closest('.seen');

  /** Puts the stretch at an address in the place of the one that is seen; else goes there. */
  async function look(place, address, keep) {
    const url = new URL(address, location.href);
    const asked = new URL(url);
    asked.hash = '';
    if (place.dataset.piece) asked.searchParams.set('piece', 'yes');
    place.setAttribute('aria-busy', 'true');
    try {
      const answer = await fetch(asked, { cache: 'no-store' });
      if (!answer.ok) throw new Error(String(answer.status));
      const fresh = new DOMParser().parseFromString(await answer.text(), 'text/html').getElementById(place.id);
      if (!fresh) throw new Error('nothing to be seen');
      const open = [...place.querySelectorAll('details')].map((one) => one.open);
      const focus = document.activeElement && place.contains(document.activeElement) ? document.activeElement.id : '';
      place.replaceWith(fresh);
      fresh.querySelectorAll('details').forEach((one, i) => { one.open = Boolean(open[i]); });
      begin(fresh);
      const again = focus && document.getElementById(focus);
      if (again) again.focus({ preventScroll: true });
      else if (focus) (fresh.querySelector('[data-look]') || fresh).focus({ preventScroll: true });
      if (keep) history.pushState({ seen: place.id }, '', url);
    } catch (away) {
      location.href = url.href;
    }
  }

  function addressOf(form) {
    const url = new URL(form.action);
    url.search = new URLSearchParams(new FormData(form)).toString();
    return url.href;
  }

  /** Where a drag is, in the figures of the axis. */
  function dragging(place, box) {
    const svg = box.querySelector('svg');
    const [left, right, whole] = place.dataset.plot.split(' ').map(Number);
    const [first, last] = place.dataset.shown.split(' ').map(Number);
    let start = null;
    let sweep = null;
    const at = (event) => {
      const seen = svg.getBoundingClientRect();
      const [, , width, height] = svg.getAttribute('viewBox').split(' ').map(Number);
      const scale = Math.min(seen.width / width, seen.height / height); // it may stand in the middle of a wider box
      const x = (event.clientX - seen.left - (seen.width - width * scale) / 2) / scale;
      return Math.min(right, Math.max(left, x * whole / width));
    };
    const end = () => {
      if (sweep) sweep.remove();
      start = null;
      sweep = null;
    };
    svg.addEventListener('pointerdown', (event) => {
      if (event.button !== 0) return;
      start = { x: at(event), client: event.clientX };
      svg.setPointerCapture(event.pointerId);
    });
    svg.addEventListener('pointermove', (event) => {
      if (!start || Math.abs(event.clientX - start.client) < LEAST_DRAG) return;
      if (!sweep) {
        sweep = document.createElementNS('http://www.w3.org/2000/svg', 'rect');
        sweep.setAttribute('class', 'sweep');
        sweep.setAttribute('fill', 'currentColor');
        sweep.setAttribute('fill-opacity', '0.25');
        sweep.setAttribute('y', '0');
        sweep.setAttribute('height', svg.getAttribute('viewBox').split(' ')[3]);
        svg.append(sweep);
      }
      const x = at(event);
      sweep.setAttribute('x', String(Math.min(start.x, x)));
      sweep.setAttribute('width', String(Math.abs(x - start.x)));
    });
    svg.addEventListener('pointerup', (event) => {
      if (!start || !sweep) {
        end();
        return;
      }
      const ends = [start.x, at(event)].sort((a, b) => a - b).map((x) => first + (x - left) / (right - left) * (last - first));
      end();
      const url = new URL(place.dataset.address, location.href);
      place.dataset.ends.split(' ').forEach((name, i) => url.searchParams.set(name, String(Number(ends[i].toPrecision(9)))));
      if (place.id === 'pictures') url.hash = 'pictures';
      look(place, url.href, true);
    });
    svg.addEventListener('pointercancel', end);
  }

  function begin(place) {
    for (const told of place.querySelectorAll('.drag-told')) told.hidden = false;
    for (const box of place.querySelectorAll('[data-drag]')) {
      box.classList.add('live');
      dragging(place, box);
    }
  }

  document.addEventListener('click', (event) => {
    const link = event.target.closest('a[data-look]');
    if (!link || event.button !== 0 || event.ctrlKey || event.metaKey || event.shiftKey || event.altKey) return;
    event.preventDefault();
    look(placeOf(link), link.href, true);
  });
  document.addEventListener('submit', (event) => {
    if (!event.target.matches('form[data-look]')) return;
    event.preventDefault();
    look(placeOf(event.target), addressOf(event.target), true);
  });
  addEventListener('popstate', () => {
    const place = document.querySelector('.seen');
    if (place) look(place, location.href, false);
  });
  document.querySelectorAll('.seen').forEach(begin);
})();
