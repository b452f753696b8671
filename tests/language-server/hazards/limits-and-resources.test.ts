/**
 * Limits, tools, people, supplies, time. That these are listed before the steps and agree with them: S1000D and DITA
 * (preliminary requirements); a tank that must not go over 15 psi and is given 20 in its second unit is printed in
 * TB 9-2320-335-13&P; tools used and not listed, listed and not used: an open rover manual. The rest is common
 * practice, no source. Jobs and machine are invented.
 */
import { describe, expect, test } from 'vitest';
import { checkTexts } from '../../../language-server/checks/check-texts.ts';

const MACHINE = `machine rig "rig" {
  variant size: small, large
  fluid oil "gear oil"
  consumable cloth "lint-free cloth"
  value seat-torque "seat torque" = 90 N·m
  part bed "bed" fixed
  part lid "lid" on bed sealed by lid-ring held by lid-bolts
  part rings "piston rings" x6 on bed
  part pump "pump" on bed supplied with pump-seal
  seal pump-seal "pump seal" on pump
  seal lid-ring "lid ring" on bed
  fastener lid-bolts "lid bolts" x4 torque 20 N·m
  fastener seat-nut "seat nut" x1 not over 80 N·m
  control vent "vent" in air
  system air "test air" not over 15 psi relieved at vent
  system gear "gear oil" holds 3 L oil
  tool wrench "torque wrench" range 5..100 N·m
  tool spanner "ring spanner"
  tool saw "band saw"
  tool gauge "depth gauge"
  tool padlock "padlock"
  tool pin "locking pin" locks lid
  tool drift "bronze drift"
  kit seal-kit "seal kit" contains lid-ring, pump-seal
}
procedure helper "Helper" for rig tools drift { clean bed with drift }
`;

function found(check: string, lines: string, headers = ''): string[] {
  const text = `${MACHINE}procedure p "Try it" for rig ${headers} {\n${lines}\n}\n`;
  return checkTexts({ 'a.dowel': text })
    .findings.filter((finding) => finding.check === check)
    .map(({ start, end }) => text.slice(start, end));
}

describe('limits', () => {
  const above = (lines: string) => found('limit-exceeded', lines);

  test('a torque over the limit of the nut, typed, named or with a tolerance', () => {
    expect(above('tighten seat-nut to 80 N·m')).toEqual([]);
    expect(above('tighten seat-nut to 81 N·m')).toEqual(['81 N·m']);
    expect(above('tighten seat-nut to 78 ± 3 N·m')).toEqual(['78 ± 3 N·m']);
    expect(above('tighten seat-nut to 60..90 N·m')).toEqual(['60..90 N·m']);
    expect(above('tighten seat-nut to seat-torque')).toEqual(['seat-torque']);
    expect(above('tighten lid-bolts to 90 N·m')).toEqual([]);
  });

  test('a limit of the step itself', () => {
    expect(above('tighten lid-bolts to 25 N·m not over 20 N·m')).toEqual(['25 N·m']);
    expect(above('tighten lid-bolts to 20 N·m not over 20 N·m')).toEqual([]);
  });

  test('across units; the same value rounded in another unit is not above', () => {
    expect(above('pressurise air to 1.03 bar')).toEqual([]);
    expect(above('pressurise air to 1.4 bar')).toEqual(['1.4 bar']);
    expect(above('pressurise air to 12..15 psi')).toEqual([]);
    expect(above('tighten seat-nut to 62 lbf·ft')).toEqual(['62 lbf·ft']);
  });

  test('in the sentence', () => {
    expect(above('pressurise air "Slowly, to 20 psi."')).toEqual(['"Slowly, to 20 psi."']);
    expect(above('pressurise air "Never to 20 psi."')).toEqual([]);
    expect(above('pressurise air "Wait 20 min."')).toEqual([]);
  });

  test('in the machine file', () => {
    const texts = { 'm.dowel': 'machine m {\n  fastener f "nut" x1 torque 90 N·m not over 80 N·m\n}\n' };
    expect(checkTexts(texts).findings.map(({ check }) => check)).toContain('limit-exceeded');
    const right = {
      'm.dowel': 'machine m {\n  fastener f "nut" x1 torque at least 70 N·m not over 80 N·m\n}\n',
    };
    expect(checkTexts(right).findings.map(({ check }) => check)).not.toContain('limit-exceeded');
  });
});

describe('tools', () => {
  const unlisted = (lines: string, tools: string) => found('tool-unlisted', lines, tools);
  const unused = (lines: string, tools: string) => found('tool-unused', lines, tools);

  test('used and not listed: told once, where it is first used; without a list nothing is missed', () => {
    expect(unlisted('clean bed with saw\nclean lid with saw', 'tools drift')).toEqual(['saw']);
    expect(unlisted('clean bed with saw', '')).toEqual([]);
    expect(unlisted('clean bed with saw', 'tools saw')).toEqual([]);
    expect(unlisted('fit pin\nremove pin', 'tools saw')).toEqual(['pin']);
    expect(unlisted('remove lid-bolts holding lid with pin', 'tools saw')).toEqual(['pin']);
  });

  test('listed and not used', () => {
    expect(unused('clean bed', 'tools saw')).toEqual(['saw']);
    expect(unused('clean bed with saw', 'tools saw')).toEqual([]);
    expect(unused('clean bed "Cut the old seal off with the saw."', 'tools saw')).toEqual([]);
    expect(unused('do helper', 'tools drift')).toEqual([]);
  });

  test('an angle gauge is for what is turned by an angle', () => {
    const job = (plan: string) => `machine m "hub" {
  part hub "hub" fixed
  fastener nut "hub nut" holds hub  ${plan}
  tool dial "angle gauge"
}
procedure p "Tighten" for m tools dial {
  loosen nut
  inspect hub
  tighten nut
}
`;
    const checks = (plan: string) => checkTexts({ 'a.dowel': job(plan) }).findings.map(({ check }) => check);
    expect(checks('torque 60 N·m')).toContain('tool-unused');
    expect(checks('plan { 60 N·m; 90° }')).not.toContain('tool-unused');
  });

  test('what no step has to name counts as used', () => {
    expect(unused('tighten lid-bolts', 'tools wrench, spanner')).toEqual([]);
    expect(unused('clean bed', 'tools wrench')).toEqual(['wrench']);
    expect(unused('measure depth of bed', 'tools gauge')).toEqual([]);
    expect(unused('measure depth of bed with wrench', 'tools gauge, wrench')).toEqual(['gauge']);
    expect(unused('lock lid', 'tools pin')).toEqual([]);
    expect(unused('lock out vent', 'tools padlock')).toEqual([]);
  });
});

describe('people', () => {
  test('a step for more than there are', () => {
    expect(found('people-short', 'remove lid with 2 people', 'people 1')).toEqual(['with 2 people']);
    expect(found('people-short', 'remove lid with 2 people', 'people 2')).toEqual([]);
    expect(found('people-short', 'remove lid with 2 people')).toEqual([]);
  });
});

describe('supplies', () => {
  const short = (lines: string, supplies: string) => found('supply-short', lines, supplies);

  test('a new part that is not listed; without a list nothing is missed', () => {
    expect(short('fit new lid', 'supplies pump')).toEqual(['lid']);
    expect(short('fit new lid', 'supplies lid')).toEqual([]);
    expect(short('fit new lid', '')).toEqual([]);
  });

  test('fewer than are fitted', () => {
    expect(short('fit new rings', 'supplies rings x4')).toEqual(['rings']);
    expect(short('fit new rings', 'supplies rings x6')).toEqual([]);
    expect(short('fit new rings #1, #2', 'supplies rings x2')).toEqual([]);
    expect(short('fit new rings #1..#3\nfit new rings #4', 'supplies rings x3')).toEqual(['rings #4']);
    expect(short('fit new rings', 'supplies rings')).toEqual([]);
    expect(short('for each n in 1..4 { fit new rings #n }', 'supplies lid')).toEqual(['rings #n']);
    expect(short('for each n in 1..4 { fit new rings #n }', 'supplies rings x3')).toEqual(['rings #n']);
    expect(short('for each n in 1..4 { fit new rings #n }', 'supplies rings x4')).toEqual([]);
    expect(short('for each n of rings { fit new rings #n }', 'supplies rings x5')).toEqual(['rings #n']);
  });

  test('what a kit contains and what comes with another part is there', () => {
    expect(short('fit new lid-ring', 'supplies seal-kit')).toEqual([]);
    expect(short('fit kit seal-kit', 'supplies lid-ring, pump-seal')).toEqual([]);
    expect(short('fit kit seal-kit', 'supplies lid')).toEqual(['seal-kit']);
    expect(short('fit new pump-seal', 'supplies pump')).toEqual([]);
  });

  test('what is only fitted where it is found worn is not asked for', () => {
    expect(short('if "it is worn" { fit new lid }', 'supplies pump')).toEqual([]);
    expect(short('when size is large { fit new lid }', 'supplies pump')).toEqual(['lid']);
  });

  test('amounts of fluid', () => {
    expect(short('fill gear with 3 L oil', 'supplies 2 L oil')).toEqual(['2 L oil']);
    expect(short('fill gear with 3 L oil', 'supplies 3000 mL oil')).toEqual([]);
    expect(short('fill gear with 1 L oil\ntop up gear with 1.5 L oil', 'supplies 2 L oil')).toEqual([
      '2 L oil',
    ]);
    expect(short('fill gear with 3 L oil', 'supplies lid')).toEqual([]);
    expect(short('if "it is low" { top up gear with 3 L oil }', 'supplies 2 L oil')).toEqual([]);
  });

  test('fluids and consumables that are used, where the list names others', () => {
    const steps = 'clean lid with cloth\nfill gear with 3 L oil';
    expect(short(steps, 'supplies 3 L oil')).toEqual(['cloth']);
    expect(short(steps, 'supplies cloth')).toEqual(['oil']);
    expect(short(steps, 'supplies cloth, 3 L oil')).toEqual([]);
    // Parts only: oil and cloths are the workshop's.
    expect(short(steps, 'supplies lid')).toEqual([]);
    expect(short('if "it is dirty" { clean lid with cloth }', 'supplies 3 L oil')).toEqual([]);
    expect(short('when size is large { clean lid with cloth }', 'supplies 3 L oil')).toEqual(['cloth']);
  });
});

describe('time', () => {
  const late = (lines: string, time: string) => found('time-differs', lines, time);

  test('waits that are longer than the time stated', () => {
    expect(late('wait 90 min\nwait 1 h', 'time 2 h')).toEqual(['time 2 h']);
    expect(late('wait 90 min\nwait 30 min', 'time 2 h')).toEqual([]);
    expect(late('wait 2 h', 'time 1 h 30 min')).toEqual(['time 1 h 30 min']);
    expect(late('wait 2 h', '')).toEqual([]);
  });

  test('the quickest way through the branches counts', () => {
    expect(late('if "it is wet" { wait 5 h }', 'time 1 h')).toEqual([]);
    expect(late('if "it is wet" { wait 5 h } otherwise { wait 2 h }', 'time 1 h')).toEqual(['time 1 h']);
    expect(late('inspect bed { dry { }\nwet { wait 5 h } }', 'time 1 h')).toEqual([]);
    expect(late('let cool bed for 2 h', 'time 1 h')).toEqual(['time 1 h']);
  });
});

describe('notices and notes that give steps', () => {
  test('a note never instructs; a notice only where the step stands nowhere', () => {
    expect(found('note-gives-steps', 'clean bed\nnote "Clean the bed."')).toHaveLength(1);
    expect(found('note-gives-steps', 'note "The bed stays clean."')).toEqual([]);
    expect(found('notice-gives-steps', 'warning "It burns. Remove the lid first."')).toHaveLength(1);
    expect(found('notice-gives-steps', 'warning "It burns. Remove the lid slowly."\nremove lid')).toEqual([]);
    expect(found('notice-gives-steps', 'warning "It burns. Never remove the lid."')).toEqual([]);
    expect(found('notice-gives-steps', 'warning "It burns. Keep the lid shut."')).toEqual([]);
  });
});
