// Notes every control that gets the focus and whether one can see that it has it.
() => {
  'use strict';
  const seen = new Set();
  const unseen = [];
  const name = (e) => e.tagName.toLowerCase() + ' "' + (e.name || e.textContent || '').trim().replace(/\s+/g, ' ').slice(0, 40) + '"';
  document.addEventListener('focusin', (event) => {
    const e = event.target;
    seen.add(e);
    const style = getComputedStyle(e);
    const box = e.getBoundingClientRect();
    const shown = style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2 && box.width > 0 && box.height > 0 &&
      box.bottom > 0 && box.top < innerHeight && box.right > 0 && box.left < innerWidth;
    if (!shown) unseen.push(name(e));
  });
  const controls = () => [...document.querySelectorAll('a[href], button, input:not([type=hidden]), select, textarea, summary, [tabindex="0"]')].filter((e) =>
    (e.matches('.skip') || e.checkVisibility({ visibilityProperty: true })) && !e.disabled && e.tabIndex >= 0 && !e.closest('[inert]'));
  // Of radio buttons that belong together the chosen one is reached by Tab, the others by the arrows.
  const byArrow = (e) => e.matches('[type=radio]') && !e.checked;
  window.longthrowFocus = {
    count: () => controls().length,
    faults: () => unseen.map((u) => 'focus not seen: ' + u)
      .concat(controls().filter((e) => !seen.has(e) && !byArrow(e)).map((e) => 'not reached by Tab: ' + name(e))),
  };
}
