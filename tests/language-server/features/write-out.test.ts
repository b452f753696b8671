/**
 * Procedures written out: nothing short is left, the text reads well, and it checks as before. For the jobs of the
 * project that is asked of the checker itself; for small jobs the written-out text is written here by hand.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse } from '../../../grammar/parser/parse.ts';
import type { Statement } from '../../../grammar/syntax/tree.ts';
import { checkProject } from '../../../language-server/checks/check-project.ts';
import { writeOut } from '../../../language-server/features/write-out.ts';
import { visited } from '../../../language-server/model/flow-walk.ts';
import { memoryHost, type SourceHost } from '../../../language-server/project/project.ts';

const ROOT = new URL('../../../', import.meta.url).pathname;

const jobs = ['procedures', 'tests/everyday', 'tests/real'].flatMap((folder) =>
  readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.dowel'))
    .map((name) => join(folder, name))
    .sort(),
);

/** The files on the disk, but for one that has another text. */
function host(changed?: { path: string; text: string }): SourceHost {
  return {
    read: (path) => (path === changed?.path ? changed.text : readFileSync(join(ROOT, path), 'utf8')),
    resolve: (from, target) => join(dirname(from), target),
  };
}

/** What is found, without its place: a step that is written out three times may be reported three times. */
function findings(at: SourceHost, path: string, but: ReadonlySet<string> = new Set()): string[] {
  const told = checkProject(at, [path]).findings.filter(({ severity }) => !but.has(severity));
  return [...new Set(told.map(({ check, message }) => `${check}: ${message}`))].sort();
}

function statementsIn(text: string): Statement[] {
  return parse(text).tree.items.flatMap((item) =>
    item.kind === 'procedure' ? visited(item.body).map(({ statement }) => statement) : [],
  );
}

const SHORT: ReadonlySet<string> = new Set(['reverse', 'do', 'for each']);
/** Printed text in which a use leads round, a procedure is printed elsewhere, or something cannot be mirrored. */
const LEFT: Readonly<Record<string, number>> = {
  'tests/real/01-water-pump-and-fan/corrected.dowel': 1,
  'tests/real/01-water-pump-and-fan/printed.dowel': 1,
  'tests/real/18-evacuation/printed.dowel': 1,
};
/** What reads the steps as they stand sees the mirrored ones only when they are written; of right jobs it gives hints. */
const MAY_COME: ReadonlySet<string> = new Set(['hint', 'information']);
/** What only the short form can be blamed for: the mirror, the contract of what is used, and that it leads round. */
const OF_THE_SHORT_FORM = /^(reverse-impossible|contract-broken|use-cycle):/;

test('there are jobs to write out', () => {
  expect(jobs.length).toBeGreaterThan(40);
  expect(
    jobs.filter((path) => statementsIn(host().read(path)!).some(({ kind }) => SHORT.has(kind))).length,
  ).toBeGreaterThan(8);
});

describe.each(jobs)('%s', (path) => {
  const before = host().read(path)!;
  const text = writeOut(host(), path)!;

  test('has nothing short left and nothing that cannot be read', () => {
    expect(parse(text).problems).toEqual(parse(before).problems.length === 0 ? [] : expect.anything());
    expect(statementsIn(text).filter(({ kind }) => SHORT.has(kind))).toHaveLength(LEFT[path] ?? 0);
  });

  test('keeps every comment, and is as it was where there was nothing short', () => {
    for (const { text: comment } of parse(before).comments) expect(text).toContain(comment);
    if (!statementsIn(before).some(({ kind }) => SHORT.has(kind))) expect(text.trim()).toBe(before.trim());
  });

  test('checks as before', () => {
    const then = findings(host(), path);
    const now = findings(host({ path, text }), path);
    const lost = then.filter((one) => !now.includes(one) && !OF_THE_SHORT_FORM.test(one));
    const mirrors = statementsIn(before).some(({ kind }) => kind === 'reverse');
    const blamed = then.some((one) => OF_THE_SHORT_FORM.test(one));
    const serious = findings(host({ path, text }), path, mirrors ? MAY_COME : new Set());
    const told = blamed ? [] : serious.filter((one) => !then.includes(one));
    expect({ lost, told }).toEqual({ lost: [], told: [] });
  });

  test('is written out when it is written out', () => {
    expect(writeOut(host({ path, text }), path)).toBe(text);
  });
});

const MACHINE = `machine rig "Rig" {
  variant drive: belt, chain
  part base "base" fixed
  part cover "cover" on base  held by cover-bolts
  part gears "gears" positions left, right  on base  under cover
  part ring "ring" on base  under cover  single-use
  fastener cover-bolts "cover bolts" x2  clamps cover to base
  tool puller "puller"
  tool press "press"
}
`;

function written(steps: string, more = ''): string {
  const text = `${MACHINE}
procedure work "Work"
  for rig
{
${steps}
}
${more}`;
  const path = 'rig.dowel';
  const result = writeOut(memoryHost({ [path]: text }), path)!;
  expect(parse(result).problems).toEqual([]);
  // It checks as before; where the short form itself is wrong, the steps may show more.
  const told = (one: string) => findings(memoryHost({ [path]: one }), path);
  const then = told(text);
  const now = told(result);
  const known = then.filter((one) => !OF_THE_SHORT_FORM.test(one));
  if (known.length === then.length) expect(now).toEqual(known);
  else expect(now).toEqual(expect.arrayContaining(known));
  const body = /procedure work "Work"[^{]*?\n([\s\S]*?)\n\}\n/.exec(result)![1]!;
  return body.slice(body.indexOf('{\n') + 2);
}

describe('for each', () => {
  test('names and positions are filled in, also in sentences and in a range', () => {
    expect(
      written('  for each side in left, right { clean gears #side "The {side} one." }'),
    ).toBe(`  clean gears #left "The left one."
  clean gears #right "The right one."`);
    expect(written('  for each #n of cover-bolts { clean cover-bolts #n }')).toBe(`  clean cover-bolts #1
  clean cover-bolts #2`);
    expect(written('  for each last in 2..2 { clean cover-bolts #1..#last }')).toBe(
      '  clean cover-bolts #1..#2',
    );
    expect(written('  for each thing in cover, base {\n    clean thing\n  }')).toBe(`  clean cover
  clean base`);
  });

  test('loops in loops, with one variable for both', () => {
    expect(
      written('  for each n in 1..2 { for each n in left, right { clean gears #n }  clean cover-bolts #n }'),
    ).toBe(`  clean gears #left
  clean gears #right
  clean cover-bolts #1
  clean gears #left
  clean gears #right
  clean cover-bolts #2`);
  });

  test('what is seen is asked anew for each', () => {
    expect(
      written(`  unbolt cover
  for each side in left, right {
    if "the teeth are worn" { remove gears #side }
    if "the teeth are worn" { refit gears #side }
  }
  bolt up cover`),
    ).toBe(`  unbolt cover
  if "the teeth are worn (left)" { remove gears #left }
  if "the teeth are worn (left)" { refit gears #left }
  if "the teeth are worn (right)" { remove gears #right }
  if "the teeth are worn (right)" { refit gears #right }
  bolt up cover`);
  });

  test('a value in the words tells them apart by itself; what is seen outside stays apart', () => {
    expect(
      written(`  if "worn (1)" { clean base }
  for each n in 1..2 {
    if "bolt {n} is bent" { clean cover-bolts #n }
    if "worn" { clean base }
  }`),
    ).toBe(`  if "worn (1)" { clean base }
  if "bolt 1 is bent" { clean cover-bolts #1 }
  if "worn (1) (2)" { clean base }
  if "bolt 2 is bent" { clean cover-bolts #2 }
  if "worn (2)" { clean base }`);
  });

  test('choices and values are declared once', () => {
    expect(
      written(`  for each n in 1..2 {
    choice place: bench, rig
    value limit = 2 mm
    value pair = 1 mm * n
    when place is bench { clean cover-bolts #n }
    record rest = limit - pair
  }`),
    ).toBe(`  choice place: bench, rig
  value limit = 2 mm
  value pair = 1 mm * 1
  when place is bench { clean cover-bolts #1 }
  record rest = limit - pair
  record pair = 1 mm * 2
  when place is bench { clean cover-bolts #2 }
  record rest = limit - pair`);
  });

  test('comments stay, and what stands on the same line stays behind it', () => {
    expect(
      written(`  // before
  for each n in 1..2 { // at the brace
    clean cover-bolts #n // at the step
    // inside
  } // behind
  clean base`),
    ).toBe(`  // before
  // at the brace
  clean cover-bolts #1  // at the step
  // inside
  // at the brace
  clean cover-bolts #2  // at the step
  // inside
  // behind
  clean base`);
    expect(written('  when drive is belt { for each n in 1..2 { clean cover-bolts #n } }')).toBe(
      `  when drive is belt {
    clean cover-bolts #1
    clean cover-bolts #2
  }`,
    );
  });

  test('inside a repeat and inside an outcome', () => {
    expect(
      written(`  repeat until "clean" at most 2 times {
    for each n in 1..2 { clean cover-bolts #n }
  } otherwise { stop "No." }
  inspect cover {
    sound { for each n in 1..2 { clean cover-bolts #n } }
    cracked { stop "Renew it." }
  }`),
    ).toBe(`  repeat until "clean" at most 2 times {
    clean cover-bolts #1
    clean cover-bolts #2
  } otherwise {
    stop "No."
  }
  inspect cover {
    sound {
      clean cover-bolts #1
      clean cover-bolts #2
    }
    cracked { stop "Renew it." }
  }`);
  });
});

describe('do', () => {
  test('a task, with the tasks in it as steps', () => {
    expect(
      written(`  task outer "Wash" {
    task inner "Rinse" { clean base }
    task brush-off { clean cover }
  }

  do outer`),
    ).toBe(`  task outer "Wash" {
    task inner "Rinse" { clean base }

    task brush-off { clean cover }
  }

  step "Wash" {
    step "Rinse" { clean base }
    step "brush off" { clean cover }
  }`);
  });

  test('another procedure, with its own tasks, its tools and its clothing', () => {
    const other = `
procedure wash "Wash"
  for rig
  wear gloves
  tools puller
{
  task rinse "Rinse" { clean base with puller }
  do rinse
}
`;
    const text = `${MACHINE}
procedure work "Work"
  for rig
  tools press
{
  clean cover with press
  do wash
}
${other}`;
    const result = writeOut(memoryHost({ 'rig.dowel': text }), 'rig.dowel')!;
    expect(result).toContain(`procedure work "Work"
  for rig
  tools press, puller
  wear gloves
{
  clean cover with press
  step "Wash" {
    step "Rinse" { clean base with puller }
    step "Rinse" {
      clean base with puller
    }
  }
}
`);
  });

  test('a procedure of another file', () => {
    const files = {
      'rig.dowel': `${MACHINE}\nprocedure wash "Wash" for rig {\n  for each n in 1..2 { clean cover-bolts #n } // twice\n}\n`,
      'job.dowel': 'use "rig.dowel"\n\nprocedure work "Work" for rig {\n  do wash\n}\n',
    };
    expect(writeOut(memoryHost(files), 'job.dowel')).toBe(`use "rig.dowel"

procedure work "Work" for rig {
  step "Wash" {
    clean cover-bolts #1
    clean cover-bolts #2  // twice
  }
}
`);
  });

  test('what leads back to itself, is printed elsewhere or is not there stays', () => {
    const elsewhere = '\nprocedure shut-down "Shut down" elsewhere "chapter 2" for rig\n';
    expect(written('  task again "Again" { do again }\n\n  do shut-down', elsewhere)).toContain('do again');
    expect(written('  do shut-down', elsewhere)).toBe('  do shut-down');
    expect(written('  do nothing-known')).toBe('  do nothing-known');
  });
});

describe('reverse', () => {
  test('turns the steps round, branches and loops among them', () => {
    expect(
      written(`  task strip "Strip" {
    when drive is belt { fit puller }
    clean base
    unbolt cover
    for each side in left, right { remove gears #side }
  }

  reverse strip`),
    ).toBe(`  task strip "Strip" {
    when drive is belt { fit puller }
    clean base
    unbolt cover
    remove gears #left
    remove gears #right
  }

  refit gears #left
  refit gears #right
  bolt up cover
  when drive is belt {
    remove puller
  }`);
  });

  test('what is seen is the same finding on the way back', () => {
    expect(
      written(`  unbolt cover
  task strip "Strip" {
    if "the teeth are worn" { remove gears #left, gears #right } otherwise { fit puller }
  }

  reverse strip
  bolt up cover`),
    ).toContain(`  if "the teeth are worn" {
    refit gears #right, gears #left
  } otherwise {
    remove puller
  }
`);
  });

  test('what cannot be turned round is told in comments', () => {
    expect(
      written(`  task wash "Wash" { clean base }

  task strip "Strip" {
    unbolt cover
    remove ring
    remove gears and discard
    do wash
  }

  task back "Put back" {
    reverse strip
  }

  reverse wash`),
    ).toContain(`  task back "Put back" {
    // gears: thrown away, so it does not go back. Fit a new one.
    // ring: of one use only, so it does not go back. Fit a new one.
    // Not turned round: do wash
    bolt up cover
  }

  // Nothing in wash can be turned round.`);
  });
});

describe('half a text', () => {
  const text = `${MACHINE}
procedure work "Work" for rig {
  task strip "Strip" {
    unbolt cover
    for each side in left, right { if "worn {side}" { remove gears #side } }
  }
  repeat until "dry" at most 2 times { for each #n of cover-bolts { clean cover-bolts #n } }
  reverse strip except cover
  do strip
}
`;

  test('never fails, wherever the text ends', () => {
    for (let end = text.indexOf('procedure'); end <= text.length; end++) {
      const part = text.slice(0, end);
      expect(writeOut(memoryHost({ a: part }), 'a'), part.slice(-40)).toBeTypeOf('string');
    }
  });

  test('without a machine, loops and tasks are written out and a reverse stays', () => {
    const bare = text.slice(text.indexOf('procedure'));
    const result = writeOut(memoryHost({ a: bare }), 'a')!;
    expect(result).toContain('reverse strip except cover');
    expect(result).toContain('remove gears #right');
    expect(result).toContain('step "Strip"');
  });

  test('a file that is not there', () => {
    expect(writeOut(memoryHost({}), 'a')).toBeUndefined();
  });

  test('loops in loops without end stay short in the end', () => {
    const deep = `${'for each a in 1..400 { '.repeat(4)} clean base ${'}'.repeat(4)}`;
    const result = writeOut(memoryHost({ a: `procedure work "Work" {\n${deep}\n}\n` }), 'a')!;
    expect(result.length).toBeLessThan(40_000_000);
    expect(result).toContain('for each');
  });
});
