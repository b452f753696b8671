/**
 * Names that are wrong: the nearest right one, the kinds that a verb takes, positions, names declared twice or
 * never used. What a slip of the pen is: one letter too many, one too few, one wrong, two neighbours swapped
 * (Damerau 1964: four of five misspellings are one of these).
 */
import { describe, expect, test } from 'vitest';
import { checkTexts } from '../../../language-server/checks/check-texts.ts';
import { nearest } from '../../../language-server/model/names.ts';
import type { Finding } from '../../../language-server/report/finding.ts';
import { mark, unmark } from '../../support/marked.ts';

const NAMES = ['cylinder-head', 'valve-plate', 'head-bolts', 'drain-cock', 'flywheel', 'belt-guard'];

function slipsOf(name: string): string[] {
  const slips: string[] = [];
  for (let i = 0; i < name.length; i++) {
    slips.push(name.slice(0, i) + name.slice(i + 1));
    slips.push(`${name.slice(0, i)}q${name.slice(i)}`);
    slips.push(`${name.slice(0, i)}q${name.slice(i + 1)}`);
    if (i > 0) slips.push(name.slice(0, i - 1) + name[i] + name[i - 1] + name.slice(i + 1));
  }
  return slips;
}

describe('the nearest name', () => {
  test.each(NAMES)('every single slip in %s is traced back to it', (name) => {
    expect(slipsOf(name).filter((slip) => nearest(slip, NAMES) !== name)).toEqual([]);
  });

  test('words in another order, and a word left out', () => {
    expect(nearest('plate-valve', NAMES)).toBe('valve-plate');
    expect(nearest('gasket-plate', ['valve-plate-gasket'])).toBe('valve-plate-gasket');
  });

  test('nothing like it gives nothing', () => {
    expect(nearest('compressor', NAMES)).toBeUndefined();
    expect(nearest('x', [])).toBeUndefined();
  });

  test('another number is another thing', () => {
    expect(nearest('screws-b3', ['screws-b5'])).toBeUndefined();
    expect(nearest('scews-b5', ['screws-b5'])).toBe('screws-b5');
  });
});

const MACHINE = `machine rig "rig" {
  variant supply: single-phase, three-phase
  value gap-limit = 0.5 mm
  part base "base" fixed
  part cover "cover" on base held by bolts
  part ram "ram" on base under cover
  fastener bolts "bolts" x4
  connection hose "hose" joins ram to base slack
  control cock "cock" on base
  system air "air" pressure 10 bar
  tool strap "strap" locks ram
}
`;

/** What is found in a procedure with these marked statements; the machine above it is right. */
function expectFound(marked: string, ...checks: string[]): Finding[] {
  const { text, ranges } = unmark(`${MACHINE}procedure work "Work" for rig {\n${marked}\n}\n`);
  const { findings } = checkTexts({ 'rig.dowel': text });
  expect(mark(text, findings)).toBe(mark(text, ranges));
  expect(findings.map(({ check }) => check)).toEqual(checks);
  return findings;
}

describe('in a procedure', () => {
  test('a slip in a name names the right one and mends it', () => {
    const [finding] = expectFound('clean covre\n      ^^^^^', 'unknown-name');
    expect(finding?.message).toBe('Nothing is called `covre`; did you mean `cover`?');
    expect(finding?.mends?.[0]?.edits[0]?.text).toBe('cover');
  });

  test('a thing of the kind that the verb takes is proposed first', () => {
    const [finding] = expectFound('tighten bolt\n        ^^^^', 'unknown-name');
    expect(finding?.message).toBe('No fastener is called `bolt`; did you mean `bolts`?');
  });

  test('names inside texts are looked up', () => {
    expectFound('note "At most {gap-limit}."');
    expectFound('note "At most {gap-limt}."\n               ^^^^^^^^', 'unknown-name');
  });

  test('a value of a variant', () => {
    const [finding] = expectFound('when supply is two-phase { }\n               ^^^^^^^^^', 'unknown-name');
    expect(finding?.help).toBe('The values of `supply` are single-phase, three-phase.');
  });

  test('a state that does not exist, and one that such a thing cannot be in', () => {
    expectFound('if cock opn { }\n        ^^^', 'unknown-name');
    expectFound('if ram drained { }\n       ^^^^^^^', 'wrong-kind');
    expectFound('if cock open { }\nif hose disconnected { }');
  });

  test('everyday helps need no declaration', () => {
    expectFound('clean base with rag, solvent');
  });

  test('a verb that cannot act on such a thing proposes one that can', () => {
    const [finding] = expectFound('open air\n     ^^^', 'wrong-kind');
    expect(finding?.help).toContain('`relieve air`');
    expect(finding?.related[0]?.message).toContain('declared');
  });

  test('a position that the group does not have is the only finding of its step', () => {
    expectFound('loosen bolts #5\n             ^^', 'unknown-position');
  });

  test('hoses and valves are refitted as parts are', () => {
    expectFound('remove hose\nrefit hose\nremove cock\nrefit cock');
  });

  test('a task of the name of an earlier one', () => {
    const [finding] = expectFound('task a { }\ntask a { }\n     ^', 'duplicate-name');
    expect(finding?.related).toHaveLength(1);
  });

  test('a choice, a measured value and a value that nothing asks for', () => {
    expectFound(
      `choice place: bench, in-place
       ^^^^^
measure gap between ram and base as play
                                    ^^^^
value total = 3 mm
      ^^^^^`,
      'unused-name',
      'unused-name',
      'unused-name',
    );
    expectFound(
      `choice place: bench, in-place
when place is bench { }
measure gap between ram and base as play
value total = play + gap-limit
note "In all {total}."`,
    );
  });

  test('tasks that do each other', () => {
    expectFound(
      `task a { do b }
            ^
task b { do a }
            ^`,
      'use-cycle',
      'use-cycle',
    );
  });
});

describe('in a machine', () => {
  function checksOf(...items: string[]): string[] {
    const text = `machine rig "rig" {\n  part base "base" fixed\n  ${items.join('\n  ')}\n}\n`;
    return checkTexts({ 'rig.dowel': text }).findings.map(({ check }) => check);
  }

  test.each([
    ['unknown-name', 'part cover "cover" on bsae'],
    ['unknown-name', 'fastener bolts "bolts" clamps base torque bolt-torque'],
    ['unknown-name', 'rule r "r" { before remove covr require base fitted }'],
    ['unknown-name', 'coupled base, whel'],
    ['wrong-kind', 'part cover "cover" on base held by base'],
    ['wrong-kind', 'rule r "r" { while base drained never turn base }'],
    ['duplicate-name', 'part base "other base" fixed'],
    ['duplicate-name', 'variant supply: single, three, single'],
    ['duplicate-name', 'part guides "guides" positions left, left on base'],
  ])('%s: %s', (check, item) => {
    expect(checksOf(item)).toEqual([check]);
  });

  test('a position that the other group does not have', () => {
    expect(checksOf('part caps "caps" x2 on base', 'part wire "wire" on caps #3')).toEqual([
      'unknown-position',
    ]);
  });

  test('rules about things in general name nothing that could be missing', () => {
    expect(
      checksOf(
        'rule r "r" { before open any connection of any system with pressure require that system proved safe }',
      ),
    ).toEqual(['rule-never-applies']);
  });
});
