/**
 * Where a notice has to stand, how strong its word has to be, what it may say. The rule is that of ANSI Z535.6 and
 * IEC/IEEE 82079-1: a safety message stands before the steps it is about; how tasks, branches and systems made safe count is
 * this language's own decision, told in the explanation of caution-missing. Jobs and machine are invented.
 */
import { describe, expect, test } from 'vitest';
import { ALL_CHECKS } from '../../../language-server/checks/all.ts';
import { checkProject } from '../../../language-server/checks/check-project.ts';
import { checkTexts } from '../../../language-server/checks/check-texts.ts';
import { memoryHost } from '../../../language-server/project/project.ts';

const MACHINE = `machine press "press" {
  variant drive: air, oil
  fluid spirit "spirit" hazard fuel
  consumable paste "etching paste" hazard chemical
  part bed "bed" fixed
  part guard "guard" on bed hazard moving when removing
  part blade "blade" on bed under guard hazard sharp can hurt
  part motor "motor" on bed held by motor-bolts hazard lifting when removing, fitting
  part pump "pump" on bed hazard lifting
  part head "head" on bed hazard hot
  part cap "cap" on head
  part box "terminal box" on bed opens mains
  part wheel "wheel" on bed hazard moving when turning
  fastener motor-bolts "motor bolts" x2
  connection hose "hose" joins bed opens air
  connection feed "feed pipe" joins bed opens tank
  isolator breaker "breaker" in mains normally on
  control cock "relief cock" in air normally closed
  control tap "drain tap" in tank normally closed
  system air "compressed air" pressure 8 bar temperature 90 °C relieved at cock hazard pressure, hot
  system mains "mains" live 400 V isolated at breaker proved with tester hazard live
  system tank "spirit tank" holds 5 L spirit drained at tap
  system hydraulics "hydraulics" stored "a spring" hazard stored-energy only drive is oil
  tool tester "tester"
}
procedure shut-down elsewhere "chapter 2" for press ends with mains isolated, air relieved
`;

const NOTICES = new Set(['caution-missing', 'caution-late', 'signal-word-weak']);

/** What is found about notices in a procedure of these lines: check, the words of its place, and its case. */
function found(lines: string, headers = ''): string[] {
  const text = `${MACHINE}procedure p "Try it" for press ${headers} {\n${lines}\n}\n`;
  return checkTexts({ 'a.dowel': text })
    .findings.filter(({ check }) => NOTICES.has(check))
    .map(
      ({ check, start, end, case: when }) => `${check} ${text.slice(start, end)}${when ? ` (${when})` : ''}`,
    );
}

const PRESSURE = 'warning pressure "It throws grit. Stand aside."\n';
const LIVE = 'danger live "It kills. Keep off."\n';
const HOT = 'warning hot "It burns. Wear gloves."\n';
const LIFTING = 'warning lifting "It crushes feet. Keep clear."\n';

describe('a system', () => {
  test('asks for a notice where its energy is let out', () => {
    expect(found('open cock')).toEqual(['caution-missing cock']);
    expect(found('relieve air')).toEqual(['caution-missing air']);
    expect(found(`${PRESSURE}open cock`)).toEqual([]);
  });

  test('once noticed and made safe needs no further notice, in any task', () => {
    const safe = `task a "A" {\n${PRESSURE}open cock\n${HOT}let cool air\n}\n`;
    expect(found(`${safe}task b "B" { disconnect hose }`)).toEqual([]);
    expect(found(`${safe}task b "B" { disconnect hose\nconnect hose\nclose cock\nrun\nopen cock }`)).toEqual([
      'caution-missing cock',
    ]);
  });

  test('is not made safe by a notice in another task', () => {
    expect(found(`task a "A" {\n${PRESSURE}}\ntask b "B" { open cock }`)).toEqual(['caution-missing cock']);
    expect(found(`${PRESSURE}task b "B" { open cock }`)).toEqual([]);
    expect(found(`task a "A" {\nstep "first" {\n${PRESSURE}}\nstep "then" { open cock }\n}`)).toEqual([]);
  });

  test('that is switched off is noticed before it is tested or opened; the finding stands where making safe begins', () => {
    expect(found(`${LIVE}isolate mains\nprove mains safe\nremove box`)).toEqual([]);
    expect(found(`isolate mains\n${LIVE}prove mains safe\nremove box`)).toEqual([]);
    expect(found('isolate mains\nprove mains safe\nremove box')).toEqual(['caution-missing mains']);
    expect(found('isolate mains\nremove box')).toEqual(['caution-missing mains']);
    expect(found('switch off breaker\nprove mains safe')).toEqual(['caution-missing breaker']);
    // Nobody comes near: the machine is only switched off.
    expect(found('isolate mains\nclean bed\nrestore mains')).toEqual([]);
    // Read with the breaker thrown already, and nothing in the task is left to be careful with.
    expect(found(`task a "A" { isolate mains\n${LIVE}}\ntask b "B" { prove mains safe }`)).toEqual([
      'caution-late danger',
    ]);
    expect(found(`task a "A" {\n${LIVE}isolate mains\n}\ntask b "B" { prove mains safe }`)).toEqual([]);
  });

  test('that is left to cool is noticed before it is opened', () => {
    const relieved = `${PRESSURE}open cock\n`;
    expect(found(`${relieved}let cool air\ndisconnect hose`)).toEqual(['caution-missing air']);
    expect(found(`${relieved}let cool air\n${HOT}disconnect hose`)).toEqual([]);
    expect(found(`${relieved}${HOT}let cool air\ndisconnect hose`)).toEqual([]);
  });

  test('that is safe from the start, or made so by another procedure, is no concern of this one', () => {
    expect(found('disconnect hose', 'starts with air relieved, air cool')).toEqual([]);
    expect(found('do shut-down\nprove mains safe\nremove box')).toEqual([]);
  });

  test('opened with its energy still there is told once: it is not made safe', () => {
    const text = `${MACHINE}procedure p "Try it" for press {\nremove box\n}\n`;
    const checks = checkTexts({ 'a.dowel': text }).findings.map(({ check }) => check);
    expect(checks).toContain('not-made-safe');
    expect(checks).not.toContain('caution-missing');
  });

  test('put under pressure asks for a notice however safe it was', () => {
    expect(
      found(`task a "A" {\n${PRESSURE}open cock\nclose cock\n}\ntask b "B" { pressurise air to 2 bar }`),
    ).toEqual(['caution-missing air']);
  });

  test('of a variant asks in that variant', () => {
    expect(found('when drive is oil { relieve hydraulics }')).toEqual([
      'caution-missing hydraulics (drive is oil)',
    ]);
  });

  test('filled with a hazardous fluid asks for the hazard of the fluid', () => {
    expect(found('disconnect feed')).toEqual(['caution-missing feed']);
    expect(found('warning fuel "It burns. No flames."\nopen tap\ntask b "B" { disconnect feed }')).toEqual(
      [],
    );
    expect(found('open tap\nclose tap\nfill tank')).toEqual(['caution-missing tap']);
  });
});

describe('a thing', () => {
  test('asks in each task that meets it, once', () => {
    const sharp = 'caution sharp "It cuts. Wear gloves."\n';
    expect(found('warning moving "It cuts. Keep off."\nremove guard\nclean blade\nremove blade')).toEqual([
      'caution-missing blade',
    ]);
    expect(found(`${sharp}remove blade\ntask b "B" { clean blade }`)).toEqual([]);
    expect(found(`task a "A" {\n${sharp}remove blade\n}\ntask b "B" { clean blade }`)).toEqual([
      'caution-missing blade',
    ]);
  });

  test('with `when` asks for those actions only', () => {
    expect(found('clean guard')).toEqual([]);
    expect(found('remove guard')).toEqual(['caution-missing guard']);
    expect(found('remove wheel')).toEqual([]);
    expect(found('turn wheel')).toEqual(['caution-missing wheel']);
    expect(found('unbolt motor')).toEqual(['caution-missing motor']);
    expect(found('clean motor\ninspect motor for "cracks"')).toEqual([]);
  });

  test('that is heavy asks where it is lifted, not where it is touched', () => {
    expect(found('clean pump')).toEqual([]);
    expect(found('raise pump')).toEqual(['caution-missing pump']);
  });

  test('that is only looked at asks nothing', () => {
    expect(found('inspect blade for "nicks"\nmeasure length of blade\nrecord length of blade')).toEqual([]);
  });

  test('that is hot is dealt with once it was noticed and left to cool', () => {
    expect(found(`task a "A" {\n${HOT}let cool head\n}\ntask b "B" { remove head }`)).toEqual([]);
    expect(found('let cool head\nremove head')).toEqual(['caution-missing head']);
    expect(found(`${HOT}let cool head\nrun\ntask b "B" { remove head }`)).toEqual([]);
    expect(found(`task a "A" {\n${HOT}let cool head\n}\nrun\ntask b "B" { remove head }`)).toEqual([
      'caution-missing head',
    ]);
  });

  test('that is used up asks where it is used', () => {
    expect(found('clean bed with paste')).toEqual(['caution-missing clean bed with paste']);
    expect(found('warning chemical "It eats skin. Wear gloves."\nclean bed with paste')).toEqual([]);
  });

  test('is told once in a task, and once for two hazards at one step', () => {
    expect(found('unbolt motor\nremove pump')).toEqual(['caution-missing motor']);
    const text = 'machine m { part a "knife" hazard sharp, hot }\nprocedure p for m { remove a\nrefit a }';
    const missing = checkTexts({ 'a.dowel': text }).findings.filter(
      ({ check }) => check === 'caution-missing',
    );
    expect(missing.map(({ message }) => message)).toEqual([
      'No notice about sharp edges and heat comes before this step on the knife.',
    ]);
    expect(missing[0]!.help).toContain('`warning sharp, hot "…"`');
  });
});

describe('branches, loops and mirrored tasks', () => {
  test('a notice in a branch counts in that case', () => {
    expect(found(`when drive is air {\n${LIFTING}}\nraise pump`)).toEqual([
      'caution-missing pump (drive is oil)',
    ]);
    expect(found(`if "it is stuck" {\n${LIFTING}} otherwise {\n${LIFTING}}\nraise pump`)).toEqual([]);
    expect(found(`inspect bed {\nclean {\n${LIFTING}}\ndirty { }\n}\nraise pump`)[0]).toMatch(
      /^caution-missing pump \(/,
    );
  });

  test('a notice in a repeat counts for it and for what follows', () => {
    expect(
      found(`repeat until "right" at most 3 times {\n${LIFTING}raise pump\nlower pump\n}\nraise pump`),
    ).toEqual([]);
    expect(found('repeat until "right" at most 3 times {\nraise pump\nlower pump\n}')).toEqual([
      'caution-missing pump',
    ]);
    expect(found(`for each n in 1..3 {\nraise pump\nlower pump\n}`)).toEqual(['caution-missing pump']);
  });

  test('a task that is used again carries its own notice', () => {
    expect(found(`task a "A" {\n${LIFTING}raise pump\nlower pump\n}\ndo a`)).toEqual([]);
    expect(found('task a "A" {\nraise pump\nlower pump\n}\ndo a')).toEqual(['caution-missing pump']);
  });

  test('a mirrored task is asked where `reverse` stands', () => {
    const strip = `task strip "Strip" {\n${LIFTING}remove motor-bolts\nremove motor\n}\n`;
    expect(found(`${strip}task back "Back" { reverse strip }`)).toEqual(['caution-missing reverse strip']);
    expect(found(`${strip}task back "Back" {\n${LIFTING}reverse strip\n}`)).toEqual([]);
  });
});

describe('a late notice', () => {
  test('is told where it stands', () => {
    expect(found(`remove guard\nwarning moving "It cuts. Keep off."`)).toEqual(['caution-late warning']);
    expect(found(`raise pump\nclean bed\n${LIFTING}clean bed`)).toEqual(['caution-late warning']);
  });

  test('is not one that belongs to another thing', () => {
    expect(found(`unbolt motor\n${LIFTING}remove pump`)).toEqual(['caution-missing motor']);
  });

  test('is one directly behind a step that an earlier notice covered, where it guards nothing any more', () => {
    expect(found(`${LIFTING}unbolt motor\n${LIFTING}raise pump`)).toEqual([]);
    expect(found(`${LIFTING}unbolt motor\nraise pump\n${LIFTING}clean bed`)).toEqual([
      'caution-late warning',
    ]);
    expect(found(`${LIFTING}unbolt motor\nraise pump\n${LIFTING}lower pump`)).toEqual([]);
    // It had its own notice; what stands behind it is about the state that it leaves.
    expect(found(`${LIFTING}raise pump\n${LIFTING}clean bed`)).toEqual([]);
    expect(found(`${LIFTING}unbolt motor\nraise pump\nclean bed\n${LIFTING}clean bed`)).toEqual([]);
    expect(
      found(`${LIFTING}unbolt motor\nraise pump\nwarning lifting, sharp "It cuts."\nclean blade`),
    ).toEqual([]);
  });

  test('is not one in another task', () => {
    expect(
      found(`task a "A" { remove guard }\ntask b "B" {\nwarning moving "It cuts. Keep off."\n}`),
    ).toEqual(['caution-missing guard']);
  });
});

describe('a notice that cannot be read for certain is taken to be the right one', () => {
  test('without a word for the hazard it counts for the next step', () => {
    expect(found('warning "It crushes feet. Keep clear."\nraise pump')).toEqual([]);
    expect(found('warning "It crushes feet. Keep clear."\nclean bed\nraise pump')).toEqual([
      'caution-missing pump',
    ]);
    expect(found('note "It is heavy."\nraise pump')).toEqual(['caution-missing pump']);
  });

  test('with a word of its own as well', () => {
    expect(found('warning crushing "It crushes feet. Keep clear."\nraise pump')).toEqual([]);
  });
});

describe('signal words', () => {
  test('milder than the hazard', () => {
    expect(found('caution live "It shocks. Keep off."\nisolate mains\nprove mains safe')).toEqual([
      'signal-word-weak caution',
    ]);
    expect(found('caution lifting "It crushes feet. Keep clear."\nraise pump')).toEqual([]);
    expect(found('notice lifting "It crushes feet. Keep clear."\nraise pump')).toEqual([
      'signal-word-weak notice',
    ]);
    expect(found('note lifting "It is heavy."\nraise pump')).toEqual(['signal-word-weak note']);
    expect(found('notice sharp "It cuts. Wear gloves."\nclean blade')).toEqual(['signal-word-weak notice']);
  });

  test('a stronger one before the step makes up for a mild one', () => {
    expect(found(`notice lifting "It is heavy. Use two hands."\n${LIFTING}raise pump`)).toEqual([]);
  });

  test('one directly before a step is judged by itself, whatever stands further up', () => {
    expect(found(`${LIFTING}unbolt motor\nnotice lifting "It is heavy. Use two hands."\nraise pump`)).toEqual(
      ['signal-word-weak notice'],
    );
    expect(found(`${LIFTING}unbolt motor\nraise pump`)).toEqual([]);
    expect(found(`caution live "It shocks. Keep off."\nisolate mains\n${LIVE}prove mains safe`)).toEqual([
      'signal-word-weak caution',
    ]);
  });

  test('one that guards nothing here is nobody’s business', () => {
    expect(found('note live "The mains is 400 V."\nclean bed')).toEqual([]);
  });

  test('under the military convention a caution is about equipment', () => {
    const text = `${MACHINE}procedure p "Try it" for press {\ncaution lifting "It crushes feet. Keep clear."\nraise pump\nlower pump\n}\n`;
    const weak = (convention: 'ansi' | 'military') =>
      checkProject(memoryHost({ 'a.dowel': text }), ['a.dowel'], { convention }).findings.filter(
        ({ check }) => check === 'signal-word-weak',
      );
    expect(weak('ansi')).toEqual([]);
    expect(weak('military').map(({ help }) => help)).toEqual([
      'Write `warning`: in MIL-STD-38784 and ASD-STE100, `caution` is for damage to equipment.',
    ]);
  });

  test('the mend writes the word that is needed', () => {
    const text = `${MACHINE}procedure p "Try it" for press {\ncaution live "It shocks. Keep off."\nisolate mains\nprove mains safe\nrestore mains\n}\n`;
    const [weak] = checkTexts({ 'a.dowel': text }).findings.filter(
      ({ check }) => check === 'signal-word-weak',
    );
    const [edit] = weak!.mends![0]!.edits;
    const mended = text.slice(0, edit!.start) + edit!.text + text.slice(edit!.end);
    expect(checkTexts({ 'a.dowel': mended }).findings.map(({ check }) => check)).not.toContain(
      'signal-word-weak',
    );
  });
});

describe('where no hazard is declared nothing is asked', () => {
  test.each(
    ALL_CHECKS.filter(({ good }) => !/\bhazard\b/.test(good)).map(({ name, good }) => [name, good] as const),
  )('the right example of %s', (_name, good) => {
    const checks = checkTexts({ 'a.dowel': good }).findings.map(({ check }) => check);
    expect(checks.filter((check) => NOTICES.has(check))).toEqual([]);
  });
});

describe('words for hazards', () => {
  const slips = (text: string) =>
    checkTexts({ 'a.dowel': text })
      .findings.filter(({ check }) => check === 'unknown-name')
      .map(({ message }) => message);

  test('that are nearly known ones are slips, in the machine and in notices; others are the author’s own', () => {
    expect(slips('machine m { part a "a" hazard presure }')[0]).toMatch(/presure/);
    expect(slips('machine m { part a "a" hazard moving when removeing }')[0]).toMatch(/removeing/);
    expect(slips('machine m { part a "a" hazard radiation when storing }')).toEqual([]);
    const use = 'machine m { part a "a" hazard radiation }\nprocedure p for m { ';
    expect(slips(`${use}warning radiaton "It harms. Keep off." }`)[0]).toMatch(/radiaton/);
    expect(slips(`${use}warning radiation, asbestos "It harms. Keep off." }`)).toEqual([]);
  });
});
