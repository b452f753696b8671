/** Part of the page's script: the panel, what is on the bench after the ticked steps, the last count, readings. */
export const BENCH = `
const make = (name, text, kind) => {
  const element = document.createElement(name);
  if (text) element.textContent = text;
  if (kind) element.className = kind;
  return element;
};
const OUT = { off: words.benchOff, aside: words.benchAside, apart: words.benchApart, away: words.benchAway, discarded: words.benchDiscarded, 'tool-on': words.benchTool };

/** Thing and state to positions, after the ticked steps that are shown, in their order. */
function onTheBench() {
  const bench = new Map();
  for (const tick of ticks) {
    if (!tick.checked || !shown(tick)) continue;
    const step = data.steps[tick.dataset.step];
    for (const [id, change, positions] of step ? step.changes : []) {
      const all = data.things[id].positions;
      const meant = positions.length > 0 ? positions : all.length > 0 ? all : [''];
      if (!bench.has(id)) bench.set(id, new Map());
      const states = bench.get(id);
      for (const position of meant) {
        if (change in OUT) states.set(position, change);
        else states.delete(position);
      }
    }
  }
  return bench;
}

function benchLines(bench) {
  const lines = [];
  for (const [id, states] of bench) {
    const { name, positions } = data.things[id];
    for (const state of Object.keys(OUT)) {
      const at = Array.from(states.keys()).filter((position) => states.get(position) === state);
      if (at.length === 0) continue;
      const some = at.length < positions.length ? ' ' + at.map((position) => '#' + position).join(', ') : '';
      const many = at.length > 1 && some === '' ? at.length + ' × ' : '';
      lines.push({ id, text: many + name + some, state: OUT[state] });
    }
  }
  return lines;
}

function ranges() {
  for (const table of inputs('table[data-for]')) {
    const entry = entries.find((input) => input.dataset.record === table.dataset.for);
    const typed = entry ? entry.value.trim().replace(',', '.') : '';
    const value = typed === '' ? NaN : Number(typed);
    for (const row of Array.from(table.tBodies[0].rows)) {
      const { low, high, lowIn, highIn } = row.dataset;
      const bounded = low !== undefined || high !== undefined;
      const above = low === undefined || (lowIn ? value >= Number(low) : value > Number(low));
      const under = high === undefined || (highIn ? value <= Number(high) : value < Number(high));
      const here = bounded && !Number.isNaN(value) && above && under;
      row.classList.toggle('here', here);
      const cell = row.cells[1];
      const said = cell.querySelector('.falls');
      if (here && !said) cell.append(make('span', ' ' + words.fallsHere, 'falls'));
      if (!here && said) said.remove();
    }
  }
}

/** What surely is to be done: not in a way that depends on what is found, or on a machine that is not chosen yet. */
function sure(input) {
  for (let at = input.parentElement; at; at = at.parentElement) {
    const names = Array.from(at.classList).filter((name) => Object.hasOwn(data.decidedBy, name));
    if (at.classList.contains('way') && names.length === 0) return false;
    const asked = names.flatMap((name) => data.decidedBy[name]);
    if (choices.some((choice) => choice.checked && choice.id === choice.name && asked.includes(choice.name))) return false;
  }
  return true;
}

function refresh() {
  const visible = ticks.filter(shown);
  const ticked = visible.filter((tick) => tick.checked);
  const counted = visible.filter((tick) => tick.checked || sure(tick));
  const lines = benchLines(onTheBench());
  panel.progress.textContent = filled(words.progress, ticked.length, counted.length);
  panel.meter.max = Math.max(1, counted.length);
  panel.meter.value = ticked.length;
  panel.list.replaceChildren(...(lines.length > 0 ? lines.map(({ text, state }) => {
    const line = make('li', text + ' ');
    line.append(make('small', state));
    return line;
  }) : [make('li', words.benchEmpty, 'none')]));
  panel.count.textContent = String(lines.length);
  const last = ticked.length > 0 ? visible.indexOf(ticked[ticked.length - 1]) : 0;
  const gaps = visible.slice(0, last).filter((tick) => !tick.checked && sure(tick)).map((tick) => data.steps[tick.dataset.step].number);
  panel.gaps.textContent = gaps.length > 0 ? filled(words.skipped, gaps.slice(0, 12).join(', ') + (gaps.length > 12 ? ' …' : '')) : '';
  const over = lines.filter(({ id }) => !data.leftOver.includes(id));
  const due = counted.length - ticked.length;
  const unsigned = entries.filter((entry) => !entry.value && entry.getClientRects().length > 0 && sure(entry));
  const says = [];
  if (due > 0) says.push(filled(words.notDone, due));
  else says.push(over.length > 0 ? filled(words.left, over.map(({ text }) => text).join(', ')) : words.done);
  if (unsigned.length > 0) says.push(filled(words.notSigned, unsigned.map((entry) => entry.labels[0].textContent).join(', ')));
  const tally = one('tally-says');
  if (tally) {
    tally.textContent = says.join(' ');
    tally.classList.toggle('whole', due === 0 && over.length === 0 && unsigned.length === 0);
  }
  panel.kept.textContent = keeps ? words.kept : words.notKept;
  for (const tick of ticks) tick.closest('.step').classList.toggle('done', tick.checked);
  ranges();
}

const panel = {};

function build() {
  const work = one('work');
  const aside = make('aside', '', 'bench');
  aside.setAttribute('aria-labelledby', 'bench-title');
  const details = make('details');
  const summary = make('summary');
  const title = make('h2', words.bench);
  title.id = 'bench-title';
  panel.count = make('span', '0', 'count');
  summary.append(title, panel.count);
  panel.list = make('ul');
  panel.gaps = make('p', '', 'gaps');
  panel.kept = make('p', '', 'kept');
  panel.progress = make('p', '', 'progress');
  panel.progress.setAttribute('role', 'status');
  panel.meter = make('progress');
  panel.meter.setAttribute('aria-label', words.progress.replace(/\\{\\d\\}/g, '…'));
  const bar = make('div', '', 'buttons');
  const button = (text, act) => {
    const element = make('button', text);
    element.type = 'button';
    element.addEventListener('click', () => act(element));
    bar.append(element);
    return element;
  };
  const large = button(words.large, (element) => {
    const on = document.documentElement.classList.toggle('large');
    element.setAttribute('aria-pressed', String(on));
    keep();
  });
  large.setAttribute('aria-pressed', String(document.documentElement.classList.contains('large')));
  button(words.print, () => print());
  let armed = false;
  const clear = button(words.clear, (element) => {
    if (!armed) {
      armed = true;
      element.textContent = words.clearSure;
      return;
    }
    armed = false;
    element.textContent = words.clear;
    for (const tick of ticks) tick.checked = false;
    for (const entry of entries) entry.value = '';
    keep();
    refresh();
    panel.progress.textContent = words.cleared;
  });
  clear.addEventListener('blur', () => {
    armed = false;
    clear.textContent = words.clear;
  });
  details.append(summary, panel.list, panel.gaps, panel.kept, bar);
  aside.append(panel.progress, panel.meter, details);
  work.append(aside);
  work.hidden = false;
  details.open = matchMedia('(min-width: 72rem)').matches;
  document.body.classList.add('working');
}

function start() {
  bringBack();
  build();
  refresh();
  document.addEventListener('input', () => {
    keep();
    refresh();
  });
}
`;
