/**
 * Files checked together and one by one: houses, shared files, what a file is read for, failures of the tool. The source of
 * what is right is DEVELOPERS.md (the rooms, and what always holds) and the chapter on files of grammar/LANGUAGE.md.
 */
import { describe, expect, test } from 'vitest';
import { allTogether, checkEach, checkProject } from '../../../language-server/checks/check-project.ts';
import { checkTexts } from '../../../language-server/checks/check-texts.ts';
import { Found } from '../../../language-server/checks/found.ts';
import type { Kept, ModelMade } from '../../../language-server/checks/kept.ts';
import { machineFor } from '../../../language-server/checks/machine-for.ts';
import { ModelsAtHand } from '../../../language-server/checks/models-at-hand.ts';
import { ProjectCheck } from '../../../language-server/checks/project-check.ts';
import { readingFacts } from '../../../language-server/checks/reading-facts.ts';
import { fixedBecause, SETTABLE_CHECKS } from '../../../language-server/checks/settable.ts';
import { together } from '../../../language-server/checks/together.ts';
import { checkUses } from '../../../language-server/checks/uses.ts';
import { SharedWork } from '../../../language-server/execution/shared-work.ts';
import { buildModel } from '../../../language-server/model/build.ts';
import type { Fact } from '../../../language-server/model/facts.ts';
import { Loader } from '../../../language-server/model/names.ts';
import { Surveys } from '../../../language-server/model/survey.ts';
import { type House, memoryHost } from '../../../language-server/project/project.ts';
import type { Finding } from '../../../language-server/report/finding.ts';

const RIG = `machine rig "rig" {
  part bed "bed" fixed
  part lid "lid" on bed  held by clip
  part pads "pads" x2 on bed
  fastener clip "clip" x1
}
`;
const OFF = 'procedure p "P" for rig ends with lid off { remove lid }\n';

const said = ({ findings }: { findings: readonly Finding[] }) =>
  findings.map(({ file, check, severity }) => `${file} ${check} ${severity}`);

describe('houses', () => {
  const loud: House = { severities: { 'still-held': 'warning', 'holds-nothing': 'error' } };
  const quiet: House = { severities: { 'still-held': 'off' } };
  const files = { 'a.dowel': RIG + OFF, 'b/a.dowel': RIG + OFF, 'c/a.dowel': RIG + OFF };
  const host = {
    ...memoryHost(files),
    houseOf: (path: string) => (path.startsWith('b/') ? loud : path.startsWith('c/') ? quiet : undefined),
  };

  test('each file is checked with what its own has agreed on', () => {
    const result = checkProject(host, Object.keys(files));
    expect(said(result)).toEqual(['a.dowel still-held error', 'b/a.dowel still-held warning']);
    expect(result.files).toBe(3);
  });

  test('one that is given holds for all', () => {
    expect(said(checkProject(host, Object.keys(files), quiet))).toEqual([]);
    expect(said(checkProject(host, ['a.dowel', 'c/a.dowel'], loud))).toEqual([
      'a.dowel still-held warning',
      'c/a.dowel still-held warning',
    ]);
  });

  test('what is off is not reported, and what is waived is no finding', () => {
    const waived = OFF.replace('remove', 'allow still-held because "It is light."\nremove');
    const result = checkTexts({ 'a.dowel': RIG + waived });
    expect(said(result)).toEqual([]);
    expect(result.waived.map(({ finding, reason }) => [finding.check, reason])).toEqual([
      ['still-held', 'It is light.'],
    ]);
    expect(said(checkProject(memoryHost({ 'a.dowel': RIG + waived }), ['a.dowel'], quiet))).toEqual([]);
  });

  const RULES = 'rule spin "Never." {\n  never turn any part of any system with live\n}\n';
  const wide = { ...files, 'rules.dowel': RULES };

  test('rules of a house hold in its files, and are told of where they were asked for', () => {
    const house: House = { ruleFiles: ['rules.dowel'], severities: { 'still-held': 'off' } };
    const all = memoryHost(wide);
    expect(said(checkProject(all, ['a.dowel'], house))).toEqual([]);
    expect(said(checkProject(all, ['a.dowel', 'rules.dowel'], house))).toEqual([
      'rules.dowel rule-never-applies hint',
    ]);
    const off: House = { ...house, severities: { 'still-held': 'off', 'rule-never-applies': 'off' } };
    expect(said(checkProject(all, ['a.dowel', 'rules.dowel'], off))).toEqual([]);
    const loud: House = { ...house, severities: { 'still-held': 'off', 'rule-never-applies': 'error' } };
    expect(said(checkProject(all, ['a.dowel', 'rules.dowel'], loud))).toEqual([
      'rules.dowel rule-never-applies error',
    ]);
  });

  test('a rule that applies to one machine of many is not idle; the machines are counted', () => {
    const live =
      'machine two "two" {\n  part bed "bed" fixed  opens mains\n  system mains "mains" live 230 V\n}\n';
    const used = `use "rules.dowel"\n`;
    const texts = {
      'rules.dowel': RULES,
      'a.dowel': used + RIG,
      'b.dowel': used + RIG.replace('rig', 'three'),
    };
    expect(checkTexts(texts).findings.map(({ message }) => message)).toEqual([
      expect.stringContaining('nothing of the 2 machines that know it is what it is about'),
    ]);
    expect(said(checkTexts({ ...texts, 'c.dowel': used + live }))).toEqual([]);
  });

  test('a rule of a file with machines of its own does not hold in a file that uses it for others', () => {
    const own = 'machine x "X" { part bed "bed" fixed }\nrule dry "Dry." {\n  never clean bed\n}\n';
    const job = 'procedure p "P" for rig { clean bed }\n';
    const texts = { 'rig.dowel': RIG, 'x.dowel': own, 'a.dowel': `use "rig.dowel"\nuse "x.dowel"\n${job}` };
    expect(said(checkTexts(texts, 'a.dowel'))).toEqual([]);
    const wet = own.slice(own.indexOf('rule'));
    expect(said(checkTexts({ ...texts, 'x.dowel': wet }, 'a.dowel'))).toEqual(['a.dowel rule-broken error']);
    expect(
      said(checkTexts({ 'rig.dowel': RIG, 'a.dowel': `use "rig.dowel"\n${wet}${job}` }, 'a.dowel')),
    ).toEqual(['a.dowel rule-broken error']);
  });

  test('the parts put together are the whole', () => {
    const each = checkEach(host, Object.keys(files));
    expect(allTogether(host, Object.keys(files), each)).toEqual(checkProject(host, Object.keys(files)));
    const texts = memoryHost({ ...wide, 'd.dowel': `use "rules.dowel"\n${RIG}` });
    const paths = ['d.dowel', 'rules.dowel'];
    expect(said(allTogether(texts, paths, checkEach(texts, paths)))).toEqual([
      'rules.dowel rule-never-applies hint',
    ]);
    // Of a file that was not checked nothing is told.
    expect(said(allTogether(texts, paths, checkEach(texts, ['d.dowel'])))).toEqual([]);
  });
});

describe('files', () => {
  test('one that cannot be had has no result, and is counted as asked for', () => {
    const host = memoryHost({ 'a.dowel': RIG });
    let done = 0;
    const each = checkEach(host, ['no.dowel', 'a.dowel'], undefined, () => {
      done += 1;
    });
    expect(each.map(({ path }) => path)).toEqual(['a.dowel']);
    expect(done).toBe(1);
    expect(checkProject(host, ['no.dowel', 'a.dowel']).files).toBe(2);
  });

  test('texts: those that are named, or all', () => {
    const texts = { 'a.dowel': RIG + OFF, 'b.dowel': RIG + OFF };
    expect(said(checkTexts(texts)).length).toBe(2);
    expect(said(checkTexts(texts, 'b.dowel'))).toEqual(['b.dowel still-held error']);
  });

  test('each has its own findings and its own work', () => {
    const texts = {
      'rig.dowel': RIG,
      'a.dowel': `use "rig.dowel"\n${OFF}`,
      'b.dowel': `use "rig.dowel"\n${OFF}${OFF.replace('procedure p', 'procedure q')}`,
    };
    const [rig, a, b] = checkEach(memoryHost(texts), ['rig.dowel', 'a.dowel', 'b.dowel']);
    expect([rig!, a!, b!].map((one) => [one.findings.length, one.statements])).toEqual([
      [0, 0],
      [1, 1],
      [2, 2],
    ]);
  });

  test('what a file is read for', () => {
    const host = memoryHost({
      'a.dowel': 'use "b.dowel"\nuse "no.dowel"\nprocedure p "P" for rig { clean bed }\n',
      'b.dowel': 'use "c/c.dowel"\nuse "b.dowel"\n',
      'c/c.dowel': `use "gone.dowel"\n${RIG}`,
      'rules.dowel': 'use "words.dowel"\n',
    });
    expect(checkUses(host, 'a.dowel')).toEqual([
      'a.dowel',
      'b.dowel',
      'c/c.dowel',
      'no.dowel',
      'c/gone.dowel',
    ]);
    expect(checkUses(host, 'no.dowel')).toEqual(['no.dowel']);
    expect(checkUses(memoryHost({ 'a.dowel': `use\n${RIG}` }), 'a.dowel')).toEqual(['a.dowel']);
    const house = { ...host, houseOf: () => ({ ruleFiles: ['rules.dowel', 'lost.dowel'] }) };
    expect(checkUses(house, 'c/c.dowel')).toEqual([
      'c/c.dowel',
      'rules.dowel',
      'c/gone.dowel',
      'words.dowel',
      'lost.dowel',
    ]);
    expect(checkEach(house, ['c/c.dowel'])[0]!.uses).toEqual(checkUses(house, 'c/c.dowel'));
  });

  test('results are put together in reading order, with what only all show', () => {
    const at = (file: string, start: number, check = 'x'): Finding => ({
      ...{ file, start, end: start + 1, check, severity: 'error', message: '', related: [] },
    });
    const waived = (finding: Finding) => ({ finding, reason: '', at: finding });
    const one = (path: string, findings: Finding[], held: Finding[], statements: number) => ({
      ...{ path, findings, statements, waived: held.map(waived), rules: [], uses: [] },
    });
    const each = [
      one('b', [at('b', 4), at('b', 1)], [at('b', 9), at('b', 2)], 3),
      one('a', [at('a', 7)], [at('a', 5)], 4),
    ];
    expect(together(each, [at('a', 8), at('b', 0)])).toEqual({
      findings: [at('a', 7), at('a', 8), at('b', 0), at('b', 1), at('b', 4)],
      waived: [at('a', 5), at('b', 2), at('b', 9)].map(waived),
      files: 2,
      statements: 7,
    });
    expect(together(each).findings.length).toBe(3);
  });

  test('reading faults: places, examples, mends and what they tell of', () => {
    const text =
      'procedure p "P" for rig {\n  task t "T" {\n    clean bed\nprocedure q "Q" for rig { wait 1,5 min }\n';
    const { path, parsed } = new Loader(memoryHost({ 'a.dowel': text })).load('a.dowel')!;
    const facts = readingFacts({ path, parsed });
    expect(facts.length).toBe(parsed.problems.length);
    for (const [index, problem] of parsed.problems.entries()) {
      const { check, at, words, story, mends } = facts[index]!;
      expect([check, at]).toEqual([
        problem.check,
        { file: 'a.dowel', start: problem.start, end: problem.end },
      ]);
      expect(words).toEqual(
        problem.example === undefined
          ? { message: problem.message }
          : { message: problem.message, example: problem.example },
      );
      const related = problem.related;
      expect(story).toEqual(
        related && [
          {
            at: { file: 'a.dowel', start: related.start, end: related.end },
            what: 'declared',
            says: related.message,
          },
        ],
      );
      const mend = problem.mend;
      expect(mends).toEqual(
        mend && [
          { title: mend.title, at: { file: 'a.dowel', start: mend.start, end: mend.end }, text: mend.text },
        ],
      );
    }
    expect(parsed.problems.some(({ related }) => related)).toBe(true);
    expect(parsed.problems.some(({ mend }) => mend)).toBe(true);
    expect(parsed.problems.some(({ example }) => example)).toBe(true);
  });
});

describe('declarations', () => {
  test('a machine that extends another in the same file: each fault once', () => {
    const base = 'machine a "A" {\n  part bed "bed" fixed\n  fastener lost "lost screws" x3\n}\n';
    const more = `${base}machine b "B" extends a {\n  fastener stray "stray screws" x3\n}\n`;
    expect(said(checkTexts({ 'a.dowel': more })).length).toBe(2);
    // In another file it is told where it stands.
    const apart = {
      'a.dowel': base,
      'b.dowel': `use "a.dowel"\nmachine b "B" extends a { part lid "lid" on bed }\n`,
    };
    expect(said(checkTexts(apart))).toEqual(['a.dowel holds-nothing warning']);
    expect(said(checkTexts(apart, 'b.dowel'))).toEqual([]);
  });

  test('what a file declares for machines elsewhere: its own faults, not the names that it does not know', () => {
    const shared = 'tool wrench "wrench" range 60..5 N·m  locks shaft\nvalue gap = 3 mm + 2 kg\n';
    expect(said(checkTexts({ 'a.dowel': shared })).sort()).toEqual([
      'a.dowel range-reversed error',
      'a.dowel unit-wrong-kind error',
    ]);
    const screw = 'fastener screw "screw" x8  thread M6x1  class 8.8  torque 80 N·m\n';
    expect(said(checkTexts({ 'a.dowel': screw }))).toContain('a.dowel torque-above-strength error');
    expect(said(checkTexts({ 'a.dowel': `${RIG}${screw}` }))).toContain(
      'a.dowel torque-above-strength error',
    );
    const used = { 'a.dowel': shared, 'b.dowel': `use "a.dowel"\n${RIG}` };
    expect(said(checkTexts(used, 'b.dowel'))).toEqual([]);
    expect(said(checkTexts({ 'a.dowel': 'part lid "lid"  thread M6x1\n' }))).toEqual([
      'a.dowel clause-misplaced error',
    ]);
    expect(
      said(checkTexts({ 'a.dowel': `${shared}${RIG}` })).filter((one) => one.includes('unknown-name')).length,
    ).toBe(1);
  });
});

describe('the machine that a procedure is for', () => {
  const of = (header: string) => {
    const text = `${RIG}machine other "other" { part bed "bed" fixed }\nprocedure p "P" ${header}\n`;
    const loader = new Loader(memoryHost({ 'a.dowel': text }));
    const file = loader.load('a.dowel')!;
    const { found, facts } = machineFor(file.procedures[0]!, 'a.dowel', loader.visible(file));
    return [
      found?.machine.name?.text,
      ...facts.map(({ check, at, words }) => [
        check,
        text.slice(at.start, at.end),
        words?.known ?? words?.near,
      ]),
    ];
  };

  test.each<[string, readonly unknown[]]>([
    ['for rig { clean bed }', ['rig']],
    ['for other, rig { clean bed }', ['other']],
    ['tools a for other { clean bed }', ['other']],
    ['for ring { clean bed }', [undefined, ['unknown-name', 'ring', 'rig, other']]],
    ['{ clean bed }', [undefined, ['machine-missing', 'p', 'rig, other']]],
    ['tools a { clean bed }', [undefined, ['machine-missing', 'p', 'rig, other']]],
    ['elsewhere "The manual."', [undefined]],
  ])('%s', (header, expected) => {
    expect(of(header)).toEqual(expected);
  });

  test('a procedure without a name: that is a fault of the text', () => {
    const loader = new Loader(memoryHost({ 'a.dowel': `${RIG}procedure { clean bed }\n` }));
    const file = loader.load('a.dowel')!;
    expect(machineFor(file.procedures[0]!, 'a.dowel', [file])).toEqual({ found: undefined, facts: [] });
  });
});

describe('a step with a name that is wrong', () => {
  test.each<[string, string, readonly string[]]>([
    ['has that finding only', 'remove lod', ['unknown-name']],
    ['also where a position is', 'remove pads #7', ['unknown-position']],
    ['another step has its own', 'clean lod\nremove lid', ['still-held', 'unknown-name']],
    [
      'an outcome is another step',
      'measure gap of bed {\nup to 1 mm { clean lod }\nover 1 mm { remove lid }\n}',
      ['still-held', 'unknown-name'],
    ],
  ])('%s', (_, steps, expected) => {
    const text = `${RIG}procedure p "P" for rig ends with lid, clip off {\n${steps}\n}\n`;
    const checks = checkTexts({ 'a.dowel': text }).findings.map(({ check }) => check);
    expect(
      checks.filter((check) => !['contract-broken', 'branch-unfinished', 'left-off'].includes(check)).sort(),
    ).toEqual(expected);
  });
});

describe('models at hand', () => {
  const loader = new Loader(memoryHost({ 'a.dowel': `${RIG}tool hook "hook"\n` }));
  const file = loader.load('a.dowel')!;
  const [machine] = file.machines;

  test('are made once, and made anew once let go', () => {
    const models = new Map();
    const hand = new ModelsAtHand(models, undefined);
    const made = hand.of(machine, file, [file]);
    expect(made.model.name).toBe('rig');
    expect(hand.of(machine, file, [file])).toBe(made);
    const shared = hand.of(undefined, file, [file]);
    expect(shared).not.toBe(made);
    expect([...models.keys()]).toEqual([machine, file]);
    expect([...hand.asked]).toEqual([made.model, shared.model]);
    const work = hand.sharedOf(made.model, [file]);
    expect(hand.sharedOf(made.model, [file])).toBe(work);
    work.followed = 7;
    hand.spoken.add(made.model);
    hand.nextFile();
    expect([work.followed, hand.asked.size, hand.spoken.size]).toEqual([0, 0, 0]);
    hand.letGo(file);
    expect(models.size).toBe(0);
    expect(hand.sharedOf(made.model, [file])).not.toBe(work);
    expect(hand.of(machine, file, [file])).not.toBe(made);
    hand.letGo({ ...file, machines: [] });
  });

  test('are taken over from what was kept', () => {
    const kept = { model: {}, facts: [] } as unknown as ModelMade;
    const work = { followed: 3 };
    const hand = new ModelsAtHand(new Map(), {
      model: () => kept,
      shared: () => work,
    } as unknown as Kept);
    expect(hand.of(machine, file, [file])).toBe(kept);
    expect(hand.sharedOf(kept.model, [file])).toBe(work);
  });

  test('a check lets go of them with the file', () => {
    const models = new Map();
    const checker = new ProjectCheck(loader, models);
    checker.file(file);
    expect(models.size).toBe(1);
    checker.letGo(file);
    expect(models.size).toBe(0);
  });
});

describe('what is kept from the check before', () => {
  const loader = new Loader(memoryHost({ 'a.dowel': `${RIG}tool hook "hook"\n${OFF}` }));
  const file = loader.load('a.dowel')!;
  const [machine] = file.machines;
  const [procedure] = file.procedures;

  /** Keeps nothing, and writes down what it is asked for. */
  function asked(more: Partial<Kept> = {}) {
    const units: [unknown, Parameters<Kept['unit']>[1]][] = [];
    const executions: Parameters<Kept['execution']>[1][] = [];
    const kept: Kept = {
      unit: (of, basis, work) => {
        units.push([of, basis]);
        return work();
      },
      model: (one, of, visible) => buildModel(one, of, visible),
      shared: () => new SharedWork(),
      surveys: () => new Surveys(),
      execution: (_, on) => {
        executions.push(on);
        return undefined;
      },
      ...more,
    };
    const checker = new ProjectCheck(loader, new Map(), {}, kept);
    checker.file(file);
    return { units, executions, checker };
  }

  test('each part is asked for with what it rests on', () => {
    const { units, executions, checker } = asked();
    const made = units[3]![1].more![0] as ModelMade;
    expect(units.map(([of]) => of)).toEqual([...file.parsed.tree.items, 'machines of a.dowel', procedure]);
    expect(units.map(([, { file: of }]) => of)).toEqual(units.map(() => file));
    expect(units[3]![1].more).toEqual([made, machine, ...file.shared]);
    expect(units[4]![1]).toEqual({ model: made.model, procedure, file });
    expect(executions.length).toBe(1);
    expect(executions[0]!).toMatchObject({ model: made.model, file, visible: [file], house: {} });
    expect(said(checker)).toEqual(['a.dowel still-held error']);
    expect([checker.statements, checker.followed > 0]).toEqual([1, true]);
  });

  test('an execution that is taken up tells its facts and its own work', () => {
    const { checker } = asked({
      execution: (_, { model }) => ({ facts: [], cases: model.cases, executed: 5, followed: 7 }),
    });
    expect([said(checker), checker.statements, checker.followed]).toEqual([[], 5, 7]);
  });

  test('a part that is as before tells what it told before', () => {
    const before = asked().checker;
    const { checker } = asked({
      unit: (_, about, work) =>
        about.procedure ? { findings: before.findings, statements: 0, followed: before.followed } : work(),
      execution: () => {
        throw new Error('not asked for');
      },
    });
    expect(checker.findings).toEqual(before.findings);
    expect([checker.statements, checker.followed]).toEqual([0, before.followed]);
  });
});

describe('failures of the tool', () => {
  const text = `${RIG}machine other "other" { fastener lost "lost screws" x3 }\n${OFF}`;
  const loader = new Loader(memoryHost({ 'a.dowel': text }));
  const file = loader.load('a.dowel')!;
  const broken = (machine: object): ModelMade =>
    ({
      facts: [],
      model: new Proxy(machine, {
        get: () => {
          throw new Error('Out of order.');
        },
      }),
    }) as unknown as ModelMade;

  test('are told at the place, and stop nothing else', () => {
    const models = new Map([[file.machines[0]!, broken({})]]);
    const checker = new ProjectCheck(loader, models);
    try {
      checker.file(file);
    } catch {
      // Whether rules applied is asked of the broken model, too.
    }
    const failed = checker.findings.filter(({ check }) => check === 'tool-failure');
    expect(failed.length).toBeGreaterThan(1);
    expect(new Set(failed.map(({ start }) => start))).toEqual(
      new Set([file.machines[0]!.start, file.procedures[0]!.start]),
    );
    for (const { file: path, start, end, severity, message, related } of failed) {
      expect([path, end - start, severity, related]).toEqual(['a.dowel', 1, 'error', []]);
      expect(message).toBe('Dowel failed while it checked this: Out of order.');
    }
    expect(said(checker)).toContain('a.dowel holds-nothing warning');
  });

  test('what was thrown is told as it is; at the end of a text there is nothing to mark', () => {
    const found = new Found({});
    found.guard(file, 3, () => {
      throw 'a word';
    });
    found.guard(file, text.length, () => {
      throw new TypeError('none');
    });
    found.guard(file, 0, () => {});
    expect(found.findings.map(({ start, end, message }) => [start, end, message])).toEqual([
      [3, 4, 'Dowel failed while it checked this: a word.'],
      [text.length, text.length, 'Dowel failed while it checked this: none.'],
    ]);
  });
});

describe('what was found', () => {
  const at = { file: 'a.dowel', start: 1, end: 2 };
  const fact = (check: string, more: Partial<Fact> = {}): Fact => ({
    check,
    at,
    words: { message: 'It is so.', typed: '5', what: 'mass', kind: 'a force', wanted: 'a mass' },
    ...more,
  });

  test('with the severity of the house; what is off keeps its own', () => {
    const found = new Found({ severities: { semicolon: 'error', 'use-cycle': 'off' } });
    found.say([fact('semicolon'), fact('use-cycle'), fact('unit-missing')]);
    expect(found.findings.map(({ check, severity }) => [check, severity])).toEqual([
      ['semicolon', 'error'],
      ['use-cycle', 'error'],
      ['unit-missing', 'error'],
    ]);
    expect([found.isOff('use-cycle'), found.isOff('semicolon'), found.isOff('syntax')]).toEqual([
      true,
      false,
      false,
    ]);
    expect(new Found({}).isOff('syntax')).toBe(false);
  });

  test('a fact of no check is a fault of the tool', () => {
    expect(() => new Found({}).say([fact('no-such')])).toThrow('No check is called no-such.');
  });

  test('apart from what was found before, and added to it', () => {
    const found = new Found({});
    found.say([fact('semicolon')]);
    Object.assign(found, { statements: 2, followed: 3 });
    const apart = found.apart(() => {
      expect([found.findings.length, found.statements, found.followed]).toEqual([0, 0, 0]);
      found.say([fact('unit-missing')]);
      found.statements += 5;
      found.followed += 7;
    });
    expect([apart.findings.map(({ check }) => check), apart.statements, apart.followed]).toEqual([
      ['unit-missing'],
      5,
      7,
    ]);
    expect([found.findings.map(({ check }) => check), found.statements, found.followed]).toEqual([
      ['semicolon'],
      2,
      3,
    ]);
    found.add(apart);
    expect([found.findings.map(({ check }) => check), found.statements, found.followed]).toEqual([
      ['semicolon', 'unit-missing'],
      7,
      10,
    ]);
  });
});

test('what a house may set and an author may waive', () => {
  expect(SETTABLE_CHECKS).toContain('still-held');
  expect(SETTABLE_CHECKS).toContain('rule-broken');
  const because = (name: string) => fixedBecause(name);
  expect(because('still-held')).toBeUndefined();
  expect(because('unknown-verb')).toBe('it says that the text could not be read as it stands');
  for (const name of ['file-missing', 'use-cycle', 'undecided'])
    expect(because(name)).toBe('it says that a part of the work was not checked');
  for (const name of ['waiver-unused', 'waiver-refused', 'waiver-without-reason'])
    expect(because(name)).toBe('it is about waivers themselves');
  expect(because('tool-failure')).toBe('it is no finding about the work');
  for (const name of ['file-missing', 'use-cycle', 'undecided', 'waiver-unused', 'syntax', 'tool-failure'])
    expect(SETTABLE_CHECKS).not.toContain(name);
});
