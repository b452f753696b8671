/** Where waivers hold back, finding by finding, on findings that are made up. The source of what is right is grammar/LANGUAGE.md. */
import { describe, expect, test } from 'vitest';
import type { Procedure } from '../../../grammar/syntax/tree.ts';
import { sortOut } from '../../../language-server/checks/waivers.ts';
import { Loader } from '../../../language-server/model/names.ts';
import { memoryHost } from '../../../language-server/project/project.ts';
import type { Finding } from '../../../language-server/report/finding.ts';

const PATH = 'a.dowel';

function procedures(steps: string, end = '}'): { text: string; procedures: Procedure[] } {
  const text = `procedure p "P" for m {\n${steps}\n${end}`;
  return { text, procedures: new Loader(memoryHost({ [PATH]: text })).load(PATH)!.procedures };
}

/** A finding at a place of the text, told by what stands there. */
function finding(text: string, words: string, more: Partial<Finding> = {}): Finding {
  const start = text.lastIndexOf(words);
  if (start < 0) throw new Error(`not in the text: ${words}`);
  return {
    file: PATH,
    start,
    end: start + words.length,
    check: 'still-held',
    severity: 'error',
    message: words,
    related: [],
    ...more,
  };
}

/** What is held back of findings at these words. */
function heldBack(steps: string, words: readonly string[], end = '}'): string[] {
  const { text, procedures: all } = procedures(steps, end);
  const sorted = sortOut(
    words.map((one) => finding(text, one)),
    all,
    PATH,
  );
  expect([...sorted.findings, ...sorted.waived.map((one) => one.finding)].length).toBe(words.length);
  return sorted.waived.map(({ finding: { message } }) => message);
}

const ALLOW = 'allow still-held because "It is light."';

describe('a waiver holds back', () => {
  test.each<[string, string, readonly string[], readonly string[]]>([
    [
      'at the next step',
      `clean a\n${ALLOW}\nremove b\nremove c`,
      ['clean a', 'remove b', 'remove c'],
      ['remove b'],
    ],
    [
      'at all of its words',
      `${ALLOW}\nremove b, c with d`,
      ['remove b', 'c with d', 'with d'],
      ['remove b', 'c with d', 'with d'],
    ],
    [
      'over other waivers and notices',
      `${ALLOW}\nallow covered because "It is."\nnote "Mind."\nremove b\nremove c`,
      ['note', 'remove b', 'remove c'],
      ['remove b'],
    ],
    [
      'at a measurement, not in its outcomes',
      `${ALLOW}\nmeasure gap of a {\nup to 1 mm { remove b }\nover 1 mm { remove c }\n}\nremove d`,
      ['measure gap of a', 'remove b', 'remove c', 'remove d'],
      ['measure gap of a'],
    ],
    [
      'at a step with all its actions',
      `${ALLOW}\nstep "S" {\nremove b\nremove c\n}\nremove d`,
      ['step "S"', 'remove b', 'remove c', 'remove d'],
      ['step "S"', 'remove b', 'remove c'],
    ],
    [
      'at the head of a task',
      `${ALLOW}\ntask t "T" {\nremove b\n}`,
      ['task t "T"', 'remove b'],
      ['task t "T"'],
    ],
    [
      'at the head of a condition',
      `${ALLOW}\nif x is y {\nremove b\n} else {\nremove c\n}`,
      ['if x is y', 'remove b', 'remove c'],
      ['if x is y'],
    ],
    [
      'at the head of a repeat',
      `${ALLOW}\nrepeat 3 times {\nremove b\n}`,
      ['repeat 3 times', 'remove b'],
      ['repeat 3 times'],
    ],
    ['at a statement without blocks', `${ALLOW}\ndo other\nremove b`, ['do other', 'remove b'], ['do other']],
    [
      'inside a task',
      `task t "T" {\n${ALLOW}\nremove b\nremove c\n}\nremove d`,
      ['remove b', 'remove c', 'remove d'],
      ['remove b'],
    ],
    [
      'inside a branch',
      `if x is y {\n${ALLOW}\nremove b\n} else {\nremove c\n}`,
      ['remove b', 'remove c'],
      ['remove b'],
    ],
    [
      'inside the other branch',
      `if x is y {\nremove b\n} else {\n${ALLOW}\nremove c\n}`,
      ['remove b', 'remove c'],
      ['remove c'],
    ],
    [
      'inside an outcome',
      `measure gap of a {\nup to 1 mm { ${ALLOW}\nremove b }\nover 1 mm { remove c }\n}`,
      ['remove b', 'remove c'],
      ['remove b'],
    ],
    [
      'two levels down',
      `task t "T" {\nif x is y {\n${ALLOW}\nremove b\n}\nremove c\n}`,
      ['remove b', 'remove c'],
      ['remove b'],
    ],
    ['at the end of the block that it ends', `remove b\n${ALLOW}`, ['remove b', '}'], ['}']],
    [
      'at the end of an inner block only',
      `task t "T" {\nremove b\n${ALLOW} }\nremove c`,
      ['remove b', '}\nremove c', 'remove c', '\n}'],
      ['}\nremove c'],
    ],
    ['nothing of what stands before it', `remove b\n${ALLOW}\nremove c`, ['remove b', ALLOW], []],
  ])('%s', (_, steps, words, expected) => {
    expect(heldBack(steps, words)).toEqual(expected);
  });

  test('nothing behind the end of a text without its brace', () => {
    expect(heldBack(`remove b\n${ALLOW}`, ['remove b', '"It is light."'], '')).toEqual([]);
  });
});

describe('what is sorted out', () => {
  const { text, procedures: all } = procedures(`${ALLOW}\nremove b`);

  test('nothing without waivers', () => {
    const plain = procedures('remove b');
    const one = finding(plain.text, 'remove b');
    expect(sortOut([one], plain.procedures, PATH)).toEqual({ findings: [one], waived: [], facts: [] });
  });

  test('the reason and the place of the waiver go with the finding', () => {
    const [reason] = sortOut([finding(text, 'remove b')], all, PATH).waived;
    expect(reason).toEqual({
      finding: finding(text, 'remove b'),
      reason: 'It is light.',
      at: { file: PATH, start: text.indexOf('allow'), end: text.indexOf('\nremove') },
    });
    const spaced = procedures('allow still-held because "  It is light. "\nremove b');
    expect(sortOut([finding(spaced.text, 'remove b')], spaced.procedures, PATH).waived[0]!.reason).toBe(
      'It is light.',
    );
  });

  test('another check or another file is not meant', () => {
    const others = [
      finding(text, 'remove b', { check: 'covered' }),
      finding(text, 'remove b', { file: 'b.dowel' }),
    ];
    const { findings, waived, facts } = sortOut(others, all, PATH);
    expect(findings).toEqual(others);
    expect(waived).toEqual([]);
    const start = text.indexOf('still-held');
    expect(facts).toEqual([
      { check: 'waiver-unused', at: { file: PATH, start, end: start + 10 }, words: { check: 'still-held' } },
    ]);
  });

  test('one waiver holds back several findings, and is used', () => {
    const { waived, facts } = sortOut([finding(text, 'remove b'), finding(text, 'b')], all, PATH);
    expect(waived.length).toBe(2);
    expect(facts).toEqual([]);
  });

  test('one that ends a block and holds nothing back says so', () => {
    const ended = procedures(`remove b\n${ALLOW}`);
    expect(sortOut([], ended.procedures, PATH).facts.map(({ words }) => words)).toEqual([
      { check: 'still-held', end: 'yes' },
    ]);
  });

  test('where the tool failed in this file, no waiver is called unused', () => {
    const failed = finding(text, 'remove b', { check: 'tool-failure' });
    expect(sortOut([failed], all, PATH).facts).toEqual([]);
    expect(sortOut([{ ...failed, file: 'b.dowel' }], all, PATH).facts.length).toBe(1);
  });

  test.each<[string, string, readonly string[]]>([
    ['a check that is not there', 'allow no-such because "It is light."', ['unknown-name']],
    ['a check that always stands', 'allow syntax because "It is light."', ['waiver-refused']],
    ['a reason of marks', 'allow still-held because "-- !"', ['waiver-without-reason']],
    ['a reason of figures', 'allow still-held because "12"', ['waiver-unused']],
    ['a reason in other letters', 'allow still-held because "Ж"', ['waiver-unused']],
    ['no reason at all: a fault of the text', 'allow still-held', []],
    ['no check: a fault of the text', 'allow', []],
  ])('%s', (_, allow, expected) => {
    const made = procedures(`${allow}\nremove b`);
    const { facts, waived } = sortOut([finding(made.text, 'remove b')].slice(1), made.procedures, PATH);
    expect(facts.map(({ check }) => check)).toEqual(expected);
    expect(waived).toEqual([]);
    if (expected[0] !== 'waiver-unused')
      expect(sortOut([finding(made.text, 'remove b')], made.procedures, PATH).waived).toEqual([]);
  });

  test('places: the check, and for a reason that says nothing the reason', () => {
    const made = procedures('allow syntax because "Why not."\nallow still-held because "…"\nremove b');
    const told = sortOut([], made.procedures, PATH).facts.map(({ at: { file, start, end }, words }) => [
      file,
      made.text.slice(start, end),
      words,
    ]);
    expect(told).toEqual([
      [PATH, 'syntax', { check: 'syntax', because: 'it says that the text could not be read as it stands' }],
      [PATH, '"…"', { check: 'still-held' }],
    ]);
  });

  test('what was looked through before is not looked through again', () => {
    const [made] = procedures(`task t "T" {\n${ALLOW}\nremove b\n}`).procedures;
    const { body } = made!;
    const [task] = body!.statements;
    if (task?.kind !== 'task') throw new Error('no task');
    const { statements } = task.body!;
    let walks = 0;
    Object.defineProperty(task.body!, 'statements', {
      get: () => {
        walks += 1;
        return statements;
      },
    });
    const unused = (procedure: Procedure) => sortOut([], [procedure], PATH).facts.length;
    expect([unused(made!), walks]).toEqual([1, 1]);
    expect([unused(made!), walks]).toEqual([1, 1]);
    // As after an edit elsewhere in the procedure.
    expect([unused({ ...made!, body: { ...body! } }), walks]).toEqual([1, 1]);
  });
});
