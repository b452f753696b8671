/**
 * Which way round: vacuum readings, turns, tolerances. Right-hand threads tighten clockwise (trade practice, no source);
 * a gauge in microns shows what is left (US Army TM 10-8145-222-23).
 */
import { describe, expect, test } from 'vitest';
import { checkTexts } from '../../../language-server/checks/check-texts.ts';

const MINE = ['vacuum-reversed', 'direction-differs', 'tolerances-differ'];

function found(...lines: string[]): string[] {
  const text = `machine rig "rig" {
  fluid gas-filling "gas"
  system gas "gas" holds 1 kg gas-filling
  part bed "bed" fixed
  part cover "cover" on bed held by bolts
  fastener bolts "bolts" x2 thread M8x1.25 torque 20 N·m
  fastener nut "nut" x1 on bed left-hand
  fastener pin "pin" x1 on bed
  control cock "cock" on bed normally closed closes clockwise
  control service-valve "service valve" on bed normally closed closes counter-clockwise
}
procedure p "P" for rig {
  ${lines.join('\n  ')}
}
`;
  const { findings } = checkTexts({ 'rig.dowel': text }, 'rig.dowel');
  expect(findings.filter(({ check }) => /syntax|unknown|unit/.test(check))).toEqual([]);
  return findings.map(({ check }) => check).filter((check) => MINE.includes(check));
}

describe('a vacuum', () => {
  test.each([
    'evacuate gas to at least 500 micron',
    'evacuate gas to 400 micron not under 500 micron',
    'evacuate gas "To 500 microns or more."',
    'evacuate gas until "the gauge shows at least 0.5 Torr"',
    'evacuate gas to at least 5 mbar',
  ])('%s', (line) => expect(found(line)).toEqual(['vacuum-reversed']));

  test.each([
    'evacuate gas to 500 micron',
    'evacuate gas to at most 500 micron',
    'evacuate gas to at least 29 inHg',
    'evacuate gas "To 500 microns or less."',
    'evacuate gas "For at least 30 min, to 500 microns."',
    'pressurise gas to at least 2 bar',
  ])('%s', (line) => expect(found(line)).toEqual([]));
});

describe('a turn', () => {
  test.each([
    'loosen bolts "Clockwise."',
    'loosen nut "Turn it counter-clockwise."',
    'loosen nut "Turn it anticlockwise."',
    'open cock "Clockwise."',
    'open service-valve "Counterclockwise."',
  ])('%s', (line) => expect(found(line)).toEqual(['direction-differs']));

  test.each([
    'loosen bolts "Counter-clockwise."',
    'loosen nut "Clockwise: the thread is left-hand."',
    'loosen pin "Clockwise."',
    'loosen nut "Not counter-clockwise."',
    'open cock "Counter-clockwise."',
    'open service-valve "Clockwise."',
  ])('%s', (line) => expect(found(line)).toEqual([]));
});

test('tolerances of one gauge', () => {
  const both = (fine: string) => found('evacuate gas to 2000 ± 25 micron', `evacuate gas to ${fine}`);
  expect(both('500 +1/-0 micron')).toEqual(['tolerances-differ']);
  expect(both('500 ± 5 micron')).toEqual([]);
  expect(both('500 micron')).toEqual([]);
});
