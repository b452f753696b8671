/**
 * Lists of the demo jobs against an independent count: the source, with its short forms written out, is searched by
 * regular expressions, and the machine file likewise. Nothing of the lists' own reading is used for the count.
 */
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { writeOut } from '../../../language-server/features/write-out.ts';
import { jobsOf } from '../../../language-server/lists/job.ts';
import { listsOf } from '../../../language-server/lists/lists.ts';
import type { JobLists } from '../../../language-server/lists/types.ts';
import { memoryHost, type SourceHost } from '../../../language-server/project/project.ts';
import { listsCsv, listsTable } from '../../../language-server/publish/lists-text.ts';
import { wordsOf } from '../../../language-server/publish/words/words.ts';

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '../../../procedures');

const disk: SourceHost = {
  read: (path) => {
    try {
      return readFileSync(join(ROOT, path), 'utf8');
    } catch {
      return undefined;
    }
  },
  resolve: (from, target) => join(dirname(from), target),
};

function listsIn(host: SourceHost, path: string): JobLists {
  const words = wordsOf('british');
  const [job] = jobsOf(host, path, { say: words.say, secondUnits: true });
  return listsOf(job!);
}

/** The count that a machine file declares: `x4`, or as many as it has named positions. */
function declaredCount(machine: string, name: string): number {
  const from = machine.search(new RegExp(`^\\s*(?:part|fastener|seal) ${name} `, 'm'));
  const rest = machine.slice(from).replace(/^\s+/, '');
  const end = rest.slice(1).search(/^\s*(?:part|fastener|seal|connection|face|tool|kit|\/\/)\s/m);
  const declaration = end < 0 ? rest : rest.slice(0, end + 1);
  const count = /\sx(\d+)/.exec(declaration.split('\n')[0]!);
  const positions = /positions ([\w-]+(?:, [\w-]+)*)/.exec(declaration);
  return count ? Number(count[1]) : (positions?.[1]?.split(',').length ?? 1);
}

/** Names after `fit new` and what the kits after `fit kit` contain, in the written-out text. */
function fittedNew(text: string, machine: string): Map<string, number> {
  const counts = new Map<string, number>();
  const add = (name: string) => counts.set(name, declaredCount(machine, name));
  for (const [, names] of text.matchAll(/^\s*(?:\w[\w-]* \{ )?fit new ([\w-]+(?:, [\w-]+)*)/gm))
    for (const name of names!.split(', ')) add(name);
  for (const [, kit] of text.matchAll(/^\s*fit kit ([\w-]+)/gm)) {
    const contains = new RegExp(`kit ${kit}\\b[^]*?contains ([\\w-]+(?:,\\s+[\\w-]+)*)`).exec(machine);
    for (const name of contains![1]!.split(/,\s+/)) add(name);
  }
  return counts;
}

/** s: waits in the text that is done in every variant and whatever is found. */
function waited(text: string): number {
  const scale: Record<string, number> = { s: 1, min: 60, h: 3600 };
  let seconds = 0;
  for (const [, number, unit] of text.matchAll(/^\s*(?:wait|let cool [\w-]+ for) (\d+) (s|min|h)\b/gm))
    seconds += Number(number) * scale[unit!]!;
  return seconds;
}

const JOBS: readonly (readonly [path: string, machine: string])[] = [
  ['tarnbrook/overhaul.dowel', 'tarnbrook/tarnbrook-t40.dowel'],
  ['tarnbrook/valve-plate.dowel', 'tarnbrook/tarnbrook-t40.dowel'],
  ['skelder-ferry/brake-discs.dowel', 'skelder-ferry/skelder-winch.dowel'],
  ['ullock-sprayer/renew-valves.dowel', 'ullock-sprayer/ullock-sprayer.dowel'],
  ['quenby-centrifuge/drive-board.dowel', 'quenby-centrifuge/quenby-b6.dowel'],
];

describe.each(JOBS)('%s', (path, machinePath) => {
  const lists = listsIn(disk, path);
  const text = writeOut(disk, path)!;
  const machine = disk.read(machinePath)!;

  test('new parts are what the steps fit new, each as often as the machine has it', () => {
    const listed = new Map(lists.newParts.map(({ id, count }) => [id, count]));
    expect([...listed].sort()).toEqual([...fittedNew(text, machine)].sort());
  });

  test('tools are those of the header and of every `with`', () => {
    const header = /\btools ((?:[\w-]+(?:,\s+)?)+)/.exec(text)![1]!.trim().split(/,\s+/);
    const named = new Set([...machine.matchAll(/^\s*tool ([\w-]+)/gm)].map(([, name]) => name!));
    const used = [...text.matchAll(/\bwith ([\w-]+(?:, [\w-]+)*)/g)].flatMap(([, names]) =>
      names!.split(', '),
    );
    const wanted = new Set([...header, ...used.filter((name) => named.has(name))]);
    expect(lists.tools.map(({ id }) => id).sort()).toEqual([...wanted].sort());
  });

  test('protective equipment, people and skill are those of the header', () => {
    const wear = /\bwear ((?:[\w-]+(?:,\s+)?)+)/.exec(text)![1]!.trim().split(/,\s+/);
    expect(lists.protection.map(({ id }) => id)).toEqual(wear);
    expect(lists.people).toBe(Number(/\bpeople (\d+)/.exec(text)![1]));
    expect(lists.skill).toBe(/\bskill "([^"]*)"/.exec(text)![1]);
  });

  test('the waiting time is the sum of the waits', () => {
    expect(lists.times.waitingMinutes * 60).toBe(waited(text));
  });

  test('fluids are those that are filled in, topped up, used or issued', () => {
    const named = new Set([...machine.matchAll(/^\s*fluid ([\w-]+)/gm)].map(([, name]) => name!));
    const words = text.match(/[\w-]+/g)!.filter((word) => named.has(word));
    const filled = [...text.matchAll(/\b(?:fill|top up|bleed) ([\w-]+)/g)].flatMap(([, system]) => {
      const holds = new RegExp(`system ${system}\\b[^]*?holds [\\d.]+ \\w+ ([\\w-]+)`).exec(machine);
      return holds ? [holds[1]!] : [];
    });
    expect(lists.fluids.map(({ id }) => id).sort()).toEqual([...new Set([...words, ...filled])].sort());
  });
});

// Counted by hand in the source.
describe('counted by hand', () => {
  test('the overhaul', () => {
    const { newParts, kits, fluids, times } = listsIn(disk, 'tarnbrook/overhaul.dowel');
    expect(newParts.find(({ id }) => id === 'pin-circlips')?.count).toBe(4);
    expect(newParts.find(({ id }) => id === 'base-gasket')?.kit).toBe('gasket-kit');
    expect(kits.map(({ id }) => id)).toEqual(['gasket-kit', 'ring-kit', 'shell-kit']);
    expect(fluids).toMatchObject([
      { id: 'pump-oil', amount: { text: '1.2 L' }, issued: { text: '1.5 L' }, asNeeded: true },
    ]);
    // 30 min, 10 min and 1 h.
    expect(times.waiting.text).toBe('1 h 40 min');
    expect(times.working?.text).toBe('14 h 20 min');
  });

  test('what only one variant needs says so; what is only fitted when found bad, too', () => {
    const overhaul = listsIn(disk, 'tarnbrook/overhaul.dowel');
    expect(overhaul.tools.find(({ id }) => id === 'discharge-tool')?.when).toEqual({
      sentence: 'if the supply is single-phase',
      any: [{ supply: ['single-phase'] }],
    });
    const brake = listsIn(disk, 'skelder-ferry/brake-discs.dowel');
    expect(brake.newParts.find(({ id }) => id === 'friction-discs')).toMatchObject({
      count: 4,
      ifFound: true,
    });
    expect(brake.newParts.find(({ id }) => id === 'motor-ring')).toMatchObject({ count: 1, ifFound: false });
  });
});

const SMALL = `machine m "pump" {
  variant size: small, large
  part body "body" fixed
  part cover "cover" on body
  part ring "ring" x2 on body
  part plug "plug" on body
  system oil "oil" holds 2 L oil-a
  fluid oil-a "oil"
}
procedure p "Renew rings" for m {
  when size is small { fit new ring #1
    fill oil with 1 L oil-a
    wait 5 min }
  otherwise { fit new ring
    fill oil
    wait 20 min }
  for each #n of ring { fit new ring #n }
}
procedure q "Look" for m { inspect cover for "cracks" }
`;

describe('variants', () => {
  const words = wordsOf('british');
  const jobs = jobsOf(memoryHost({ 'a.dowel': SMALL }), 'a.dowel', { say: words.say, secondUnits: false });

  test('counts, amounts and waits differ from one to the other', () => {
    const { newParts, fluids, times } = listsOf(jobs[0]!);
    // One and two here, and two more in the loop.
    expect(newParts.map(({ id, count, when }) => [id, count, when?.sentence])).toEqual([
      ['ring', 3, 'if the size is small'],
      ['ring', 4, 'if the size is large'],
    ]);
    expect(fluids.map(({ amount, when }) => [amount?.text, when?.any])).toEqual([
      ['1 L', [{ size: ['small'] }]],
      ['2 L', [{ size: ['large'] }]],
    ]);
    expect(times.waitingByVariant.map(({ minutes, when }) => [minutes, when.sentence])).toEqual([
      [5, 'if the size is small'],
      [20, 'if the size is large'],
    ]);
  });

  test('an empty list says none, in the table and in CSV', () => {
    const all = [{ id: 'q', title: 'Look', lists: listsOf(jobs[1]!) }];
    const table = listsTable(all, words);
    for (const label of ['Tools', 'New parts', 'Kits', 'Fluids', 'Consumables', 'Wear', 'People', 'Time'])
      expect(table).toContain(`${label}: none`);
    const csv = listsCsv(all, words);
    expect(csv.split('\r\n')).toContain('q,tools,,0,none,,,');
  });
});
