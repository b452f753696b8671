/** Part of the page's script: what is ticked, written and chosen, and how it is kept. */
export const KEEPING = `
const one = (id) => document.getElementById(id);
const data = JSON.parse(one('work-data').textContent);
const words = data.words;
const filled = (text, ...values) => text.replace(/\\{(\\d)\\}/g, (_, at) => String(values[Number(at)]));
const inputs = (selector) => Array.from(document.querySelectorAll(selector));
const ticks = inputs('input[data-step]');
const entries = inputs('input[data-record]');
const choices = inputs('input[type=radio]');
const shown = (input) => input.getClientRects().length > 0 || input.closest('label').getClientRects().length > 0;
let keeps = true;

function stored() {
  try {
    const value = JSON.parse(localStorage.getItem(data.key) || '{}');
    return value && typeof value === 'object' ? value : {};
  } catch {
    keeps = false;
    return {};
  }
}

function keep() {
  const value = { ticks: {}, entries: {}, choices: {}, large: document.documentElement.classList.contains('large') };
  for (const tick of ticks) if (tick.checked) value.ticks[tick.dataset.step] = 1;
  for (const entry of entries) if (entry.value) value.entries[entry.dataset.record] = entry.value;
  for (const choice of choices) if (choice.checked) value.choices[choice.name] = choice.id;
  try {
    localStorage.setItem(data.key, JSON.stringify(value));
  } catch {
    keeps = false;
  }
}

function bringBack() {
  const value = stored();
  const has = (part, name) => Boolean(part) && Object.prototype.hasOwnProperty.call(part, name);
  for (const tick of ticks) tick.checked = has(value.ticks, tick.dataset.step);
  for (const entry of entries) if (has(value.entries, entry.dataset.record)) entry.value = String(value.entries[entry.dataset.record]);
  for (const choice of choices) if (has(value.choices, choice.name)) choice.checked = value.choices[choice.name] === choice.id;
  document.documentElement.classList.toggle('large', value.large === true);
}
`;
