/**
 * The lists of a job as a table for a terminal, as JSON, and as CSV (RFC 4180: commas, quotation marks doubled, lines end
 * in CR LF). What is empty is said to be none.
 */
import { bothUnits } from '../lists/measures.ts';
import type { JobLists } from '../lists/types.ts';
import type { Words } from './words/words.ts';

export interface NamedLists {
  id: string;
  title: string;
  lists: JobLists;
}

/** One line of a list: how many or how much, of what, and what is to be known about it. */
export interface ListRow {
  list: ListName;
  id: string;
  amount: string;
  name: string;
  remark: string;
  /** Part number. */
  number: string;
  when: string;
}

export type ListName =
  | 'people'
  | 'time'
  | 'conditions'
  | 'protection'
  | 'tools'
  | 'parts'
  | 'kits'
  | 'fluids'
  | 'consumables';

export const LISTS: readonly ListName[] = [
  'people',
  'time',
  'conditions',
  'protection',
  'tools',
  'parts',
  'kits',
  'fluids',
  'consumables',
];

/** All lines of all lists, in the order in which a job is prepared. A list without a line is empty. */
export function rowsOf(lists: JobLists, words: Words): ListRow[] {
  const rows: ListRow[] = [];
  const put = (list: ListName, row: Partial<ListRow>) =>
    rows.push({ list, id: '', amount: '', name: '', remark: '', number: '', when: '', ...row });
  if (lists.people !== undefined || lists.skill !== undefined)
    put('people', {
      amount: lists.people === undefined ? '' : String(lists.people),
      name: lists.skill ?? '',
    });
  const { times } = lists;
  if (times.stated) put('time', { amount: times.stated.text, name: words.say('lists.time.stated') });
  if (times.working) put('time', { amount: times.working.text, name: words.say('label.time.working') });
  if (times.stated || times.waitingMinutes > 0)
    put('time', { amount: times.waiting.text, name: words.say('label.time.waiting') });
  for (const { when, text } of times.waitingByVariant)
    put('time', { amount: text, name: words.say('label.time.waiting'), when: when.sentence });
  for (const name of lists.conditions) put('conditions', { name });
  for (const { id, name, when } of lists.protection)
    put('protection', { id, name, when: when?.sentence ?? '' });
  for (const tool of lists.tools) {
    const remark = [tool.range, tool.accuracy, tool.length].flatMap((one) => (one ? [bothUnits(one)] : []));
    const { id, name, partNumber = '', when } = tool;
    if (!tool.listed) remark.push(words.say('lists.not listed'));
    put('tools', { id, name, remark: remark.join(', '), number: partNumber, when: when?.sentence ?? '' });
  }
  const named = (id: string) => [...lists.kits, ...lists.newParts].find((one) => one.id === id)?.name ?? id;
  for (const part of lists.newParts) {
    const remark = [
      ...(part.kit === undefined ? [] : [words.say('lists.in kit', { what: named(part.kit) })]),
      ...(part.comesWith === undefined
        ? []
        : [words.say('label.comes.with', { what: named(part.comesWith) })]),
      ...(part.item === undefined ? [] : [words.say('lists.item', { number: part.item })]),
      ...(part.ifFound ? [words.say('label.only.found')] : []),
    ];
    put('parts', {
      id: part.id,
      amount: part.count === undefined ? words.say('label.count.unknown') : String(part.count),
      name: part.name,
      remark: remark.join(', '),
      number: part.partNumber ?? '',
      when: part.when?.sentence ?? '',
    });
  }
  for (const kit of lists.kits) {
    const contains = kit.contains.map(({ name, count }) => `${count ?? ''} ${name}`.trim()).join(', ');
    const remark = words.say('lists.contains', { what: contains });
    const { id, name, count, partNumber = '', when } = kit;
    put('kits', { id, amount: String(count), name, remark, number: partNumber, when: when?.sentence ?? '' });
  }
  for (const fluid of lists.fluids) {
    const remark = [
      ...(fluid.into.length > 0 ? [words.say('lists.into', { what: fluid.into.join(', ') })] : []),
      ...(fluid.issued ? [words.say('lists.issued', { what: bothUnits(fluid.issued) })] : []),
      ...(fluid.asNeeded && fluid.amount ? [words.say('lists.and as needed')] : []),
    ];
    put('fluids', {
      id: fluid.id,
      amount: fluid.amount ? bothUnits(fluid.amount) : words.say('label.as.needed'),
      name: fluid.name,
      remark: remark.join(', '),
      number: fluid.partNumber ?? '',
      when: fluid.when?.sentence ?? '',
    });
  }
  for (const one of lists.consumables) {
    const remark = [
      ...(one.openTime ? [words.say('lists.open time', { what: one.openTime.text })] : []),
      ...(one.curingTime ? [words.say('lists.curing time', { what: one.curingTime.text })] : []),
    ];
    const { id, name, partNumber = '', when } = one;
    put('consumables', {
      id,
      name,
      remark: remark.join(', '),
      number: partNumber,
      when: when?.sentence ?? '',
    });
  }
  return rows;
}

export function listsTable(all: readonly NamedLists[], words: Words): string {
  return all
    .map(({ title, lists }) => {
      const rows = rowsOf(lists, words);
      const width = Math.max(0, ...rows.map(({ amount }) => amount.length));
      const blocks = LISTS.map((list) => {
        const own = rows.filter((row) => row.list === list);
        const head = words.say(`label.${list}`);
        if (own.length === 0) return `${head}: ${words.say('label.none').toLowerCase()}`;
        return [head, ...own.map((row) => tableLine(row, width))].join('\n');
      });
      return [title, ...blocks].join('\n\n');
    })
    .join('\n\n\n')
    .concat(`\n\n\n${words.say('caution.law')}\n`);
}

function tableLine({ amount, name, remark, number, when }: ListRow, width: number): string {
  const behind = [number, remark, when].filter((one) => one !== '').join('; ');
  return `  ${amount.padEnd(width)}  ${name}${behind === '' ? '' : ` (${behind})`}`.trimEnd();
}

/** Version 1: the caution to be shown, and an array of procedures, each with `id`, `title` and the lists as `JobLists` has them. */
export function listsJson(all: readonly NamedLists[], words: Words): string {
  return `${JSON.stringify({ version: 1, caution: words.say('caution.law'), procedures: all }, null, 2)}\n`;
}

export function listsCsv(all: readonly NamedLists[], words: Words): string {
  const head = ['procedure', 'list', 'id', 'amount', 'name', 'number', 'remark', 'when'];
  const lines = all.flatMap(({ id, lists }) => {
    const rows = rowsOf(lists, words);
    return LISTS.flatMap((list) => {
      const own = rows.filter((row) => row.list === list);
      // A list that is empty says so in a line of its own.
      if (own.length === 0) return [[id, list, '', '0', words.say('label.none').toLowerCase(), '', '', '']];
      return own.map((row) => [id, list, row.id, row.amount, row.name, row.number, row.remark, row.when]);
    });
  });
  return [head, ...lines].map((line) => `${line.map(cell).join(',')}\r\n`).join('');
}

function cell(value: string): string {
  return /[",\r\n]/.test(value) ? `"${value.replaceAll('"', '""')}"` : value;
}
