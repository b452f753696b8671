/**
 * What `dowel compare` tells. Hand-made pairs, one for each kind of change (common practice of a revision record, no
 * source), and the property that a text laid out anew or with its declarations in another order is no change.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { formatText } from '../../../grammar/format/format.ts';
import { parse } from '../../../grammar/parser/parse.ts';
import type { Comparison } from '../../../language-server/compare/change.ts';
import { compareProjects } from '../../../language-server/compare/compare.ts';
import { writeOut } from '../../../language-server/features/write-out.ts';

const machine = `machine pump "Pump" {
  part body "body" fixed
  part cover "cover" on body  held by cover-bolts  sealed by gasket
  fastener cover-bolts "cover bolts" x4  clamps cover to body  thread M8x1.25  class 8.8  torque 22 N·m
  seal gasket "gasket"  single-use
  tool wrench "torque wrench"  range 5..50 N·m
  consumable cleaner "cleaner"
}
`;
const job = `procedure look "Look inside"
  for pump
  document "P-1" issue 1 "2026-01-01"
  time 1 h
  wear gloves
  tools wrench
  supplies gasket
{
  task open "Open it" {
    caution sharp "The edges of the cover cut. Wear gloves."
    remove cover-bolts
    remove cover
    remove gasket and discard
  }
  wait 10 min
  inspect body for "cracks"
  task close "Close it" {
    fit new gasket
    fit cover "The arrow points up."
    fit cover-bolts
    tighten cover-bolts to 22 N·m
  }
}
`;

function compared(before: string, after: string): Comparison {
  const state = (text: string) => ({
    host: { read: (path: string) => (path === 'a.dowel' ? text : undefined), resolve: () => '' },
    paths: ['a.dowel'],
  });
  return compareProjects(state(before), state(after));
}

/** `kind what: message` of each change, in order, without the findings. */
function told(before: string, after: string): string[] {
  return compared(before, after)
    .sections.filter(({ subject }) => subject !== 'findings')
    .flatMap(({ changes }) => changes.map(({ kind, what, message }) => `${kind} ${what}: ${message}`));
}

const whole = machine + job;
/** The pair in which one piece of the text is another. */
function changed(from: string, to: string, text = whole): string[] {
  expect(text).toContain(from);
  return told(text, text.replace(from, to));
}

test.each([
  [
    'a step is new',
    '  wait 10 min\n',
    '  wait 10 min\n  clean cover with cleaner\n',
    ['added step: `clean cover with cleaner` is new.'],
  ],
  [
    'a step is gone',
    '    remove gasket and discard\n',
    '',
    [
      'removed step: `remove gasket and discard` in "Open it" is gone.',
      'changed end: At the end: gasket as at the start (before: new).',
    ],
  ],
  [
    'a value is another, with its share',
    'wait 10 min',
    'wait 5 min',
    ['changed step: `wait 5 min`: `10 min` is now `5 min` (−50 %).'],
  ],
  [
    'it is written for other machines',
    'time 1 h',
    'time 1 h  serial numbers "from 1200"',
    ['changed serial numbers: `serial numbers "from 1200"` is new.'],
  ],
  [
    'a torque of the machine is another',
    'torque 22 N·m',
    'torque 24.2 N·m',
    ['changed fastener: fastener cover-bolts: `torque 22 N·m` is now `torque 24.2 N·m` (+10 %).'],
  ],
  [
    'a notice warns less',
    'caution sharp',
    'notice sharp',
    ['weakened notice: `caution sharp` before `remove cover-bolts` is now `notice sharp`.'],
  ],
  [
    'a notice warns more',
    'caution sharp',
    'warning sharp',
    ['strengthened notice: `caution sharp` before `remove cover-bolts` is now `warning sharp`.'],
  ],
  [
    'a notice is lost',
    '    caution sharp "The edges of the cover cut. Wear gloves."\n',
    '',
    ['weakened notice: `caution sharp` before `remove cover-bolts` is gone.'],
  ],
  ['a tool is gone', '  tools wrench\n', '', ['removed tools: tools: `wrench` is gone.']],
  [
    'a part is new',
    'supplies gasket',
    'supplies gasket, cleaner',
    ['added supplies: supplies: `cleaner` is new.'],
  ],
  [
    'the time is another',
    'time 1 h',
    'time 90 min',
    ['changed time: `time 1 h` is now `time 90 min` (+50 %).'],
  ],
  ['a clause is gone', '  single-use', '', ['changed seal: seal gasket no longer has `single-use`.']],
  ['a clause is new', 'x4', 'x4  stay', ['changed fastener: fastener cover-bolts now has `stay`.']],
  [
    'a thing is new',
    '  consumable cleaner',
    '  consumable grease "grease"\n  consumable cleaner',
    ['added consumable: consumable grease is new.'],
  ],
  [
    'the issue is another',
    'issue 1 "2026-01-01"',
    'issue 2 "2026-02-01"',
    [
      'record document: document: `document "P-1" issue 1 "2026-01-01"` is now `document "P-1" issue 2 "2026-02-01"`.',
    ],
  ],
  [
    'a sentence is another',
    'The arrow points up.',
    'Arrow up.',
    ['reworded step: `fit cover` is worded otherwise.'],
  ],
  [
    'a notice is worded otherwise',
    'The edges of the cover cut.',
    'Edges cut.',
    ['reworded notice: `caution sharp` before `remove cover-bolts` is worded otherwise.'],
  ],
  [
    'a title is another',
    '"Look inside"',
    '"Look into it"',
    ['reworded title: It is now called "Look into it".'],
  ],
])('%s', (_, from, to, expected) => {
  expect(changed(from, to)).toEqual(expected);
});

test('a step that moved is told as one', () => {
  const body = '  inspect body for "cracks"\n';
  expect(
    told(whole, whole.replace(body, '').replace('    remove cover\n', `    remove cover\n  ${body}`)),
  ).toEqual(['moved step: `inspect body for` stood after `wait 10 min`, now after `remove cover`.']);
});

test('a step under another condition', () => {
  const two = whole.replace('machine pump "Pump" {', 'machine pump "Pump" {\n  variant size: small, large');
  expect(told(two, two.replace('  wait 10 min', '  when size is large { wait 10 min }'))).toContain(
    'changed condition: `wait 10 min` was done in every case, now when size is large.',
  );
});

test('the end of the job and the findings are told', () => {
  const { sections, meaning } = compared(whole, whole.replace(/ {4}fit cover-bolts\n.*\n/, ''));
  expect(meaning).toBe(true);
  const changes = sections.flatMap((section) => section.changes);
  expect(changes.filter(({ what }) => what === 'end').map(({ message }) => message)).toEqual([
    'At the end: cover bolts out (before: as at the start).',
  ]);
  expect(
    changes.filter(({ what }) => what === 'finding').map(({ message }) => message.split(':')[1]!.trim()),
  ).toContain('left-off');
});

test('the same steps in another form are no change in meaning', () => {
  const short = whole
    .replace(/task close[\s\S]*?\n {2}\}\n/, 'reverse open\n')
    .replace(/.*gasket.*\n/g, '')
    .replace('tools wrench', '')
    .replace('  sealed by gasket', '');
  const long = writeOut({ read: () => short, resolve: () => '' }, 'a.dowel')!;
  expect(long).not.toContain('reverse');
  const { sections, meaning } = compared(short, long);
  expect(meaning).toBe(false);
  expect(sections.flatMap(({ changes }) => changes.map(({ message }) => message))).toContain(
    'The steps are written in another form; written out they are the same.',
  );
});

test('the same quantity in another unit is no change in meaning', () => {
  expect(changed('wait 10 min', 'wait 600 s')).toEqual([]);
});

test('twins: one procedure on each side, of two machines', () => {
  const twin = whole
    .replace('machine pump', 'machine compressor')
    .replace('for pump', 'for compressor')
    .replace('procedure look', 'procedure peep')
    .replace('wait 10 min', 'wait 20 min');
  const { sections } = compared(whole, twin);
  const procedure = sections.find(({ subject }) => subject === 'procedure')!;
  expect(procedure).toMatchObject({ name: 'peep', oldName: 'look' });
  expect(procedure.changes.map(({ message }) => message)).toContain(
    '`wait 20 min`: `10 min` is now `20 min` (+100 %).',
  );
});

// ---------------------------------------------------------------- properties

const ROOT = resolve(fileURLToPath(import.meta.url), '../../../..');
const demos = readdirSync(join(ROOT, 'procedures'), { recursive: true, encoding: 'utf8' }).filter((file) =>
  file.endsWith('.dowel'),
);

/** The demo folder with each text made into another one. */
function demoState(other: (text: string) => string) {
  const read = (path: string) => {
    try {
      return other(readFileSync(join(ROOT, 'procedures', path), 'utf8'));
    } catch {
      return undefined;
    }
  };
  return {
    host: { read, resolve: (from: string, target: string) => join(from, '..', target) },
    paths: demos,
  };
}

/** Blank lines, comments and runs of blanks between lines that mean nothing. */
function loosened(text: string): string {
  return text.replaceAll('\n', '  // a word\n\n');
}

/** The declarations of each machine the other way round: the texts of the items, in reverse. */
function reordered(text: string): string {
  const machines = parse(text).tree.items.filter((item) => item.kind === 'machine');
  let result = text;
  for (const { items } of machines.reverse()) {
    const declared = items.filter(({ kind }) => kind === 'declaration');
    const texts = declared.map(({ start, end }) => text.slice(start, end)).reverse();
    for (let at = declared.length - 1; at >= 0; at--) {
      const { start, end } = declared[at]!;
      result = `${result.slice(0, start)}${texts[at]!}\n${result.slice(end)}`;
    }
  }
  return result;
}

test.each([
  ['laid out anew', formatText],
  ['with comments and blank lines', loosened],
  ['with its declarations the other way round', reordered],
])('every demo %s is as before', (_, other) => {
  const { sections } = compareProjects(
    demoState((text) => text),
    demoState(other),
  );
  expect(sections.flatMap(({ changes }) => changes.map(({ message }) => message))).toEqual([]);
});
