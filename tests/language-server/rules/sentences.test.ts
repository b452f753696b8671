/**
 * Rules one by one, where random jobs do not go: used procedures, what stands elsewhere, other words for a step, groups,
 * `any … of any …`, repeats. What is right is said in grammar/LANGUAGE.md.
 */
import { describe, expect, test } from 'vitest';
import { checkTexts } from '../../../language-server/checks/check-texts.ts';

const MACHINE = (rules: string) => `machine rig "rig" {
  part bed "bed" fixed
  part wheel "wheel" positions left, right on bed held by wheel-nuts
  fastener wheel-nuts "wheel nuts" x8 clamps wheel torque 90 N·m
  part drum "drum" on bed
  system oil "oil" pressure 8 bar proved with gauge
  system water "water"
  connection oil-hose "oil hose" joins drum to bed opens oil
  connection water-hose "water hose" joins drum to bed opens water
  tool gauge "gauge"
${rules}
}
`;

/** Messages of broken rules in the procedure \`p\`, and names of findings about rules. */
function broken(rules: string, text: string): string[] {
  const { findings } = checkTexts({ 'a.dowel': `${MACHINE(rules)}${text}` });
  return findings
    .filter(({ check }) => check.startsWith('rule-') || check === 'contract-broken')
    .map(({ message }) => message);
}

const job = (steps: string) => `procedure p "P" for rig ends with everything off {\n${steps}\n}\n`;
const rule = (body: string) => `  rule r "The rule." { ${body} }`;

describe('other words for a step', () => {
  test.each([
    ['before loosen wheel-nuts require sign', 'remove wheel-nuts'],
    ['before loosen wheel-nuts require sign', 'unbolt wheel'],
    ['before remove wheel require sign', 'unbolt wheel'],
    ['never open oil-hose', 'disconnect oil-hose'],
    ['never disconnect any connection', 'remove oil-hose'],
  ])('%s: %s', (body, step) => {
    expect(broken(rule(body), job(`  ${step}`)).length).toBeGreaterThan(0);
  });

  test('by hand is not tightened', () => {
    const steps = (how: string) => job(`  unbolt wheel\n  refit wheel\n  fit wheel-nuts ${how}`);
    expect(broken(rule('always require tighten wheel-nuts'), steps(''))).toEqual([]);
    expect(broken(rule('always require tighten wheel-nuts'), steps('by hand'))).toHaveLength(1);
  });
});

test('any connection of any system with pressure, that system', () => {
  const body = rule('before open any connection of any system with pressure require that system proved safe');
  expect(broken(body, job('  disconnect water-hose'))).toEqual([]);
  expect(broken(body, job('  disconnect oil-hose'))).toEqual([
    '“The rule” is not kept: just before `open oil-hose` is done, it is not so that `oil proved safe`.',
  ]);
  expect(broken(body, job('  prove oil safe with gauge\n  disconnect oil-hose'))).toEqual([]);
});

test('of a group, what belongs to the position', () => {
  const body = rule('after fit wheel require tighten wheel-nuts 2 times');
  const steps = (nuts: string) =>
    job(`  unbolt wheel #left\n  bolt up wheel #left\n  tighten wheel-nuts ${nuts} to 90 N·m`);
  expect(broken(body, steps('#1..#4'))).toHaveLength(1);
  expect(
    broken(
      body,
      `${job(`  unbolt wheel #left\n  bolt up wheel #left\n  tighten wheel-nuts #1..#4 to 90 N·m 2 times`)}`,
    ),
  ).toEqual([]);
  expect(broken(body, job('  unbolt wheel #left'))).toEqual([]);
});

describe('procedures that use others', () => {
  const body = rule('before disconnect oil-hose require sign');
  const used = 'procedure strip "S" for rig ends with everything off { disconnect oil-hose }\n';

  test('a used procedure is told of by itself, not once more where it is used', () => {
    expect(broken(body, `${used}${job('  do strip')}`)).toHaveLength(1);
  });

  test('what was done before it counts for who uses it', () => {
    const inner =
      'procedure strip "S" for rig starts with drum fitted ends with everything off { sign  disconnect oil-hose }\n';
    expect(broken(body, `${inner}${job('  do strip')}`)).toEqual([]);
  });

  test('what an earlier procedure did counts as done', () => {
    const earlier = 'procedure first "F" for rig { sign }\n';
    expect(
      broken(
        body,
        `${earlier}procedure p "P" for rig starts where first ends with everything off { disconnect oil-hose }`,
      ),
    ).toEqual([]);
  });

  test('what is printed elsewhere may have done it', () => {
    const elsewhere = 'procedure away "A" for rig elsewhere "Book 7"\n';
    expect(broken(rule('always require sign'), `${elsewhere}${job('  do away')}`)).toEqual([]);
  });
});

test('nothing is asked for that would come too late after stop, or where the text goes on elsewhere', () => {
  const body = rule('always require sign');
  expect(broken(body, job('  disconnect oil-hose'))).toEqual(['“The rule” is not kept: no step is `sign`.']);
  expect(broken(body, job('  stop "Order a hose."'))).toEqual([]);
  expect(broken(body, job('  disconnect oil-hose\n  continues'))).toEqual([]);
});

test('the smallest case', () => {
  const { findings } = checkTexts({
    'a.dowel': `${MACHINE(rule('never disconnect oil-hose'))}${job('  if "it drips" { disconnect oil-hose }')}`,
  });
  expect(findings.find(({ check }) => check === 'rule-broken')?.case).toBe('“it drips”');
});

test('a repeat: each round', () => {
  const body = rule('never turn drum 2 times');
  const repeat = (most: number) => job(`  repeat until "it is free" at most ${most} times { turn drum }`);
  expect(broken(body, repeat(1))).toEqual([]);
  expect(broken(body, repeat(3))).toHaveLength(1);
});

test('shared rules say nothing of a machine that has not what they are about', () => {
  const files = {
    'house.dowel': 'rule r "Rule." { before remove winch require sign  never remove winch-rope }\n',
    'a.dowel': `use "house.dowel"\n${MACHINE('')}${'procedure p "P" for rig { turn drum }\n'}`,
  };
  expect(checkTexts(files, 'a.dowel').findings).toEqual([]);
  // Together with all machines that know it: it is about none.
  const together = checkTexts(files, 'a.dowel', 'house.dowel').findings.filter(
    ({ check }) => check === 'rule-never-applies',
  );
  expect(together).toHaveLength(2);
});

test.each([
  ['before open any hose require sign', 'unknown-name'],
  ['before open any connection of any system with presure require sign', 'unknown-name'],
  ['before sign require that system relieved', 'syntax'],
  ['before tighten drum require sign', 'wrong-kind'],
  ['while turn drum never sign', 'syntax'],
])('a rule that nobody can mean: %s', (body, check) => {
  const { findings } = checkTexts({ 'a.dowel': MACHINE(rule(body)) });
  expect(findings.map(({ check: name }) => name)).toContain(check);
});
