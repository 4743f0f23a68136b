// What a page must keep whatever it shows: asked of the page itself, in the browser. Gives the faults, each a line.
() => {
  'use strict';
  const LEAST_TARGET = 44; // CSS pixels, both ways: the issue, and WCAG 2.2, 2.5.5
  const faults = [];
  const wide = document.documentElement.clientWidth;
  if (document.documentElement.scrollWidth > wide) {
    const over = [...document.querySelectorAll('body *')].filter((e) => {
      const box = e.getBoundingClientRect();
      return box.width > 0 && box.right > wide + 1 && !e.closest('.rail ol, .scroll, .difference, textarea') && !e.matches('.skip');
    });
    faults.push('scrolls sideways: ' + document.documentElement.scrollWidth + ' > ' + wide + ', by ' + over.slice(0, 3).map(name).join(', '));
  }
  function name(e) {
    return e.tagName.toLowerCase() + (e.id ? '#' + e.id : '') + (e.className && e.className.baseVal === undefined ? '.' + e.className : '') +
      ' "' + (e.textContent || e.value || '').trim().replace(/\s+/g, ' ').slice(0, 40) + '"';
  }
  // A link in a sentence is as tall as its line (the exception of WCAG 2.5.8): text of its own block stands before or behind it.
  const inSentence = (e) => {
    if (!e.matches('a') || getComputedStyle(e).display !== 'inline') return false;
    const block = e.closest('p, li, dd, td, small');
    return block !== null && block.textContent.trim().length > e.textContent.trim().length + 10;
  };
  for (const e of document.querySelectorAll('a[href], button, input:not([type=hidden]), select, textarea, summary')) {
    if (e.matches('.skip') || !e.checkVisibility({ visibilityProperty: true }) || e.closest('.hidden')) continue;
    let box = e.getBoundingClientRect();
    if (e.matches('[type=checkbox], [type=radio]')) box = (e.closest('label') || e).getBoundingClientRect();
    if (box.width === 0 || inSentence(e)) continue;
    if (box.width < LEAST_TARGET - 0.01 || box.height < LEAST_TARGET - 0.01) {
      faults.push('too small: ' + box.width.toFixed(1) + ' x ' + box.height.toFixed(1) + ' ' + name(e));
    }
  }
  return faults;
}
