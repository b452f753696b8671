/**
 * The setting of a torque wrench that a page prints. Adapter in line: TW = TA L/(L + A), US Army TM 1-1500-204-23 and
 * FAA AC 43.13-1B; the prevailing torque is added to the torque (AC 43.13-1B, 7-40). Values reckoned by hand from these.
 */
import { expect, test } from 'vitest';
import { plainText } from '../../../language-server/publish/document/types.ts';
import { documentsIn, stepsOf } from './documents.ts';

function fastening(step: string, tools = 'tool wrench "torque wrench" range 5..60 N·m length 250 mm') {
  const [doc] = documentsIn(`machine m "machine" {
  part body "body" fixed
  part cover "cover" on body held by bolts, nuts
  ${tools}
  tool crow-foot "crow-foot" adapter length 50 mm
  tool claw "claw" adapter length 50 mm
  fastener bolts "cover bolts" x4 plan { 12 N·m; 30 N·m }
  fastener nuts "lock nuts" x2 torque 20 N·m prevailing torque 2 N·m
}
procedure p "P" for m { remove bolts, nuts
fit bolts, nuts by hand
${step} }`);
  return stepsOf(doc!.flow).at(-1)!;
}

const wrenches = (step: string, tools?: string) => fastening(step, tools).detail.fastening[0]!.wrenches;

test('an adapter: a setting for each stage, the reason once', () => {
  expect(wrenches('tighten bolts with wrench, crow-foot')).toMatchObject([
    {
      tool: 'wrench',
      sentence: 'For stage 1, set the torque wrench to 10 N·m (7.4 lbf·ft).',
      because: expect.stringMatching(/^The adapter makes the wrench longer: 12 N·m .* is 10 N·m/),
    },
    { sentence: 'For stage 2, set the torque wrench to 25 N·m (18.4 lbf·ft).' },
  ]);
  expect(wrenches('tighten bolts with wrench, crow-foot')[1]!.because).toBeUndefined();
});

test('a tool that is declared an adapter counts, whatever it is called', () => {
  expect(wrenches('tighten bolts with wrench, claw')).toHaveLength(2);
});

test('a stage, a typed torque and a percentage have settings of their own', () => {
  const text = (step: string) => wrenches(step).map(({ setting }) => setting.text);
  expect(text('tighten bolts stage 2 with wrench, crow-foot')).toEqual(['25 N·m']);
  expect(text('tighten bolts to 24 N·m with wrench, crow-foot')).toEqual(['20 N·m']);
  expect(text('tighten bolts pass 50 % with wrench, crow-foot')).toEqual(['12.5 N·m']);
});

test('square to the wrench, or with the wrench alone, the scale shows the torque', () => {
  expect(wrenches('tighten bolts with wrench, crow-foot "Set the crow-foot at 90° to the wrench."')).toEqual(
    [],
  );
  expect(wrenches('tighten bolts with wrench')).toEqual([]);
});

test('a prevailing torque is added, with or without a named wrench', () => {
  expect(wrenches('tighten nuts with wrench')).toMatchObject([
    { setting: { text: '22 N·m' }, sentence: 'Set the torque wrench to 22 N·m (16.2 lbf·ft).' },
  ]);
  expect(wrenches('tighten nuts')).toMatchObject([
    { name: 'the torque wrench', sentence: 'Set the torque wrench to 22 N·m (16.2 lbf·ft).' },
  ]);
  // First what the nut takes, then the lever: (20 + 2) · 250/300.
  expect(wrenches('tighten nuts with wrench, crow-foot')[0]!.setting.text).toBe('18.3 N·m');
});

test('a percentage says what it comes to', () => {
  const { more } = fastening('tighten bolts pass 50 % with wrench');
  expect(more.map((one) => plainText(one))).toEqual(['That is 15 N·m (11.06 lbf·ft).']);
});

test('a union: the wrench stands behind the tightening that it is for', () => {
  const [doc] = documentsIn(`machine m "machine" {
  part base "base" fixed
  part tank "tank" on base
  connection hose "brake hose" joins tank to base torque 40 N·m
  tool wrench "torque wrench" range 5..60 N·m
}
procedure p "P" for m { disconnect hose
connect hose with wrench }`);
  expect(plainText(stepsOf(doc!.flow).at(-1)!.heading)).toMatch(
    /^Connect the brake hose and tighten it to 40 N·m \(.*\) with the torque wrench\.$/,
  );
});
