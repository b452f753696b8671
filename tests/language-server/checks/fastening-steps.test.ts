/**
 * Values that steps and their sentences repeat, the tools they take, and what they leave unsaid. Each slip has right
 * twins beside it. Outside sources: US Army TM 55-1905-223-24-1 (three stages, 270 lbf·ft for a bolt that was measured),
 * TM 1-1500-204-23-9 (adapter), ISO 6789:2017 (lowest mark); factors between units after NIST SP 811. The rest is
 * common practice, no source.
 */
import { describe, expect, test } from 'vitest';
import { checkTexts } from '../../../language-server/checks/check-texts.ts';

interface Rig {
  /** Clauses of the bolts, and further declarations. */
  bolts?: string;
  more?: string;
  /** Headers of the procedure. */
  headers?: string;
}

function findings({ bolts = 'torque 80 N·m', more = '', headers = '' }: Rig, ...lines: string[]) {
  const text = `machine rig "test rig" {
  part bed "bed" fixed
  part cover "cover" on bed held by bolts sealed by ring
  seal ring "ring"
  fastener bolts "cover bolts" x4 ${bolts}
  part cap "cap" on bed held by nuts
  fastener nuts "cap nuts" x2 torque 20 N·m
  tool wrench "torque wrench" range 20..100 N·m
  tool driver "torque screwdriver" range 1..5 N·m
  ${more}
}
procedure close "Close the rig" for rig starts with cover off, ring off ${headers} {
  fit ring
  fit cover
  fit bolts by hand
  ${lines.join('\n  ')}
}
`;
  const { findings: all } = checkTexts({ 'rig.dowel': text }, 'rig.dowel');
  // A slip in the example would keep everything else silent.
  expect(all.filter(({ check }) => /syntax|^unknown|^unit|malformed|failure/.test(check))).toEqual([]);
  return all.map((finding) => ({ ...finding, at: text.slice(finding.start, finding.end) }));
}

const MINE = /^(torque|angle|order|wrench|gauge|adapter|two-stops|count|second)-|^two-stops$/;

function found(rig: Rig, ...lines: string[]): string[] {
  return findings(rig, ...lines)
    .filter(({ check }) => MINE.test(check))
    .map(({ check, at }) => `${check}: ${at}`);
}

describe('a value that a step types', () => {
  test.each([
    ['the declared one', 'torque 80 N·m', 'to 80 N·m'],
    ['the same with a tolerance of its own', 'torque 80 N·m', 'to 80 ± 5 N·m'],
    ['within the declared range', 'torque 70..90 N·m', 'to 80 N·m'],
    ['within the declared tolerance', 'torque 80 ± 8 N·m', 'to 75..85 N·m'],
    ['above a lower end', 'torque at least 70 N·m not over 100 N·m', 'to 80 N·m'],
    ['a fair rounding in another unit', 'torque 80 N·m', 'to 59 lbf·ft'],
    ['and the other way round', 'torque 80 lbf·ft', 'to 110 N·m'],
    ['with its second unit', 'torque 80 lbf·ft', 'to 80 lbf·ft (110 N·m)'],
    ['behind `at`', 'torque 80 N·m', 'at 80 N·m'],
    ['up to the declared limit', 'torque 80 N·m not over 100 N·m', 'to 95 N·m'],
    ['of a thing whose torque is not declared', '', 'to 33 N·m'],
    ['of a thing that goes by feel', 'plan { until "it binds"; 20 N·m }', 'to 33 N·m'],
    ['a stage by its value', 'plan { 20 N·m; 80 N·m }', 'to 80 N·m'],
    ['a stage by its number and value', 'plan { 20 N·m; 80 N·m }', 'stage 1 to 20 N·m'],
    ['a pass', 'torque 80 N·m', 'pass 100 %'],
    ['a percentage of the declared torque', 'torque 80 N·m plan { 30 %; 100 % }', 'to 80 N·m'],
  ])('%s', (_what, bolts, tail) => {
    expect(found({ bolts }, `tighten bolts ${tail}`)).toEqual([]);
  });

  test.each([
    ['another one', 'torque 80 N·m', 'to 88 N·m', '88 N·m'],
    ['a digit lost', 'torque 80 N·m', 'to 8 N·m', '8 N·m'],
    ['the number in another unit', 'torque 80 N·m', 'to 80 lbf·ft', '80 lbf·ft'],
    ['outside the range', 'torque 70..90 N·m', 'to 60..80 N·m', '60..80 N·m'],
    ['above the limit', 'torque 80 N·m not over 100 N·m', 'to 120 N·m', '120 N·m'],
    ['no stage of the plan', 'plan { 20 N·m; 80 N·m }', 'to 50 N·m', '50 N·m'],
    ['the value of another stage', 'plan { 20 N·m; 80 N·m }', 'stage 1 to 80 N·m', '80 N·m'],
    ['behind `at`', 'torque 80 N·m', 'at 60 N·m', '60 N·m'],
    ['a declared value by name', 'torque 80 N·m', 'to tight', 'tight'],
  ])('%s', (_what, bolts, tail, at) => {
    expect(found({ bolts, more: 'value tight "how tight" = 60 N·m' }, `tighten bolts ${tail}`)).toEqual([
      `torque-differs: ${at}`,
    ]);
  });

  test('is compared for each thing that the step tightens', () => {
    const open = ['loosen nuts', 'tighten bolts, nuts to 80 N·m'];
    expect(found({}, ...open)).toEqual(['torque-differs: 80 N·m']);
    expect(findings({}, ...open).find(({ check }) => check === 'torque-differs')?.message).toBe(
      'This step tightens the cap nuts to 80 N·m, and 20 N·m is declared.',
    );
  });

  test('is meant where a finding asks for it', () => {
    const measured = [
      'tighten bolts',
      'measure stretch of bolts {',
      '  below 0.1 mm { tighten bolts to 91 N·m }',
      '  0.1 mm..0.2 mm { }',
      '  over 0.2 mm { stop "Renew the bolts." }',
      '}',
    ];
    expect(found({}, ...measured)).toEqual([]);
    expect(found({}, 'tighten bolts', 'if "it still leaks" { tighten bolts to 91 N·m }')).toEqual([]);
  });

  test('but never above what the thread can carry', () => {
    const m8 = 'thread M8x1.25 class 8.8 torque 25 N·m';
    expect(found({ bolts: m8 }, 'tighten bolts', 'if "it still leaks" { tighten bolts to 91 N·m }')).toEqual([
      'torque-above-strength: 91 N·m',
    ]);
    expect(found({ bolts: 'thread M8x1.25 class 8.8' }, 'tighten bolts to 250 N·m')).toEqual([
      'torque-above-strength: 250 N·m',
    ]);
  });

  test('what is declared too high is said where it is declared, once', () => {
    expect(found({ bolts: 'thread M8x1.25 class 8.8 torque 250 N·m' }, 'tighten bolts to 250 N·m')).toEqual([
      'torque-above-strength: 250 N·m',
    ]);
  });

  test('of a check may be less than it was tightened to', () => {
    const check = (value: string) =>
      found(
        {},
        'tighten bolts',
        `check bolts at ${value} { tight { } moves { stop "Look for the cause." } }`,
      );
    expect(check('80 N·m')).toEqual([]);
    expect(check('70 N·m')).toEqual([]);
    expect(check('120 N·m')).toEqual(['torque-differs: 120 N·m']);
  });

  test('the sentence tells the declared one, and whether only the unit differs', () => {
    const said = (bolts: string, tail: string) =>
      findings({ bolts }, `tighten bolts ${tail}`)
        .filter(({ check }) => check === 'torque-differs')
        .map(
          ({ message, help, related }) => `${message} ${help} ${related.map((one) => one.message).join()}`,
        );
    expect(said('plan { 20 N·m; 80 N·m }', 'to 50 N·m')).toEqual([
      'This step tightens the cover bolts to 50 N·m, and 20 N·m and 80 N·m are declared in its plan. Mend the one that is wrong, or leave the value out of the step: it is taken from the machine. cover bolts declared here',
    ]);
    expect(said('torque 80 N·m', 'to 80 lbf·ft')[0]).toContain('The number is the same and the unit is not');
    expect(said('plan { 20 N·m; 80 N·m }', 'stage 2 to 70 N·m')[0]).toContain(
      '80 N·m is declared for stage 2.',
    );
  });
});

describe('a value in a sentence', () => {
  const told = (sentence: string, bolts = 'torque 80 N·m') => found({ bolts }, `tighten bolts "${sentence}"`);
  test.each([
    'Torque: 80 N·m.',
    'Pull to 59 lbf·ft (80 N·m).',
    'First to 30 N·m, then to 80 N·m.',
    'Never exceed 120 N·m.',
    'Run them down lightly at 5 N·m first.',
    'Set the wrench to 64 N·m.',
    'The nut turns at 3 N·m before it seats.',
    'Use the wrench that goes up to 200 N·m.',
    'It takes 2 people and 10 min.',
    'The head is 17 mm wide.',
  ])('%s', (sentence) => {
    expect(told(sentence)).toEqual([]);
  });

  test('differs from the declared one, and the finding stands at it', () => {
    expect(told('Pull to 60 N·m.')).toEqual(['torque-differs: 60 N·m']);
    expect(told('Pull to 80 lbf·ft.')).toEqual(['torque-differs: 80 lbf·ft']);
    expect(told('Torque: 8 N·m.', 'plan { 20 N·m; 80 N·m }')).toEqual(['torque-differs: 8 N·m']);
  });

  test('a declared value by its name is not compared', () => {
    const more = 'value tight "how tight" = 60 N·m';
    expect(found({ more }, 'tighten bolts "Pull to {tight}."')).toEqual([]);
  });

  test('is not compared with what is not declared', () => {
    expect(told('Pull to 60 N·m.', '')).toEqual([]);
  });

  test('is compared with what holds the part that is bolted up', () => {
    const lines = (value: string) => ['tighten bolts', 'unbolt cap', `bolt up cap "Torque: ${value}."`];
    expect(found({}, ...lines('20 N·m'))).toEqual([]);
    expect(found({}, ...lines('25 N·m'))).toEqual(['torque-differs: 25 N·m']);
  });

  test('its second unit is a conversion of the first, whatever the sentence is about', () => {
    expect(found({}, 'tighten bolts', 'caution "Oil at 12 psi (103 kPa) burns."')).toEqual([
      'second-unit-differs: 103 kPa',
    ]);
    expect(found({}, 'tighten bolts', 'caution "Oil at 12 psi (83 kPa) burns."')).toEqual([]);
    expect(told('Pull to 80 N·m (80 lbf·ft).')).toEqual(['torque-differs: 80 lbf·ft']);
    expect(found({}, 'tighten bolts "Pull to 80 N·m" " (80 lbf·ft)."')).toEqual([
      'torque-differs: "Pull to 80 N·m" " (80 lbf·ft)."',
    ]);
  });
});

describe('a torque that nobody gives', () => {
  const missing = (rig: Rig, ...lines: string[]) => found(rig, ...lines).filter((one) => /^torque/.test(one));
  const tools = 'tools wrench';
  test.each([
    ['a torque wrench is taken', { bolts: '', headers: tools }, 'tighten bolts with wrench'],
    ['the sentence speaks of a torque', { bolts: '' }, 'tighten bolts "To the specified torque."'],
    ['securely, where a torque could be', { bolts: 'thread M8x1.25 class 8.8' }, 'tighten bolts "Securely."'],
  ])('is missing where %s', (_why, rig, line) => {
    expect(missing(rig, line)).toEqual(['torque-missing: bolts']);
  });

  test.each([
    ['by hand', { bolts: '' }, 'tighten bolts'],
    ['by feel', { bolts: '', headers: tools }, 'tighten bolts with wrench until "the ring is flat"'],
    ['with its value', { bolts: '', headers: tools }, 'tighten bolts to 30 N·m with wrench'],
    ['with its value in the sentence', { bolts: '', headers: tools }, 'tighten bolts with wrench "30 N·m."'],
    [
      'as a table says',
      { bolts: '', headers: tools },
      'tighten bolts with wrench "To the value on the plate."',
    ],
    ['securely, of unknown strength', { bolts: '' }, 'tighten bolts "Securely."'],
    ['to the declared torque', { headers: tools }, 'tighten bolts with wrench "To the specified torque."'],
    ['by its plan', { bolts: 'plan { by hand; 90° }' }, 'tighten bolts "Torque as specified, then mark."'],
  ])('is not missing %s', (_how, rig, line) => {
    expect(missing(rig, line)).toEqual([]);
  });

  test('is not missing where a note gives it, or the wrench is set for good', () => {
    expect(
      missing({ bolts: '', headers: tools }, 'note "The bolts take 30 N·m."', 'tighten bolts with wrench'),
    ).toEqual([]);
    const more = 'tool preset "torque wrench, 30 N·m"';
    expect(missing({ bolts: '', more, headers: 'tools preset' }, 'tighten bolts with preset')).toEqual([]);
  });
});

describe('torque wrenches', () => {
  const wrench = (rig: Rig, ...lines: string[]) => found(rig, ...lines).filter((one) => /^wrench/.test(one));
  test.each([
    ['below the lowest mark', 'torque 8 N·m', 'wrench', 'tighten bolts'],
    ['above the highest mark', 'torque 120 N·m', 'wrench, driver', 'tighten bolts'],
    ['between two wrenches', 'torque 12 N·m', 'wrench, driver', 'tighten bolts'],
    ['with the one that the step names', 'torque 4 N·m', 'wrench, driver', 'tighten bolts with wrench'],
    ['one stage', 'plan { 8 N·m; 30 N·m }', 'wrench', 'tighten bolts'],
    ['by the value of the step', '', 'wrench', 'tighten bolts to 120 N·m'],
  ])('%s is out of reach', (_what, bolts, tools, line) => {
    expect(wrench({ bolts, headers: `tools ${tools}` }, line)).toEqual(['wrench-out-of-range: bolts']);
  });

  test.each([
    ['at the lowest mark', 'torque 20 N·m', 'wrench', 'tighten bolts'],
    ['at the highest mark', 'torque 100 N·m', 'wrench', 'tighten bolts'],
    ['with part of the range', 'torque 90..120 N·m', 'wrench', 'tighten bolts'],
    ['with one of two', 'torque 4 N·m', 'wrench, driver', 'tighten bolts'],
    ['each stage with another', 'plan { 4 N·m; 30 N·m }', 'wrench, driver', 'tighten bolts'],
    ['the stage that the step works', 'plan { 8 N·m; 30 N·m }', 'wrench', 'tighten bolts stage 2'],
    ['in other units', 'torque 45 lbf·ft', 'wrench', 'tighten bolts'],
    ['where no torque wrench is listed', 'torque 800 N·m', 'tray', 'tighten bolts'],
    ['where the range of one is not known', 'torque 800 N·m', 'wrench, old-wrench', 'tighten bolts'],
    [
      'a torque that the step turns with a plain spanner',
      'torque 8 N·m',
      'wrench',
      'tighten bolts with spanner',
    ],
    ['a pass before the last', 'torque 40 N·m', 'wrench', 'tighten bolts pass 30 %'],
  ])('%s is in reach', (_what, bolts, tools, line) => {
    const more = 'tool spanner "ring spanner"\n  tool tray "oil tray"\n  tool old-wrench "old torque wrench"';
    expect(wrench({ bolts, more, headers: `tools ${tools}` }, line)).toEqual([]);
  });

  test('without a tool list nothing is known', () => {
    expect(wrench({ bolts: 'torque 800 N·m' }, 'tighten bolts')).toEqual([]);
  });

  test('the lowest fifth of the scale is a hint, of the best wrench at hand', () => {
    const more = 'tool large "large torque wrench" range 10..250 N·m';
    expect(wrench({ bolts: 'torque 40 N·m', more, headers: 'tools large' }, 'tighten bolts')).toEqual([
      'wrench-too-large: bolts',
    ]);
    expect(wrench({ bolts: 'torque 40 N·m', more, headers: 'tools large, wrench' }, 'tighten bolts')).toEqual(
      [],
    );
  });

  test('is said once for a group', () => {
    const lines = ['tighten bolts', 'loosen bolts', 'tighten bolts'];
    expect(wrench({ bolts: 'torque 8 N·m', headers: 'tools wrench' }, ...lines)).toHaveLength(1);
  });
});

describe('angles', () => {
  const plan = { bolts: 'plan { 20 N·m; 90° }', more: 'tool dial "angle gauge"' };
  const angle = (rig: Rig, ...lines: string[]) =>
    found(rig, ...lines).filter((one) => /^(gauge|angle)/.test(one));
  test('need a gauge in the tool list', () => {
    expect(angle({ ...plan, headers: 'tools wrench' }, 'tighten bolts')).toEqual(['gauge-missing: bolts']);
    expect(angle({ ...plan, headers: 'tools wrench, dial' }, 'tighten bolts')).toEqual([]);
    expect(angle({ ...plan }, 'tighten bolts')).toEqual([]);
    expect(
      angle({ ...plan, headers: 'tools wrench' }, 'tighten bolts stage 1', 'tighten bolts stage 2'),
    ).toEqual(['gauge-missing: bolts']);
    expect(
      angle(
        { ...plan, headers: 'tools wrench' },
        'tighten bolts "Mark the heads, then one flat and a half."',
      ),
    ).toEqual([]);
    const turns = { ...plan, bolts: 'plan { 20 N·m; 1/4 turn }', headers: 'tools wrench' };
    expect(angle(turns, 'tighten bolts')).toEqual([]);
  });

  test.each([
    ['plan { 90° }', ['angle-before-torque: 90°']],
    ['plan { 20 N·m; loosen; 90° }', ['angle-before-torque: 90°']],
    ['plan { 60°; 20 N·m; 90° }', ['angle-before-torque: 60°']],
    ['plan { 20 N·m; 900° }', ['angle-too-large: 900°']],
    ['plan { 20 N·m; 90°; 90°; 90°; 90°; 90° }', []],
    ['plan { by hand; 120° }', []],
    ['plan { 20 N·m; wait 10 min; 90° }', []],
    ['plan { 20 N·m; 360° }', []],
    ['plan { 20 N·m; 2 turns }', []],
    ['torque 40 N·m plan { 50 %; 90° }', []],
  ])('%s', (bolts, expected) => {
    expect(angle({ bolts }, 'tighten bolts')).toEqual(expected);
  });

  test('of a step', () => {
    expect(angle({ bolts: '' }, 'tighten bolts 900°')).toEqual(['angle-too-large: 900°']);
    expect(angle({ bolts: '' }, 'tighten bolts 90°')).toEqual([]);
  });
});

describe('plans', () => {
  const plan = (bolts: string) =>
    findings({ bolts }, 'tighten bolts')
      .filter(({ check }) => check === 'stage-out-of-order' || check === 'torque-unbounded')
      .map(({ check, at }) => `${check}: ${at}`);
  test.each([
    ['plan { 8 N·m; 25 N·m; 16 N·m }', ['stage-out-of-order: 16 N·m']],
    ['plan { 25 N·m; wait 10 min; 16 N·m }', ['stage-out-of-order: 16 N·m']],
    ['plan { 25 N·m; 10 lbf·ft }', ['stage-out-of-order: 10 lbf·ft']],
    ['torque 40 N·m plan { 70 %; 30 %; 100 % }', ['stage-out-of-order: 30 %']],
    ['plan { 8 N·m; 16 N·m; 25 N·m }', []],
    ['plan { 8 N·m; 25 N·m; 25 N·m }', []],
    ['plan { 15 N·m; 28 N·m; loosen; 15 N·m; 28 N·m }', []],
    ['plan { 60 N·m; back off 1/2 turn; 20 N·m }', []],
    ['plan { 60 N·m; wait 4 h; again 50 N·m }', []],
    ['plan { 20..30 N·m; 25 N·m }', []],
    ['torque at least 30 N·m', ['torque-unbounded: at least 30 N·m']],
    ['plan { 10 N·m; at least 30 N·m }', ['torque-unbounded: at least 30 N·m']],
    ['torque at most 30 N·m', []],
    ['torque at least 30 N·m not over 50 N·m', []],
    ['plan { at least 30 N·m; 90° }', []],
  ])('%s', (bolts, expected) => {
    expect(plan(bolts)).toEqual(expected);
  });
});

describe('adapters', () => {
  const more = `tool long-wrench "torque wrench" range 20..200 N·m length 400 mm
  tool crow "crow-foot" length 40 mm
  tool bar "extension bar" length 250 mm
  tool thin "flat crow-foot" length 2 mm`;
  const adapter = (tools: string, sentence = '') =>
    findings({ more }, `tighten bolts with ${tools} ${sentence}`)
      .filter(({ check }) => /^(adapter|torque)/.test(check))
      .map(({ check, help }) => `${check} ${help}`);

  test('need a setting, which is worked out where the lengths are known', () => {
    // TM 1-1500-204-23-9: TW = TA L/(L + A); 80 * 400/440 = 72.7.
    expect(adapter('long-wrench, crow')).toEqual([
      'adapter-uncorrected Set the wrench to 72.7 N·m, and say so in the step; or say that the adapter stands at a right angle.',
    ]);
    expect(adapter('wrench, crow')).toHaveLength(1);
  });

  test('a tool that is declared one is one, whatever it is called', () => {
    const claw = `${more}
  tool claw "claw" adapter length 40 mm`;
    const told = findings({ more: claw }, 'tighten bolts with long-wrench, claw')
      .filter(({ check }) => /^adapter/.test(check))
      .map(({ help }) => help);
    expect(told).toHaveLength(1);
    expect(told[0]).toContain('72.7 N·m');
  });

  test('a setting that is told has to be the right one', () => {
    // 80 * 440/400 = 88: the correction the wrong way round.
    expect(adapter('long-wrench, crow', '"Set the wrench to 88 N·m."')).toEqual([
      'adapter-uncorrected Set the wrench to 72.7 N·m; or say that the adapter stands at a right angle.',
    ]);
    expect(adapter('wrench, crow', '"Set the wrench to 88 N·m."')).toEqual([]);
  });

  test.each([
    ['long-wrench, crow', '"Set the wrench to 73 N·m."'],
    ['long-wrench, crow', '"The crow-foot stands at a right angle to the wrench."'],
    ['long-wrench, bar', ''],
    ['long-wrench, thin', ''],
    ['long-wrench', ''],
  ])('with %s %s nothing is missing', (tools, sentence) => {
    expect(adapter(tools, sentence)).toEqual([]);
  });
});

describe('steps that `reverse` writes', () => {
  const turned = (bolts: string, wrench: string) =>
    checkTexts(
      {
        'rig.dowel': `machine rig "test rig" {
  part bed "bed" fixed
  part cover "cover" on bed held by bolts
  fastener bolts "cover bolts" x4 ${bolts}
  part core "core" on bed under cover
  tool wrench "torque wrench" range ${wrench}
}
procedure look "Look at the core" for rig tools wrench {
  task strip "Take the cover off" { unbolt cover }
  inspect core for "cracks" { sound { } cracked { stop "Renew the core." } }
  reverse strip
}
`,
      },
      'rig.dowel',
    ).findings.map(({ check }) => check);

  test('are judged like steps that stand there', () => {
    expect(turned('torque 80 N·m', '20..100 N·m')).toEqual(['tool-unused']);
    expect(turned('torque 80 N·m', '5..60 N·m')).toContain('wrench-out-of-range');
    expect(turned('plan { 40 N·m; 90° }', '20..100 N·m')).toContain('gauge-missing');
  });
});

describe('two ends of one turning', () => {
  const stops = (line: string) => found({ bolts: '' }, line).filter((one) => /^two/.test(one));
  test('are one too many', () => {
    expect(stops('tighten bolts to 40 N·m until "the ring is flat"')).toEqual([
      'two-stops: until "the ring is flat"',
    ]);
  });
  test.each([
    'tighten bolts not over 40 N·m until "the ring is flat"',
    'tighten bolts until "the ring is flat"',
    'tighten bolts to 40 N·m until "the ring is flat" "Whichever comes first."',
    'tighten bolts to 40 N·m',
  ])('%s', (line) => {
    expect(stops(line)).toEqual([]);
  });
});

describe('counts', () => {
  const counts = (...lines: string[]) =>
    found({}, 'tighten bolts', ...lines).filter((one) => /^count/.test(one));
  test('a number in a step that is not the declared one', () => {
    expect(counts('loosen bolts x3', 'tighten bolts')).toEqual(['count-differs: bolts x3']);
    expect(counts('loosen bolts x4', 'tighten bolts')).toEqual([]);
    expect(counts('loosen bolts #1, #2 x3', 'tighten bolts #1, #2')).toEqual([
      'count-differs: bolts #1, #2 x3',
    ]);
  });
  test('parts of a group add up', () => {
    expect(counts('loosen bolts x2', 'tighten bolts', 'loosen bolts x2', 'tighten bolts')).toEqual([]);
  });
  test('a group that nobody counted', () => {
    const uncounted = (title: string, clauses: string) => {
      const text = `machine rig "test rig" {
  part bed "bed" fixed
  part cover "cover" on bed held by bolts
  fastener bolts "${title}" ${clauses}
}
procedure close "Close the rig" for rig starts with cover off {
  bolt up cover
}
`;
      return checkTexts({ 'rig.dowel': text }, 'rig.dowel').findings.map(({ check }) => check);
    };
    expect(uncounted('cover bolts', 'torque 10 N·m')).toEqual(['count-missing']);
    expect(uncounted('cover bolt', 'torque 10 N·m')).toEqual([]);
    expect(uncounted('clip of the bolts', 'torque 10 N·m')).toEqual([]);
    expect(uncounted('cover bolts', '')).toEqual([]);
    expect(uncounted('cover bolts', 'positions left, right torque 10 N·m')).toEqual([]);
  });
});

test('a machine that extends another says the faults of the other once', () => {
  const text = `machine small "small rig" {
  part bed "bed" fixed
  part cover "cover" on bed held by bolts
  fastener bolts "cover bolts" x4 thread M8x1.25 class 8.8 torque 240 N·m
}
machine large "large rig" extends small {
  part lid "lid" on bed
}
`;
  expect(checkTexts({ 'rig.dowel': text }, 'rig.dowel').findings.map(({ check }) => check)).toEqual([
    'torque-above-strength',
  ]);
});
