/**
 * The strip-down and rebuild of every part of every demo machine: where one is written, the checker finds no
 * fault in it. Some parts in the normal run, all with DOWEL_LONG=1.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { checkProject } from '../../../language-server/checks/check-project.ts';
import { rebuild } from '../../../language-server/features/rebuild.ts';
import { View } from '../../../language-server/features/view.ts';
import { memoryHost } from '../../../language-server/project/project.ts';
import { PRESS } from './cursor.ts';

const ROOT = resolve(import.meta.dirname, '../../../procedures');
const FILES: Readonly<Record<string, string>> = Object.fromEntries(
  readdirSync(ROOT, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.dowel'))
    .sort()
    .map((name) => [relative(ROOT, join(ROOT, name)), readFileSync(join(ROOT, name), 'utf8')]),
);
const view = new View(memoryHost(FILES));
const LONG = process.env.DOWEL_LONG === '1';

const machines = Object.keys(FILES).flatMap((path) =>
  view.file(path)!.machines.map((machine) => ({ path, machine, name: machine.name!.text })),
);

/** Parts that cannot be done: so heavy that no number of people lifts them where no hoist is declared. */
const NOT_YET: readonly string[] = ['crankcase'];

describe.each(machines)('$name', ({ path, machine }) => {
  const file = view.file(path)!;
  const parts = view
    .model(machine, file)
    .things.filter(({ type, fixed, added }) => type === 'part' && !fixed && !added)
    .map(({ name }) => name);
  const chosen = LONG ? parts : parts.filter((_, index) => index % 6 === 1);

  test(`${chosen.length} of ${parts.length} parts`, { timeout: 3_600_000 }, () => {
    const failed: string[] = [];
    for (const part of chosen) {
      const result = rebuild(view, file, machine, part, 'job.dowel');
      if (!result.ok) {
        failed.push(part);
        continue;
      }
      const { findings } = checkProject(memoryHost({ ...FILES, 'job.dowel': result.text }), ['job.dowel']);
      expect(
        findings.filter(({ severity }) => severity === 'error' || severity === 'warning'),
        `${part}\n${result.text}`,
      ).toEqual([]);
      expect(result.text).toMatch(new RegExp(`\\b(unbolt|remove) ${part}\\b`));
      expect(result.text).toMatch(new RegExp(`\\b(bolt up|refit|fit new) ${part}\\b`));
    }
    expect(failed.filter((part) => !NOT_YET.includes(part))).toEqual([]);
  });
});

test('what is written for a small machine', () => {
  const press = new View(memoryHost({ 'press.dowel': PRESS }));
  const file = press.file('press.dowel')!;
  const result = rebuild(press, file, file.machines[0]!, 'guides', 'job.dowel');
  expect(result.ok && result.text).toBe(`use "press.dowel"

procedure renew-guides "Take the guides off and put it back"
  for press
{
  task strip "Take the guides off" {
    disconnect feed-hose
    unbolt cover
    remove guides
  }

  task rebuild "Put the guides back" {
    refit guides
    remove cover-gasket and discard
    fit new cover-gasket
    bolt up cover
    connect feed-hose
  }
}
`);
});

test('what is fixed never comes off, and what is not there neither', () => {
  const press = new View(memoryHost({ 'press.dowel': PRESS }));
  const file = press.file('press.dowel')!;
  const reason = (part: string) => {
    const result = rebuild(press, file, file.machines[0]!, part, 'job.dowel');
    return result.ok ? '' : result.reason;
  };
  expect(reason('bed')).toBe('The press bed is fixed: it never comes off.'.replace('press bed', 'bed'));
  expect(reason('chimney')).toBe('The machine has no part called `chimney`.');
});
