/**
 * Quantities as typed: what is reported where, and what is left alone. The wrong ones are published (US Army
 * technical manuals, public domain) unless they say otherwise; the right ones are everyday notation (common
 * practice, no source). Places are marked by carets under the text.
 */
import { describe, expect, test } from 'vitest';
import { checkTexts } from '../../../language-server/checks/check-texts.ts';
import { Loader } from '../../../language-server/model/names.ts';
import { quantityFaults } from '../../../language-server/model/quantity-faults.ts';
import { memoryHost } from '../../../language-server/project/project.ts';
import { mark, unmark } from '../../support/marked.ts';

function faults(text: string) {
  const loader = new Loader(memoryHost({ 'rig.dowel': text }));
  return quantityFaults(loader.load('rig.dowel')!);
}

const MACHINE = `machine rig "rig" {
  part base "base" fixed
  part cover "cover" on base held by bolts
  fastener bolts "bolts" x2
  system air "air" pressure 10 bar
}
`;

/** The statement as the only one of a procedure. */
function inProcedure(statement: string): string {
  return `${MACHINE}procedure work "Work" for rig {\n${statement}\n}\n`;
}

function expectAt(marked: string, check: string): void {
  const { text, ranges } = unmark(marked);
  const found = faults(text);
  expect(
    mark(
      text,
      found.map(({ at }) => at),
    ),
  ).toBe(mark(text, ranges));
  expect([...new Set(found.map((fact) => fact.check))]).toEqual([check]);
}

describe('a unit of another kind', () => {
  test('a force beside a torque (TM 55-1905-223-24-1: 270 lb-ft, 365 N), with its mend', () => {
    expectAt(
      `machine rig "rig" {
  fastener bolts "bolts" x2 torque 270 lbf·ft (365 N)
                                               ^^^^^
}`,
      'unit-wrong-kind',
    );
    const [fact] = faults('machine rig "rig" { fastener bolts "bolts" x2 torque 270 lbf·ft (365 N) }');
    expect(fact?.mends?.map(({ text }) => text)).toEqual(['365 N·m']);
  });

  // Dimensions after the SI brochure (BIPM, 9th edition), tables 2 to 4; written down from memory.
  test.each([
    ['part cover "cover" mass 20 N·m'],
    ['part cover "cover" mass 5 psi'],
    ['fastener bolts "bolts" torque 30 J'],
    ['fastener bolts "bolts" torque 30 lb'],
    ['fastener bolts "bolts" plan { 20 N; 60° }'],
    ['fastener bolts "bolts" plan { 20 N·m; back off 5 min }'],
    ['fastener bolts "bolts" nut factor 0.15 mm'],
    ['fastener bolts "bolts" x2 layout at 0 0, 50 0 kg'],
    ['system air "air" pressure 10 kg'],
    ['system air "air" temperature 140°'],
    ['system mains "mains" live 400 kg'],
    ['system sump "sump" holds 1.2 m'],
    ['consumable glue "glue" curing time 3 L'],
    ['tool wrench "wrench" range 5..60 N·m accuracy 4 mm'],
    ['value gap = 3 mm + 2 kg'],
    ['table shims { up to 0.3 mm: 1 mm over 0.3 kg: 2 mm }'],
    ['table shims { up to 0.3 mm: 1 mm over 0.3 mm: 2 kg }'],
  ])('%s', (item) => {
    expect(faults(`machine rig "rig" { ${item} }`).map(({ check }) => check)).toEqual(['unit-wrong-kind']);
  });

  test.each([
    ['wait 30 N·m'],
    ['tighten bolts to 25 N'],
    ['inflate air to 2 mm'],
    ['evacuate air to 2 h'],
    ['turn cover 2 kg'],
    ['tighten bolts pass 30 mm'],
    ['measure gap between cover and base { below 0.3 mm { } over 0.3 kg { } }'],
  ])('%s', (statement) => {
    expect(faults(inProcedure(statement)).map(({ check }) => check)).toEqual(['unit-wrong-kind']);
  });

  test('the time of a job in kilograms', () => {
    const found = faults(`${MACHINE}procedure work "Work" for rig time 3 kg { }`);
    expect(found.map(({ words }) => words?.kind)).toEqual(['a mass']);
  });

  test.each([
    ['wait 1 h 30 min'],
    ['wait for 30 min'],
    ['run for 50 km'],
    ['tighten bolts pass 30 %'],
    ['tighten bolts stage 2'],
    ['tighten bolts to 25 N·m'],
    ['tighten bolts to 90°'],
    ['check bolts at 80 N·m { tight { } moves { } }'],
    ['turn cover 2 turns'],
    ['back off bolts 1/6 turn'],
    ['fill air with 1.2 L air'],
    ['adjust cover to 0.5 mm'],
    ['align cover within 0.05 mm'],
    ['evacuate air to 500 micron'],
    ['measure mass of cover { below 3 kg { } over 3 kg { } }'],
    ['measure gap between cover and base { below 0.3 mm { } over 0.012 in { } }'],
    ['record total = gap * 2 + 0.2 mm'],
    ['record speed = 3 mm / 2 s'],
  ])('nothing is said of: %s', (statement) => {
    expect(faults(inProcedure(statement))).toEqual([]);
  });

  test.each([
    ['system sump "sump" holds 1.2 L'],
    ['system gas "gas" holds 1.1 kg'],
    ['system gas "gas" holds 1.2 L (1.1 kg)'],
    ['fastener bolts "bolts" torque 30 ft-lb'],
    ['fastener bolts "bolts" thread friction 0.12'],
    ['fastener bolts "bolts" plan { 20 N·m; 60°; 30 %; wait 10 min; again 20 N·m; back off 1/4..3/8 turn }'],
    ['fastener studs "studs" plan { 400 bar; 700 bar }'],
    ['tool gauge "gauge" range 0..16 bar accuracy 0.4 bar'],
    ['tool wrench "wrench" range 5..60 N·m accuracy 4 %'],
  ])('nothing is said of: %s', (item) => {
    expect(faults(`machine rig "rig" { ${item} }`)).toEqual([]);
  });
});

describe('a second unit', () => {
  test('differs: 12-15 psi printed with 103-138 kPa (TB 9-2320-335-13&P, 7-2.1)', () => {
    expectAt(
      `machine rig "rig" {
  system air "air" pressure 12..15 psi (103..138 kPa)
                                        ^^^^^^^^^^^^
}`,
      'second-unit-differs',
    );
  });

  test('a torque that differs is a fault of fastening (the numbers are ours; factor: NIST SP 811)', () => {
    const found = faults('machine rig "rig" { fastener bolts "bolts" torque 80 lbf·ft (200 N·m) }');
    expect(found.map(({ check }) => check)).toEqual(['torque-differs']);
    // 80 · 1.3558179 = 108.47
    expect(found[0]?.words?.right).toBe('108 N·m');
  });

  test('a fair rounding is right: 80 lb-ft with 110 N·m, 160 with 215 (TM 55-1905-223-24-1)', () => {
    expect(
      faults(`machine rig "rig" {
        fastener a "a" torque 80 lbf·ft (110 N·m)
        fastener b "b" torque 160 lbf·ft (215 N·m)
      }`),
    ).toEqual([]);
  });
});

describe('other slips', () => {
  test('a tolerance in pounds (TM 5-3835-220-13&P, 6-4.12: 30 ft. lbs., 3 lbs.), with its mend', () => {
    expectAt(
      `machine rig "rig" {
  fastener bolts "bolts" torque 30 lbf·ft ± 3 lb
                                              ^^
}`,
      'tolerance-unit',
    );
    const [fact] = faults('machine rig "rig" { fastener bolts "bolts" torque 30 lbf·ft ± 3 lb }');
    expect(fact?.mends?.map(({ text }) => text)).toEqual(['lbf·ft']);
  });

  test('a tolerance whose unit could be anything has no mend', () => {
    const [fact] = faults('machine rig "rig" { fastener bolts "bolts" torque 30 N·m ± 3 mm }');
    expect(fact?.check).toBe('tolerance-unit');
    expect(fact?.mends).toBeUndefined();
  });

  // NIST SP 811, appendix B.8 lists both readings of each.
  test.each(['pint', 'gallon', 'qt', 'fl oz'])('%s has two readings, and both are named', (unit) => {
    const [fact, ...rest] = faults(`machine rig "rig" { system sump "sump" holds 3 ${unit} }`);
    expect(rest).toEqual([]);
    expect(fact?.check).toBe('unit-ambiguous');
    expect(fact?.words?.typed).toBe(unit);
    expect(fact?.words?.readings).toMatch(/US .* or .*imperial/);
    expect(fact?.mends).toBeUndefined();
  });

  test('a range that runs downwards is turned round', () => {
    const [fact] = faults('machine rig "rig" { tool wrench "wrench" range 60..5 N·m }');
    expect(fact?.check).toBe('range-reversed');
    expect(fact?.mends?.map(({ text }) => text)).toEqual(['5..60 N·m']);
  });

  test.each([['30 min 1 h'], ['25 ± -3 N·m'], ['80 °C ± 5 %']])('%s does not go together', (typed) => {
    const found = faults(`machine rig "rig" { tool thing "thing" range ${typed} }`);
    expect(found.map(({ check }) => check)).toEqual(['quantity-malformed']);
  });

  test('a decimal comma and a missing unit are said once, by the parser', () => {
    const text = 'machine rig "rig" {\n  part cover "cover" mass 6,5 kg\n  part base "base" mass 19\n}\n';
    expect(faults(text)).toEqual([]);
    const { findings } = checkTexts({ 'rig.dowel': text });
    expect(findings.map(({ check }) => check).sort()).toEqual(['decimal-comma', 'unit-missing']);
  });
});
