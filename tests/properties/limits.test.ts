/**
 * How much work hard input makes, in counts that are the same on every machine: nodes of the decision diagram,
 * findings about limits. No outside source: what is asked is that work stays in proportion to the text where
 * Bryant (1986, section 4) says it can, and that whatever is given up is said.
 */
import { describe, expect, it } from 'vitest';
import { MAX_DEPTH } from '../../grammar/parser/braces.ts';
import { checkTexts } from '../../language-server/checks/check-texts.ts';
import { execute } from '../../language-server/execution/execute.ts';
import { buildModel } from '../../language-server/model/build.ts';
import { Loader } from '../../language-server/model/names.ts';
import { memoryHost } from '../../language-server/project/project.ts';
import { growthJob } from '../bench/growth-jobs.ts';

const numbers = (count: number) => Array.from({ length: count }, (_, index) => index);

/** Nodes that carrying out the procedure makes, and what it finds. */
function carryOut(text: string) {
  const file = new Loader(memoryHost({ 'job.dowel': text })).load('job.dowel')!;
  expect(file.parsed.problems).toEqual([]);
  const { model } = buildModel(file.machines[0]!, file, [file]);
  const before = model.cases.size;
  const { facts, run } = execute(model, file.procedures[0]!, 'job.dowel', [file]);
  return { nodes: model.cases.size - before, axes: model.cases.axes.length, facts, run };
}

function job(things: readonly string[], steps: readonly string[]): string {
  return [
    'machine m "m" {',
    '  part base "base" fixed',
    ...things.map((thing) => `  ${thing}`),
    '}',
    'procedure p "p" for m {',
    ...steps.map((step) => `  ${step}`),
    '}',
    '',
  ].join('\n');
}

const checksOf = (text: string) => checkTexts({ 'job.dowel': text }).findings.map(({ check }) => check);
const VALVE = 'control valve "valve" on base normally closed';

describe('a thousand branches in a row', () => {
  it('cost a few nodes each where each has its own thing', () => {
    const text = job(
      numbers(1_000).map((n) => `part cover-${n} "cover ${n}" on base`),
      numbers(1_000).map(
        (n) =>
          `if "seen ${n}" { remove cover-${n} } otherwise { clean cover-${n} } if "seen ${n}" { refit cover-${n} }`,
      ),
    );
    const { nodes, axes, run } = carryOut(text.replaceAll('} if', '}\n  if'));
    expect(axes).toBe(1_000);
    expect(nodes).toBeLessThanOrEqual(3_000);
    expect(run.undecided.size).toBe(0);
    expect(run.lost).toBeUndefined();
  });

  it('cost a few nodes each where all have the same thing', () => {
    const { nodes, run } = carryOut(
      job(
        [VALVE],
        numbers(1_000).map((n) => `if "seen ${n}" { open valve } otherwise { close valve }`),
      ),
    );
    // The steps that made it so are told apart, up to 32 of them, later up to 8.
    expect(nodes).toBeLessThanOrEqual(130_000);
    expect(run.undecided.size).toBe(0);
  });

  it('cost a few nodes each where the work may stop at every one', () => {
    const { nodes, run } = carryOut(
      job(
        [],
        numbers(1_000).map((n) => `if "seen ${n}" { stop "Send it in." }`),
      ),
    );
    expect(nodes).toBeLessThanOrEqual(1_000 * 5);
    expect(run.lost).toBeUndefined();
  });

  it('are told from the place where they are too many', () => {
    const text = job(
      [VALVE],
      ['close valve', ...numbers(20_000).map((n) => `if "seen ${n}" { stop "Send it in." }`), 'close valve'],
    );
    const { facts, nodes } = carryOut(text);
    expect(facts.map(({ check }) => check).sort()).toEqual(['refitted-before-removed', 'undecided']);
    expect(facts.find(({ check }) => check === 'undecided')!.at.start).toBeGreaterThan(
      text.indexOf('"seen 1000"'),
    );
    expect(nodes).toBeLessThan(400_000);
  });
});

describe('thirty axes', () => {
  it.each([
    ['apart', 2],
    ['meeting', 40],
  ] as const)('%s: at most %d nodes for each axis', (load, most) => {
    const { nodes, run } = carryOut(growthJob({ load, steps: 1_000, axes: 30 }));
    expect(nodes).toBeLessThanOrEqual(30 * most);
    expect(run.undecided.size).toBe(0);
    expect(run.facts).toEqual([]);
  });
});

describe('what is given up is said, and nothing else is given up', () => {
  const hostile = growthJob({ load: 'hostile', steps: 2_000, axes: 24 });
  const planted = hostile
    .replace(
      '  part frame',
      `${VALVE.replace('base', 'frame')}\n  part lid "lid" on frame held by screws\n  fastener screws "screws" x4\n  part frame`,
    )
    .replace('for bench\n{', 'for bench\n{\n  remove lid "planted one"\n  refit lid\n  open valve')
    .replace(/\}\n$/, '  when build-1 is plain {\n    open valve "planted two"\n  }\n  close valve\n}\n');

  it('for things under random conditions; faults of others are still found', () => {
    const { facts, run, nodes } = carryOut(planted);
    const undecided = facts
      .filter(({ check }) => check === 'undecided')
      .map(({ subject }) => subject!.thing.name);
    expect(undecided.length).toBeGreaterThan(30);
    for (const name of undecided) expect(name).toMatch(/^cover-\d+$/);
    expect(run.lost).toBeUndefined();
    expect(nodes).toBeLessThan(400_000);
    const others = facts.filter(({ subject }) => subject && !subject.thing.name.startsWith('cover-'));
    expect(others.map(({ check, inner, subject }) => `${inner ?? check} ${subject!.thing.name}`)).toEqual([
      'still-held lid',
      'done-twice valve',
    ]);
  });

  it('gives the same findings in the same order every time', () => {
    const text = { 'job.dowel': planted };
    expect(checkTexts(text).findings).toEqual(checkTexts(text).findings);
  });

  it('the next procedure has the diagram to itself', () => {
    const next = 'procedure next "next" for bench {\n  when build-1 is plain {\n    open valve\n  }\n}\n';
    const found = checkTexts({ 'job.dowel': `${planted}\n${next}` }).findings;
    const after = found.filter(({ start }) => start > planted.length).map(({ check }) => check);
    expect(after).toEqual(['left-open']);
  });
});

describe('every limit has a finding', () => {
  const nested = (depth: number) =>
    job(
      [VALVE],
      [
        `${numbers(depth)
          .map((n) => `if "seen ${n}" {`)
          .join('\n')} open valve ${'}'.repeat(depth)}`,
      ],
    );

  it('nesting: at the limit it is followed, over it there is a finding', () => {
    // The braces of the procedure itself count, too.
    expect(checksOf(nested(MAX_DEPTH - 2))).toEqual(['left-open']);
    expect(checksOf(nested(MAX_DEPTH + 1))).toContain('nested-too-deep');
    expect(checksOf(nested(20_000))).toContain('nested-too-deep');
  });

  it('rounds of a for each', () => {
    expect(checksOf(job([VALVE], ['for each n in 1..500 { clean base }']))).toEqual([]);
    expect(checksOf(job([VALVE], ['for each n in 1..501 { clean base }']))).toEqual(['undecided']);
    expect(checksOf(job([VALVE], ['for each n in 1..1000000000 { clean base }']))).toEqual(['undecided']);
  });

  it('rounds within rounds', () => {
    const inner = 'for each a in 1..400 { for each b in 1..400 { for each c in 1..400 { clean base } } }';
    const found = checkTexts({ 'job.dowel': job([VALVE], ['open valve', inner, 'open valve']) });
    expect(found.findings.map(({ check }) => check)).toEqual(['undecided']);
    expect(found.statements).toBeLessThanOrEqual(200_000);
  });

  it('tasks within tasks', () => {
    const chain = (length: number) =>
      numbers(length).map((n) => `task t${n} "t ${n}" { ${n + 1 < length ? `do t${n + 1}` : 'clean base'} }`);
    expect(checksOf(job([VALVE], chain(20)))).toEqual([]);
    // Each of the first ones, carried out where it stands, leads too deep.
    expect(new Set(checksOf(job([VALVE], chain(60))))).toEqual(new Set(['undecided']));
  });

  it('tasks that each do two others, and procedures that do', () => {
    const doubled = numbers(40).map(
      (n) => `task t${n} "t ${n}" { ${n < 39 ? `do t${n + 1}\n do t${n + 1}` : 'clean base'} }`,
    );
    expect(checksOf(job([VALVE], doubled))).toContain('undecided');
    const procedures = numbers(40).map(
      (n) => `procedure q${n} "q ${n}" for m { ${n < 39 ? `do q${n + 1}\n do q${n + 1}` : 'open valve'} }\n`,
    );
    const found = checkTexts({ 'job.dowel': job([VALVE], ['clean base']) + procedures.join('') });
    expect(found.findings.map(({ check }) => check)).toContain('undecided');
  });
});
