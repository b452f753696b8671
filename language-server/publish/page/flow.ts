/** The job as sections, steps and ways. Numbers are text, so that they are read, searched and copied. */
import type { Branch, FlowItem, Group, Repeat, Task, When } from '../document/types.ts';
import { anchor, type Context } from './context.ts';
import { type Html, html, type Piece } from './html.ts';
import { notice } from './notice.ts';
import { classes, rich } from './rich.ts';
import { step } from './step.ts';

/** How far headings go down; deeper groups keep the last. */
const DEEPEST = 6;

export function flow(items: readonly FlowItem[], context: Context, level = 3): Html {
  return html`${items.map((item) => one(item, context, level))}`;
}

function one(item: FlowItem, context: Context, level: number): Html {
  const { words } = context;
  switch (item.kind) {
    case 'task':
      return task(item, context, level);
    case 'group':
      return group(item, context, level);
    case 'step':
      return step(item, context, (items) => flow(items, context, Math.min(level + 1, DEEPEST)));
    case 'branch':
      return branch(item, context, level);
    case 'repeat':
      return repeat(item, context, level);
    case 'hold':
      return html`<div${box('hold', item.when, context)} id="${anchor(item.id)}"><p class="lead">${rich(item.text, context)}</p>${only(item.when, context)}${flow(item.items, context, level)}</div>`;
    case 'choice': {
      const axis = context.doc.appliesTo.axes.find(({ id }) => id === item.axis);
      return html`<div${box('choice', item.when, context)} id="${anchor(item.id)}"><p class="lead">${item.sentence}</p>${only(item.when, context)}${
        axis?.kind === 'choice' && context.conditions.buttons(axis, words.chooseAll)
      }</div>`;
    }
    case 'stop':
      return html`<p${box('stop', item.when, context)} id="${anchor(item.id)}"><b>${rich(item.text, context)}</b>${item.when && html` <small>(${words.onlyInside(item.when.sentence)})</small>`}</p>`;
    case 'note':
      return html`<div${box('', item.when, context)} id="${anchor(item.id)}">${only(item.when, context)}${notice(item.notice, context)}</div>`;
  }
}

function task(item: Task, context: Context, level: number): Html {
  const id = anchor(item.id);
  return html`<section${box('task', item.when, context)} id="${id}" aria-labelledby="${id}-title">${heading(
    level,
    `${id}-title`,
    html`<span class="number">${item.number}</span> ${item.title}`,
  )}${only(item.when, context)}${flow(item.items, context, Math.min(level + 1, DEEPEST))}</section>`;
}

function group(item: Group, context: Context, level: number): Html {
  const id = anchor(item.id);
  const title = item.title !== '' && item.title;
  const number = html`<span class="number">${item.number}</span>`;
  return html`<section${box('group', item.when, context)} id="${id}" aria-labelledby="${id}-title">${heading(
    level,
    `${id}-title`,
    title ? html`${number} ${title}` : number,
  )}${item.note.length > 0 && html`<p class="remark">${rich(item.note, context)}</p>`}${only(item.when, context)}${flow(
    item.items,
    context,
    Math.min(level + 1, DEEPEST),
  )}</section>`;
}

function branch(item: Branch, context: Context, level: number): Html {
  const ways = item.ways.map(
    (way) =>
      html`<div${box('way', way.when, context)} id="${anchor(way.id)}"><p class="way-label">${way.label}</p>${
        way.items.length > 0
          ? flow(way.items, context, level)
          : way.goOn && html`<p>${context.words.goOn}</p>`
      }</div>`,
  );
  // One way for some machines needs no question before it: its label says it all.
  const asked = item.by !== 'variant' || item.ways.length > 1;
  return html`<div${box('branch', item.when, context)} id="${anchor(item.id)}">${asked && html`<p class="lead">${item.question}</p>`}${only(item.when, context)}${ways}</div>`;
}

function repeat(item: Repeat, context: Context, level: number): Html {
  const { otherwise } = item;
  return html`<section${box('repeat', item.when, context)} id="${anchor(item.id)}"><p class="lead"><span class="number">${item.number}</span> ${item.sentence}</p>${only(item.when, context)}${flow(item.items, context, level)}${
    otherwise &&
    html`<div class="way"><p class="way-label">${otherwise.sentence}</p>${flow(otherwise.items, context, level)}</div>`
  }</section>`;
}

/** `Only if the supply is single-phase`, above what is so. */
export function only(when: When | undefined, context: Context): Piece {
  return when && html`<p class="under">${context.words.under(when.sentence)}</p>`;
}

function box(name: string, when: When | undefined, context: Context): Html {
  return classes(name, context.conditions.classOf(when));
}

function heading(level: number, id: string, content: Piece): Html {
  switch (level) {
    case 3:
      return html`<h3 id="${id}">${content}</h3>`;
    case 4:
      return html`<h4 id="${id}">${content}</h4>`;
    case 5:
      return html`<h5 id="${id}">${content}</h5>`;
    default:
      return html`<h6 id="${id}">${content}</h6>`;
  }
}
