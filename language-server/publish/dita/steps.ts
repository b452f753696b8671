/**
 * The flow of a procedure as steps of a DITA task: notes before the command, one command, then what explains it. What
 * DITA has no element for (a repeat, a branch) is a step whose command says so, with the steps in it.
 */
import type { Branch, FlowItem, Notice, Step } from '../document/types.ts';
import { plainText } from '../document/types.ts';
import { el, idOf, type Xml } from './xml.ts';

/** Steps of one list. Notes that stand alone go before the next step, where DITA has a place for them. */
export function stepsOf(items: readonly FlowItem[], name: 'step' | 'substep' = 'step'): Xml[] {
  const steps: Xml[] = [];
  let waiting: Xml[] = [];
  for (const item of items) {
    if (item.kind === 'note') {
      waiting.push(noticeOf(item.notice));
      continue;
    }
    steps.push(stepOf(item, name, waiting));
    waiting = [];
  }
  // At the end of a list there is no step that they could stand before.
  if (waiting.length > 0) {
    const last = items.findLast((item) => item.kind === 'note');
    steps.push(el(name, {}, waiting.slice(0, -1), el('cmd', {}, last ? plainText(last.notice.text) : '')));
  }
  return steps;
}

function stepOf(item: Exclude<FlowItem, { kind: 'note' }>, name: 'step' | 'substep', notes: Xml[]): Xml {
  const condition = item.when && `${capital(item.when.sentence)}: `;
  const make = (command: string, ...more: (Xml | readonly Xml[] | undefined)[]) =>
    el(name, { id: idOf(item.id) }, notes, el('cmd', {}, `${condition ?? ''}${command}`), ...more);
  switch (item.kind) {
    case 'step':
      return el(
        name,
        { id: idOf(item.id) },
        notes,
        item.notices.map(noticeOf),
        el('cmd', {}, `${condition ?? ''}${plainText(item.heading)}`),
        infosOf(item),
        name === 'step' ? choiceTable(item) : readings(item),
        item.expect.length > 0
          ? el('stepresult', {}, ...item.expect.map((one) => el('p', {}, plainText(one))))
          : undefined,
      );
    case 'task':
      return make(item.title, within(item.items, name));
    case 'group': {
      const note = plainText(item.note);
      return make(item.title, note === '' ? undefined : info(note), within(item.items, name));
    }
    case 'hold':
      return make(plainText(item.text), within(item.items, name));
    case 'repeat':
      return make(
        item.sentence,
        within(item.items, name),
        item.otherwise
          ? el('info', {}, el('p', {}, item.otherwise.sentence), listOf(item.otherwise.items))
          : undefined,
      );
    case 'branch':
      return make(item.question, name === 'step' ? choices(item) : el('info', {}, waysOf(item)));
    case 'choice':
      return make(item.sentence);
    case 'stop':
      return make(plainText(item.text));
  }
}

/** Steps in a step are substeps; deeper than that they are a list. */
function within(items: readonly FlowItem[], name: 'step' | 'substep'): Xml | undefined {
  if (items.length === 0) return undefined;
  return name === 'step' ? el('substeps', {}, ...stepsOf(items, 'substep')) : el('info', {}, listOf(items));
}

function info(text: string): Xml {
  return el('info', {}, el('p', {}, text));
}

/** Sentences behind the command; stages of tightening as a list of their own. */
function infosOf(step: Step): Xml[] {
  const said = [...step.more, ...step.said].map(plainText);
  const orders = step.detail.fastening.flatMap(({ order }) => (order ? [order.sentence] : []));
  const told = said.join(' ');
  return [
    ...said.map(info),
    ...orders.filter((one) => !told.includes(one)).map(info),
    ...step.detail.fastening
      .map(({ stages }) => stages.filter(({ sentence }) => !told.includes(sentence)))
      .filter((stages) => stages.length > 0)
      .map((stages) => el('info', {}, el('ol', {}, ...stages.map(({ sentence }) => el('li', {}, sentence))))),
  ];
}

/** Readings and what to do, as a table with one row for each. */
function choiceTable({ measurement }: Step): Xml | undefined {
  if (!measurement || measurement.rows.length === 0) return undefined;
  return el(
    'choicetable',
    { keycol: '1' },
    ...measurement.rows.map((row) =>
      el(
        'chrow',
        { id: idOf(row.id) },
        el('choption', {}, row.reading),
        el('chdesc', {}, row.items.length > 0 ? listOf(row.items) : row.action),
      ),
    ),
  );
}

function readings({ measurement }: Step): Xml | undefined {
  if (!measurement || measurement.rows.length === 0) return undefined;
  return el(
    'info',
    {},
    el(
      'ul',
      {},
      ...measurement.rows.map((row) =>
        row.items.length > 0
          ? el('li', {}, el('p', {}, `${capital(row.reading)}:`), listOf(row.items))
          : el('li', {}, `${capital(row.reading)}: ${row.action}`),
      ),
    ),
  );
}

function choices(branch: Branch): Xml {
  return el('choices', {}, ...branch.ways.map((way) => el('choice', {}, ...wayOf(way))));
}

function waysOf(branch: Branch): Xml {
  return el('ul', {}, ...branch.ways.map((way) => el('li', {}, ...wayOf(way))));
}

function wayOf({ label, items }: Branch['ways'][number]): Xml[] {
  return [el('p', {}, label), items.length > 0 ? listOf(items) : el('p', {}, 'Go on.')];
}

/** Steps as a numbered list: inside choices, tables and deep nesting. */
function listOf(items: readonly FlowItem[]): Xml {
  return el('ol', {}, ...items.map(lineOf));
}

function lineOf(item: FlowItem): Xml {
  const condition = item.when ? `${capital(item.when.sentence)}: ` : '';
  const line = (text: string, ...more: (Xml | undefined)[]) =>
    el('li', {}, el('p', {}, condition + text), ...more);
  const nested = (items: readonly FlowItem[]) => (items.length > 0 ? listOf(items) : undefined);
  switch (item.kind) {
    case 'step':
      return el(
        'li',
        { id: idOf(item.id) },
        item.notices.map(noticeOf),
        el('p', {}, condition + plainText(item.heading)),
        infosOf(item).flatMap(({ children }) => [...children]),
        readings(item)?.children.slice() ?? [],
        item.expect.map((one) => el('p', {}, plainText(one))),
      );
    case 'task':
      return line(item.title, nested(item.items));
    case 'group': {
      const note = plainText(item.note);
      return line(note === '' ? item.title : `${item.title}. ${note}`, nested(item.items));
    }
    case 'hold':
      return line(plainText(item.text), nested(item.items));
    case 'repeat':
      return line(
        item.sentence,
        nested(item.items),
        item.otherwise && el('p', {}, item.otherwise.sentence),
        item.otherwise && nested(item.otherwise.items),
      );
    case 'branch':
      return line(item.question, waysOf(item));
    case 'choice':
      return line(item.sentence);
    case 'stop':
      return line(plainText(item.text));
    case 'note':
      return el('li', {}, noticeOf(item.notice));
  }
}

/**
 * A notice whose parts are known is a hazard statement, which asks for the hazard and how to avoid it; any other is a
 * note of its kind.
 */
export function noticeOf(notice: Notice): Xml {
  const { signal, hazard, consequence, avoidance } = notice;
  if (signal === 'note' || hazard === undefined || avoidance === undefined)
    return el('note', { type: signal }, plainText(notice.text));
  return el(
    'hazardstatement',
    { type: signal },
    el(
      'messagepanel',
      {},
      el('typeofhazard', {}, hazard),
      consequence === undefined ? undefined : el('consequence', {}, consequence),
      el('howtoavoid', {}, avoidance),
    ),
  );
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
