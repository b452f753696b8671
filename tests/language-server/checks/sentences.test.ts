/**
 * The sentences of findings: titles in singular and plural, positions by number and by name, and the words
 * that fit the kind of thing. Outside source: English grammar as technicians write it (common practice, no
 * source); the expected sentences were written by hand.
 */
import { describe, expect, test } from 'vitest';
import { checkTexts } from '../../../language-server/checks/check-texts.ts';
import { isPlural, plural, singular } from '../../../language-server/checks/grammatical.ts';

describe('titles', () => {
  test.each([
    ['head bolt', 'head bolts'],
    ['big-end cap', 'big-end caps'],
    ['brake bush', 'brake bushes'],
    ['gear box', 'gear boxes'],
    ['pump assembly', 'pump assemblies'],
    ['tie key', 'tie keys'],
    ['flange boss', 'flange bosses'],
    ['copper washer of the check valve', 'copper washers of the check valve'],
    ['sealing face (upper)', 'sealing faces (upper)'],
    ['screw, long', 'screws, long'],
  ])('%s, %s', (one, many) => {
    expect(plural(one)).toBe(many);
    expect(singular(many)).toBe(one);
    expect(plural(many)).toBe(many);
    expect(singular(one)).toBe(one);
    expect(isPlural(many)).toBe(true);
    expect(isPlural(one)).toBe(false);
  });

  test.each(['chassis', 'drill press', 'lens', 'gas', 'air bus', 'crank axis'])(
    '%s is one thing',
    (title) => {
      expect(isPlural(title)).toBe(false);
      expect(singular(title)).toBe(title);
    },
  );
});

const RIG = `machine rig "test rig" {
  part bed "bed" fixed
  part caps "bearing caps" positions front, middle, rear on bed under hose, guard matched
  part guard "belt guard" on bed held by clip
  part wheel "idler wheel" x2 on bed
  part pump "pump" on bed opens mains, air
  part arm "swing arm" on bed carries wheel
  seal cap-rings "cap ring" positions front, middle, rear on bed single-use
  fastener cap-bolts "cap bolts" x6 plan { 10 N·m; 20 N·m; 30 N·m; 40 N·m } secured by tab, wire
  fastener clip "guard clip" x1 frees when loose torque 4 N·m
  connection hose "oil hose" joins pump to bed
  control tap "drain tap" in oil
  isolator breaker "breaker" in mains normally on
  system oil "lubricating oil" holds 3 L drained at tap
  system mains "mains" live 230 V isolated at breaker proved with tester
  system air "compressed air" pressure 5 bar temperature 90 °C
  tool tester "tester"
  tool pin "locking pin" locks wheel
  coupled wheel, arm
}
`;

/** What the check says, and what it says to do, about a procedure of these steps. */
function said(check: string, ...steps: string[]): string[] {
  const text = `${RIG}procedure p "Try it" for rig {\n  ${steps.join('\n  ')}\n}\n`;
  return checkTexts({ 'rig.dowel': text })
    .findings.filter((finding) => finding.check === check)
    .map(({ message, help }) => `${message} ${help ?? ''}`.trim());
}

describe('sentences', () => {
  test('name positions by number, in runs, without an article', () => {
    expect(said('left-off', 'remove cap-bolts #1, #2, #3, #5')[0]).toMatch(
      /^Cap bolts #1 to #3 and #5 are still out at the end of the job: no step puts them back\./,
    );
    expect(said('left-loose', 'loosen cap-bolts #4')[0]).toMatch(/^Cap bolt #4 is not tight /);
  });

  test('name positions by their names', () => {
    expect(said('not-marked', 'remove caps #front')).toEqual([
      'The front bearing cap is matched and comes off unmarked: nobody can tell afterwards where it goes. ' +
        'Write `mark caps #front` before this step, or `numbered` in the machine file where it carries a number.',
    ]);
    expect(said('not-marked', 'remove caps #front, #rear')[0]).toMatch(
      /^The front and rear bearing caps are matched and come off unmarked/,
    );
  });

  test('clear the way with the verb that fits each thing', () => {
    expect(said('covered', 'remove caps #front')).toEqual([
      'The front bearing cap cannot be reached: the oil hose and the belt guard are in the way. ' +
        'Disconnect the oil hose and take off the belt guard before this step.',
    ]);
    expect(said('still-held', 'remove guard')).toEqual([
      'The belt guard cannot come off: the guard clip is still tight. Loosen the guard clip before this step.',
    ]);
    expect(said('still-held', 'discard cap-bolts #3')).toEqual([
      'Cap bolt #3 is still in place and cannot be thrown away yet. Take out cap bolt #3 before this step.',
    ]);
  });

  test('say what was never done, by the kind of thing', () => {
    const never = (step: string) => said('refitted-before-removed', step)[0]?.split('.')[0];
    expect(never('connect hose')).toBe(
      'The oil hose was never disconnected: there is nothing for this step to put back',
    );
    expect(never('tighten cap-bolts #2')).toBe(
      'Cap bolt #2 was never loosened or taken out: there is nothing for this step to put back',
    );
    expect(never('fill oil')).toBe(
      'The lubricating oil was never drained: there is nothing for this step to put back',
    );
    expect(never('restore mains')).toBe(
      'The mains were never isolated: there is nothing for this step to put back',
    );
    expect(never('close tap')).toBe(
      'The drain tap already stands as before the job: there is nothing for this step to put back',
    );
  });

  test('say how a thing stands when a step does it again', () => {
    const again = (...steps: string[]) => said('done-twice', ...steps)[0]?.split('.')[0];
    expect(again('disconnect hose', 'disconnect hose')).toBe('The oil hose is already disconnected');
    expect(again('remove cap-bolts', 'remove cap-bolts #1')).toBe('Cap bolt #1 is already out');
    expect(again('isolate mains', 'isolate mains')).toBe('The mains are already isolated');
    expect(again('open tap', 'open tap')).toBe('The drain tap is already open');
    expect(again('lower arm')).toBe('The swing arm is already lowered');
    expect(again('remove pin')).toBe('The locking pin is already away');
    expect(again('unlock wheel')).toBe('The idler wheels are already unlocked');
  });

  test('list all that makes a system unsafe, with what to do about it', () => {
    expect(said('not-made-safe', 'disconnect hose', 'remove pump')).toEqual([
      'This step opens the mains and the compressed air at the pump while they are still live, under pressure ' +
        'and hot. Isolate them and lock them out, let the pressure out and let them cool before this step. ' +
        'Local safety rules and licensed practice come first.',
    ]);
    expect(said('not-made-safe', 'prove mains safe with tester')[0]).toMatch(
      /^The mains are still live: this step cannot prove them safe\./,
    );
  });

  test('tell the load and what carries it apart', () => {
    expect(said('not-supported', 'remove arm')[0]).toBe(
      'The swing arm carries the idler wheels, which nothing supports when this step takes it away. ' +
        'Write `support wheel with …` before this step.',
    );
  });

  test('tell a tool that holds from a lock, and what turns along', () => {
    expect(said('turned-while-locked', 'fit pin', 'turn arm')[0]).toMatch(
      /^The swing arm cannot turn: the locking pin holds it\. Write `remove pin`/,
    );
    expect(said('turned-while-locked', 'lock wheel #2', 'turn wheel #2')[0]).toMatch(
      /^Idler wheel #2 cannot turn: it is locked\./,
    );
    expect(said('turned-while-locked', 'lock wheel', 'turn arm')[0]).toMatch(
      /^The swing arm cannot turn: the idler wheels, which turn with it, are locked\./,
    );
  });

  test('list the stages that are left out, and what secures a fastener', () => {
    const steps = ['remove cap-bolts #1', 'fit cap-bolts #1 by hand', 'tighten cap-bolts #1 stage 4'];
    expect(said('stage-skipped', ...steps)[0]).toMatch(
      /^Cap bolt #1 goes to stage 4 of 4 without stages 1, 2 and 3\./,
    );
    expect(said('not-secured', ...steps)[0]).toMatch(
      /^Cap bolt #1 is not secured after this step, though the machine file says secured by tab and wire\./,
    );
  });

  test('say why a system cannot come back', () => {
    expect(said('restored-out-of-order', 'open tap', 'fill oil')[0]).toMatch(
      /^The lubricating oil comes back too early: the drain tap is open\./,
    );
    expect(said('restored-out-of-order', 'drain oil', 'run')[0]).toMatch(
      /^The lubricating oil is still drained when this step needs it\. Write `fill oil`/,
    );
  });

  test('tell a trial at the end from one that is fitted over', () => {
    expect(said('trial-not-undone', 'remove wheel #1', 'trial fit wheel #1')[0]).toMatch(
      /^Idler wheel #1 is fitted on trial and never comes off again to be fitted for good\./,
    );
  });
});
