/**
 * The index page's script, as text: narrows the lists down to what has every word that is typed, at the beginning of
 * one of its words. Without it all lists are there in full.
 */
export const SEARCH_SCRIPT = `(() => {
'use strict';
const plain = (text) => text.normalize('NFKD').replace(/\\p{Mark}/gu, '').toLowerCase();
const box = document.getElementById('search');
const field = document.getElementById('search-field');
const says = document.getElementById('search-says');
const entries = Array.from(document.querySelectorAll('[data-words]')).map((element) => ({
  element,
  words: plain(element.dataset.words + ' ' + element.textContent).split(/[^\\p{Letter}\\p{Number}]+/u).filter(Boolean),
}));
const groups = Array.from(document.querySelectorAll('[data-group]'));
function narrow() {
  const asked = plain(field.value).split(/[^\\p{Letter}\\p{Number}]+/u).filter(Boolean);
  let found = 0;
  for (const { element, words } of entries) {
    const fits = asked.every((piece) => words.some((word) => word.startsWith(piece)));
    element.hidden = !fits;
    if (fits) found++;
  }
  for (const group of groups) group.hidden = asked.length > 0 && !group.querySelector('[data-words]:not([hidden])');
  says.textContent = asked.length === 0 ? '' : found === 0 ? says.dataset.none : says.dataset.some.replace('{0}', String(found));
}
field.addEventListener('input', narrow);
box.hidden = false;
narrow();
})();`;
