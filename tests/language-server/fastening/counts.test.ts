/**
 * How many published values the fastening tests are held against, by file and by how they were obtained. The
 * counts are printed, and a file that lost rows fails here: the per-row tests alone would not notice.
 */

import { expect, it } from 'vitest';
import { howKnown, outside } from './outside.ts';

/** Rows of each file; of worked-examples.csv only the rows of fastening. */
const ROWS: Record<string, number> = {
  'thread-areas.csv': 70,
  'proof-loads.csv': 306,
  'fastener-strength.csv': 28,
  'vdi2230-fine-check.csv': 81,
  'bolt-patterns.csv': 12,
  'ac43-torque.csv': 25,
  'worked-examples.csv': 23,
};

it('every published row is there', () => {
  const lines: string[] = [];
  let total = 0;
  for (const [file, expected] of Object.entries(ROWS)) {
    const rows = outside(file).filter(
      (row) => file !== 'worked-examples.csv' || /^(?:TQ|TW|PT|WR|AN)-/.test(row.id!),
    );
    expect(rows, file).toHaveLength(expected);
    expect(
      rows.every((row) => (row.source ?? row.standard) !== ''),
      `${file}: every row names its source`,
    ).toBe(true);
    const by = new Map<string, number>();
    for (const row of rows) by.set(howKnown(row), (by.get(howKnown(row)) ?? 0) + 1);
    lines.push(`${file}: ${rows.length} (${[...by].map(([how, n]) => `${n} ${how}`).join(', ')})`);
    total += rows.length;
  }
  console.log(`Published values for fastening, ${total} rows\n${lines.join('\n')}`);
});
