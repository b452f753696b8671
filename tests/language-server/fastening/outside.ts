/**
 * Reads the published values in tests/outside. Every row keeps its source and how it was obtained
 * (SEEN, COMPUTED, MEMORY); the tests print them beside each value. Not a general CSV library.
 */

import { readFileSync } from 'node:fs';

export type Row = Readonly<Record<string, string>>;

/** The rows of one file in tests/outside, by column name; quotes as in RFC 4180. */
export function outside(file: string): Row[] {
  const text = readFileSync(new URL(`../../outside/${file}`, import.meta.url), 'utf8');
  const [header = [], ...rows] = records(text);
  return rows.map((cells) => Object.fromEntries(header.map((name, i) => [name, cells[i] ?? ''])));
}

/** How a value was obtained, for the title of a test: `seen`, `computed`, `from memory` or partly so. */
export function howKnown(row: Row): string {
  const mark = row.seen_or_memory ?? row.seen_or_computed ?? '';
  if (mark.startsWith('MEMORY')) return 'from memory';
  if (/MEMORY/.test(mark)) return 'partly from memory';
  if (mark.startsWith('SEEN')) return 'seen';
  if (mark.startsWith('COMPUTED')) return 'computed';
  return mark;
}

function records(text: string): string[][] {
  const all: string[][] = [];
  let record: string[] = [];
  let cell = '';
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const c = text[i];
    if (quoted) {
      if (c === '"' && text[i + 1] === '"') {
        cell += '"';
        i++;
      } else if (c === '"') quoted = false;
      else cell += c;
    } else if (c === '"') quoted = true;
    else if (c === ',') {
      record.push(cell);
      cell = '';
    } else if (c === '\n') {
      record.push(cell);
      if (record.length > 1 || record[0] !== '') all.push(record);
      record = [];
      cell = '';
    } else cell += c;
  }
  if (cell !== '' || record.length > 0) all.push([...record, cell]);
  return all;
}
