/**
 * The order of making safe and giving back. Source: 29 CFR 1910.147 (d) and (e) as in tests/outside/lockout-sequence.csv;
 * for battery leads US Army TM 9-6115-639-13 (negative off first, positive last), and that the lead to the frame is meant,
 * whichever pole it is: common practice, no source (a machine with positive earth is among the everyday jobs).
 */
import { describe, expect, test } from 'vitest';
import { checkTexts } from '../../../language-server/checks/check-texts.ts';
import { outside } from '../fastening/outside.ts';

const MACHINE = `machine press "press" {
  part bed "bed" fixed
  part ram "ram" on bed opens oil, mains
  part lid "lid" on bed opens mains
  isolator breaker "breaker" in mains normally on
  isolator gate "gate valve" in steam normally on
  control dump "dump valve" in oil normally closed
  system mains "mains" live 400 V isolated at breaker proved with tester
  system oil "oil" pressure 140 bar relieved at dump
  system steam "steam" isolated at gate
  tool padlock "padlock"
  tool tester "tester"
  part battery "battery" on bed
  connection earth "earth lead" joins battery to bed first off last on
  connection live "live lead" joins battery
  connection sense "sensor plug" joins bed
}
`;

function found(lines: string): string[] {
  const text = `${MACHINE}procedure p "Try it" for press {\n${lines}\n}\n`;
  const wanted = new Set([
    'relieved-before-lock',
    'not-kept-safe',
    'lead-out-of-order',
    'isolated-out-of-order',
  ]);
  return checkTexts({ 'a.dowel': text })
    .findings.filter(({ check }) => wanted.has(check))
    .map(({ check, start, end }) => `${check} ${text.slice(start, end)}`);
}

describe('lockout (29 CFR 1910.147)', () => {
  const STEPS: Readonly<Record<string, string>> = {
    '(d)(3)': 'isolate mains',
    '(d)(4)': 'lock out breaker with padlock',
    '(d)(5)(i)': 'open dump',
    '(d)(6)': 'prove mains safe with tester',
  };
  const order = outside('lockout-sequence.csv').flatMap((row) => STEPS[row['29_CFR_1910.147']!] ?? []);

  test('its order is silent', () => {
    expect(order).toEqual(Object.values(STEPS));
    expect(found(order.join('\n'))).toEqual([]);
  });

  test('letting out before the lock is found where it is let out', () => {
    expect(found('isolate mains\nopen dump\nlock out breaker')).toEqual(['relieved-before-lock dump']);
    expect(found('isolate mains\nrelieve oil\nlock out breaker')).toEqual(['relieved-before-lock oil']);
    expect(found('open dump\nisolate mains\nlock out breaker')).toEqual(['relieved-before-lock dump']);
    expect(
      found('isolate mains\nlet cool ram\nopen dump\nwait 5 min\nlock out breaker\nlock out gate')[0],
    ).toBe('relieved-before-lock dump');
  });

  test('a lock that is on already, another task, or work in between is no such order', () => {
    expect(found('isolate mains\nlock out breaker\nopen dump\nisolate steam\nlock out gate')).toEqual([
      // The lock on the steam comes after, too: every lock comes before the energy is let out.
      'relieved-before-lock dump',
    ]);
    expect(found('task a "A" { open dump }\ntask b "B" { isolate mains\nlock out breaker }')).toEqual([]);
    expect(found('open dump\nclean bed\nisolate mains\nlock out breaker')).toEqual([]);
    expect(found('isolate mains\nopen dump')).toEqual([]);
  });

  test('a lock before the supply is off stays its own finding', () => {
    expect(found('lock out breaker\nisolate mains')).toEqual(['isolated-out-of-order breaker']);
  });
});

describe('kept safe until the work is done (29 CFR 1910.147 (e)(1))', () => {
  const safe = 'isolate mains\nlock out breaker\nopen dump\n';

  test('a lock that comes off before the machine is whole', () => {
    expect(found(`${safe}remove lid\nunlock breaker\nrefit lid\nclose dump\nrestore mains`)).toEqual([
      'not-kept-safe breaker',
    ]);
    expect(found(`${safe}remove lid\nrefit lid\nclose dump\nunlock breaker\nrestore mains`)).toEqual([]);
  });

  test('is told once: where energy comes back onto what is open, that says it', () => {
    expect(found(`${safe}remove lid\nunlock breaker\nrestore mains\nrefit lid`)).toEqual([]);
  });

  test('a lock that goes on again, or a job that ends open, is nobody’s finding here', () => {
    expect(found(`${safe}remove lid\nunlock breaker\nlock out breaker\nrefit lid`)).toEqual([]);
    expect(found(`${safe}remove lid\nunlock breaker`)).toEqual([]);
  });
});

describe('leads', () => {
  test('to the frame first off and last on', () => {
    expect(found('disconnect earth\ndisconnect live\nconnect live\nconnect earth')).toEqual([]);
    expect(found('disconnect earth, live\nconnect live, earth')).toEqual([]);
    expect(found('disconnect live\ndisconnect earth\nconnect live\nconnect earth')).toEqual([
      'lead-out-of-order live',
    ]);
    expect(found('disconnect earth\ndisconnect live\nconnect earth\nconnect live')).toEqual([
      'lead-out-of-order earth',
    ]);
    expect(found('disconnect live, earth')).toEqual(['lead-out-of-order live']);
  });

  test('other connections of the frame are free', () => {
    expect(found('disconnect sense\nconnect sense')).toEqual([]);
    expect(found('disconnect earth\ndisconnect sense\nconnect earth\nconnect sense')).toEqual([]);
  });

  test('only the lead to the frame may come off alone', () => {
    expect(found('disconnect earth\nconnect earth')).toEqual([]);
    expect(found('disconnect live\nconnect live')).toEqual(['lead-out-of-order live']);
  });
});
