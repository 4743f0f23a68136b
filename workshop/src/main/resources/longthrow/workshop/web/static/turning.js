// Turns the cross-section of the page Clear: moves each group to where the page says it stands. Nothing is worked out here but what lies between two places.
'use strict';
(() => {
  const TURNS = 720;
  const DEGREES_A_SECOND = 90;

  function begin(place) {
    const moving = place.querySelector('#moving');
    const slide = place.querySelector('#crank-slide');
    const field = place.querySelector('#crank');
    const shown = place.querySelector('#shown');
    const run = place.querySelector('#turn-run');
    const here = place.querySelector('#gap-here');
    const charts = [...document.querySelectorAll('.chart[data-pair]')];
    const list = (text) => text.split(' ').map(Number);
    const groups = [...moving.querySelectorAll('g.moves')].map((group) => {
      const [x, y, turn] = group.dataset.course.split(';').map(list);
      return { group, x, y, turn, stands: x.length === 1 && y.length === 1 && turn.length === 1 };
    }).filter((one) => !one.stands);
    const seen = (one) => one.group.querySelector('path:not(.hid), path.on');
    let visible = groups;
    const at = (values, angle) => {
      if (values.length === 1) return values[0];
      const cell = angle / TURNS * (values.length - 1);
      const k = Math.min(Math.floor(cell), values.length - 2);
      return values[k] + (cell - k) * (values[k + 1] - values[k]);
    };
    let angle = Number(field.value) || 0;

    // A gap between two places of its own list, which begins anew after two turns.
    const gap = () => {
      const option = shown.selectedOptions[0];
      if (!option || !option.value) return null;
      const values = list(option.dataset.gaps);
      const cell = angle / TURNS * values.length;
      const k = Math.floor(cell) % values.length;
      const next = values[(k + 1) % values.length];
      const least = Number(option.dataset.angle);
      const value = Math.round(angle) === least ? Number(option.dataset.least) : values[k] + (cell - Math.floor(cell)) * (next - values[k]);
      return { name: option.textContent, value, least };
    };

    function words() {
      const one = gap();
      here.textContent = one
        ? `${one.name}: ${one.value.toFixed(2)} mm at ${Math.round(angle)}°, least at ${one.least}°`
        : '';
      slide.setAttribute('aria-valuetext', Math.round(angle) + ' degrees' + (one ? ', gap ' + one.value.toFixed(2) + ' millimetres' : ''));
    }

    function draw() {
      for (const one of visible) {
        one.group.setAttribute('transform', `translate(${at(one.x, angle).toFixed(2)} ${at(one.y, angle).toFixed(2)}) rotate(${at(one.turn, angle).toFixed(2)})`);
      }
      const one = gap();
      const near = one && Math.abs(((angle - one.least) % TURNS + TURNS + TURNS / 2) % TURNS - TURNS / 2) <= 2;
      for (const mark of moving.querySelectorAll('.nearest')) mark.classList.toggle('on', Boolean(near) && mark.dataset.pair === shown.value);
      for (const chart of charts) {
        if (chart.dataset.pair !== shown.value) continue;
        const [left, right] = list(chart.dataset.span);
        const line = chart.querySelector('.here');
        line.setAttribute('visibility', 'visible');
        line.setAttribute('transform', `translate(${(left + angle / TURNS * (right - left)).toFixed(1)} 0)`);
      }
    }

    function turnTo(next) {
      angle = ((next % TURNS) + TURNS) % TURNS;
      draw();
    }

    function settle() {
      field.value = slide.value = String(Math.round(angle));
      words();
    }

    function choose(key) {
      shown.value = key;
      for (const body of moving.querySelectorAll('.body')) body.classList.toggle('on', key !== '' && body.dataset.pairs.split(' ').includes(key));
      visible = groups.filter(seen);
      for (const line of document.querySelectorAll('.chart .here')) line.setAttribute('visibility', 'hidden');
      draw();
      words();
    }

    slide.hidden = slide.disabled = run.hidden = false;
    place.querySelector('#turn-show').hidden = true;
    slide.addEventListener('input', () => { turnTo(Number(slide.value)); settle(); });
    field.addEventListener('input', () => { if (field.value !== '') { turnTo(Number(field.value)); slide.value = String(Math.round(angle)); words(); } });
    shown.addEventListener('change', () => {
      choose(shown.value);
      const one = gap();
      if (one && !frame) { turnTo(one.least); settle(); }
    });
    place.querySelector('form').addEventListener('submit', (event) => event.preventDefault());

    let frame = 0;
    let before = 0;
    function step(now) {
      turnTo(angle + (now - before) / 1000 * DEGREES_A_SECOND);
      before = now;
      frame = requestAnimationFrame(step);
    }
    function stop() {
      cancelAnimationFrame(frame);
      frame = 0;
      run.setAttribute('aria-pressed', 'false');
      run.textContent = 'Let it turn';
      settle();
    }
    run.addEventListener('click', () => {
      if (frame) { stop(); return; }
      run.setAttribute('aria-pressed', 'true');
      run.textContent = 'Hold it';
      before = performance.now();
      frame = requestAnimationFrame(step);
    });

    let from = null;
    moving.addEventListener('pointerdown', (event) => {
      if (frame) stop();
      from = { x: event.clientX, angle };
      moving.setPointerCapture(event.pointerId);
    });
    moving.addEventListener('pointermove', (event) => { if (from) { turnTo(from.angle + (event.clientX - from.x) / 2); settle(); } });
    for (const end of ['pointerup', 'pointercancel']) moving.addEventListener(end, () => { from = null; });

    // A click on a chart, or on the way to its least gap, turns the picture there.
    for (const chart of charts) {
      chart.addEventListener('click', (event) => {
        const box = chart.querySelector('svg').getBoundingClientRect();
        const [left, right, width] = list(chart.dataset.span);
        const x = (event.clientX - box.left) / box.width * width;
        if (frame) stop();
        choose(chart.dataset.pair);
        turnTo(Math.min(Math.max((x - left) / (right - left), 0), 1) * TURNS);
        settle();
      });
    }
    for (const way of document.querySelectorAll('a[data-pair]')) {
      way.addEventListener('click', (event) => {
        event.preventDefault();
        if (frame) stop();
        choose(way.dataset.pair);
        turnTo(Number(way.dataset.angle));
        settle();
        place.scrollIntoView({ block: 'start' });
        slide.focus({ preventScroll: true });
      });
    }
    if (shown.value === '' && shown.options.length > 1) {
      choose(shown.options[1].value);
      turnTo(gap().least);
      settle();
    } else {
      choose(shown.value);
    }
  }

  function look() {
    const place = document.getElementById('turning');
    if (!place || place.dataset.begun) return;
    place.dataset.begun = 'yes';
    begin(place);
  }
  look();
  document.addEventListener('htmx:afterSettle', look);
})();
