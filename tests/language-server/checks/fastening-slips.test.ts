/**
 * Slips of the pen in the demo machines: every fastener with thread and class is spoiled in every way that
 * tests/bench/slips-of.ts knows. What must be found follows from the strength of the thread alone (ISO 898-1, SAE J429):
 * a torque three times too much, a third of the right one or less, an order that misses a position, a stage that
 * falls, a repeated value that is another one.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { checkTexts } from '../../../language-server/checks/check-texts.ts';
import { fastenersOf, rightInSteps, type Slip, slipsIn, slipsInSteps } from '../../bench/slips-of.ts';

const ROOT = new URL('../../../', import.meta.url);

const FOLDERS = [
  'procedures/tarnbrook',
  'procedures/skelder-ferry',
  'procedures/quenby-centrifuge',
  'procedures/ullock-sprayer',
  'tests/everyday',
];

describe.each(FOLDERS)('%s', (folder) => {
  const files = textsIn(folder);
  const found = (path: string, text: string) => [
    ...new Set(checkTexts({ ...files, [path]: text }, path).findings.map(({ check }) => check)),
  ];
  const machines = Object.entries(files).filter(([, text]) => fastenersOf(text).length > 0);
  const slips = machines.flatMap(([path, text]) => slipsIn(text).map((slip) => ({ path, ...slip })));
  /** Every one that is asked for, or every so many of them. */
  const notFound = (asked: (slip: Slip) => boolean, check: RegExp, every = 1) =>
    slips
      .filter((slip) => asked(slip))
      .filter((_, index) => index % every === 0)
      .filter(({ path, text }) => !found(path, text).some((name) => check.test(name)))
      .map(({ fastener, change }) => `${fastener}: ${change}`);

  test('nothing is found in the right texts', () => {
    expect(machines.length).toBeGreaterThan(0);
    for (const [path, text] of Object.entries(files)) expect(found(path, text), path).toEqual([]);
  });

  test('a torque three times too much or more', () => {
    const asked = ({ factor }: Slip) => factor >= 3;
    expect(slips.filter(asked).length).toBeGreaterThan(10);
    expect(notFound(asked, /^(torque-above-(strength|usual)|stage-out-of-order)$/)).toEqual([]);
  });

  test('a torque of a third or less', () => {
    const asked = ({ factor }: Slip) => factor <= 1 / 3;
    expect(slips.filter(asked).length).toBeGreaterThan(3);
    expect(notFound(asked, /^(torque-below-usual|stage-out-of-order|stages-far-apart)$/)).toEqual([]);
  });

  test('a position that is missing or comes twice, stages in the wrong order', () => {
    expect(
      notFound(({ kind }) => kind === 'position missing' || kind === 'position twice', /^order-/, 5),
    ).toEqual([]);
    expect(
      notFound(({ kind }) => kind === 'stages swapped', /^(stage-out-of-order|angle-before-torque)$/),
    ).toEqual([]);
  });

  test('a second unit that is the number once more, or the wrong way round', () => {
    // Below 5 the last digit is too coarse to tell.
    const asked = ({ kind, change }: Slip) => kind === 'second unit wrong' && Number.parseFloat(change) >= 5;
    expect(notFound(asked, /^torque-differs$/, 4)).toEqual([]);
  });

  test('a torque that a step repeats: right it is silent, with a slip it is found', () => {
    for (const [, machine] of machines) {
      // Another machine may have fasteners of the same name.
      const name = /\bmachine (\S+)/.exec(machine)![1]!;
      for (const [path, text] of Object.entries(files)) {
        if (!new RegExp(`\\bfor ${name}\\b(?!-)`).test(text)) continue;
        for (const right of rightInSteps(machine, text).slice(0, 3)) expect(found(path, right)).toEqual([]);
        for (const slip of slipsInSteps(machine, text).filter((_, index) => index % 3 === 0))
          expect(found(path, slip.text), `${path} ${slip.change}`).toContain('torque-differs');
      }
    }
  });
});

function textsIn(folder: string): Record<string, string> {
  const names = readdirSync(new URL(folder, ROOT)).filter((name) => name.endsWith('.dowel'));
  return Object.fromEntries(
    names.map((name) => [name, readFileSync(new URL(`${folder}/${name}`, ROOT), 'utf8')]),
  );
}
